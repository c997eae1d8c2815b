using UnitsNet;

namespace StatueFrame;

/// <summary>A joint across the body's axis that lets the fields of skin below and above it move: there no seam ties the bands.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Elevation">Where it lies along the axis: an edge between two bands.</param>
/// <param name="Gap">Width that can close, or that its cover can bridge; zero or more, at most 1 m.</param>
public sealed record SkinJoint(Length Elevation, Length Gap)
{
    /// <summary>What must be left of the gap; zero by default.</summary>
    public Length Reserve { get; init; }
}
