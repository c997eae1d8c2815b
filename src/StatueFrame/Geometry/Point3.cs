using UnitsNet;

namespace StatueFrame;

/// <summary>A point in the axes of a body: of the statue (z up), or of a limb (z along the limb).</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">Coordinate along x.</param>
/// <param name="Y">Coordinate along y.</param>
/// <param name="Z">Coordinate along z.</param>
public readonly record struct Point3(Length X, Length Y, Length Z);
