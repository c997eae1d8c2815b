namespace StatueFrame.Checks;

/// <summary>Bearing strength under base plates. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class PlateBearing
{
    private static readonly Source en = new("EN 1993-1-8:2005 6.2.5 (7), EN 1992-1-1:2004 6.7 (6.63)", "β_j = 2/3, spread at most 3");
    private static readonly Source masonry = new("EN 1996-1-1:2005", "6.1.3, without enhancement");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J8, ϕ = 0.65; ACI 318-19, 14.5.6");
    private static readonly Source spread = new("EN 1993-1-8:2005", "6.2.5 (4), (6.5)");

    /// <summary>Design bearing strength, Pa.</summary>
    /// <param name="w">Listener.</param>
    /// <param name="block">What the plate stands on.</param>
    /// <param name="ratio">√(A_c1/A_c0): how much wider the like area below may be, 1 to 3.</param>
    /// <param name="design">Rules.</param>
    public static double Strength(Working? w, BlockMaterial block, double ratio, BaseDesign design)
    {
        double f_k = w.Given("f_k", block.f_k, Dimension.Stress, $"strength of {block.Name}", block.Source);
        if (block is not Concrete concrete)
        {
            double gamma_M = w.Given("gamma_M", block.Gamma, Dimension.Number);
            return w.Let("f_d", f_k / gamma_M, Dimension.Stress, masonry);
        }
        w.Given(ratio, Dimension.Number, "√(A_c1/A_c0), what spreads in the block");
        if (design.IsAmerican)
        {
            double phi = w.Given("phi", 0.65, Dimension.Number, "", aisc);
            return w.Let("f_p", phi * 0.85 * f_k * Math.Min(2, ratio), Dimension.Stress, aisc);
        }
        double gamma_C = w.Given("gamma_C", concrete.PartialFactor, Dimension.Number);
        return w.Let("f_jd", 2.0 / 3 * Math.Min(3, ratio) * f_k / gamma_C, Dimension.Stress, en);
    }

    /// <summary>Width c beyond what stands on the plate that still bears, m.</summary>
    public static double Spread(Working? w, double t, double f_y, double f_jd, double gammaM0)
    {
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(f_y, Dimension.Stress, "yield strength of the plate");
        w.Given(gammaM0, Dimension.Number);
        return w.Let("c", t * Math.Sqrt(f_y / (3 * f_jd * gammaM0)), Dimension.SmallLength, spread);
    }

    /// <summary>How many times wider an area like the plate and with its center can be within the block, to its depth and to half the way to other plates; 1 to 3.</summary>
    public static double SpreadRatio(BasePlate plate, IEnumerable<BasePlate> all, BlockSection block, double depth)
    {
        double hx = 0.5 * plate.WidthX.Meters, hy = 0.5 * plate.WidthY.Meters, x = Math.Abs(plate.X.Meters), y = Math.Abs(plate.Y.Meters);
        (double wx, double wy) = block.Widths;
        double s = Math.Min(3, 1 + depth / (2 * Math.Max(hx, hy)));
        if (block.IsRound)
        {
            // (x + s hx)² + (y + s hy)² = R²
            double a = hx * hx + hy * hy, b = x * hx + y * hy, c = x * x + y * y - wx * wx / 4;
            s = Math.Min(s, c >= 0 ? 0 : (Math.Sqrt(b * b - a * c) - b) / a);
        }
        else
        {
            s = Math.Min(s, Math.Min((wx / 2 - x) / hx, (wy / 2 - y) / hy));
        }
        foreach (BasePlate other in all)
        {
            double dx = Math.Abs(other.X.Meters - plate.X.Meters), dy = Math.Abs(other.Y.Meters - plate.Y.Meters);
            if (dx > 0 || dy > 0)
                s = Math.Min(s, Math.Max(dx / (2 * hx), dy / (2 * hy)));
        }
        return Math.Max(1, s);
    }
}
