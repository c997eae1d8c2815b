using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The wind force on one band of skin in one load case, factors included.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Band">Name of the band, as in "band 3" or "wing/band 2".</param>
/// <param name="Elevation">Height of its center of pressure above the statue's base.</param>
/// <param name="Along">Force along the wind.</param>
/// <param name="Across">Horizontal force across the wind, anticlockwise from it.</param>
public sealed record BandWindForce(string Band, Length Elevation, Force Along, Force Across);
