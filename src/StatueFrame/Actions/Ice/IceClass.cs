using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// A class of icing at a site, as ice maps give it: glaze by the thickness of a clear coat all round, rime by the mass
/// per length that grows on a slowly turning reference rod of 30 mm diameter.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: ISO 12494:2017, 7.4 and 7.5, classes ICG and ICR; 9.2.</remarks>
public sealed record IceClass
{
    private const double ReferenceDiameter = 0.03;

    private static readonly double[] glazeFactors = [0.40, 0.45, 0.50, 0.55, 0.60];
    private static readonly double[] rimeMasses = [0.5, 0.9, 1.6, 2.8, 5.0, 8.9, 16.0, 28.0, 50.0];
    private static readonly double[] rimeFactors = [0.40, 0.45, 0.50, 0.55, 0.60, 0.70, 0.80, 0.90, 1.00];

    private readonly double thickness;
    private readonly double rodMass;

    private IceClass(string name, double thickness, double rodMass, double density, double windFactor)
    {
        (Name, this.thickness, this.rodMass) = (name, thickness, rodMass);
        (Density, WindFactor) = (UnitsNet.Density.FromKilogramsPerCubicMeter(density), windFactor);
    }

    /// <summary>"G3" or "R5".</summary>
    public string Name { get; }

    /// <summary>Density of the ice.</summary>
    public Density Density { get; }

    /// <summary>Factor k on the wind pressure that acts together with the ice.</summary>
    public double WindFactor { get; }

    /// <summary>
    /// Thickness of an even coat: that of glaze; for rime, which grows into the wind as a vane, the coat of equal mass on
    /// the reference rod.
    /// </summary>
    public Length Thickness => Length.FromMeters(IsGlaze ? thickness : 0.5 * (RodDiameter - ReferenceDiameter));

    /// <summary>Mass of ice on the reference rod of 30 mm.</summary>
    public LinearDensity MassOnReferenceRod => LinearDensity.FromKilogramsPerMeter(IsGlaze ? OnRod(ReferenceDiameter) : rodMass);

    /// <summary>Diameter of the iced reference rod.</summary>
    public Length DiameterOfReferenceRod => Length.FromMeters(RodDiameter);

    /// <summary>The number in the name.</summary>
    internal int Number => Name[^1] - '0';

    internal bool IsGlaze => rodMass == 0;

    private double Rho => Density.KilogramsPerCubicMeter;

    private double RodDiameter => IsGlaze ? ReferenceDiameter + 2 * thickness : Math.Sqrt(ReferenceDiameter * ReferenceDiameter + 4 * rodMass / (Math.PI * Rho));

    /// <summary>Glaze G1 to G5: 10 to 50 mm of 900 kg/m³.</summary>
    /// <param name="number">1 to 5.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such class.</exception>
    public static IceClass Glaze(int number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, glazeFactors.Length);
        return new IceClass($"G{number}", 0.01 * number, 0, 900, glazeFactors[number - 1]);
    }

    /// <summary>Rime R1 to R9: 0.5 to 50 kg/m on the reference rod. R10 is for extreme sites and has no value of its own.</summary>
    /// <param name="number">1 to 9.</param>
    /// <param name="density">Density of the rime, 200 to 900 kg/m³; null takes 500 kg/m³.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such class, or the density is out of range.</exception>
    public static IceClass Rime(int number, Density? density = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, rimeMasses.Length);
        double rho = density?.KilogramsPerCubicMeter ?? 500;
        if (!(rho is >= 200 and <= 900))
            throw new ArgumentOutOfRangeException(nameof(density), Invariant($"Rime weighs 200 to 900 kg/m³, not {rho}."));
        return new IceClass($"R{number}", 0, rimeMasses[number - 1], rho, rimeFactors[number - 1]);
    }

    /// <summary>Mass of glaze per length of a round member, ρπ(d + t)t; of rime up to 300 mm that on the reference rod.</summary>
    /// <param name="diameter">Diameter of the member, 1 mm to 0.3 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is out of range.</exception>
    public LinearDensity MassOnRound(Length diameter)
    {
        double d = diameter.Meters;
        if (!(d is >= 1e-3 and <= 0.3))
            throw new ArgumentOutOfRangeException(nameof(diameter), Invariant($"The classes hold for members of 1 to 300 mm, not {1000 * d} mm."));
        return LinearDensity.FromKilogramsPerMeter(IsGlaze ? OnRod(d) : rodMass);
    }

    private double OnRod(double d) => Rho * Math.PI * (d + thickness) * thickness;
}
