using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The design spectrum of ASCE 7-16 for vertical motion, two thirds of S_aMv, and never below half of the elastic
/// horizontal one. It is elastic.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: ASCE/SEI 7-16, 11.9.2 (11.9-1) to (11.9-4), Table 11.9-1; it covers
/// periods up to 2 s.
/// </remarks>
public sealed record Asce7VerticalSpectrum : DesignSpectrum
{
    private static readonly double[] tableS = [0.2, 0.3, 0.6, 1.0, 2.0];
    private static readonly double[] ab = [0.7, 0.8, 0.9, 0.9, 0.9], c = [0.7, 0.8, 1.0, 1.1, 1.3], def = [0.7, 0.9, 1.1, 1.3, 1.5];

    /// <summary>The horizontal spectrum of the place.</summary>
    public required Asce7Spectrum Horizontal { get; init; }

    /// <summary>Vertical coefficient C_v, 0.5 to 2; see <see cref="Coefficient"/>.</summary>
    public required double VerticalCoefficient { get; init; }

    /// <inheritdoc/>
    public override Source Source => Source.Asce7_16("11.9.2");

    /// <summary>C_v by straight-line interpolation. Source: ASCE/SEI 7-16, Table 11.9-1.</summary>
    /// <param name="shortPeriodMapped">Mapped S_S in g, zero or more.</param>
    /// <param name="siteClass">Site class A to F.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double Coefficient(double shortPeriodMapped, char siteClass)
    {
        if (!(shortPeriodMapped >= 0 && double.IsFinite(shortPeriodMapped)))
            throw new ArgumentOutOfRangeException(nameof(shortPeriodMapped), Invariant($"S_S must be zero or more, is {shortPeriodMapped}."));
        double[] row = char.ToUpperInvariant(siteClass) switch
        {
            'A' or 'B' => ab,
            'C' => c,
            'D' or 'E' or 'F' => def,
            _ => throw new ArgumentOutOfRangeException(nameof(siteClass), $"Site classes are A to F, not {siteClass}."),
        };
        return TableSpectrum.Linear(tableS, row, shortPeriodMapped);
    }

    internal override double LongestPeriod => 2;

    internal override double AtSi(double T)
    {
        double shape = T <= 0.025 ? 0.3
            : T <= 0.05 ? 20 * (T - 0.025) + 0.3
            : T <= 0.15 ? 0.8
            : 0.8 * Math.Pow(0.15 / T, 0.75);
        double horizontal = (Horizontal with { ResponseModification = null }).AtSi(T);
        return Math.Max(VerticalCoefficient * shape * Horizontal.ShortPeriod * SelfWeight.Gravity, 0.5 * horizontal);
    }

    internal override void Validate(Validator v)
    {
        v.Required(Horizontal)?.Validate(v.At(nameof(Horizontal)));
        v.InRange(VerticalCoefficient, 0.5, 2, "C_v lies from 0.7 to 1.5.");
    }
}
