using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Checks of the base as a whole: bearing, opening, sliding, overturning.</summary>
/// <remarks>Stateless; safe to use from many threads. Moments are those on the base, right-handed, about the tower's axis.</remarks>
internal static class BaseChecks
{
    private static readonly Source group = new("plates on a bed that only pushes, bars that only pull", "see the theory page on the base");
    private static readonly Source bearingEn = new("EN 1993-1-8:2005", "6.2.5");
    private static readonly Source bearingAisc = new("AISC 360-16 and 360-22, J8", "Design Guide 1");
    private static readonly Source plateAisc = new("AISC Design Guide 1, 2nd ed.", "plate as a cantilever under its greatest pressure, ϕ = 0.90");
    private static readonly Source sliding = new("EN 1993-1-8:2005", "6.2.2 (6.1), (6.2)");
    private static readonly Source statics = new("statics", "moments about the edge of the plates' hull");

    /// <summary>
    /// The greatest pressure under the plates. Under Eurocode only what stands on a plate and a rim of width
    /// c = t √(f_y/(3 f_jd γ_M0)) bears, which takes the plate's bending in; under AISC the whole plate.
    /// </summary>
    /// <param name="holdDown">Plates and bars.</param>
    /// <param name="block">Plan of the block below.</param>
    /// <param name="material">What it is built of.</param>
    /// <param name="depth">Its height, for the spread of pressure.</param>
    /// <param name="compression">Force on the base, positive downwards.</param>
    /// <param name="momentX">Moment about x.</param>
    /// <param name="momentY">Moment about y.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Bearing(HoldDown holdDown, BlockSection block, BlockMaterial material, Length depth, Force compression, Torque momentX, Torque momentY, BaseDesign? design = null, string where = "", string situation = "")
    {
        Validate(holdDown, material);
        var load = new BaseLoad(compression.Newtons, 0, 0, momentY.NewtonMeters, -momentX.NewtonMeters, 0);
        return Bearing(holdDown, block, material, depth.Meters, load, design ?? new BaseDesign(), where, situation);
    }

    internal static Check Bearing(HoldDown holdDown, BlockSection block, BlockMaterial material, double depth, BaseLoad load, BaseDesign design, string where, string situation)
    {
        Source source = design.IsAmerican ? bearingAisc : bearingEn;
        return Check.Of(new CheckSubject("base.bearing", "pressure under the base plates", where, situation), Dimension.Stress, source, w =>
        {
            Tell(w, load);
            double ratio = holdDown.Plates.Min(plate => PlateBearing.SpreadRatio(plate, holdDown.Plates, block, depth));
            double f = PlateBearing.Strength(w, material, ratio, design);
            PlanArea plan = holdDown.Plan;
            if (!design.IsAmerican)
            {
                BasePlate thin = holdDown.Plates.MinBy(plate => plate.Thickness.Meters * Math.Sqrt(plate.Metal.YieldStrength.Pascals))!;
                double c = PlateBearing.Spread(w, thin.Thickness.Meters, thin.Metal.YieldStrength.Pascals, f, design.GammaM0);
                plan = Effective(holdDown, c);
                w.Given("A_eff", plan.Whole.A, Dimension.Area, "what stands on the plates and a rim c, within the plates", bearingEn);
            }
            if (BaseGroup.Solve(holdDown, plan, material, load.N, load.mx, load.my, preTensioned: true) is not { } state)
            {
                w?.Note("Plates and bars cannot balance the load.");
                return (f, 0);
            }
            return (w.Given("p", state.GreatestPressure.Pascals, Dimension.Stress, "greatest pressure, bars with their pre-tension", group), f);
        });
    }

