using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The greatest value of something that changes with time, and when it is reached.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Value">The value.</param>
/// <param name="Time">Time since the shock began.</param>
/// <typeparam name="T">What is measured.</typeparam>
public readonly record struct PeakInTime<T>(T Value, Duration Time);
