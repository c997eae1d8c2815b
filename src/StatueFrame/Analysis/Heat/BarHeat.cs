using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>What heat would do to the skin end of one bar, relative to where its tower end carries it, if the bar did not resist; the statue's axes, m and rad.</summary>
/// <param name="Move">On a rigid ring: from the ring's center, which is free to move.</param>
/// <param name="Turn">The turn that goes with it, by a ring and a tower that bend.</param>
/// <param name="Alone">For the bar alone: the point of skin moves all it would, its field of skin in balance along the axis.</param>
internal readonly record struct BarHeat(Vector3D Move, Vector3D Turn, Vector3D Alone);
