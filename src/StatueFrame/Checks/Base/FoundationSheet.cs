using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Writes the checks of the foundation in one situation into a sheet, and what the give of the ground adds to the sway.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FoundationSheet(StatueModel model, Foundation foundation, Criteria criteria, BaseState[] states, BaseState[] tipping, string situation, SheetWriter lists)
{
    private static readonly Source tilt = new("rigid footing on elastic ground, second order", "theory page on foundations");

    private readonly double pedestal = model.Statue.Pedestal?.Height ?? 0;
    private readonly double pedestalWeight = model.Statue.Pedestal?.Weight ?? 0;

    private double Depth => pedestal + foundation.Thickness.Meters;

    public void AddStrength()
    {
        int first = lists.Checks.Count;
        BaseDesign design = criteria.BaseInUse;
        lists.AddWorst(tipping.Select(s => (FoundationChecks.Overturning(foundation, Under(s), design, s.Where, situation), OriginOf(s))));
        lists.Assume([BaseDesign.EquilibriumWeight], first);
        lists.AddWorst(Each(s => FoundationChecks.Sliding(foundation, Under(s), design, s.Where, situation)));
        lists.AddWorst(Each(s => FoundationChecks.Bearing(foundation, Under(s), design, s.Where, situation)));
        lists.Assume(design.Assumptions(), first);
        AddBlock(design);
    }

    /// <summary>The block itself beyond the pedestal.</summary>
    private void AddBlock(BaseDesign design)
    {
        if (FootingChecks.Lacks(model.Statue, design) is { } lacking)
        {
            lists.Checks.Add(Check.NotChecked(new CheckSubject("foundation.bending", "block or mat in bending beyond the pedestal", Situation: situation), lacking, new Source("EN 1992-1-1:2004", "6.1, 12.9.3")));
            return;
        }
        BlockSection on = model.Statue.Pedestal!.Courses[^1].Section;
        (Check, DemandOrigin?)[][] all = [.. states.Select(s => FootingChecks.All(Footing.Of(foundation, on, Under(s), s.WeightFactor, s.Where, situation)).Select(check => (check, OriginOf(s))).ToArray())];
        for (int i = 0; i < all.Max(checks => checks.Length); i++)
            lists.AddWorst(all.Select(checks => checks[i]));
    }

    /// <param name="isSteady">False when the sway is not that of the load cases.</param>
    public void AddService(bool isSteady)
    {
        lists.AddWorst(Each(s => FoundationChecks.Pressure(foundation, Under(s), s.Where, situation)));
        lists.AddWorst(Each(s => FoundationChecks.Uplift(foundation, Under(s), s.Where, situation)));
        var subject = new CheckSubject("foundation.sway", "sway with the give of the ground", Situation: situation);
        if (!isSteady)
            lists.Checks.Add(Check.NotChecked(subject, "it is worked out for steady loads alone", tilt));
        else if (FoundationChecks.Stiffness(foundation) is not { } stiffness)
            lists.Checks.Add(Check.NotChecked(subject, "neither shear modulus nor subgrade modulus of the ground is given (Soil)", tilt));
        else if (model.Statue.Tower.Base is { RotationX: not null } or { RotationY: not null })
            lists.Checks.Add(Check.NotChecked(subject, "the tower stands on springs already (TowerBase), whose give is in its sway", tilt));
        else
            AddSway(stiffness);
    }

    private (Check, DemandOrigin?)[] Each(Func<BaseState, Check> check) => Array.ConvertAll(states, s => (check(s), OriginOf(s)));

    private BaseLoad Under(BaseState state) => PedestalWind.On(Still(state), model.Statue, state, model.Statue.Pedestal?.Courses.Count ?? 0, Depth);

    /// <summary>The same without wind on the pedestal.</summary>
    private BaseLoad Still(BaseState state) => state.Load.Below(Depth, state.WeightFactor * (pedestalWeight + foundation.Weight));

    private DemandOrigin? OriginOf(BaseState state) => state.Below(
        Depth, Under(state), ("weight of pedestal and foundation, with its factor", new BaseLoad(state.WeightFactor * (pedestalWeight + foundation.Weight), 0, 0, 0, 0, 0)), ("wind on the pedestal, with its factor", Under(state) - Still(state)));

    private void AddSway(FootingStiffness stiffness)
    {
        int first = lists.Checks.Count;
        double K_x = stiffness.RockingY.NewtonMetersPerRadian, K_y = stiffness.RockingX.NewtonMetersPerRadian;
        double weightHeight = WeightHeight();
        lists.Checks.Add(FoundationChecks.TiltStability(weightHeight, Math.Min(K_x, K_y), "", situation));
        if (weightHeight >= Math.Min(K_x, K_y))
            return;
        double more_x = 1 / (1 - weightHeight / K_x), more_y = 1 / (1 - weightHeight / K_y);
        (double X, double Y)[] tilts = Array.ConvertAll(states, s => (Under(s).mx / K_x * more_x, Under(s).my / K_y * more_y));
        double greatest = tilts.Max(t => Math.Sqrt(t.X * t.X + t.Y * t.Y));
        lists.Results.Add(new ResultLine(situation, "tilt of the foundation", greatest, Dimension.Angle, FormattableString.Invariant($"second-order factor {Math.Max(more_x, more_y):0.000}")));
        lists.Results.Add(new ResultLine(situation, "settlement of the foundation", states.Max(s => Under(s).N) / stiffness.Vertical.NewtonsPerMeter, Dimension.SmallLength, "elastic, all at once"));
        foreach (NamedPoint point in model.Statue.Points)
        {
            double height = model.PositionOf(point).Z - model.BaseCenter.Z + Depth;
            Sway[] sways = [.. states.Select((s, i) => Of(point, s, tilts[i], height, stiffness))];
            Sway worst = sways.FirstGreatest(s => s.Total);
            lists.Results.Add(new ResultLine(situation, $"sway at {point.Name} with the give of the ground", worst.Total, Dimension.SmallLength, worst.Where));
            foreach (SwayLimit limit in criteria.Sway.Where(limit => limit.Point == point.Name))
                lists.Checks.Add(Check.Of(new CheckSubject("foundation.sway", "sway with the give of the ground", $"{point.Name}, {worst.Where}", situation), Dimension.SmallLength, tilt, w => worst.Against(w, limit.Limit.Meters)));
        }
        lists.Assume([new Assumption("ground under the foundation", "elastic half-space or springs, embedment not counted", Source.Assumed("foundations"))], first);
    }

    /// <summary>Sum of weights, without factors, times their heights above the underside, N·m.</summary>
    private double WeightHeight()
    {
        double sum = model.Masses.TotalKilograms * SelfWeight.Gravity * (model.Masses.CenterMeters.Z - model.BaseCenter.Z + Depth), top = Depth;
        foreach (PedestalCourse course in model.Statue.Pedestal?.Courses ?? [])
        {
            top -= course.Height.Meters;
            sum += course.Weight * (top + course.Height.Meters / 2);
        }
        return sum + foundation.Weight * foundation.Thickness.Meters / 2;
    }

    private Sway Of(NamedPoint point, BaseState state, (double X, double Y) tilt, double height, FootingStiffness stiffness)
    {
        Movement movement = state.Case.Of(point.Name);
        return new Sway(
            movement.X.Meters, movement.Y.Meters, tilt.X, tilt.Y, height,
            state.Load.Vx / stiffness.SlideX.NewtonsPerMeter, state.Load.Vy / stiffness.SlideY.NewtonsPerMeter, state.Where);
    }

    private sealed record Sway(double X, double Y, double TiltX, double TiltY, double Height, double SlideX, double SlideY, string Where)
    {
        public double Total => Math.Sqrt(Math.Pow(X + TiltX * Height + SlideX, 2) + Math.Pow(Y + TiltY * Height + SlideY, 2));

        public (double, double) Against(Working? w, double limit)
        {
            double u_x = w.Given("u_x", X, Dimension.SmallLength, "of the statue on a rigid base"), u_y = w.Given("u_y", Y, Dimension.SmallLength, "of the statue on a rigid base");
            double theta_x = w.Given("theta_x", TiltX, Dimension.Angle, "tilt towards x, second order", tilt), theta_y = w.Given("theta_y", TiltY, Dimension.Angle, "tilt towards y, second order", tilt);
            double s_x = w.Given("s_x", SlideX, Dimension.SmallLength, "slide"), s_y = w.Given("s_y", SlideY, Dimension.SmallLength, "slide"), H = w.Given("H", Height, Dimension.Length, "above the underside");
            double delta_x = w.Let("delta_x", u_x + theta_x * H + s_x, Dimension.SmallLength, tilt), delta_y = w.Let("delta_y", u_y + theta_y * H + s_y, Dimension.SmallLength, tilt);
            return (w.Let("delta", Math.Sqrt(delta_x * delta_x + delta_y * delta_y), Dimension.SmallLength, tilt), limit);
        }
    }
}
