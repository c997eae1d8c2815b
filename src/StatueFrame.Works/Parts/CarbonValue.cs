namespace StatueFrame.Works;

/// <summary>Embodied carbon of one family of metals.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Family">The family.</param>
/// <param name="KilogramsPerKilogram">CO₂ equivalent from cradle to gate over mass.</param>
public sealed record CarbonValue(MetalFamily Family, double KilogramsPerKilogram);
