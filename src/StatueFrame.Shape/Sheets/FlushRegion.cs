using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A ball in which seams are made flush, as in a face: strap behind, countersunk rivets.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Center">Its center, in the axes of the mesh.</param>
/// <param name="Radius">Its radius.</param>
public sealed record FlushRegion(Point3 Center, Length Radius);
