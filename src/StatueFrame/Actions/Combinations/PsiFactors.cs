namespace StatueFrame;

/// <summary>Combination factors of a variable action: ψ₀ combination, ψ₁ frequent, ψ₂ quasi-permanent value.</summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1990:2002+A1:2005, Table A1.1.</remarks>
/// <param name="Combination">ψ₀, 0 to 1.</param>
/// <param name="Frequent">ψ₁, 0 to 1.</param>
/// <param name="QuasiPermanent">ψ₂, 0 to 1.</param>
/// <param name="Source">Where they come from.</param>
public sealed record PsiFactors(double Combination, double Frequent, double QuasiPermanent, Source Source)
{
    /// <summary>The recommended factors of a kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <exception cref="ArgumentOutOfRangeException">The kind is unknown.</exception>
    public static PsiFactors Of(VariableKind kind)
    {
        Source buildings = Source.En1990("Table A1.1");
        return kind switch
        {
            VariableKind.Wind => new(0.6, 0.2, 0, buildings),
            VariableKind.People => new(0.7, 0.7, 0.6, buildings),
            VariableKind.Snow => new(0.5, 0.2, 0, buildings),
            VariableKind.Temperature => new(0.6, 0.5, 0, buildings),
            VariableKind.Ice => new(0.5, 0.2, 0, new Source("EN 1993-3-1:2006", "Annex C, C.6; ψ₁ and ψ₂ as for snow in EN 1990, Table A1.1")),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }
}
