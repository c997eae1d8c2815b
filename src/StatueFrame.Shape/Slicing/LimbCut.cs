using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A limb to be cut off the trunk.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LimbCut
{
    /// <summary>The limb's name.</summary>
    public required string Name { get; init; }

    /// <summary>The limb's axis, from root to tip. The cut by a plane goes through the root.</summary>
    public required ShapeAxis Axis { get; init; }

    /// <summary>Plan angle of the direction across the cut, toward the limb; that of the axis when null.</summary>
    public Angle? CutHeading { get; init; }

    /// <summary>Angle of that direction above the horizontal; that of the axis when null.</summary>
    public Angle? CutInclination { get; init; }

    internal Mechanics.Vector3D Normal
    {
        get
        {
            (double sinH, double cosH) = Math.SinCos((CutHeading ?? Axis.Heading).Radians);
            (double sinI, double cosI) = Math.SinCos((CutInclination ?? Axis.Inclination).Radians);
            return new(cosI * cosH, cosI * sinH, sinI);
        }
    }
}
