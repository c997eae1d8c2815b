using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A plumb line of the frame hung round a model, from which points are measured.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">Short name, as "A3".</param>
/// <param name="X">Its place in plan.</param>
/// <param name="Y">Its place in plan.</param>
public sealed record ReferenceLine(string Name, Length X, Length Y);
