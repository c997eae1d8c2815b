using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>A position, in the axes that the context names; each coordinate from −1000 to 1000 m.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="X">Coordinate along x.</param>
/// <param name="Y">Coordinate along y.</param>
/// <param name="Z">Coordinate along z.</param>
public readonly record struct Point3(Length X, Length Y, Length Z)
{
    /// <summary>A position given in meters.</summary>
    public static Point3 FromMeters(double x, double y, double z) =>
        new(Length.FromMeters(x), Length.FromMeters(y), Length.FromMeters(z));

    internal static Point3 FromMeters(Vector3D v) => FromMeters(v.X, v.Y, v.Z);

    internal Vector3D Meters => new(X.Meters, Y.Meters, Z.Meters);

    internal void Validate(Validator v)
    {
        v.Within(X, X.Meters, -1000, 1000);
        v.Within(Y, Y.Meters, -1000, 1000);
        v.Within(Z, Z.Meters, -1000, 1000);
    }

    /// <summary>The coordinates in brackets, as in "(1.5 m, 0 m, 12 m)".</summary>
    public override string ToString() => Invariant($"({X}, {Y}, {Z})");
}
