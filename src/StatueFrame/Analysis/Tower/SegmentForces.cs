using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The forces in a tower segment, tube or lattice alike, at its two ends in one load case.</summary>
/// <remarks>
/// The segment's own weight, and wind and ice on it where no skin covers it, act between its ends, with which their forces differ.
/// Immutable and safe to share between threads.
/// </remarks>
/// <param name="Segment">The segment, as in "L3–L4" or "wing/root–W1".</param>
/// <param name="Heading">The wind's heading; null without wind.</param>
/// <param name="Bottom">At its lower level.</param>
/// <param name="Top">At its upper level.</param>
public sealed record SegmentForces(string Segment, Angle? Heading, SectionForce Bottom, SectionForce Top);
