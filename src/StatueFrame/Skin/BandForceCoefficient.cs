namespace StatueFrame;

/// <summary>The force coefficient of a single band, where it differs from the rest of the skin.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Band">Number of the band as in its name: the lowest is "band 1".</param>
/// <param name="Value">Force coefficient c_f on the projected area, 0.1 to 4.</param>
public sealed record BandForceCoefficient(int Band, double Value);
