namespace StatueFrame.Analysis;

/// <summary>A wind that shakes the statue: vortices that come in step with a mode, or gusts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Still">What acts steadily meanwhile, with the mean of that wind.</param>
/// <param name="Peaks">The peaks of what it shakes.</param>
/// <param name="Factor">Factor on them, zero or more.</param>
/// <param name="What">What shakes, in words, as in "vortices in mode 2".</param>
internal sealed record ShakingWind(Situation Still, DynamicPeaks Peaks, double Factor, string What);
