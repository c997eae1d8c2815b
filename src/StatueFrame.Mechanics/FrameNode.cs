namespace StatueFrame.Mechanics;

/// <summary>A point of a frame with six freedoms, some of which may be held by the ground.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Index">Number of the node in its frame, from 0.</param>
/// <param name="Position">Where it stands, m.</param>
/// <param name="Name">What messages call it, or null.</param>
/// <param name="Restrained">The freedoms that the ground holds at zero.</param>
public readonly record struct FrameNode(int Index, Vector3D Position, string? Name, Freedoms Restrained)
{
    /// <summary>The node as messages call it: its number and, when it has one, its name.</summary>
    public override string ToString() => Name is null ? $"node {Index}" : $"node {Index} '{Name}'";
}
