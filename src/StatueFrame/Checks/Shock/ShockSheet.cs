using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes what the shocks of a situation do into a sheet.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class ShockSheet(Criteria criteria, ShockResponse response, SheetWriter lists)
{
    private readonly string name = response.Situation.Name;
    private readonly string group = $"{response.Situation.Name}, in time";

    public static DampingModel DampingOf(Criteria criteria) => criteria.Damping ?? DampingModel.Of(DampingCategory.WeldedLattice);

    public void Add()
    {
        int firstCheck = lists.Checks.Count;
        AddResults();
        AccuracyChecks.Add(lists, AccuracyChecks.Modes, response.ModesError, name);
        AccuracyChecks.Add(lists, AccuracyChecks.Energy, response.Energy.BalanceError, name);
        if (response.Situation.LimitState == LimitState.Strength)
            AddStrength();
        else
            AddService();
        lists.Assume([.. DampingOf(criteria).Assumptions, .. response.Assumptions], firstCheck);
        lists.Warnings.AddRange(response.Warnings);
    }

    private void AddResults()
    {
        Add("damping ratio", response.DampingRatio, Dimension.Percent, Invariant($"{response.ModeCount} modes to {response.HighestFrequency.Hertz:0.#} Hz, {100 * response.Captured:0.0} % of the energy"));
        foreach (ShockMovement point in response.Points)
            Add($"sway at {point.Point}", point.Sway.Value.Meters, Dimension.SmallLength, Time(point.Sway.Time));
        if (response.WorstBar is { } bar)
        {
            Add("greatest bar stress over yield strength", bar.YieldFraction, Dimension.Percent, $"{bar.Where}, {Time(bar.Stress.Time)}");
            Add("force of all bars on the tower", response.BarForce.Value.Newtons, Dimension.Force, Time(response.BarForce.Time));
        }
        Add("base shear", response.BaseShear.Value.Newtons, Dimension.Force, Time(response.BaseShear.Time));
        Add("base overturning moment", response.Overturning.Value.NewtonMeters, Dimension.Moment, Time(response.Overturning.Time));
        Add("least vertical force on the base", response.LeastDown.Value.Newtons, Dimension.Force, $"downwards, {Time(response.LeastDown.Time)}");
        foreach (StrikeImpulse strike in response.Strikes)
            Add($"mass that {strike.Name} meets", strike.StruckMass.Kilograms, Dimension.Mass, Invariant($"impulse {strike.Impulse.NewtonSeconds:g4} N·s"));
    }

    private void AddStrength()
    {
        ShockLimits limits = criteria.Shock ?? new ShockLimits();
        lists.Checks.Add(response.OverturningOn(limits.BaseWidth, limits.HoldDown) is { } overturning
            ? ShockChecks.Overturning(overturning, name)
            : Check.NotChecked(new CheckSubject("shock.overturning", "lifting of the base in a shock", Situation: name), "the width of the base is not known; give Criteria.Shock a BaseWidth, or the tower's first level a plan", Source.Assumed("shock")));
        if (response.MostMovedBar is not { } bar)
            return;
        lists.Checks.Add(limits.Clearance is { } gap
            ? ShockChecks.Clearance(bar, gap, name)
            : Check.NotChecked(new CheckSubject("shock.clearance", "movement of the skin against the tower in a shock", bar.Where, name), "the gap is not known; give Criteria.Shock a Clearance", Source.Assumed("shock")));
    }

    private void AddService()
    {
        foreach (SwayLimit limit in criteria.Sway)
        {
            bool isOnLimb = response.Model.IsOnLimb(limit.Point);
            ShockMovement movement = response.Of(limit.Point);
            double sway = (isOnLimb ? movement.Travel : movement.Sway).Value.Meters, greatest = limit.Limit.Meters;
            lists.Checks.Add(Check.Of(new CheckSubject("shock.sway", "sway at a named point in a shock", limit.Point, name), Dimension.SmallLength, limit.Source, w =>
            {
                w.Given(sway, Dimension.SmallLength, isOnLimb ? "greatest movement from rest, up and down too" : "greatest sway from rest");
                w.Given(greatest, Dimension.SmallLength, "limit");
                return (sway, greatest);
            }));
        }
    }

    private static string Time(Duration time) => Invariant($"after {time.Seconds:0.###} s");

    private void Add(string line, double value, Dimension dimension, string note) => lists.Results.Add(new ResultLine(group, line, value, dimension, note));
}
