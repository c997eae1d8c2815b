using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>A mode of a <see cref="FineModel"/>.</summary>
/// <param name="Number">Its number, from 1, the lowest.</param>
/// <param name="Frequency">Its frequency.</param>
/// <param name="ShareX">The part of the whole mass that moves with it along x, 0 to 1; small for a mode of single panels.</param>
/// <param name="ShareY">The same along y.</param>
public sealed record FineMode(int Number, Frequency Frequency, double ShareX, double ShareY);
