using UnitsNet;

namespace StatueFrame;

/// <summary>What cores, pedestals and foundations are built of: <see cref="Masonry"/> or <see cref="Concrete"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record BlockMaterial
{
    private protected BlockMaterial()
    {
    }

    /// <summary>Name, as in "granite ashlar" or "C25/30".</summary>
    public required string Name { get; init; }

    /// <summary>Density, 500 to 5000 kg/m³.</summary>
    public required Density Density { get; init; }

    /// <summary>Young's modulus, 0.1 to 200 GPa.</summary>
    public required Pressure YoungsModulus { get; init; }

    /// <summary>Characteristic compressive strength: f_k of the masonry, f_ck of the concrete's cylinder (f′_c); 0.1 to 200 MPa.</summary>
    public required Pressure CompressiveStrength { get; init; }

    /// <summary>Poisson's ratio, 0 to 0.5; 0.2 by default (EN 1992-1-1, 3.1.3 (4)).</summary>
    public double PoissonRatio { get; init; } = 0.2;

    /// <summary>Coefficient of linear thermal expansion; 1e-5 /K by default (EN 1992-1-1, 3.1.3 (5)).</summary>
    public CoefficientOfThermalExpansion ThermalExpansion { get; init; } = CoefficientOfThermalExpansion.FromPerKelvin(1e-5);

    /// <summary>Creep coefficient φ in the long term, 0 to 6; null when not known, which leaves the loss by creep out, said on the sheet.</summary>
    public double? CreepCoefficient { get; init; }

    /// <summary>Where the values come from.</summary>
    public required Source Source { get; init; }

    /// <summary>The name.</summary>
    public sealed override string ToString() => Name;

    internal double E => YoungsModulus.Pascals;

    internal double G => YoungsModulus.Pascals / (2 * (1 + PoissonRatio));

    internal double f_k => CompressiveStrength.Pascals;

    internal double Weight => Density.KilogramsPerCubicMeter * 9.80665;

    /// <summary>γ_M or γ_C.</summary>
    internal abstract double Gamma { get; }

    internal virtual void Validate(Validator v)
    {
        v.Named(Name);
        v.Positive(Density, Density.KilogramsPerCubicMeter, 500, 5000);
        v.Positive(YoungsModulus, YoungsModulus.Pascals, 1e8, 2e11);
        v.Positive(CompressiveStrength, CompressiveStrength.Pascals, 1e5, 2e8);
        v.InRange(PoissonRatio, 0, 0.5, "It is near 0.2 for masonry and concrete.");
        v.Within(ThermalExpansion, ThermalExpansion.PerKelvin, 0, 1e-4);
        if (CreepCoefficient is { } creep)
            v.InRange(creep, 0, 6, "It is creep strain over elastic strain, near 1 to 3.", nameof(CreepCoefficient));
        v.Required(Source);
    }
}
