using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// What a standoff, or a whole ring of them, opposes to a movement of the skin while the tower stays where it is: a symmetric
/// 6×6 of three translations and three rotations. Brackets, fixities and sliding saddles are in it.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A straight radial bar held rigidly at both ends has E A/L along itself and
/// 12 E I/L³ across; a ring of n such bars has n/2 (E A/L + 12 E I/L³) in every direction of its plane.
/// </remarks>
public sealed record SupportStiffness
{
    private readonly double[] matrix;

    internal SupportStiffness(string where, double[] matrix) => (Where, this.matrix) = (where, matrix);

    /// <summary>The bar, as in "band 3, bar 2", or the band that the ring carries.</summary>
    public string Where { get; }

    /// <summary>The matrix, row by row: N/m, N and N·m for movements in m and rad.</summary>
    public ReadOnlySpan<double> Matrix => matrix;

    /// <summary>Force along x for a movement along x; of a bar, along the bar.</summary>
    public ForcePerLength X => ForcePerLength.FromNewtonsPerMeter(matrix[0]);

    /// <summary>Force along y for a movement along y; of a bar, along its thickness.</summary>
    public ForcePerLength Y => ForcePerLength.FromNewtonsPerMeter(matrix[7]);

    /// <summary>Force along z for a movement along z; of a bar, along its width.</summary>
    public ForcePerLength Z => ForcePerLength.FromNewtonsPerMeter(matrix[14]);

    /// <summary>Moment about x for a turn about x; of a bar, its twist.</summary>
    public RotationalStiffness RotationX => RotationalStiffness.FromNewtonMetersPerRadian(matrix[21]);

    /// <summary>Moment about y for a turn about y.</summary>
    public RotationalStiffness RotationY => RotationalStiffness.FromNewtonMetersPerRadian(matrix[28]);

    /// <summary>Moment about z for a turn about z.</summary>
    public RotationalStiffness RotationZ => RotationalStiffness.FromNewtonMetersPerRadian(matrix[35]);

    /// <summary>Where it is and its three translations on one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{Where}: x {1e-3 * matrix[0]:g4}, y {1e-3 * matrix[7]:g4}, z {1e-3 * matrix[14]:g4} kN/m");

    /// <summary>Two are equal when they say the same.</summary>
    public bool Equals(SupportStiffness? other) => other is not null && Where == other.Where && matrix.AsSpan().SequenceEqual(other.matrix);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Where, matrix[0]);
}
