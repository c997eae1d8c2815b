using UnitsNet;

namespace StatueFrame;

/// <summary>Temperatures by EN 1991-1-5 from those of the shade air of the site, which a national annex or the weather service gives.</summary>
/// <remarks>Stateless; safe to use from many threads. The values are from memory of the standard's recommended ones; read them there.</remarks>
public static class En1991Temperatures
{
    /// <summary>The initial temperature T₀ when the one of fitting cannot be foretold (A.1 (3)): 10 °C.</summary>
    public static Temperature DefaultInitial => Temperature.FromDegreesCelsius(10);

    /// <summary>
    /// The greatest shade air temperature of another annual probability: T_max,p = T_max (k₁ − k₂ ln(−ln(1 − p))) with
    /// k₁ = 0.781, k₂ = 0.056 (Annex A, (A.1)). Temperatures in °C.
    /// </summary>
    /// <param name="maximum">T_max for p = 0.02, −20 to 60 °C.</param>
    /// <param name="probability">Annual probability p of being exceeded, 0.0001 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Temperature Maximum(Temperature maximum, double probability) => Scaled(maximum, nameof(maximum), 0.781, -0.056, probability);

    /// <summary>
    /// The least shade air temperature of another annual probability: T_min,p = T_min (k₃ + k₄ ln(−ln(1 − p))) with
    /// k₃ = 0.393, k₄ = −0.156 (Annex A, (A.2)). Temperatures in °C.
    /// </summary>
    /// <param name="minimum">T_min for p = 0.02, −60 to 60 °C.</param>
    /// <param name="probability">Annual probability p of being fallen short of, 0.0001 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Temperature Minimum(Temperature minimum, double probability) => Scaled(minimum, nameof(minimum), 0.393, -0.156, probability);

    /// <summary>
    /// What the sun adds in summer to a surface above ground (5.3, Table 5.2): 0, 2 and 4 K on a side that faces
    /// north-east, 18, 30 and 42 K on one that faces south-west or lies flat.
    /// </summary>
    /// <param name="tone">How the surface takes the sun.</param>
    /// <param name="facesSun">True for a surface that faces south-west or lies flat.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tone is unknown.</exception>
    public static TemperatureDelta SolarRise(SurfaceTone tone, bool facesSun = true) => TemperatureDelta.FromKelvins((tone, facesSun) switch
    {
        (SurfaceTone.Bright, true) => 18,
        (SurfaceTone.Light, true) => 30,
        (SurfaceTone.Dark, true) => 42,
        (SurfaceTone.Bright, false) => 0,
        (SurfaceTone.Light, false) => 2,
        (SurfaceTone.Dark, false) => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(tone)),
    });

    /// <summary>The change from the initial temperature (3.3, 5.2).</summary>
    /// <param name="then">The temperature of the part in the situation.</param>
    /// <param name="initial">Its temperature when it was fitted.</param>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is not finite.</exception>
    public static TemperatureDelta Change(Temperature then, Temperature initial) =>
        TemperatureDelta.FromKelvins(CheckInput.Finite(then.DegreesCelsius, nameof(then)) - CheckInput.Finite(initial.DegreesCelsius, nameof(initial)));

    private static Temperature Scaled(Temperature value, string name, double k, double perLog, double probability)
    {
        double T = CheckInput.Within(value.DegreesCelsius, -60, 60, name), p = CheckInput.Within(probability, 1e-4, 0.5, nameof(probability));
        return Temperature.FromDegreesCelsius(T * (k + perLog * Math.Log(-Math.Log(1 - p))));
    }
}
