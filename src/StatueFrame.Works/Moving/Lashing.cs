using StatueFrame.Checks;

namespace StatueFrame.Works;

/// <summary>Whether straps over a load keep it from sliding and from tipping.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class Lashing
{
    /// <summary>
    /// The straps needed against those there are. Sliding: n ≥ (c − μ c_z) m g f_s / (2 μ sin α S_TF) (EN 12195-1:2010, 6.2). Tipping
    /// about the lower edge: n ≥ (c h − c_z b/2) m g f_s / (b sin α S_TF), with straps that press on both upper edges, from moments.
    /// </summary>
    /// <param name="load">The load and its straps.</param>
    /// <param name="journey">How it travels.</param>
    /// <exception cref="InvalidStatueException">An input is out of range; all are named.</exception>
    public static IReadOnlyList<Check> Checks(LashedLoad load, Journey journey)
    {
        ArgumentNullException.ThrowIfNull(load);
        ArgumentNullException.ThrowIfNull(journey);
        var v = new Validator();
        load.Validate(v.At(nameof(load)));
        v.ThrowIfAny();
        var checks = new List<Check>();
        foreach (Jolt jolt in journey.Jolts)
        {
            string where = $"{load.Name}, {jolt.Direction}";
            checks.Add(Check.Of(new CheckSubject("lashing.sliding", "straps against sliding", where, journey.Name), Dimension.Number, Journey.Source, w => (Sliding(w, load, jolt), load.Straps)));
            bool side = jolt.Direction == "to the side";
            checks.Add(Check.Of(new CheckSubject("lashing.tipping", "straps against tipping", where, journey.Name), Dimension.Number, Journey.Source, w => (Tipping(w, load, jolt, side ? load.Width.Meters : load.Length.Meters), load.Straps)));
        }
        return checks;
    }

    private static double Sliding(Working? w, LashedLoad load, Jolt jolt)
    {
        (double W, double c, double c_z, double f_s, double sin, double S) = Givens(w, load, jolt);
        double mu = w.Given("mu", load.Friction, Dimension.Number, "friction of load on bed");
        return w.Let("n", Math.Max(0, (c - mu * c_z) * W * f_s / (2 * mu * sin * S)), Dimension.Number, Journey.Source);
    }

    private static double Tipping(Working? w, LashedLoad load, Jolt jolt, double base_)
    {
        (double W, double c, double c_z, double f_s, double sin, double S) = Givens(w, load, jolt);
        double h = w.Given("h", load.CenterHeight.Meters, Dimension.Length, "height of the center of gravity"), b = w.Given("b", base_, Dimension.Length, "base across the edge");
        return w.Let("n", Math.Max(0, (c * h - c_z * b / 2) * W * f_s / (b * sin * S)), Dimension.Number, Journey.Source);
    }

    private static (double W, double C, double Down, double Safety, double Sin, double Tension) Givens(Working? w, LashedLoad load, Jolt jolt)
    {
        double W = w.Given("W", load.Mass.Kilograms * SelfWeight.Gravity, Dimension.Force, "weight"), c = w.Given("c", jolt.Level, Dimension.Number, $"acceleration over g, {jolt.Direction}", Journey.Source),
            c_z = w.Given("c_z", jolt.Down, Dimension.Number, "weight that is left", Journey.Source), f_s = w.Given("f_s", jolt.Safety, Dimension.Number, "safety of friction lashing", Journey.Source),
            sin = w.Given("sin", Math.Sin(load.StrapAngle.Radians), Dimension.Number, "sine of the straps' angle"), S = w.Given("S", load.StrapTension.Newtons, Dimension.Force, "tension left in a strap, S_TF");
        return (W, c, c_z, f_s, sin, S);
    }
}
