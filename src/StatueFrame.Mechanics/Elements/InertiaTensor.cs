namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// The inertia of a body against rotation about a point, as a symmetric tensor in global axes, kg·m². The off-diagonal
/// entries are those of the tensor: I_xy = −∫x y dm.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="XX">∫(y² + z²) dm.</param>
/// <param name="YY">∫(x² + z²) dm.</param>
/// <param name="ZZ">∫(x² + y²) dm.</param>
/// <param name="XY">−∫x y dm.</param>
/// <param name="XZ">−∫x z dm.</param>
/// <param name="YZ">−∫y z dm.</param>
public readonly record struct InertiaTensor(double XX, double YY, double ZZ, double XY = 0, double XZ = 0, double YZ = 0)
{
    /// <summary>The inertia about the origin of a mass point at <paramref name="position"/>.</summary>
    public static InertiaTensor OfPoint(double mass, Vector3D position)
    {
        (double x, double y, double z) = position;
        return new InertiaTensor(
            mass * (y * y + z * z), mass * (x * x + z * z), mass * (x * x + y * y), -mass * x * y, -mass * x * z, -mass * y * z);
    }

    /// <summary>
    /// The inertia about another point, from that about the centroid (parallel-axis theorem).
    /// </summary>
    /// <param name="mass">Mass of the body, kg.</param>
    /// <param name="offset">From the other point to the centroid, or the reverse, m.</param>
    public InertiaTensor MovedFromCentroid(double mass, Vector3D offset) => this + OfPoint(mass, offset);

    /// <summary>The tensor in global axes, when this one is given in local <paramref name="axes"/>.</summary>
    /// <param name="axes">The local axes in global components.</param>
    public InertiaTensor ToGlobal(Axes3D axes)
    {
        Vector3D x = axes.ToLocal(Vector3D.UnitX), y = axes.ToLocal(Vector3D.UnitY), z = axes.ToLocal(Vector3D.UnitZ);
        Vector3D ofX = Times(x), ofY = Times(y), ofZ = Times(z);
        return new InertiaTensor(x.Dot(ofX), y.Dot(ofY), z.Dot(ofZ), x.Dot(ofY), x.Dot(ofZ), y.Dot(ofZ));
    }

    /// <summary>The inertia of two bodies about their common point.</summary>
    public static InertiaTensor operator +(InertiaTensor a, InertiaTensor b) =>
        new(a.XX + b.XX, a.YY + b.YY, a.ZZ + b.ZZ, a.XY + b.XY, a.XZ + b.XZ, a.YZ + b.YZ);

    /// <summary>Writes the 3×3 matrix, row-major.</summary>
    internal void CopyTo(Span<double> m)
    {
        (m[0], m[1], m[2]) = (XX, XY, XZ);
        (m[3], m[4], m[5]) = (XY, YY, YZ);
        (m[6], m[7], m[8]) = (XZ, YZ, ZZ);
    }

    private Vector3D Times(Vector3D axis) => new(
        XX * axis.X + XY * axis.Y + XZ * axis.Z,
        XY * axis.X + YY * axis.Y + YZ * axis.Z,
        XZ * axis.X + YZ * axis.Y + ZZ * axis.Z);
}
