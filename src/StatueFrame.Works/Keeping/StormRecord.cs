using System.Globalization;
using CsvHelper;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>What the instruments on a statue recorded in one storm.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record StormRecord
{
    /// <summary>Name, as in "storm of 3 November".</summary>
    public required string Name { get; init; }

    /// <summary>The named point whose sway was measured.</summary>
    public required string Point { get; init; }

    /// <summary>The readings, at least three.</summary>
    public required ValueList<StormReading> Readings { get; init; }

    /// <summary>Accelerations during the storm, for frequency and damping; null when none were recorded.</summary>
    public SiteRecord? Accelerations { get; init; }

    /// <summary>Tilt of the tower in calm after the storm less that before; null when it was not read.</summary>
    public Angle? TiltLeft { get; init; }

    /// <summary>Standard error of <see cref="TiltLeft"/>.</summary>
    public Angle TiltError { get; init; }

    /// <summary>Reads readings from comma-separated values with the heading "gust_m_s,sway_mm,error_mm"; other columns are passed over.</summary>
    /// <param name="csv">The text.</param>
    /// <exception cref="InvalidStatueException">Lines have problems; all, or the first hundred, are listed with their number.</exception>
    public static ValueList<StormReading> ParseReadings(string csv)
    {
        using CsvReader reader = CsvTable.Open(csv, "gust_m_s", "sway_mm", "error_mm");
        var v = new Validator();
        var readings = new List<StormReading>();
        for (int line = 2; reader.Read() && v.Problems.Count < 100; line++)
        {
            int at = line;
            readings.Add(new StormReading(Speed.FromMetersPerSecond(Number("gust_m_s")), Length.FromMillimeters(Number("sway_mm")), Length.FromMillimeters(Number("error_mm"))));

            double Number(string column)
            {
                string text = reader.GetField(column) ?? "";
                if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value))
                    return value;
                v.At(Invariant($"line {at}")).Add(column, $"\"{text}\" is no number", "Numbers have a point for the decimals.");
                return 0;
            }
        }
        v.ThrowIfAny();
        return [.. readings];
    }

    internal void Validate(Validator v, Statue statue)
    {
        v.Named(Name);
        new StatueNames(statue).RequirePoint(v, nameof(Point), Point);
        if (Readings.Count < 3)
            v.Add(nameof(Readings), Invariant($"must be three or more, are {Readings.Count}"), "One storm of an hour has six.");
        for (int i = 0; i < Readings.Count; i++)
        {
            Validator at = v.At(nameof(Readings), i);
            at.Positive(Readings[i].GustSpeed, Readings[i].GustSpeed.MetersPerSecond, 0.5, 120, nameof(StormReading.GustSpeed));
            at.NotNegative(Readings[i].Sway, Readings[i].Sway.Meters, 20, nameof(StormReading.Sway));
            at.Positive(Readings[i].SwayError, Readings[i].SwayError.Meters, 1e-6, 1, nameof(StormReading.SwayError));
        }
        if (TiltLeft is { } tilt)
        {
            v.Within(tilt, tilt.Radians, -0.2, 0.2, nameof(TiltLeft));
            v.Positive(TiltError, TiltError.Radians, 1e-8, 0.1);
        }
    }
}
