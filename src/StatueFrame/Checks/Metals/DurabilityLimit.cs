using UnitsNet;

namespace StatueFrame;

/// <summary>How long the metal must last, and how much of its thickness may go.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record DurabilityLimit
{
    internal const double DefaultLossFraction = 0.1;

    /// <summary>The age the statue is to reach, in years of 365 days; above zero, at most 1000 years.</summary>
    public required Duration DesignLife { get; init; }

    /// <summary>The greatest loss over the thickness described, 0.001 to 0.9; null takes 0.1, which the sheet lists as assumed.</summary>
    public double? GreatestLossFraction { get; init; }

    internal double LossFractionInUse => GreatestLossFraction ?? DefaultLossFraction;

    internal void Validate(Validator v)
    {
        v.Positive(DesignLife, DesignLife.Seconds, 86_400, Atmosphere.LongestExposure);
        if (GreatestLossFraction is { } fraction)
            v.InRange(fraction, 0.001, 0.9, "It is the loss over the thickness, near 0.1.", nameof(GreatestLossFraction));
    }
}
