using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Damping that the wind gives to motion along it. A body that moves with the wind feels less of it and one that moves
/// against it more, by ρ c_f b v a length and speed of motion.
/// </summary>
/// <remarks>
/// Stateless; safe to use from many threads. Arguments are above zero; force coefficients at most 10, densities of air
/// 2 kg/m³, speeds 200 m/s, frequencies 1000 Hz, lengths and widths 2000 m. For motion that is slow beside the wind. Source: EN 1991-1-4:2005, F.5.
/// </remarks>
public static class AerodynamicDamping
{
    /// <summary>Logarithmic decrement δ_a = c_f ρ v_m / (2 n₁ μ_e) of a plate-like structure, (F.16).</summary>
    /// <param name="forceCoefficient">Force coefficient c_f along the wind.</param>
    /// <param name="airDensity">Density of the air ρ.</param>
    /// <param name="meanSpeed">Mean speed v_m at the reference height.</param>
    /// <param name="frequency">Natural frequency n₁.</param>
    /// <param name="equivalentMass">Equivalent mass per area μ_e, (F.17).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double Decrement(double forceCoefficient, Density airDensity, Speed meanSpeed, Frequency frequency, AreaDensity equivalentMass) =>
        GustInput.Positive(forceCoefficient, 10, nameof(forceCoefficient))
        * GustInput.Positive(airDensity.KilogramsPerCubicMeter, 2, nameof(airDensity))
        * GustInput.Positive(meanSpeed.MetersPerSecond, 200, nameof(meanSpeed))
        / (2 * GustInput.Positive(frequency.Hertz, 1000, nameof(frequency))
            * GustInput.Positive(equivalentMass.KilogramsPerSquareMeter, 1e6, nameof(equivalentMass)));

    /// <summary>
    /// Logarithmic decrement of any mode, δ_a = ∫ c_f ρ b v φ² ds / (2 n M). A cantilever of one width in one speed has
    /// M = m_e ∫φ² ds, and this is (F.18).
    /// </summary>
    /// <param name="airDensity">Density of the air ρ.</param>
    /// <param name="frequency">Natural frequency n.</param>
    /// <param name="generalizedMass">Generalized mass M of the mode, in the scale of the amplitudes.</param>
    /// <param name="strips">The pieces of all bodies in the wind.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double Decrement(Density airDensity, Frequency frequency, Mass generalizedMass, params ReadOnlySpan<DampingStrip> strips)
    {
        double rho = GustInput.Positive(airDensity.KilogramsPerCubicMeter, 2, nameof(airDensity)), sum = 0;
        foreach (DampingStrip strip in strips)
        {
            if (!double.IsFinite(strip.Amplitude))
                throw new ArgumentOutOfRangeException(nameof(strips), "A modal amplitude is not finite.");
            sum += GustInput.Positive(strip.ForceCoefficient, 10, nameof(strips)) * GustInput.Positive(strip.Width.Meters, 2000, nameof(strips))
                * GustInput.Positive(strip.MeanSpeed.MetersPerSecond, 200, nameof(strips)) * GustInput.Positive(strip.Length.Meters, 2000, nameof(strips))
                * strip.Amplitude * strip.Amplitude;
        }
        return rho * sum / (2 * GustInput.Positive(frequency.Hertz, 1000, nameof(frequency)) * GustInput.Positive(generalizedMass.Kilograms, 1e12, nameof(generalizedMass)));
    }
}
