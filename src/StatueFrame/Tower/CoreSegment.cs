using System.Globalization;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame;

/// <summary>A segment given by its rigidities and mass: a core whose make is settled elsewhere.</summary>
/// <remarks>Immutable and safe to share between threads. Rigidities are from 1 to 1e18 N·m² or N.</remarks>
public sealed record CoreSegment : TowerSegment
{
    /// <summary>Rigidity E·I against bending in the x–z plane.</summary>
    public required Rigidity BendingX { get; init; }

    /// <summary>Rigidity E·I against bending in the y–z plane.</summary>
    public required Rigidity BendingY { get; init; }

    /// <summary>Torsional rigidity G·J.</summary>
    public required Rigidity Torsion { get; init; }

    /// <summary>Axial rigidity E·A.</summary>
    public required Force Axial { get; init; }

    /// <summary>Shear rigidity G·A_s for sway along x; null for no shear deformation.</summary>
    public Force? ShearX { get; init; }

    /// <summary>Shear rigidity G·A_s for sway along y; null for no shear deformation.</summary>
    public Force? ShearY { get; init; }

    /// <summary>Mass per length; zero by default, at most 1e6 kg/m.</summary>
    public LinearDensity Mass { get; init; }

    /// <summary>As a beam section whose local z lies along the tower's x.</summary>
    internal BeamSection AsBeamSection() => new()
    {
        EA = Axial.Newtons,
        EIy = BendingX.NewtonSquareMeters,
        EIz = BendingY.NewtonSquareMeters,
        GJ = Torsion.NewtonSquareMeters,
        GAz = ShearX?.Newtons ?? double.PositiveInfinity,
        GAy = ShearY?.Newtons ?? double.PositiveInfinity,
        Mass = Mass.KilogramsPerMeter,
    };

    internal override void Validate(Validator v)
    {
        Require(BendingX.NewtonSquareMeters, nameof(BendingX), "N·m²");
        Require(BendingY.NewtonSquareMeters, nameof(BendingY), "N·m²");
        Require(Torsion.NewtonSquareMeters, nameof(Torsion), "N·m²");
        Require(Axial.Newtons, nameof(Axial), "N");
        if (ShearX is { } x)
            Require(x.Newtons, nameof(ShearX), "N");
        if (ShearY is { } y)
            Require(y.Newtons, nameof(ShearY), "N");
        v.NotNegative(Mass, Mass.KilogramsPerMeter, 1e6);

        void Require(double si, string member, string unit)
        {
            if (!(si is > 1 and < 1e18))
                v.Add(member, string.Create(CultureInfo.InvariantCulture, $"must be greater than 1 {unit} and less than 1e18 {unit}, is {si:g4} {unit}"), "It is a modulus times an area or a moment of inertia; is the unit right?");
        }
    }
}
