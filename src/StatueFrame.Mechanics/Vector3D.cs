namespace StatueFrame.Mechanics;

/// <summary>A vector in space: a position in meters, a force in newtons or a rotation in radians, as the context says.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">Component along x.</param>
/// <param name="Y">Component along y.</param>
/// <param name="Z">Component along z.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>The zero vector.</summary>
    public static Vector3D Zero => default;

    /// <summary>The unit vector along x.</summary>
    public static Vector3D UnitX => new(1, 0, 0);

    /// <summary>The unit vector along y.</summary>
    public static Vector3D UnitY => new(0, 1, 0);

    /// <summary>The unit vector along z.</summary>
    public static Vector3D UnitZ => new(0, 0, 1);

    /// <summary>The Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>True when no component is infinite or not a number.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    /// <summary>The scalar product with <paramref name="other"/>.</summary>
    public double Dot(Vector3D other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>The vector product with <paramref name="other"/>, right-handed.</summary>
    public Vector3D Cross(Vector3D other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>The vector of length 1 in the same direction; not a number when the length is zero.</summary>
    public Vector3D Normalized() => this / Length;

    /// <summary>The sum of two vectors.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The difference of two vectors.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite vector.</summary>
    public static Vector3D operator -(Vector3D a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>The vector scaled by <paramref name="s"/>.</summary>
    public static Vector3D operator *(double s, Vector3D a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>The vector scaled by <paramref name="s"/>.</summary>
    public static Vector3D operator *(Vector3D a, double s) => s * a;

    /// <summary>The vector divided by <paramref name="s"/>.</summary>
    public static Vector3D operator /(Vector3D a, double s) => new(a.X / s, a.Y / s, a.Z / s);
}
