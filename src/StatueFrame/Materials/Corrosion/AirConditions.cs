using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Yearly means of what makes air corrosive. The dose-response functions were fitted for −17.1 to 28.7 °C, 34 to 93 %
/// humidity, 0.7 to 150.4 mg/(m²·d) of SO₂ and 0.4 to 760.5 mg/(m²·d) of chloride; other values are accepted with a warning.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source of the ranges: ISO 9223:2012, Table 3. Time of wetness is not an
/// input of the functions of 2012; relative humidity has taken its place.
/// </remarks>
public sealed record AirConditions
{
    /// <summary>mg/(m²·d) that a kg/(m²·s) makes.</summary>
    private const double PerDay = 86_400e6;

    /// <summary>Mean temperature, −40 to 50 °C.</summary>
    public required Temperature Temperature { get; init; }

    /// <summary>Mean relative humidity, 0 to 100 %.</summary>
    public required RelativeHumidity Humidity { get; init; }

    /// <summary>Dry deposition of sulfur dioxide P_d, 0 to 1000 mg/(m²·d).</summary>
    public required MassFlux SulfurDioxide { get; init; }

    /// <summary>Deposition of chloride S_d, 0 to 10 000 mg/(m²·d).</summary>
    public required MassFlux Chloride { get; init; }

    /// <summary>
    /// The deposition that goes with a concentration of sulfur dioxide in the air: P_d in mg/(m²·d) is 0.8 times P_c in
    /// µg/m³ (ISO 9223:2012, Table B.1 note, from memory).
    /// </summary>
    /// <param name="concentration">Yearly mean concentration.</param>
    public static MassFlux DepositionOf(Density concentration) => Deposition(0.8e9 * concentration.KilogramsPerCubicMeter);

    /// <summary>A deposition of so many mg/(m²·d).</summary>
    /// <param name="milligramsPerSquareMeterDay">The number.</param>
    public static MassFlux Deposition(double milligramsPerSquareMeterDay) =>
        MassFlux.FromKilogramsPerSecondPerSquareMeter(milligramsPerSquareMeterDay / PerDay);

    internal double Celsius => Temperature.DegreesCelsius;

    internal double Percent => Humidity.Percent;

    internal double Pd => Daily(SulfurDioxide);

    internal double Sd => Daily(Chloride);

    /// <summary>What lies outside the range that the functions were fitted for.</summary>
    internal IEnumerable<string> RangeWarnings()
    {
        const string Text = "lies outside the range that the dose-response functions of ISO 9223 were fitted for";
        if (Celsius is < -17.1 or > 28.7)
            yield return $"The air's temperature {Text}, −17.1 to 28.7 °C.";
        if (Percent is < 34 or > 93)
            yield return $"The air's humidity {Text}, 34 to 93 %.";
        if (Pd is < 0.7 or > 150.4)
            yield return $"The deposition of sulfur dioxide {Text}, 0.7 to 150.4 mg/(m²·d).";
        if (Sd is < 0.4 or > 760.5)
            yield return $"The deposition of chloride {Text}, 0.4 to 760.5 mg/(m²·d).";
    }

    internal void Validate(Validator v)
    {
        v.Within(Temperature, Celsius, -40, 50);
        v.InRange(Percent, 0, 100, "It is a yearly mean in percent, near 75 in most places.", nameof(Humidity));
        v.InRange(Pd, 0, 1000, "It is in mg/(m²·d): under 4 in the country, 4 to 24 in towns.", nameof(SulfurDioxide));
        v.InRange(Sd, 0, 10_000, "It is in mg/(m²·d): under 3 inland, 60 to 1500 at the sea.", nameof(Chloride));
    }

    private static double Daily(MassFlux flux) => flux.KilogramsPerSecondPerSquareMeter * PerDay;
}
