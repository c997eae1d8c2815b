using UnitsNet;

namespace StatueFrame;

/// <summary>One height of a <see cref="TableWind"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Height">Height above ground.</param>
/// <param name="Speed">Gust or mean speed there, as the table says.</param>
/// <param name="TurbulenceIntensity">Turbulence intensity there; may be null in a table of gusts.</param>
public sealed record WindTableRow(Length Height, Speed Speed, double? TurbulenceIntensity = null);
