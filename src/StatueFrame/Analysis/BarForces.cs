using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces in a standoff, in its own axes: x from tower end to skin end, y along the thickness, z along the width.
/// Forces and moments are those that act on the bar's ends; moments are right-handed.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarForces
{
    internal BarForces(ReadOnlySpan<double> f)
    {
        Axial = Force.FromNewtons(f[6]);
        ShearAlongThickness = Force.FromNewtons(f[7]);
        ShearAlongWidth = Force.FromNewtons(f[8]);
        Torsion = Torque.FromNewtonMeters(f[9]);
        WeakMomentAtTower = Torque.FromNewtonMeters(f[5]);
        StrongMomentAtTower = Torque.FromNewtonMeters(f[4]);
        WeakMomentAtSkin = Torque.FromNewtonMeters(f[11]);
        StrongMomentAtSkin = Torque.FromNewtonMeters(f[10]);
    }

    /// <summary>Axial force; compression is negative.</summary>
    public Force Axial { get; }

    /// <summary>Transverse force on the skin end along the bar's thickness.</summary>
    public Force ShearAlongThickness { get; }

    /// <summary>Transverse force on the skin end along the bar's width.</summary>
    public Force ShearAlongWidth { get; }

    /// <summary>Torsional moment on the skin end.</summary>
    public Torque Torsion { get; }

    /// <summary>Moment about the weak axis on the tower end.</summary>
    public Torque WeakMomentAtTower { get; }

    /// <summary>Moment about the strong axis on the tower end.</summary>
    public Torque StrongMomentAtTower { get; }

    /// <summary>Moment about the weak axis on the skin end.</summary>
    public Torque WeakMomentAtSkin { get; }

    /// <summary>Moment about the strong axis on the skin end.</summary>
    public Torque StrongMomentAtSkin { get; }
}
