using UnitsNet;

namespace StatueFrame;

/// <summary>One point of a spectrum given as a table.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Period">Natural period, zero or more, at most 100 s.</param>
/// <param name="Acceleration">Spectral acceleration, above zero, at most 100 m/s².</param>
public sealed record SpectrumPoint(Duration Period, Acceleration Acceleration);
