using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// Checks of a block or mat in the ground. Forces are those in the plane of its underside, about its center, with all
/// weights above.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FoundationChecks
{
    private static readonly Source effective = new("EN 1997-1:2004", "6.5.2.2, Annex D: effective area B′ = B − 2e");
    private static readonly Source allowable = new("allowable bearing pressure, given", "linear pressure without tension");
    private static readonly Source slide = new("EN 1997-1:2004", "6.5.3 (6.3a), (6.4a), (6.5)");
    private static readonly Source statics = new("statics", "moments about the edge");
    private static readonly Source contact = new("DIN 1054:2010, A 6.6.5, from memory", "half of the base stays in touch: (e_x/B)² + (e_y/L)² ≤ 1/9");
    private static readonly Source tilt = new("inverted pendulum on a spring", "theory page on foundations");

    /// <summary>The vertical force against the bearing resistance on the effective area, drained and undrained, the lesser; not checked without the ground's strength.</summary>
    /// <param name="foundation">The foundation.</param>
    /// <param name="vertical">V, positive downwards.</param>
    /// <param name="horizontalX">H along x.</param>
    /// <param name="horizontalY">H along y.</param>
    /// <param name="momentX">Moment about x, right-handed.</param>
    /// <param name="momentY">Moment about y, right-handed.</param>
    /// <param name="design">Factors; null for those of Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Bearing(Foundation foundation, Force vertical, Force horizontalX, Force horizontalY, Torque momentX, Torque momentY, BaseDesign? design = null, string where = "", string situation = "") =>
        Bearing(Valid(foundation), Load(vertical, horizontalX, horizontalY, momentX, momentY), design ?? new BaseDesign(), where, situation);

    internal static Check Bearing(Foundation foundation, BaseLoad load, BaseDesign design, string where, string situation)
    {
        var subject = new CheckSubject("foundation.bearing", "bearing of the ground", where, situation);
        Soil soil = foundation.Soil;
        if (soil is { FrictionAngle: null, UndrainedStrength: null })
            return Check.NotChecked(subject, "neither friction angle nor undrained strength of the ground is given (Soil)", effective);
        return Check.Of(subject, Dimension.Force, effective, w =>
        {
            double V = w.Given("V", load.N, Dimension.Force, "vertical force");
            if (V <= 0)
                return (Math.Max(1, -V), 0);
            double e_x = w.Given("e_x", Math.Abs(load.mx) / V, Dimension.Length, "eccentricity"), e_y = w.Given("e_y", Math.Abs(load.my) / V, Dimension.Length, "eccentricity");
            double B_x = w.Given("B_x", foundation.WidthX.Meters, Dimension.Length), B_y = w.Given("B_y", foundation.WidthY.Meters, Dimension.Length);
            double x = w.Let("x", B_x - 2 * e_x, Dimension.Length, effective, "effective width"), y = w.Let("y", B_y - 2 * e_y, Dimension.Length, effective, "effective width");
            if (x <= 0 || y <= 0)
                return (V, 0);
            double q = soil.Weight * foundation.Depth.Meters, phi = soil.FrictionAngle?.Radians ?? 0, q_R = double.PositiveInfinity;
            if (phi > 1e-4)
                q_R = BearingResistance.Drained(w, phi, soil.Cohesion.Pascals, q, soil.Weight, x, y, V, load.Vx, load.Vy);
            if (soil.UndrainedStrength is { } c_u)
                q_R = Math.Min(q_R, BearingResistance.Undrained(w, c_u.Pascals, q, x, y, load.V));
            if (double.IsInfinity(q_R))
                q_R = BearingResistance.Undrained(w, Math.Max(1, soil.Cohesion.Pascals), q, x, y, load.V);
            w.Given(q_R, Dimension.Pressure, "the lesser resistance");
            double gamma_Rv = w.Given("gamma_Rv", design.BearingFactor, Dimension.Number);
            return (V, w.Let("R_d", q_R * x * y / gamma_Rv, Dimension.Force, effective));
        });
    }

    /// <summary>The greatest linear pressure without tension against the allowable one. For unfactored actions.</summary>
    /// <param name="foundation">The foundation.</param>
    /// <param name="vertical">V, positive downwards.</param>
    /// <param name="momentX">Moment about x, right-handed.</param>
    /// <param name="momentY">Moment about y, right-handed.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Pressure(Foundation foundation, Force vertical, Torque momentX, Torque momentY, string where = "", string situation = "") =>
        Pressure(Valid(foundation), Load(vertical, Force.Zero, Force.Zero, momentX, momentY), where, situation);

    internal static Check Pressure(Foundation foundation, BaseLoad load, string where, string situation)
    {
        var subject = new CheckSubject("foundation.pressure", "pressure on the ground against the allowable one", where, situation);
        if (foundation.Soil.AllowableBearing is not { } bearing)
            return Check.NotChecked(subject, "no allowable bearing pressure is given (Soil.AllowableBearing)", allowable);
        return Check.Of(subject, Dimension.Pressure, allowable, w =>
        {
            Tell(w, load);
            double q_allow = w.Given("q_allow", bearing.Pascals, Dimension.Pressure, "allowable");
            if (NoTension.Solve(foundation.Plan, load.N, load.mx, load.my) is not { } plane)
                return (q_allow, 0);
            return (w.Given("q_max", plane.GreatestPressure, Dimension.Pressure, "linear, without tension", allowable), q_allow);
        });
    }

    /// <summary>Shear on the underside against friction V tan δ/γ_R;h, and on undrained ground A′c_u/γ_R;h, at most 0.4 V where air can get under.</summary>
    /// <param name="foundation">The foundation.</param>
    /// <param name="vertical">V, positive downwards.</param>
    /// <param name="horizontalX">H along x.</param>
    /// <param name="horizontalY">H along y.</param>
    /// <param name="momentX">Moment about x, right-handed.</param>
    /// <param name="momentY">Moment about y, right-handed.</param>
    /// <param name="design">Factors; null for those of Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Sliding(Foundation foundation, Force vertical, Force horizontalX, Force horizontalY, Torque momentX, Torque momentY, BaseDesign? design = null, string where = "", string situation = "") =>
        Sliding(Valid(foundation), Load(vertical, horizontalX, horizontalY, momentX, momentY), design ?? new BaseDesign(), where, situation);

    internal static Check Sliding(Foundation foundation, BaseLoad load, BaseDesign design, string where, string situation)
    {
        var subject = new CheckSubject("foundation.sliding", "sliding on the ground", where, situation);
        Angle? delta = foundation.BaseFriction ?? foundation.Soil.FrictionAngle;
        if (delta is null && foundation.Soil.UndrainedStrength is null)
            return Check.NotChecked(subject, "neither friction nor undrained strength of the ground is given (Soil, BaseFriction)", slide);
        return Check.Of(subject, Dimension.Force, slide, w =>
        {
            double H = w.Given("H", load.V, Dimension.Force, "horizontal force"), V = w.Given("V", load.N, Dimension.Force, "vertical force");
            if (V <= 0)
                return (Math.Max(1, H), 0);
            double gamma_Rh = w.Given("gamma_Rh", design.SlidingFactor, Dimension.Number), R = double.PositiveInfinity;
            if (delta is { } angle)
            {
                double tan_delta = w.Given("tan_delta", Math.Tan(angle.Radians), Dimension.Number, "friction of the base");
                R = w.Let("R_d", V * tan_delta / gamma_Rh, Dimension.Force, slide, "drained");
            }
            if (foundation.Soil.UndrainedStrength is { } strength)
            {
                double c_u = w.Given("c_u", strength.Pascals, Dimension.Pressure, "undrained strength");
                double A_eff = w.Given("A_eff", Math.Max(0, foundation.WidthX.Meters - 2 * Math.Abs(load.mx) / V) * Math.Max(0, foundation.WidthY.Meters - 2 * Math.Abs(load.my) / V), Dimension.Area, "effective area", effective);
                R = Math.Min(R, w.Let("R_u", Math.Min(A_eff * c_u / gamma_Rh, 0.4 * V), Dimension.Force, slide, "undrained"));
            }
            return (H, R);
        });
    }

    /// <summary>The overturning moment against V times the distance of the edge in its direction.</summary>
    /// <param name="foundation">The foundation.</param>
    /// <param name="vertical">V, positive downwards.</param>
    /// <param name="momentX">Moment about x, right-handed.</param>
    /// <param name="momentY">Moment about y, right-handed.</param>
    /// <param name="design">The margin; null for 1.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Overturning(Foundation foundation, Force vertical, Torque momentX, Torque momentY, BaseDesign? design = null, string where = "", string situation = "") =>
        Overturning(Valid(foundation), Load(vertical, Force.Zero, Force.Zero, momentX, momentY), design ?? new BaseDesign(), where, situation);

    internal static Check Overturning(Foundation foundation, BaseLoad load, BaseDesign design, string where, string situation) =>
        Check.Of(new CheckSubject("foundation.overturning", "overturning about the edge of the foundation", where, situation), Dimension.Moment, statics, w =>
        {
            double M = w.Given("M", load.M, Dimension.Moment, "moment about the center"), V = w.Given("V", load.N, Dimension.Force, "vertical force");
            if (V <= 0)
                return (Math.Max(1, M), 0);
            double gauge = foundation.Plan.Gauge(load.mx, load.my);
            double d = w.Given("d", gauge == 0 ? 0.5 * Math.Min(foundation.WidthX.Meters, foundation.WidthY.Meters) : M / gauge, Dimension.Length, "edge in the direction of the moment");
            double margin = w.Given("margin", design.OverturningMargin, Dimension.Number);
            return (M, w.Let("M_stable", V * d / margin, Dimension.Moment, statics));
        });

    /// <summary>At least half of the base in touch: 9[(e_x/B)² + (e_y/L)²] ≤ 1. A rule for service.</summary>
    /// <param name="foundation">The foundation.</param>
    /// <param name="vertical">V, positive downwards.</param>
    /// <param name="momentX">Moment about x, right-handed.</param>
    /// <param name="momentY">Moment about y, right-handed.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Uplift(Foundation foundation, Force vertical, Torque momentX, Torque momentY, string where = "", string situation = "") =>
        Uplift(Valid(foundation), Load(vertical, Force.Zero, Force.Zero, momentX, momentY), where, situation);

    internal static Check Uplift(Foundation foundation, BaseLoad load, string where, string situation) =>
        Check.Of(new CheckSubject("foundation.uplift", "part of the base that lifts", where, situation), Dimension.Number, contact, w =>
        {
            double V = w.Given("V", load.N, Dimension.Force, "vertical force");
            if (V <= 0)
                return (1, 0);
            double e_x = w.Given("e_x", Math.Abs(load.mx) / V, Dimension.Length, "eccentricity"), e_y = w.Given("e_y", Math.Abs(load.my) / V, Dimension.Length, "eccentricity");
            double B_x = w.Given("B_x", foundation.WidthX.Meters, Dimension.Length), B_y = w.Given("B_y", foundation.WidthY.Meters, Dimension.Length);
            return (w.Let("u", 9 * (e_x / B_x * (e_x / B_x) + e_y / B_y * (e_y / B_y)), Dimension.Number, contact), 1);
        });

    /// <summary>Weights times their heights above the underside against the stiffness against tilt: above 1 the statue tips over by its own weight.</summary>
    internal static Check TiltStability(double weightHeight, double stiffness, string where, string situation) =>
        Check.Of(new CheckSubject("foundation.tilt-stability", "statue as an inverted pendulum on the ground", where, situation), Dimension.RotationalStiffness, tilt, w =>
            (w.Given("W_h", weightHeight, Dimension.RotationalStiffness, "sum of weight times height"), w.Given("K_r", stiffness, Dimension.RotationalStiffness, "ground against tilt, the softer way")));

    /// <summary>The ground's stiffness under the foundation by Gazetas, or on subgrade springs; null when neither modulus is given.</summary>
    /// <param name="foundation">The foundation.</param>
    public static FootingStiffness? Stiffness(Foundation foundation)
    {
        Soil soil = Valid(foundation).Soil;
        return soil.ShearModulus is { } G ? FootingStiffness.Gazetas(foundation.WidthX, foundation.WidthY, G, soil.PoissonRatio)
            : soil.SubgradeModulus is { } k ? FootingStiffness.Winkler(foundation.WidthX, foundation.WidthY, k)
            : null;
    }

    private static void Tell(Working? w, BaseLoad load)
    {
        w.Given("V", load.N, Dimension.Force, "vertical force");
        w.Given("M_y", load.mx, Dimension.Moment, "moment about y");
        w.Given("M_x", -load.my, Dimension.Moment, "moment about x");
    }

    private static BaseLoad Load(Force vertical, Force x, Force y, Torque momentX, Torque momentY) => new(
        CheckInput.Finite(vertical.Newtons, nameof(vertical)), CheckInput.Finite(x.Newtons, nameof(x)), CheckInput.Finite(y.Newtons, nameof(y)),
        CheckInput.Finite(momentY.NewtonMeters, nameof(momentY)), -CheckInput.Finite(momentX.NewtonMeters, nameof(momentX)), 0);

    private static Foundation Valid(Foundation foundation)
    {
        ArgumentNullException.ThrowIfNull(foundation);
        var v = new Validator();
        foundation.Validate(v);
        v.ThrowIfAny();
        return foundation;
    }
}
