namespace StatueFrame;

/// <summary>The rotational springs at one end of a bar, N·m/rad: from 0 (a hinge) to +∞ (rigid).</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct EndSprings(double Weak, double Strong, double Twist)
{
    public static EndSprings Rigid => new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);

    public static EndSprings Pinned => new(0, 0, double.PositiveInfinity);
}