    /// <summary>AISC: the plate as a cantilever beyond what stands on it, under its greatest pressure: 2 p l²/t² ≤ 0.9 F_y.</summary>
    internal static Check PlateBending(HoldDown holdDown, BlockMaterial material, BaseLoad load, string where, string situation) =>
        Check.Of(new CheckSubject("base.plate-bending", "bending of a base plate", where, situation), Dimension.Stress, plateAisc, w =>
        {
            Tell(w, load);
            BasePlate plate = holdDown.Plates.MaxBy(p => Math.Max(p.Overhang.X, p.Overhang.Y) / (p.Thickness.Meters * Math.Sqrt(p.Metal.YieldStrength.Pascals)))!;
            double l = w.Given("l", Math.Max(plate.Overhang.X, plate.Overhang.Y), Dimension.SmallLength, "overhang"), t = w.Given("t", plate.Thickness.Meters, Dimension.SmallLength, "thickness");
            double F_y = w.Given("F_y", plate.Metal.YieldStrength.Pascals, Dimension.Stress, "yield strength", plate.Material.Source);
            if (BaseGroup.Solve(holdDown, holdDown.Plan, material, load.N, load.mx, load.my, preTensioned: true) is not { } state)
                return (F_y, 0);
            double p = w.Given("p", state.GreatestPressure.Pascals, Dimension.Stress, "greatest pressure", group);
            return (w.Let("sigma", 2 * p * l * l / (t * t), Dimension.Stress, plateAisc), w.Let("f_R", 0.9 * F_y, Dimension.Stress, plateAisc));
        });

    /// <summary>The pressure that the actions take from the corner of the plates that first opens, against what pre-tension puts there. A rule for service: above 1 the bars feel every gust whole.</summary>
    /// <param name="holdDown">Plates and bars.</param>
    /// <param name="material">What they stand on.</param>
    /// <param name="compression">Force on the base, positive downwards.</param>
    /// <param name="momentX">Moment about x.</param>
    /// <param name="momentY">Moment about y.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Separation(HoldDown holdDown, BlockMaterial material, Force compression, Torque momentX, Torque momentY, string where = "", string situation = "")
    {
        Validate(holdDown, material);
        return Separation(holdDown, material, new BaseLoad(compression.Newtons, 0, 0, momentY.NewtonMeters, -momentX.NewtonMeters, 0), where, situation);
    }

    internal static Check Separation(HoldDown holdDown, BlockMaterial material, BaseLoad load, string where, string situation) =>
        Check.Of(new CheckSubject("base.separation", "opening of the pre-tensioned base", where, situation), Dimension.Stress, group, w =>
        {
            Tell(w, load);
            (double taken, double pressed) = BaseGroup.Opening(holdDown, material, load.N, load.mx, load.my);
            return (w.Given("p_off", taken, Dimension.Stress, "taken away by the actions at the corner that first opens", group), w.Given("p_0", pressed, Dimension.Stress, "there by pre-tension after losses", group));
        });

    /// <summary>Shear against friction under the pressed plates, the key, and the shear of all bars.</summary>
    /// <param name="holdDown">Plates, bars, friction and key.</param>
    /// <param name="material">What they stand on.</param>
    /// <param name="compression">Force on the base, positive downwards.</param>
    /// <param name="shear">Shear, without direction.</param>
    /// <param name="momentX">Moment about x.</param>
    /// <param name="momentY">Moment about y.</param>
    /// <param name="twist">Moment about z.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Sliding(HoldDown holdDown, BlockMaterial material, Force compression, Force shear, Torque momentX, Torque momentY, Torque twist, BaseDesign? design = null, string where = "", string situation = "")
    {
        Validate(holdDown, material);
        return Sliding(holdDown, material, new BaseLoad(compression.Newtons, shear.Newtons, 0, momentY.NewtonMeters, -momentX.NewtonMeters, twist.NewtonMeters), design ?? new BaseDesign(), where, situation);
    }

    internal static Check Sliding(HoldDown holdDown, BlockMaterial material, BaseLoad load, BaseDesign design, string where, string situation) =>
        Check.Of(new CheckSubject("base.sliding", "sliding of the base", where, situation), Dimension.Force, sliding, w =>
        {
            double V = w.Given("V", load.V, Dimension.Force, "shear, without direction"), M_z = w.Given("M_z", Math.Abs(load.Twist), Dimension.Moment, "twist");
            if (!holdDown.BarsTakeTwist)
            {
                PlanMoments m = holdDown.Plan.Whole;
                double r = w.Given("r", Math.Sqrt((m.XX + m.YY) / m.A), Dimension.Length, "polar radius of the plates");
                V = w.Let("V_all", V + M_z / r, Dimension.Force, statics);
            }
            BaseGroup? state = BaseGroup.Solve(holdDown, holdDown.Plan, material, load.N, load.mx, load.my, preTensioned: true);
            double N_c = w.Given("N_c", state?.BedForce.Newtons ?? 0, Dimension.Force, state is null ? "plates and bars cannot balance the load" : "pressed under the plates", group);
            double C_f = w.Given("C_f", holdDown.Friction, Dimension.Number, "friction"), F_key = w.Given("F_key", holdDown.KeyResistance.Newtons, Dimension.Force, "key");
            double F_bars = w.Given("F_bars", state is null ? 0 : holdDown.Bars.Sum(bar => AnchorChecks.ShearResistance(null, bar, design)), Dimension.Force, "shear of all bars", sliding);
            return (V, w.Let("V_R", C_f * N_c + F_key + F_bars, Dimension.Force, sliding));
        });

