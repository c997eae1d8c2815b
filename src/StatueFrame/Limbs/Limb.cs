using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A branch off the tower with its own direction: a raised arm, a wing, a staff. It is built of the same parts as the
/// trunk, described along the limb's own axis: "elevations" of its levels and stations are distances along that axis,
/// and its bands are sliced across it.
/// </summary>
/// <remarks>
/// <para>
/// Local axes: z along the limb, y horizontal and to the left when looking along it, x completing the right-handed set,
/// so that x points down for a limb held out level.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed record Limb
{
    /// <summary>Short name, unique in the statue. Its levels and bands are called "name/level" and "name/band 3".</summary>
    public required string Name { get; init; }

    /// <summary>The level it starts at: a level of the trunk, or "other limb/level" of a limb listed before.</summary>
    public required string From { get; init; }

    /// <summary>Where the axis starts, from the center of that level, in the statue's axes; that center by default.</summary>
    public Point3 Root { get; init; }

    /// <summary>Plan angle of the axis, anticlockwise from +x, −360° to 360°.</summary>
    public required Angle Heading { get; init; }

    /// <summary>Angle of the axis above the horizontal, −90° to 90°.</summary>
    public required Angle Inclination { get; init; }

    /// <summary>The inner structure along the limb's axis; its base is the joint to the level it starts from.</summary>
    public required Tower Tower { get; init; }

    /// <summary>The skin along the limb's axis; null for a bare limb.</summary>
    public Skin? Skin { get; init; }

    /// <summary>The standoffs between the limb's levels and its bands.</summary>
    public ValueList<StandoffRing> Standoffs { get; init; } = [];

    /// <summary>Stiffness of the seams between neighboring bands; null when bands are not tied.</summary>
    public SeamStiffness? Seams { get; init; }

    internal Axes3D Axes
    {
        get
        {
            (double sinH, double cosH) = Math.SinCos(Heading.Radians);
            (double sinI, double cosI) = Math.SinCos(Inclination.Radians);
            var z = new Vector3D(cosI * cosH, cosI * sinH, sinI);
            var y = new Vector3D(-sinH, cosH, 0);
            return new Axes3D(y.Cross(z), y, z);
        }
    }

    /// <summary>Looks at what is the limb's own; its tower, skin and standoffs are those of a body like the trunk.</summary>
    internal void Validate(Validator v)
    {
        if (v.Named(Name) && Name.Contains('/'))
            v.Add(nameof(Name), $"must not contain '/', is \"{Name}\"", "The slash separates a limb's name from its parts.");
        v.Within(Heading, Heading.Degrees, -360, 360);
        v.Within(Inclination, Inclination.Degrees, -90, 90);
        Root.Validate(v.At(nameof(Root)));
    }
}
