namespace StatueFrame;

/// <summary>A stretch of a mode shape between two of its nodes.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="From">Where it begins, m along the axis.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Peaks">Where its amplitude is greatest; several where that is so to rounding.</param>
internal sealed record ModeLobe(double From, double To, double[] Peaks);
