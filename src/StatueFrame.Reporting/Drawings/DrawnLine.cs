using StatueFrame.Mechanics;

namespace StatueFrame.Reporting;

/// <summary>A run of straight lines of a <see cref="Drawing"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Layer">What it shows.</param>
/// <param name="Points">Its corners in true size, m; z plays no part.</param>
/// <param name="Closed">Whether it goes back to where it began.</param>
public sealed record DrawnLine(DrawnLayer Layer, ValueList<Vector3D> Points, bool Closed = false);
