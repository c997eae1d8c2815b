namespace StatueFrame.Studies;

/// <summary>A measured number, as a frequency, a sway or a strain.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">What was measured.</param>
/// <param name="Value">Its value, SI.</param>
/// <param name="StandardError">Standard error of the measurement, above zero, SI.</param>
public sealed record Measured(string Name, double Value, double StandardError);
