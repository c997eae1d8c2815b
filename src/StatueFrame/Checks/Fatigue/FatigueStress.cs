using StatueFrame.Analysis;

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
    /// <param name="ends">Change of what acts on its ends.</param>
    /// <param name="detail">The detail.</param>
    public static double? Range(PlacedBar bar, in BarEnds ends, DetailCategory detail)
    {
        Standoff standoff = bar.Place.Standoff;
        double b = standoff.Section.Width.Meters, t = standoff.Section.Thickness.Meters;
        if (detail.On == FatigueSection.Throat)
        {
            double? tower = OnThroat(ends.Tower, t, b, standoff.TowerFixing as WeldedFixing, detail.IsShear);
            double? skin = OnThroat(ends.Skin, t, b, standoff.SkinFixing as WeldedFixing, detail.IsShear);
            return tower is null && skin is null ? null : Math.Max(tower ?? 0, skin ?? 0);
        }
        if (detail.IsShear)
            return Math.Abs(ends.Skin.T) / standoff.Rectangle.TorsionW + 1.5 * Math.Sqrt(ends.Skin.AlongThickness * ends.Skin.AlongThickness + ends.Skin.AlongWidth * ends.Skin.AlongWidth) / (b * t);
        return Math.Max(
            Normal(ends.Tower, b, t, detail.On == FatigueSection.Net ? standoff.TowerFixing as BoltedFixing : null),
            Normal(ends.Skin, b, t, detail.On == FatigueSection.Net ? standoff.SkinFixing as BoltedFixing : null));
    }

    private static double Normal(in FlatForces end, double b, double t, BoltedFixing? holes)
    {
        double width = b - (holes?.HoleWidth ?? 0), I_strong = t * b * b * b / 12 - (holes?.HoleInertia(t) ?? 0);
        return Math.Abs(end.N) / (width * t) + Math.Abs(end.Weak) / (width * t * t / 6) + Math.Abs(end.Strong) / (I_strong / (b / 2));
    }

    private static double? OnThroat(in FlatForces end, double t, double b, WeldedFixing? welds, bool inShear)
    {
        if (welds is null)
            return null;
        double a = welds.Throat.Meters, l = welds.Run(b), J = l * l * l / 6 + l * t * t / 2;
        double q_n = Math.Abs(end.N) / (2 * l) + Math.Abs(end.Weak) / (t * l) + 3 * Math.Abs(end.Strong) / (l * l);
        double q_p = Math.Abs(end.AlongWidth) / (2 * l) + Math.Abs(end.T) * (t / 2) / J;
        double q_t = Math.Abs(end.AlongThickness) / (2 * l) + Math.Abs(end.T) * (l / 2) / J;
        return inShear ? q_p / a : Math.Sqrt(q_n * q_n + q_t * q_t) / a;
    }
}
