namespace StatueFrame.Checks;

/// <summary>
/// A flexural buckling curve: the reduction χ of a strut's strength over its slenderness, with the imperfection factor
/// α and the length λ̄₀ of the plateau.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">As in "c".</param>
/// <param name="Alpha">Imperfection factor α, 0 to 2.</param>
/// <param name="Plateau">Slenderness λ̄₀ up to which χ = 1, 0 to 1.</param>
/// <param name="Source">Where the values come from.</param>
public sealed record BucklingCurve(string Name, double Alpha, double Plateau, Source Source)
{
    private static readonly Source steel = Source.En1993_1_1("Table 6.1");

    /// <summary>Curve a0, α = 0.13.</summary>
    public static BucklingCurve A0 { get; } = new("a0", 0.13, 0.2, steel);

    /// <summary>Curve a, α = 0.21.</summary>
    public static BucklingCurve A { get; } = new("a", 0.21, 0.2, steel);

    /// <summary>Curve b, α = 0.34.</summary>
    public static BucklingCurve B { get; } = new("b", 0.34, 0.2, steel);

    /// <summary>Curve c, α = 0.49: solid sections (Table 6.2).</summary>
    public static BucklingCurve C { get; } = new("c", 0.49, 0.2, steel);

    /// <summary>Curve d, α = 0.76.</summary>
    public static BucklingCurve D { get; } = new("d", 0.76, 0.2, steel);

    /// <summary>
    /// Stainless flats: α = 0.76, λ̄₀ = 0.2. EN 1993-1-4 has no row for solid bars; this is its most cautious row, that of
    /// welded open sections about the minor axis.
    /// </summary>
    public static BucklingCurve StainlessFlat { get; } =
        new("stainless flat", 0.76, 0.2, new Source("EN 1993-1-4:2006", "Table 5.3, values from memory; no row for solid bars, the most cautious taken"));

    /// <summary>The reduction factor χ, from 0 to 1.</summary>
    /// <param name="slenderness">λ̄, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The slenderness is negative or not finite, or the curve's values are out of range.</exception>
    public double Reduction(double slenderness)
    {
        CheckInput.Within(Alpha, 0, 2, nameof(Alpha));
        CheckInput.Within(Plateau, 0, 1, nameof(Plateau));
        return Reduction(null, CheckInput.NotNegative(slenderness, nameof(slenderness)));
    }

    /// <summary>χ by EN 1993-1-1, (6.49).</summary>
    internal double Reduction(Working? w, double lambda)
    {
        double alpha = w.Given("alpha", Alpha, Dimension.Number, "imperfection factor", Source);
        double lambda_0 = w.Given("lambda_0", Plateau, Dimension.Number, "plateau", Source);
        if (lambda <= lambda_0)
            return w.Given("chi", 1, Dimension.Number, "stocky: no reduction");
        double phi = w.Let("phi", 0.5 * (1 + alpha * (lambda - lambda_0) + lambda * lambda), Dimension.Number, reduction);
        return w.Let("chi", Math.Min(1, 1 / (phi + Math.Sqrt(phi * phi - lambda * lambda))), Dimension.Number, reduction);
    }

    private static readonly Source reduction = Source.En1993_1_1("6.3.1.2, (6.49)");
}
