using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The two-period design response spectrum of ASCE 7 for horizontal motion; with a response modification coefficient the
/// forces are reduced by R/I_e. A multi-period spectrum is a <see cref="TableSpectrum"/>.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Sources: ASCE/SEI 7-22, 11.4.5.2; ASCE/SEI 7-16, 11.4.6 (the same
/// formulas); 12.9.1.2 for R, C_d and I_e. The scaling of 12.9.1.4 to the equivalent lateral force is not done.
/// </remarks>
public sealed record Asce7Spectrum : DesignSpectrum
{
    /// <summary>Design spectral acceleration at short periods S_DS, in g, 0.01 to 5.</summary>
    public required double ShortPeriod { get; init; }

    /// <summary>Design spectral acceleration at a period of one second S_D1, in g, 0.005 to 5.</summary>
    public required double OneSecond { get; init; }

    /// <summary>Long-period transition period T_L, s; 1 to 30.</summary>
    public required double LongTransition { get; init; }

    /// <summary>Response modification coefficient R, 1 to 8; null for the elastic spectrum.</summary>
    public double? ResponseModification { get; init; }

    /// <summary>Deflection amplification C_d, 1 to 8; null takes R.</summary>
    public double? DeflectionAmplification { get; init; }

    /// <summary>Importance factor I_e, 1 to 1.5; it divides R.</summary>
    public double ImportanceFactor { get; init; } = 1;

    /// <summary>T_0 = 0.2 S_D1/S_DS, s.</summary>
    public double T0 => 0.2 * TS;

    /// <summary>T_S = S_D1/S_DS, s.</summary>
    public double TS => OneSecond / ShortPeriod;

    /// <inheritdoc/>
    public override Source Source => Source.Asce7_22("11.4.5.2, two-period spectrum");

    /// <summary>C_d/I_e for a reduced spectrum, else 1. Source: ASCE/SEI 7-22, 12.9.1.2.</summary>
    public override double DisplacementFactor =>
        ResponseModification is { } R ? (DeflectionAmplification ?? R) / ImportanceFactor : 1;

    internal override IEnumerable<Assumption> Assumptions => ResponseModification is { } R && DeflectionAmplification is null
        ? [new Assumption("deflection amplification C_d", Invariant($"{R}, that of R"), Source.Assumed("earthquake"))]
        : [];

    internal override IEnumerable<string> Warnings => ResponseModification is null
        ? []
        : ["Forces by ASCE 7 are not scaled to the base shear of the equivalent lateral force procedure (ASCE/SEI 7-22, 12.9.1.4)."];

    internal override double AtSi(double T)
    {
        double S_a = T < T0 ? ShortPeriod * (0.4 + 0.6 * T / T0)
            : T <= TS ? ShortPeriod
            : T <= LongTransition ? OneSecond / T
            : OneSecond * LongTransition / (T * T);
        return S_a * SelfWeight.Gravity / (ResponseModification is { } R ? R / ImportanceFactor : 1);
    }

    internal override void Validate(Validator v)
    {
        v.InRange(ShortPeriod, 0.01, 5, "S_DS is a multiple of g, near 0.1 to 2.");
        v.InRange(OneSecond, 0.005, 5, "S_D1 is a multiple of g, near 0.05 to 1.");
        v.InRange(LongTransition, 1, 30, "T_L is 4 to 16 s.");
        v.InRange(ImportanceFactor, 1, 1.5, "I_e is 1, 1.25 or 1.5.");
        if (ResponseModification is { } R)
            v.InRange(R, 1, 8, "R lies from 1.25 to 8.", nameof(ResponseModification));
        if (DeflectionAmplification is { } C_d)
            v.InRange(C_d, 1, 8, "C_d lies from 1.25 to 6.5.", nameof(DeflectionAmplification));
        if (TS > LongTransition)
            v.Add(nameof(OneSecond), Invariant($"makes S_D1/S_DS = {TS:0.###} s, which is above T_L"), "Is S_D1 in g, and are the two not swapped?");
        v.InRange(DampingRatio, 0.05, 0.05, "The spectrum of ASCE 7 holds for 0.05.");
    }
}
