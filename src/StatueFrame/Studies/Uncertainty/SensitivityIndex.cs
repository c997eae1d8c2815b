namespace StatueFrame.Studies;

/// <summary>How much of the variance of a number one input makes.</summary>
/// <remarks>Immutable and safe to share between threads. Errors are half the width of 95 % intervals.</remarks>
/// <param name="Input">The input.</param>
/// <param name="First">The part it makes alone, Sobol's first-order index.</param>
/// <param name="FirstError">Error of it.</param>
/// <param name="Total">The part it has a hand in, Sobol's total index.</param>
/// <param name="TotalError">Error of it.</param>
public sealed record SensitivityIndex(string Input, double First, double FirstError, double Total, double TotalError);
