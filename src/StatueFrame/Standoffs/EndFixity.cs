using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How one end of a standoff is held against turning: by a rotational spring about each of the bar's own axes. The
/// end's position is always held; a saddle that lets the end travel is a <see cref="SaddleSlide"/>. Take
/// <see cref="Rigid"/>, <see cref="Pinned"/> or <see cref="Spring"/>, or set each axis by itself.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EndFixity
{
    /// <summary>The spring against bending about the bar's weak axis (along its width); zero is a hinge, null is rigid.</summary>
    public RotationalStiffness? WeakAxis { get; init; }

    /// <summary>The spring against bending about the bar's strong axis (along its thickness); zero is a hinge, null is rigid.</summary>
    public RotationalStiffness? StrongAxis { get; init; }

    /// <summary>The spring against twist about the bar's length; zero is free to turn, null is rigid.</summary>
    public RotationalStiffness? Twist { get; init; }

    /// <summary>Held against every rotation, as by a welded or well-bolted clamp.</summary>
    public static EndFixity Rigid { get; } = new();

    /// <summary>Free to bend about both axes, held against twist, as by a single bolt or a loose saddle.</summary>
    public static EndFixity Pinned { get; } = Spring(RotationalStiffness.Zero);

    /// <summary>The same spring about both bending axes; twist is held.</summary>
    /// <param name="stiffness">Moment per rotation; zero or more.</param>
    public static EndFixity Spring(RotationalStiffness stiffness) => new() { WeakAxis = stiffness, StrongAxis = stiffness };

    /// <summary>The fixity in words, as in "rigid", "pinned" or "springs: weak 5 kN·m/rad, strong rigid, twist rigid".</summary>
    public override string ToString() =>
        this == Rigid ? "rigid" : this == Pinned ? "pinned" : $"springs: weak {Words(WeakAxis)}, strong {Words(StrongAxis)}, twist {Words(Twist)}";

    private static string Words(RotationalStiffness? spring) =>
        spring is not { } k ? "rigid" : k.NewtonMetersPerRadian == 0 ? "free" : Dimension.RotationalStiffness.Format(k.NewtonMetersPerRadian, DisplayUnits.Metric);

    /// <summary>The springs in SI units.</summary>
    internal EndSprings Springs => new(Stiffness(WeakAxis), Stiffness(StrongAxis), Stiffness(Twist));

    internal void Validate(Validator v)
    {
        Require(v, WeakAxis, nameof(WeakAxis));
        Require(v, StrongAxis, nameof(StrongAxis));
        Require(v, Twist, nameof(Twist));
    }

    private static void Require(Validator v, RotationalStiffness? spring, string member)
    {
        if (spring is { } k)
            v.NotNegative(k, k.NewtonMetersPerRadian, 1e12, member);
    }

    private static double Stiffness(RotationalStiffness? spring) => spring?.NewtonMetersPerRadian ?? double.PositiveInfinity;
}
