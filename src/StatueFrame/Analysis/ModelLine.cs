using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>A line in space of a <see cref="LineModel"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Kind">What it stands for.</param>
/// <param name="Part">The segment, band or ring it belongs to, as in "L3–L4" or "wing/band 2".</param>
/// <param name="Points">Its vertices in the statue's axes, m.</param>
public sealed record ModelLine(LineKind Kind, string Part, ValueList<Vector3D> Points);
