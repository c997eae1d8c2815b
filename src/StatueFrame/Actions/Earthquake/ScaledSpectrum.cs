using static System.FormattableString;

namespace StatueFrame;

/// <summary>Another spectrum times a factor, as two thirds of the horizontal one for vertical motion.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Factor">The factor, 0.01 to 10.</param>
/// <param name="Of">The spectrum that is scaled.</param>
public sealed record ScaledSpectrum(double Factor, DesignSpectrum Of) : DesignSpectrum
{
    /// <inheritdoc/>
    public override Source Source => Of.Source;

    /// <inheritdoc/>
    public override double DampingRatio => Of.DampingRatio;

    /// <inheritdoc/>
    public override double DisplacementFactor => Of.DisplacementFactor;

    internal override double LongestPeriod => Of.LongestPeriod;

    internal override IEnumerable<Assumption> Assumptions => Of.Assumptions;

    internal override IEnumerable<string> Warnings => [Invariant($"A spectrum was taken as {Factor:0.###} times that of {Of.Source}.")];

    internal override double AtSi(double T) => Factor * Of.AtSi(T);

    internal override DesignSpectrum? WithDamping(double ratio) =>
        Of.WithDamping(ratio) is { } other ? this with { Of = other } : null;

    internal override void Validate(Validator v)
    {
        v.InRange(Factor, 0.01, 10, "It is a plain factor, as in 0.67.");
        v.Required(Of)?.Validate(v.At(nameof(Of)));
    }
}
