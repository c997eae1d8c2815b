using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The height of a point above the frame's datum, read twice, the second time afresh.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">Name of the point.</param>
/// <param name="First">First reading.</param>
/// <param name="Second">Second reading.</param>
public sealed record HeightReading(string Point, Length First, Length Second);
