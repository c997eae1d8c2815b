using System.Globalization;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>How a point moves in one load case: displacements along, and rotations about, the statue's axes.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Movement
{
    private readonly Vector3D displacement;
    private readonly Vector3D rotation;

    internal Movement(string point, Angle? heading, Vector3D displacement, Vector3D rotation) =>
        (Point, Heading, this.displacement, this.rotation) = (point, heading, displacement, rotation);

    /// <summary>The point, level or band.</summary>
    public string Point { get; }

    /// <summary>The wind's heading; null without wind.</summary>
    public Angle? Heading { get; }

    /// <summary>Displacement along x.</summary>
    public Length X => Length.FromMeters(displacement.X);

    /// <summary>Displacement along y.</summary>
    public Length Y => Length.FromMeters(displacement.Y);

    /// <summary>Displacement along z; negative downwards.</summary>
    public Length Z => Length.FromMeters(displacement.Z);

    /// <summary>Horizontal displacement, without direction: the sway.</summary>
    public Length Sway => Length.FromMeters(Math.Sqrt(displacement.X * displacement.X + displacement.Y * displacement.Y));

    /// <summary>Rotation about x, right-handed.</summary>
    public Angle RotationX => Angle.FromRadians(rotation.X);

    /// <summary>Rotation about y, right-handed.</summary>
    public Angle RotationY => Angle.FromRadians(rotation.Y);

    /// <summary>Twist about z, anticlockwise seen from above.</summary>
    public Angle Twist => Angle.FromRadians(rotation.Z);

    /// <summary>Tilt from the vertical, without direction.</summary>
    public Angle Tilt => Angle.FromRadians(Math.Sqrt(rotation.X * rotation.X + rotation.Y * rotation.Y));

    /// <summary>The sway on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Point}: sway {Sway.Millimeters:0.0} mm{(Heading is { } h ? $", wind towards {h.Degrees:0.#}°" : "")}");
}
