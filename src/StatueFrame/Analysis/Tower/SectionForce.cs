using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces and moments in a cut across a tower or limb at one end of a segment: what the part beyond the cut puts on
/// the part before it, at the level's center, in the body's own axes (z along the body, from its base up).
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SectionForce
{
    internal SectionForce(Vector3D force, Vector3D moment)
    {
        (ShearX, ShearY, Axial) = (Force.FromNewtons(force.X), Force.FromNewtons(force.Y), Force.FromNewtons(force.Z));
        (MomentX, MomentY, Torsion) = (Torque.FromNewtonMeters(moment.X), Torque.FromNewtonMeters(moment.Y), Torque.FromNewtonMeters(moment.Z));
    }

    /// <summary>Three forces and three moments, N and N·m.</summary>
    internal static SectionForce Of(ReadOnlySpan<double> f) => new(new Vector3D(f[0], f[1], f[2]), new Vector3D(f[3], f[4], f[5]));

    internal Vector3D Forces => new(ShearX.Newtons, ShearY.Newtons, Axial.Newtons);

    internal Vector3D Moments => new(MomentX.NewtonMeters, MomentY.NewtonMeters, Torsion.NewtonMeters);

    /// <summary>Axial force; compression is negative.</summary>
    public Force Axial { get; }

    /// <summary>Shear force along the body's x.</summary>
    public Force ShearX { get; }

    /// <summary>Shear force along the body's y.</summary>
    public Force ShearY { get; }

    /// <summary>Bending moment about the body's x, right-handed.</summary>
    public Torque MomentX { get; }

    /// <summary>Bending moment about the body's y, right-handed.</summary>
    public Torque MomentY { get; }

    /// <summary>Torsional moment about the body's z, right-handed.</summary>
    public Torque Torsion { get; }
}
