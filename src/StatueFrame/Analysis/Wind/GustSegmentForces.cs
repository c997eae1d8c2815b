using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The forces in a tower segment at its two ends in gusts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Segment">The segment, as in "L3–L4" or "wing/root–W1".</param>
/// <param name="Heading">The wind's heading.</param>
/// <param name="Bottom">At its lower level.</param>
/// <param name="Top">At its upper level.</param>
public sealed record GustSegmentForces(string Segment, Angle Heading, GustSectionForce Bottom, GustSectionForce Top);
