using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A statue or a model of it in a flow, as far as similarity asks: one size, one speed, and the body's first mode.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record WindBody
{
    /// <summary>A length that stands for the size, D: such as the width of the body.</summary>
    public required Length Width { get; init; }

    /// <summary>Speed of the flow, V.</summary>
    public required Speed Speed { get; init; }

    /// <summary>Natural frequency of the mode looked at, f.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Equivalent mass of the mode per height, m.</summary>
    public required LinearDensity MassPerHeight { get; init; }

    /// <summary>Structural damping ratio of the mode, ζ; 0.01 is one percent.</summary>
    public required double DampingRatio { get; init; }

    /// <summary>Modulus of elasticity of a body that is a true copy in the small, E; its stiffness over D² for others.</summary>
    public required Pressure Modulus { get; init; }

    /// <summary>Density of the fluid, ρ; air of 1.25 kg/m³ by default.</summary>
    public Density FluidDensity { get; init; } = Density.FromKilogramsPerCubicMeter(1.25);

    /// <summary>Kinematic viscosity of the fluid, ν; air of 15e-6 m²/s by default.</summary>
    public KinematicViscosity Viscosity { get; init; } = KinematicViscosity.FromSquareMetersPerSecond(15e-6);

    /// <summary>Froude number V²/(g D): inertia of the flow to weight.</summary>
    public double Froude => Sq(Speed.MetersPerSecond) / (9.80665 * Width.Meters);

    /// <summary>Cauchy number ρV²/E: pressure of the flow to stiffness.</summary>
    public double Cauchy => FluidDensity.KilogramsPerCubicMeter * Sq(Speed.MetersPerSecond) / Modulus.Pascals;

    /// <summary>Reduced velocity V/(f D): time of a vibration to time of passage.</summary>
    public double ReducedVelocity => Speed.MetersPerSecond / (Frequency.Hertz * Width.Meters);

    /// <summary>Mass ratio m/(ρ D²).</summary>
    public double MassRatio => MassPerHeight.KilogramsPerMeter / (FluidDensity.KilogramsPerCubicMeter * Sq(Width.Meters));

    /// <summary>Scruton number 2 m δ/(ρ D²), with the logarithmic decrement δ = 2πζ/√(1 − ζ²) [EN 1991-1-4, E.1.3.3].</summary>
    public double Scruton => 2 * MassRatio * 2 * Math.PI * DampingRatio / Math.Sqrt(1 - Sq(DampingRatio));

    /// <summary>Reynolds number V D/ν: inertia of the flow to friction.</summary>
    public double Reynolds => Speed.MetersPerSecond * Width.Meters / Viscosity.SquareMetersPerSecond;

    internal void Validate(string name)
    {
        foreach ((string member, double si) in (ReadOnlySpan<(string, double)>)
        [
            (nameof(Width), Width.Meters), (nameof(Speed), Speed.MetersPerSecond), (nameof(Frequency), Frequency.Hertz),
            (nameof(MassPerHeight), MassPerHeight.KilogramsPerMeter), (nameof(DampingRatio), DampingRatio), (nameof(Modulus), Modulus.Pascals),
            (nameof(FluidDensity), FluidDensity.KilogramsPerCubicMeter), (nameof(Viscosity), Viscosity.SquareMetersPerSecond),
        ])
        {
            if (!(si > 0 && double.IsFinite(si)))
                throw new ArgumentException($"{member} must be positive, is {si}", name);
        }
        if (!(DampingRatio < 1))
            throw new ArgumentException($"{nameof(DampingRatio)} must be below 1, is {DampingRatio}", name);
    }

    private static double Sq(double v) => v * v;
}
