using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>What acts on one end of a bar, in the bar's own axes. Tension is positive; other signs follow those of <see cref="BarForces"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarSectionForces
{
    /// <summary>Axial force; compression is negative.</summary>
    public Force Axial { get; init; }

    /// <summary>Moment about the weak axis, which runs along the width.</summary>
    public Torque WeakMoment { get; init; }

    /// <summary>Moment about the strong axis, which runs along the thickness.</summary>
    public Torque StrongMoment { get; init; }

    /// <summary>Moment about the bar's length.</summary>
    public Torque Torsion { get; init; }

    /// <summary>Transverse force along the thickness.</summary>
    public Force ShearAlongThickness { get; init; }

    /// <summary>Transverse force along the width.</summary>
    public Force ShearAlongWidth { get; init; }

    /// <summary>The tower end of an analyzed bar.</summary>
    /// <param name="forces">Its end forces.</param>
    public static BarSectionForces AtTower(BarForces forces) => Common(forces) with
    {
        WeakMoment = forces.WeakMomentAtTower,
        StrongMoment = forces.StrongMomentAtTower,
    };

    /// <summary>The skin end of an analyzed bar.</summary>
    /// <param name="forces">Its end forces.</param>
    public static BarSectionForces AtSkin(BarForces forces) => Common(forces) with
    {
        WeakMoment = forces.WeakMomentAtSkin,
        StrongMoment = forces.StrongMomentAtSkin,
    };

    internal FlatForces Si(string name) => new(
        CheckInput.Finite(Axial.Newtons, $"{name}.{nameof(Axial)}"), CheckInput.Finite(WeakMoment.NewtonMeters, $"{name}.{nameof(WeakMoment)}"),
        CheckInput.Finite(StrongMoment.NewtonMeters, $"{name}.{nameof(StrongMoment)}"), CheckInput.Finite(Torsion.NewtonMeters, $"{name}.{nameof(Torsion)}"),
        CheckInput.Finite(ShearAlongThickness.Newtons, $"{name}.{nameof(ShearAlongThickness)}"), CheckInput.Finite(ShearAlongWidth.Newtons, $"{name}.{nameof(ShearAlongWidth)}"));

    private static BarSectionForces Common(BarForces forces) => new()
    {
        Axial = forces.Axial,
        Torsion = forces.Torsion,
        ShearAlongThickness = forces.ShearAlongThickness,
        ShearAlongWidth = forces.ShearAlongWidth,
    };
}
