namespace StatueFrame.Studies;

/// <summary>A stretch of the second input over which all limits hold, for one value of the first.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">First input, SI.</param>
/// <param name="From">Where it begins, SI.</param>
/// <param name="To">Where it ends, SI.</param>
public sealed record WindowInterval(double X, double From, double To);
