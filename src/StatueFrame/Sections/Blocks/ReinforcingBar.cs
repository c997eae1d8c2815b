using UnitsNet;

namespace StatueFrame;

/// <summary>One vertical bar in a concrete section.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">Position along x from the section's center.</param>
/// <param name="Y">Position along y from the section's center.</param>
/// <param name="Diameter">Diameter, 4 to 100 mm.</param>
public sealed record ReinforcingBar(Length X, Length Y, Length Diameter);
