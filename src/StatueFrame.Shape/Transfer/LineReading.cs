using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The level distance of a point from a plumb line, read twice, the second time afresh.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">Name of the point.</param>
/// <param name="Line">Name of the line.</param>
/// <param name="First">First reading, at least 1 mm.</param>
/// <param name="Second">Second reading, at least 1 mm.</param>
public sealed record LineReading(string Point, string Line, Length First, Length Second);
