using UnitsNet;

namespace StatueFrame;

/// <summary>The ground under and around a foundation. What is not known stays null, and what needs it is not checked.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Soil
{
    /// <summary>Allowable bearing pressure under unfactored actions; null when the soil's strength is given instead. 1 kPa to 100 MPa.</summary>
    public Pressure? AllowableBearing { get; init; }

    /// <summary>Design angle of friction φ′ for drained ground, 0 to 50°; null when not known.</summary>
    public Angle? FrictionAngle { get; init; }

    /// <summary>Design cohesion c′ for drained ground, 0 to 1 MPa; zero by default.</summary>
    public Pressure Cohesion { get; init; }

    /// <summary>Design undrained strength c_u, 1 kPa to 10 MPa; null when the ground drains.</summary>
    public Pressure? UndrainedStrength { get; init; }

    /// <summary>Density of the soil beside and below the base as it weighs there, buoyancy taken off; 500 to 3000 kg/m³, 1800 by default.</summary>
    public Density Density { get; init; } = 1800.KilogramsPerCubicMeter;

    /// <summary>Shear modulus G of the ground, 0.1 MPa to 100 GPa; null when not known.</summary>
    public Pressure? ShearModulus { get; init; }

    /// <summary>Poisson's ratio ν of the ground, 0 to 0.5; 0.35 by default.</summary>
    public double PoissonRatio { get; init; } = 0.35;

    /// <summary>Modulus of subgrade reaction, pressure for a sinking, 0.1 MN/m³ to 100 GN/m³; used when the shear modulus is not given.</summary>
    public SpecificWeight? SubgradeModulus { get; init; }

    internal double Weight => Density.KilogramsPerCubicMeter * 9.80665;

    internal void Validate(Validator v)
    {
        if (AllowableBearing is { } bearing)
            v.Positive(bearing, bearing.Pascals, 1e3, 1e8, nameof(AllowableBearing));
        if (FrictionAngle is { } phi)
            v.Within(phi, phi.Degrees, 0, 50, nameof(FrictionAngle));
        v.NotNegative(Cohesion, Cohesion.Pascals, 1e6);
        if (UndrainedStrength is { } c)
            v.Positive(c, c.Pascals, 1e3, 1e7, nameof(UndrainedStrength));
        v.Positive(Density, Density.KilogramsPerCubicMeter, 500, 3000);
        if (ShearModulus is { } g)
            v.Positive(g, g.Pascals, 1e5, 1e11, nameof(ShearModulus));
        v.InRange(PoissonRatio, 0, 0.5, "It is 0.25 to 0.35 of drained soil, 0.5 of saturated clay.");
        if (SubgradeModulus is { } k && !(k.NewtonsPerCubicMeter is >= 1e5 and <= 1e11))
            v.Add(nameof(SubgradeModulus), "must be from 0.1 MN/m³ to 100 GN/m³", "It is the pressure that sinks the base by a unit of length; is the unit right?");
    }
}
