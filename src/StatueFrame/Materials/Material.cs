using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A metal as the checks need it. The library brings the usual ones with their sources; make your own with an object
/// initializer, or from an existing one with <c>with</c>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Material
{
    /// <summary>Name with grade or temper, as in "copper, half hard".</summary>
    public required string Name { get; init; }

    /// <summary>Young's modulus E.</summary>
    public required Pressure YoungsModulus { get; init; }

    /// <summary>Shear modulus G.</summary>
    public required Pressure ShearModulus { get; init; }

    /// <summary>Density ρ.</summary>
    public required Density Density { get; init; }

    /// <summary>Yield strength, or the 0.2 % proof strength of metals without a yield point (characteristic value).</summary>
    public required Pressure YieldStrength { get; init; }

    /// <summary>Ultimate tensile strength (characteristic value).</summary>
    public required Pressure UltimateStrength { get; init; }

    /// <summary>Coefficient of linear thermal expansion α.</summary>
    public required CoefficientOfThermalExpansion ThermalExpansion { get; init; }

    /// <summary>The strengths above a thickness; null when they are the same for all.</summary>
    public StrengthStep? Thicker { get; init; }

    /// <summary>
    /// What it is for rules, weather and other metals. Null is a metal that no code covers: it is checked by allowable stress,
    /// and how it corrodes is not known. The name decides nothing.
    /// </summary>
    public MetalFamily? Family { get; init; }

    /// <summary>Poisson's ratio ν, as it follows from E and G of an isotropic metal: E/(2G) − 1.</summary>
    /// <exception cref="InvalidStatueException">The material is not valid.</exception>
    public double PoissonRatio
    {
        get
        {
            var v = new Validator();
            Validate(v);
            v.ThrowIfAny();
            return YoungsModulus / ShearModulus / 2 - 1;
        }
    }

    /// <summary>Where the values come from.</summary>
    public required Source Source { get; init; }

    /// <summary>The shear modulus of an isotropic metal, G = E/(2(1 + ν)).</summary>
    /// <param name="youngsModulus">Young's modulus E.</param>
    /// <param name="poissonRatio">Poisson's ratio ν, from 0 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">Poisson's ratio is not from 0 to 0.5.</exception>
    public static Pressure ShearModulusOf(Pressure youngsModulus, double poissonRatio) =>
        poissonRatio is >= 0 and <= 0.5
            ? youngsModulus / (2 * (1 + poissonRatio))
            : throw new ArgumentOutOfRangeException(nameof(poissonRatio), poissonRatio, "Poisson's ratio must be from 0 to 0.5.");

    /// <summary>The metal with its strengths in a product of a thickness, m.</summary>
    internal Material For(double thickness) => Thicker is { } step && thickness > step.Above.Meters * (1 + 1e-9)
        ? this with { YieldStrength = step.YieldStrength, UltimateStrength = step.UltimateStrength, Thicker = null }
        : this;

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal void Validate(Validator v)
    {
        v.Named(Name);
        bool elastic = v.Positive(YoungsModulus, YoungsModulus.Pascals, 1e9, 1e12) & v.Positive(ShearModulus, ShearModulus.Pascals, 3e8, 4e11);
        v.Positive(Density, Density.KilogramsPerCubicMeter, 500, 25_000);
        bool strong = v.Positive(YieldStrength, YieldStrength.Pascals, 1e6, 3e9) & v.Positive(UltimateStrength, UltimateStrength.Pascals, 1e6, 4e9);
        v.Positive(ThermalExpansion, ThermalExpansion.PerKelvin, 1e-7, 1e-4);
        if (strong && UltimateStrength < YieldStrength)
            v.Add(nameof(UltimateStrength), $"is below the yield strength ({QuantityText.Of(UltimateStrength)} < {QuantityText.Of(YieldStrength)})", "Were the two swapped?");
        v.Required(Source);
        Thicker?.Validate(v.At(nameof(Thicker)));
        if (Family is { } family)
            v.Defined(family, nameof(Family));
        double ratio = YoungsModulus.Pascals / ShearModulus.Pascals;
        if (elastic && ratio is < 2 or > 3)
            v.Add(nameof(ShearModulus), "does not fit Young's modulus: E/G must be from 2 to 3", "E/G = 2(1+ν), and ν of a metal is near 0.3.");
    }
}
