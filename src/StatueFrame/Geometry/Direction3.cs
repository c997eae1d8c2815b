using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>A direction in the statue's axes, as a unit vector.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public readonly record struct Direction3
{
    private readonly double x, y, z;

    private Direction3(Vector3D unit) => (x, y, z) = unit;

    /// <summary>Along x.</summary>
    public static Direction3 X { get; } = new(Vector3D.UnitX);

    /// <summary>Along y.</summary>
    public static Direction3 Y { get; } = new(Vector3D.UnitY);

    /// <summary>Upwards.</summary>
    public static Direction3 Z { get; } = new(Vector3D.UnitZ);

    /// <summary>Horizontal, towards a plan angle anticlockwise from +x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The angle is not finite.</exception>
    public static Direction3 Towards(Angle heading) => double.IsFinite(heading.Radians)
        ? new(new Vector3D(Math.Cos(heading.Radians), Math.Sin(heading.Radians), 0))
        : throw new ArgumentOutOfRangeException(nameof(heading), "An angle must be finite.");

    /// <summary>Along any vector, of any length but zero.</summary>
    /// <exception cref="ArgumentException">The vector is zero or not finite.</exception>
    public static Direction3 Along(double x, double y, double z)
    {
        double length = Math.Sqrt(x * x + y * y + z * z);
        return length > 0 && double.IsFinite(length)
            ? new(new Vector3D(x / length, y / length, z / length))
            : throw new ArgumentException(Invariant($"({x}, {y}, {z}) has no direction."), nameof(x));
    }

    /// <summary>The unit vector; the default value counts as x.</summary>
    internal Vector3D Unit => x == 0 && y == 0 && z == 0 ? Vector3D.UnitX : new Vector3D(x, y, z);

    /// <summary>The direction in words or numbers.</summary>
    public override string ToString() => this == X ? "x" : this == Y ? "y" : this == Z ? "z" : Invariant($"({x:0.###}, {y:0.###}, {z:0.###})");
}
