using UnitsNet;

namespace StatueFrame;

/// <summary>One height of a <see cref="TableWind"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Height">Height above ground, 0 to 2000 m.</param>
/// <param name="Speed">Gust or mean speed there, as the table says; 1 to 150 m/s.</param>
/// <param name="TurbulenceIntensity">Turbulence intensity there, 0.01 to 0.8; may be null in a table of gusts.</param>
public sealed record WindTableRow(Length Height, Speed Speed, double? TurbulenceIntensity = null);
