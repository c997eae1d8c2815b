namespace StatueFrame;

/// <summary>Sums over points of a plane, each with a weight: of 1, of x and y, and of their products.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct PlanSums(double One, double X, double Y, double XX, double YY, double XY);
