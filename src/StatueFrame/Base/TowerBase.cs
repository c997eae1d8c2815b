using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How a tower or a limb is held at its first level: rigidly, or by springs. A member left null is rigid; a spring has
/// from 1 to 1e18 N/m or N·m/rad.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TowerBase
{
    /// <summary>Held in all six freedoms.</summary>
    public static TowerBase Fixed { get; } = new();

    /// <summary>Held rigidly against displacement, by a spring against rocking about x and y.</summary>
    /// <param name="stiffness">Moment per rotation.</param>
    public static TowerBase Rocking(RotationalStiffness stiffness) => new() { RotationX = stiffness, RotationY = stiffness };

    /// <summary>Stiffness against sliding along x; null for rigid.</summary>
    public ForcePerLength? X { get; init; }

    /// <summary>Stiffness against sliding along y; null for rigid.</summary>
    public ForcePerLength? Y { get; init; }

    /// <summary>Stiffness against vertical movement; null for rigid.</summary>
    public ForcePerLength? Z { get; init; }

    /// <summary>Stiffness against rocking about x; null for rigid.</summary>
    public RotationalStiffness? RotationX { get; init; }

    /// <summary>Stiffness against rocking about y; null for rigid.</summary>
    public RotationalStiffness? RotationY { get; init; }

    /// <summary>Stiffness against twist about z; null for rigid.</summary>
    public RotationalStiffness? RotationZ { get; init; }

    /// <summary>The six stiffnesses in SI units in the order of the freedoms; +∞ for rigid.</summary>
    internal double[] Stiffnesses =>
    [
        X?.NewtonsPerMeter ?? double.PositiveInfinity,
        Y?.NewtonsPerMeter ?? double.PositiveInfinity,
        Z?.NewtonsPerMeter ?? double.PositiveInfinity,
        RotationX?.NewtonMetersPerRadian ?? double.PositiveInfinity,
        RotationY?.NewtonMetersPerRadian ?? double.PositiveInfinity,
        RotationZ?.NewtonMetersPerRadian ?? double.PositiveInfinity,
    ];

    internal bool IsFixed => this == Fixed;

    internal void Validate(Validator v)
    {
        Require(X, X?.NewtonsPerMeter, nameof(X));
        Require(Y, Y?.NewtonsPerMeter, nameof(Y));
        Require(Z, Z?.NewtonsPerMeter, nameof(Z));
        Require(RotationX, RotationX?.NewtonMetersPerRadian, nameof(RotationX));
        Require(RotationY, RotationY?.NewtonMetersPerRadian, nameof(RotationY));
        Require(RotationZ, RotationZ?.NewtonMetersPerRadian, nameof(RotationZ));

        void Require(IQuantity? value, double? si, string member)
        {
            if (value is not null)
                v.Positive(value, si!.Value, 1, 1e18, member);
        }
    }
}
