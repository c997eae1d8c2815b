namespace StatueFrame.Checks;

/// <summary>The stress range at a fatigue detail of a bar whose end forces change by a given amount. SI units.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Nominal stresses of the worse end, magnitudes added, which is exact at the
/// corner where the signs agree: normal stress, or in shear that of torsion and transverse force. Throat stresses are
/// σ = √(q_n² + q_t²)/a and τ = q_p/a of the welds as lines. Source: EN 1993-1-9:2005, 5 (6) and 6.
/// </remarks>
internal static class FatigueStress
{
    /// <summary>The range; null when the detail needs welds that are not described.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="forces">Change of its end forces (12 values, bar axes).</param>
    /// <param name="detail">The detail.</param>
    public static double? Range(PlacedBar bar, ReadOnlySpan<double> forces, DetailCategory detail)
    {
        Standoff standoff = bar.Place.Standoff;
        double b = standoff.Section.Width.Meters, t = standoff.Section.Thickness.Meters;
        if (detail.On == FatigueSection.Throat)
        {
            double? tower = OnThroat(forces[..6], t, b, standoff.TowerFixing as WeldedFixing, detail.IsShear);
            double? skin = OnThroat(forces[6..], t, b, standoff.SkinFixing as WeldedFixing, detail.IsShear);
            return tower is null && skin is null ? null : Math.Max(tower ?? 0, skin ?? 0);
        }
        if (detail.IsShear)
            return Math.Abs(forces[9]) / standoff.Rectangle.TorsionW + 1.5 * Math.Sqrt(forces[7] * forces[7] + forces[8] * forces[8]) / (b * t);
        return Math.Max(
            Normal(forces[..6], b, t, detail.On == FatigueSection.Net ? standoff.TowerFixing as BoltedFixing : null),
            Normal(forces[6..], b, t, detail.On == FatigueSection.Net ? standoff.SkinFixing as BoltedFixing : null));
    }

    private static double Normal(ReadOnlySpan<double> end, double b, double t, BoltedFixing? holes)
    {
        double width = b - (holes?.HoleWidth ?? 0), I_strong = t * b * b * b / 12 - (holes?.HoleInertia(t) ?? 0);
        return Math.Abs(end[0]) / (width * t) + Math.Abs(end[5]) / (width * t * t / 6) + Math.Abs(end[4]) / (I_strong / (b / 2));
    }

    private static double? OnThroat(ReadOnlySpan<double> end, double t, double b, WeldedFixing? welds, bool inShear)
    {
        if (welds is null)
            return null;
        double a = welds.Throat.Meters, l = welds.Run(b), J = l * l * l / 6 + l * t * t / 2;
        double q_n = Math.Abs(end[0]) / (2 * l) + Math.Abs(end[5]) / (t * l) + 3 * Math.Abs(end[4]) / (l * l);
        double q_p = Math.Abs(end[2]) / (2 * l) + Math.Abs(end[3]) * (t / 2) / J;
        double q_t = Math.Abs(end[1]) / (2 * l) + Math.Abs(end[3]) * (l / 2) / J;
        return inShear ? q_p / a : Math.Sqrt(q_n * q_n + q_t * q_t) / a;
    }
}
