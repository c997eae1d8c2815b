using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces in a standoff, in its own axes: x from tower end to skin end, y along the thickness, z along the width.
/// Forces and moments are those that act on the bar's ends; moments are right-handed.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarForces
{
    internal BarForces(in BarEnds ends)
    {
        Ends = ends;
        Axial = Force.FromNewtons(ends.Skin.N);
        ShearAlongThickness = Force.FromNewtons(ends.Skin.AlongThickness);
        ShearAlongWidth = Force.FromNewtons(ends.Skin.AlongWidth);
        Torsion = Torque.FromNewtonMeters(ends.Skin.T);
        WeakMomentAtTower = Torque.FromNewtonMeters(ends.Tower.Weak);
        StrongMomentAtTower = Torque.FromNewtonMeters(ends.Tower.Strong);
        WeakMomentAtSkin = Torque.FromNewtonMeters(ends.Skin.Weak);
        StrongMomentAtSkin = Torque.FromNewtonMeters(ends.Skin.Strong);
    }

    internal BarEnds Ends { get; }

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
