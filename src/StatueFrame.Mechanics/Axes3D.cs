namespace StatueFrame.Mechanics;

/// <summary>
/// A right-handed set of three unit vectors: the local axes of a member, a bar or a limb, written in global components.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">The local x axis in global components.</param>
/// <param name="Y">The local y axis in global components.</param>
/// <param name="Z">The local z axis in global components.</param>
public readonly record struct Axes3D(Vector3D X, Vector3D Y, Vector3D Z)
{
    /// <summary>The global axes themselves.</summary>
    public static Axes3D Global => new(Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ);

    /// <summary>Takes a vector from these local axes to the global ones.</summary>
    public Vector3D ToGlobal(Vector3D local) => local.X * X + local.Y * Y + local.Z * Z;

    /// <summary>Takes a vector from the global axes to these local ones.</summary>
    public Vector3D ToLocal(Vector3D global) => new(X.Dot(global), Y.Dot(global), Z.Dot(global));

    /// <summary>
    /// Axes of a member that runs along <paramref name="direction"/>: local x runs along the member, local z lies in the
    /// plane of the member and <paramref name="up"/>, on the side of <paramref name="up"/>, and y completes the
    /// right-handed set. When <paramref name="up"/> is parallel to the member (within 1e-6), global x is used instead,
    /// and global y when that is parallel too.
    /// </summary>
    /// <param name="direction">Along the member; need not have length 1, must not be zero.</param>
    /// <param name="up">The side on which local z lies.</param>
    public static Axes3D Along(Vector3D direction, Vector3D up)
    {
        Vector3D x = direction.Normalized();
        Vector3D y = Perpendicular(up, x);
        return new Axes3D(x, y, x.Cross(y));

        static Vector3D Perpendicular(Vector3D up, Vector3D x)
        {
            foreach (Vector3D candidate in (ReadOnlySpan<Vector3D>)[up, Vector3D.UnitX, Vector3D.UnitY])
            {
                Vector3D y = candidate.Cross(x);
                if (y.Length > 1e-6 * candidate.Length)
                    return y.Normalized();
            }
            throw new ArgumentException("The direction of a member must not be zero.", nameof(direction));
        }
    }

    /// <summary>The same axes turned about local x by <paramref name="angle"/> radians, right-handed.</summary>
    public Axes3D Rolled(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new Axes3D(X, cos * Y + sin * Z, cos * Z - sin * Y);
    }
}
