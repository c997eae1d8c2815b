using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>A bending or torsional rigidity, E·I or G·J: the moment for a unit of curvature or twist.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public readonly record struct Rigidity
{
    private Rigidity(double value) => NewtonSquareMeters = value;

    /// <summary>The value in N·m².</summary>
    public double NewtonSquareMeters { get; }

    /// <summary>A rigidity in N·m².</summary>
    public static Rigidity FromNewtonSquareMeters(double value) => new(value);

    /// <summary>A rigidity in kN·m².</summary>
    public static Rigidity FromKilonewtonSquareMeters(double value) => new(1e3 * value);

    /// <summary>The rigidity E·I or G·J of a section.</summary>
    /// <param name="modulus">E for bending, G for torsion.</param>
    /// <param name="inertia">I for bending, J for torsion.</param>
    public static Rigidity Of(Pressure modulus, AreaMomentOfInertia inertia) =>
        new(modulus.Pascals * inertia.MetersToTheFourth);

    /// <summary>The value with its unit.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{NewtonSquareMeters:g4} N·m²");
}
