namespace StatueFrame.Studies;

/// <summary>A point where a limit is just met: its utilization is 1.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Limit">Name of the limit.</param>
/// <param name="X">First input, SI.</param>
/// <param name="Y">Second input, SI.</param>
/// <param name="OkAbove">True when the limit holds for greater Y.</param>
public sealed record LimitPoint(string Limit, double X, double Y, bool OkAbove);
