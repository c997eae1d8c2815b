namespace StatueFrame.Analysis;

/// <summary>One standoff of the model: the placed bar and the part of the band it serves.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Bar">The bar in the statue's axes, between its two nodes.</param>
/// <param name="Share">The strip of skin it serves.</param>
/// <param name="Mass">Mass of the bar itself, kg; half of it rides on each end.</param>
internal sealed record BarModel(PlacedBar Bar, BandShare Share, double Mass);
