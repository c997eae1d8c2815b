using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of a statue in an earthquake that acts with its weight.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Peaks of an earthquake have no sign and do not come at one time; adding them
/// to each other and to what else acts is on the safe side.
/// </remarks>
internal static class EarthquakeChecks
{
    private static readonly Source Tipping = Source.Assumed("earthquake: the weight on half the base resists");
    private static readonly Source Sliding = Source.Assumed("earthquake: friction of the weight resists");

    /// <summary>The sway of a point, displacement factor included, against its limit.</summary>
    /// <param name="movement">The point's movement in the earthquake.</param>
    /// <param name="factor">Factor on the earthquake.</param>
    /// <param name="staticSway">The greatest sway of what else acts.</param>
    /// <param name="isOnLimb">Whether the point moves with a limb: then up and down counts too, at the same time.</param>
    /// <param name="limit">The limit for the point.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Sway(EarthquakeMovement movement, double factor, Length staticSway, bool isOnLimb, SwayLimit limit, string situation)
    {
        var subject = new CheckSubject("earthquake.sway", "sway at a named point in an earthquake", movement.Point, situation);
        return Check.Of(subject, Dimension.SmallLength, limit.Source, w =>
        {
            double delta_0 = w.Given("delta_0", staticSway.Meters, Dimension.SmallLength, "without the earthquake");
            double delta_E = w.Given("delta_E", movement.Sway.Meters, Dimension.SmallLength, "peak in the earthquake, with its displacement factor");
            if (isOnLimb)
            {
                double delta_z = w.Given("delta_z", movement.Z.Meters, Dimension.SmallLength, "peak up and down, with its displacement factor");
                delta_E = w.Let("delta_E", Math.Sqrt(delta_E * delta_E + delta_z * delta_z), Dimension.SmallLength, meaning: "both at one time");
            }
            double gamma = w.Given("gamma", Math.Abs(factor), Dimension.Number, "factor on the earthquake");
            return (w.Let("delta", delta_0 + gamma * delta_E, Dimension.SmallLength, meaning: "sway"), limit.Limit.Meters);
        });
    }

    /// <summary>The moment that tips the statue over an edge of its base against that of its weight.</summary>
    /// <param name="moment">Peak moment of the earthquake, factor included.</param>
    /// <param name="staticMoment">Moment of what else acts about the base's center, without sign.</param>
    /// <param name="weight">Vertical force on the base without the earthquake, downwards positive.</param>
    /// <param name="lift">Peak vertical force of the earthquake, factor included.</param>
    /// <param name="halfWidth">From the base's center to the edge.</param>
    /// <param name="edge">What edge that is, in words.</param>
    /// <param name="axis">The direction of tipping, as in "along x".</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Overturning(Torque moment, Torque staticMoment, Force weight, Force lift, Length halfWidth, string edge, string axis, string situation)
    {
        return Check.Of(OverturningSubject(axis, situation), Dimension.Moment, Tipping, w =>
        {
            double M_E = w.Given("M_E", moment.NewtonMeters, Dimension.Moment, "peak in the earthquake");
            double M_0 = w.Given("M_0", staticMoment.NewtonMeters, Dimension.Moment, "without the earthquake");
            double N_0 = w.Given("N_0", weight.Newtons, Dimension.Force, "downwards, without the earthquake");
            double N_E = w.Given("N_E", lift.Newtons, Dimension.Force, "peak in the earthquake, taken upwards");
            double b = w.Given("b", halfWidth.Meters, Dimension.Length, $"from the base's center to {edge}");
            double M = w.Let("M", M_E + M_0, Dimension.Moment);
            return (M, w.Let("M_resist", (N_0 - N_E) * b, Dimension.Moment));
        });
    }

    /// <summary>The base shear against the friction of the weight.</summary>
    /// <param name="shear">Peak base shear of the earthquake, factor included.</param>
    /// <param name="staticShear">Base shear of what else acts.</param>
    /// <param name="weight">Vertical force on the base without the earthquake, downwards positive.</param>
    /// <param name="lift">Peak vertical force of the earthquake, factor included.</param>
    /// <param name="friction">Coefficient of friction.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Slip(Force shear, Force staticShear, Force weight, Force lift, double friction, string situation)
    {
        return Check.Of(SlipSubject(situation), Dimension.Force, Sliding, w =>
        {
            double V_E = w.Given("V_E", shear.Newtons, Dimension.Force, "peak in the earthquake");
            double V_0 = w.Given("V_0", staticShear.Newtons, Dimension.Force, "without the earthquake");
            double N_0 = w.Given("N_0", weight.Newtons, Dimension.Force, "downwards, without the earthquake");
            double N_E = w.Given("N_E", lift.Newtons, Dimension.Force, "peak in the earthquake, taken upwards");
            double mu = w.Given("mu", friction, Dimension.Number, "friction");
            double V = w.Let("V", V_E + V_0, Dimension.Force);
            return (V, w.Let("V_resist", mu * (N_0 - N_E), Dimension.Force));
        });
    }

    internal static CheckSubject OverturningSubject(string axis, string situation) =>
        new("earthquake.overturning", "overturning on the base by weight alone", axis, situation);

    internal static CheckSubject SlipSubject(string situation) =>
        new("earthquake.sliding", "sliding on the base by weight alone", Situation: situation);

    internal static Check OverturningNotChecked(string axis, string situation) => Check.NotChecked(
        OverturningSubject(axis, situation), Invariant($"the base's half-width {axis} is not known; set Criteria.Earthquake, or give the tower's first level a plan"), Tipping);

    internal static Check SlipNotChecked(string situation) =>
        Check.NotChecked(SlipSubject(situation), "the friction below the base is not given; set Criteria.Earthquake", Sliding);
}
