using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Ovalling of a round shell: the ring goes flat to and fro, twice for each pair of vortices. For a bare shell without
/// stiffening rings; standoffs and armature raise the frequency.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, E.1.3.1 (2) and F.2.</remarks>
public static class ShellOvalling
{
    /// <summary>Lowest frequency of ovalling n₀ = 0.492 √(t³E / (μ_s b⁴)), (F.5).</summary>
    /// <param name="thickness">Thickness t of the shell.</param>
    /// <param name="elasticity">Modulus of elasticity E.</param>
    /// <param name="mass">Mass per area of the shell μ_s.</param>
    /// <param name="diameter">Diameter b.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero or not plausible.</exception>
    public static Frequency LowestFrequency(Length thickness, Pressure elasticity, AreaDensity mass, Length diameter)
    {
        double t = GustInput.Positive(thickness.Meters, 1, nameof(thickness)), b = GustInput.Positive(diameter.Meters, 500, nameof(diameter));
        double E = GustInput.Positive(elasticity.Pascals, 1e13, nameof(elasticity)), mu = GustInput.Positive(mass.KilogramsPerSquareMeter, 1e5, nameof(mass));
        return Frequency.FromHertz(0.492 * Math.Sqrt(t * t * t * E / (mu * b * b * b * b)));
    }

    /// <summary>Critical wind speed of ovalling v_crit = b n₀ / (2 St), (E.3).</summary>
    /// <param name="frequency">Frequency of ovalling n₀.</param>
    /// <param name="diameter">Diameter b.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero or not plausible.</exception>
    public static Speed CriticalSpeed(Frequency frequency, Length diameter) => Speed.FromMetersPerSecond(
        GustInput.Positive(diameter.Meters, 500, nameof(diameter)) * GustInput.Positive(frequency.Hertz, 1e4, nameof(frequency))
        / (2 * BluffSection.Round.StrouhalNumber));
}
