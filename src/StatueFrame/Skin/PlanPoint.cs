using UnitsNet;

namespace StatueFrame;

/// <summary>A point in the plane across a body's axis.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">Coordinate along the body's local x.</param>
/// <param name="Y">Coordinate along the body's local y.</param>
public readonly record struct PlanPoint(Length X, Length Y);
