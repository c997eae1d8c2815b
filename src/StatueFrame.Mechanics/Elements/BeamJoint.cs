namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// How one end of a beam is joined to its node: a spring on each of the six freedoms, in the beam's local axes. Zero is
/// released, +∞ (the default) is rigid.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BeamJoint
{
    /// <summary>Rigid in every freedom.</summary>
    public static BeamJoint Rigid { get; } = new();

    /// <summary>Free to turn about local y and z; twist and displacements are held.</summary>
    public static BeamJoint Pinned { get; } = new() { RotationY = 0, RotationZ = 0 };

    /// <summary>Stiffness along local x, N/m; 0 to +∞. Zero lets the end slide along the beam.</summary>
    public double X { get; init; } = double.PositiveInfinity;

    /// <summary>Stiffness along local y, N/m; 0 to +∞.</summary>
    public double Y { get; init; } = double.PositiveInfinity;

    /// <summary>Stiffness along local z, N/m; 0 to +∞.</summary>
    public double Z { get; init; } = double.PositiveInfinity;

    /// <summary>Stiffness against twist about local x, N·m/rad; 0 to +∞.</summary>
    public double RotationX { get; init; } = double.PositiveInfinity;

    /// <summary>Stiffness against rotation about local y, N·m/rad; 0 to +∞.</summary>
    public double RotationY { get; init; } = double.PositiveInfinity;

    /// <summary>Stiffness against rotation about local z, N·m/rad; 0 to +∞.</summary>
    public double RotationZ { get; init; } = double.PositiveInfinity;

    internal void CopyTo(Span<double> stiffnesses)
    {
        (stiffnesses[0], stiffnesses[1], stiffnesses[2]) = (X, Y, Z);
        (stiffnesses[3], stiffnesses[4], stiffnesses[5]) = (RotationX, RotationY, RotationZ);
    }
}
