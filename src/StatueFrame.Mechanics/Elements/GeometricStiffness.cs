namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// Adds to <paramref name="kg"/> (12×12, row-major) the geometric stiffness under the state of stress that the
/// displacements <paramref name="u"/> (12 values, global axes) cause. Must be safe to call from many threads.
/// </summary>
public delegate void GeometricStiffness(ReadOnlySpan<double> u, Span<double> kg);
