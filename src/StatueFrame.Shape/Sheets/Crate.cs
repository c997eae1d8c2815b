using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Sheets that travel or are lifted together.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Number">Number, from 1.</param>
/// <param name="Sheets">The sheets' numbers.</param>
/// <param name="Mass">Their mass, packing not included.</param>
/// <param name="Center">
/// Center of gravity: of a lift in the axes of the statue; of a crate above its floor (z), the sheets lying amid it.
/// </param>
public sealed record Crate(int Number, ValueList<int> Sheets, Mass Mass, Point3 Center);
