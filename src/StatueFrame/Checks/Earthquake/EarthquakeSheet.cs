using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes what an earthquake does in one situation, and whether the statue stands it, into a sheet.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class EarthquakeSheet(StatueModel model, Criteria criteria, Response response, EarthquakeResponse earthquake, double factor, SheetWriter lists)
{
    private readonly string name = response.Situation.Name;

    public void Add()
    {
        int firstCheck = lists.Checks.Count;
        AddModes();
        AddBase();
        AddMovements();
        lists.Warnings.AddRange(earthquake.Warnings.Select(warning => $"{name}: {warning}"));
        lists.Assume(earthquake.Assumptions, firstCheck);
    }

    private void AddModes()
    {
        int count = earthquake.Modes.Count;
        Add("modes in the earthquake", count, Dimension.Number, count > 0 ? Invariant($"{earthquake.Modes[0].Frequency.Hertz:0.00} to {earthquake.Modes[^1].Frequency.Hertz:0.0} Hz") : "");
        Add("mass in modes along x", earthquake.MassShareX, Dimension.Percent);
        Add("mass in modes along y", earthquake.MassShareY, Dimension.Percent);
        Add("mass in modes along z", earthquake.MassShareZ, Dimension.Percent);
    }

    private void AddBase()
    {
        EarthquakeBase peak = earthquake.Base;
        Add("earthquake base shear", factor * peak.Shear.Newtons, Dimension.Force, "greatest along any direction");
        Add("earthquake base vertical force", factor * peak.ForceZ.Newtons, Dimension.Force, "up or down");
        Add("earthquake overturning moment", factor * peak.Overturning.NewtonMeters, Dimension.Moment, "greatest about any direction");
        Add("earthquake twisting moment", factor * peak.MomentZ.NewtonMeters, Dimension.Moment);
        AddOverturning("along x", criteria.Earthquake?.BaseHalfWidthX, (1, 0), peak.MomentY, b => b.MomentY);
        AddOverturning("along y", criteria.Earthquake?.BaseHalfWidthY, (0, 1), peak.MomentX, b => b.MomentX);
        lists.Checks.Add(criteria.Earthquake?.Friction is { } mu
            ? EarthquakeChecks.Slip(factor * peak.Shear, Greatest(b => b.Shear), Weight, factor * peak.ForceZ, mu, name)
            : EarthquakeChecks.SlipNotChecked(name));
    }

    /// <summary>Over the edge that was given, or over that of the tower's plan.</summary>
    private void AddOverturning(string axis, Length? given, (double X, double Y) along, Torque peak, Func<BaseReaction, Torque> part)
    {
        Footprint? plan = given is null ? Footprint.Of(model, null) : null;
        lists.Checks.Add((given ?? plan?.LeastReach(along.X, along.Y)) is { } b
            ? EarthquakeChecks.Overturning(factor * peak, GreatestMoment(part), Weight, factor * earthquake.Base.ForceZ, b, plan is null ? "its edge" : $"the nearer edge of the {plan.What}", axis, name)
            : EarthquakeChecks.OverturningNotChecked(axis, name));
    }

    private void AddMovements()
    {
        foreach (NamedPoint point in model.Statue.Points)
        {
            EarthquakeMovement movement = earthquake.Of(point.Name);
            Add($"earthquake sway at {point.Name}", factor * movement.Sway.Meters, Dimension.SmallLength, Invariant($"{factor * movement.Acceleration.MetersPerSecondSquared:0.00} m/s² absolute"));
        }
        if (earthquake.Rings(response.Cases, factor).OrderBy(bar => -bar.OfYield).FirstOrDefault() is { } worst)
            Add("greatest bar stress", worst.Stress.Pascals, Dimension.Stress, $"{worst.Where}, {worst.Assumption.InWords()}");
        foreach (SwayLimit limit in criteria.Sway)
            lists.Checks.Add(EarthquakeChecks.Sway(earthquake.Of(limit.Point), factor, response.GreatestSway(limit.Point).Sway, model.IsOnLimb(limit.Point), limit, name));
    }

    /// <summary>The least weight on the base over the load cases, downwards.</summary>
    private Force Weight => Force.FromNewtons(response.Cases.Min(c => -c.Base.ForceZ.Newtons));

    private Force Greatest(Func<BaseReaction, Force> part) => Force.FromNewtons(response.Cases.Max(c => Math.Abs(part(c.Base).Newtons)));

    private Torque GreatestMoment(Func<BaseReaction, Torque> part) => Torque.FromNewtonMeters(response.Cases.Max(c => Math.Abs(part(c.Base).NewtonMeters)));

    private void Add(string line, double value, Dimension dimension, string note = "") =>
        lists.Results.Add(new ResultLine(name, line, value, dimension, note));
}
