using System.Globalization;
using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>
/// The direction in which the saddle at a standoff's skin end lets the skin travel freely: no force passes along it,
/// so the skin can breathe with temperature. Friction is not counted.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SaddleSlide
{
    private enum Direction { None, Bar, Axis, Skin, Given }

    private readonly Direction direction;
    private readonly Vector3D given;

    private SaddleSlide(Direction direction, Vector3D given = default) => (this.direction, this.given) = (direction, given);

    /// <summary>The saddle holds the skin in every direction.</summary>
    public static SaddleSlide None { get; } = new(Direction.None);

    /// <summary>Free along the bar: the bar carries no axial force.</summary>
    public static SaddleSlide AlongBar { get; } = new(Direction.Bar);

    /// <summary>Free parallel to the body's axis: up and down on a standing statue.</summary>
    public static SaddleSlide AlongAxis { get; } = new(Direction.Axis);

    /// <summary>Free along the skin across the body's axis: the horizontal tangent on a standing statue.</summary>
    public static SaddleSlide AlongSkin { get; } = new(Direction.Skin);

    /// <summary>Free along a direction given in the body's axes; its length does not matter, but must not be zero.</summary>
    /// <param name="x">Component along x.</param>
    /// <param name="y">Component along y.</param>
    /// <param name="z">Component along z.</param>
    public static SaddleSlide Along(double x, double y, double z) => new(Direction.Given, new Vector3D(x, y, z));

    /// <summary>The direction in words.</summary>
    public override string ToString() => direction switch
    {
        Direction.None => "none",
        Direction.Bar => "along the bar",
        Direction.Axis => "along the axis",
        Direction.Skin => "along the skin",
        _ => string.Create(CultureInfo.InvariantCulture, $"along ({given.X:g4}, {given.Y:g4}, {given.Z:g4})"),
    };

    /// <summary>The direction as it was given; zero when none was.</summary>
    internal double X => given.X;

    internal double Y => given.Y;

    internal double Z => given.Z;

    /// <summary>The free direction in the body's axes, of length 1; zero when there is none.</summary>
    /// <param name="bar">Unit vector along the bar.</param>
    /// <param name="outward">The skin's outward unit normal across the body's axis.</param>
    internal Vector3D In(Vector3D bar, Vector3D outward) => direction switch
    {
        Direction.None => Vector3D.Zero,
        Direction.Bar => bar,
        Direction.Axis => Vector3D.UnitZ,
        Direction.Skin => Vector3D.UnitZ.Cross(outward),
        _ => given.Normalized(),
    };

    internal void Validate(Validator v, string member)
    {
        if (direction == Direction.Given && !(double.IsNormal(given.Dot(given)) && given.IsFinite))
            v.Add(member, "must be a direction: finite, and not zero", "SaddleSlide.None is the saddle that does not slide.");
    }
}
