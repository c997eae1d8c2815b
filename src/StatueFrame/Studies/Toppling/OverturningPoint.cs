using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A point of an overturning spectrum.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="PulseDuration">How long the pulse lasts.</param>
/// <param name="Uplift">The peak at which an edge starts to lift.</param>
/// <param name="Overturning">The least peak that topples the block; null when none up to the greatest looked at does.</param>
public sealed record OverturningPoint(Duration PulseDuration, Acceleration Uplift, Acceleration? Overturning);
