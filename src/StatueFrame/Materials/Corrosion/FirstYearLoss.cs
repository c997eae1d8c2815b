using UnitsNet;

namespace StatueFrame;

/// <summary>What one face of a metal loses in its first year of exposure, and how that is known.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Metal">The metal.</param>
/// <param name="Loss">The loss, zero to 5 mm.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FirstYearLoss(MetalFamily Metal, Length Loss, Source Source);
