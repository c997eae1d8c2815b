namespace StatueFrame;

/// <summary>The force coefficients by heading of a single band, where they differ from the rest of the skin.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Band">Number of the band as in its name: the lowest is "band 1".</param>
/// <param name="Table">Its coefficients, by heading in the statue's axes.</param>
public sealed record BandCoefficientTable(int Band, ForceCoefficientTable Table);