    /// <summary>Overturning about each side of the plates' hull: what tips against weight and the strength of the bars; the worst side counts.</summary>
    /// <param name="holdDown">Plates and bars.</param>
    /// <param name="compression">Force on the base, positive downwards.</param>
    /// <param name="momentX">Moment about x.</param>
    /// <param name="momentY">Moment about y.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Overturning(HoldDown holdDown, Force compression, Torque momentX, Torque momentY, BaseDesign? design = null, string where = "", string situation = "")
    {
        Validate(holdDown, null);
        return Overturning(holdDown, new BaseLoad(compression.Newtons, 0, 0, momentY.NewtonMeters, -momentX.NewtonMeters, 0), design ?? new BaseDesign(), where, situation);
    }

    internal static Check Overturning(HoldDown holdDown, BaseLoad load, BaseDesign design, string where, string situation) =>
        Check.Of(new CheckSubject("base.overturning", "overturning about the edge of the plates", where, situation), Dimension.Moment, statics, w =>
        {
            PlanArea plan = holdDown.Plan;
            (double Tips, double Weight, double Bars, double Use) worst = (0, 1, 0, -1);
            foreach ((double ux, double uy) in plan.HullNormals())
            {
                double reach = plan.Reach(ux, uy), tips = Math.Max(0, load.mx * ux + load.my * uy), weight = load.N * reach, bars = 0;
                foreach (AnchorBar bar in holdDown.Bars)
                    bars += Math.Max(0, reach - ux * bar.X.Meters - uy * bar.Y.Meters) * AnchorChecks.TensionResistance(null, bar, design);
                if (weight < 0)
                    (tips, weight) = (tips - weight, 0);
                double use = tips == 0 ? 0 : weight + bars <= 0 ? double.PositiveInfinity : tips / (weight + bars);
                if (use > worst.Use)
                    worst = (tips, weight, bars, use);
            }
            Tell(w, load);
            double M_tips = w.Given("M_tips", worst.Tips, Dimension.Moment, "tips about the worst side, lifting with it"), M_weight = w.Given("M_weight", worst.Weight, Dimension.Moment, "weight about that side");
            double M_bars = w.Given("M_bars", worst.Bars, Dimension.Moment, "strength of the bars about that side"), margin = w.Given("margin", design.OverturningMargin, Dimension.Number);
            return (M_tips, w.Let("M_stable", (M_weight + M_bars) / margin, Dimension.Moment, statics));
        });

    /// <summary>The parts of the plates within c of what stands on them.</summary>
    private static PlanArea Effective(HoldDown holdDown, double c)
    {
        PlanArea? sum = null;
        foreach (BasePlate plate in holdDown.Plates)
        {
            double x = Math.Min(plate.WidthX.Meters, plate.FootX.Meters + 2 * c), y = Math.Min(plate.WidthY.Meters, plate.FootY.Meters + 2 * c);
            PlanArea one = PlanArea.Rectangle(x, y, plate.X.Meters, plate.Y.Meters);
            sum = sum is null ? one : sum.With(one);
        }
        return sum!;
    }

    private static void Tell(Working? w, BaseLoad load)
    {
        w.Given("N", load.N, Dimension.Force, "compression on the base");
        w.Given("M_y", load.mx, Dimension.Moment, "moment about y");
        w.Given("M_x", -load.my, Dimension.Moment, "moment about x");
    }

    private static void Validate(HoldDown holdDown, BlockMaterial? material)
    {
        ArgumentNullException.ThrowIfNull(holdDown);
        var v = new Validator();
        holdDown.Validate(v);
        material?.Validate(v.At("Material"));
        v.ThrowIfAny();
    }
}
