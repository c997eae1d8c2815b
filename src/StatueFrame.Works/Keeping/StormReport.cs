using System.Text;
using StatueFrame.Reporting;
using StatueFrame.Studies;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>
/// A storm against the calculation: was the sway as foreseen for the gusts that blew, did frequency or damping drift from an
/// earlier measurement, did the tower stay tilted; each with its uncertainty.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The sway ratio k of measured = k · foreseen is found by weighted least squares; its
/// standard error grows with the scatter of the readings. Differences count beyond two standard errors (95 %). Source: JCGM
/// 100:2008, Guide to the expression of uncertainty in measurement, 5.1.2 and 6.2 (from memory).
/// </remarks>
public sealed record StormReport
{
    /// <summary>What wind along the figure and its heading leave open besides the measurement (common practice, no source).</summary>
    public const double ModelTolerance = 0.15;

    private StormReport()
    {
    }

    /// <summary>The record.</summary>
    public required StormRecord Record { get; init; }

    /// <summary>Measured over foreseen sway.</summary>
    public required double SwayRatio { get; init; }

    /// <summary>Standard error of <see cref="SwayRatio"/>.</summary>
    public required double SwayRatioError { get; init; }

    /// <summary>Whether the sway was as foreseen.</summary>
    public required StormFinding Sway { get; init; }

    /// <summary>Frequency and damping in the storm; null when no accelerations were recorded, or they told none.</summary>
    public required MeasuredMode? Mode { get; init; }

    /// <summary>The frequency and damping measured earlier; null when there are none.</summary>
    public required MeasuredMode? Earlier { get; init; }

    /// <summary>Whether the frequency is that of before.</summary>
    public required StormFinding Frequency { get; init; }

    /// <summary>Whether the damping is that of before.</summary>
    public required StormFinding Damping { get; init; }

    /// <summary>Whether a tilt stayed.</summary>
    public required StormFinding Tilt { get; init; }

    /// <summary>What the reader should know.</summary>
    public required ValueList<string> Notes { get; init; }

    /// <summary>Whether anything asks for an inspection before the next storm.</summary>
    public bool AsksForInspection => new[] { Sway, Frequency, Damping, Tilt }.Contains(StormFinding.More) || Frequency == StormFinding.Less || Damping == StormFinding.Less;

    /// <summary>Joins a record with the calculation.</summary>
    /// <param name="curve">The sway curve of the statue for the anemometer that was read.</param>
    /// <param name="record">What was recorded.</param>
    /// <param name="near">The frequency to look for in the accelerations; null takes the strongest.</param>
    /// <param name="earlier">Frequency and damping measured before; null when there are none.</param>
    /// <exception cref="InvalidStatueException">The record has problems; all are listed.</exception>
    public static StormReport Of(SwayCurve curve, StormRecord record, Frequency? near = null, MeasuredMode? earlier = null)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(record);
        var v = new Validator();
        record.Validate(v.At(nameof(record)), curve.Model.Statue);
        double designGust = curve.DesignGustSpeed.MetersPerSecond;
        for (int i = 0; v.Problems.Count == 0 && i < record.Readings.Count; i++)
        {
            if (record.Readings[i].GustSpeed.MetersPerSecond > designGust * (1 + 1e-9))
                v.At(nameof(record)).At(nameof(StormRecord.Readings), i).Add(nameof(StormReading.GustSpeed), Invariant($"{record.Readings[i].GustSpeed.MetersPerSecond:0.0} m/s is above the design gust of {designGust:0.0} m/s at the anemometer"), "The storm was stronger than the design: inspect the figure whatever the sway, and draw the curve for a stronger wind.");
        }
        v.ThrowIfAny();
        var notes = new List<string>();
        (double k, double u) = Ratio(curve, record);
        MeasuredMode? mode = null;
        if (record.Accelerations is { } accelerations)
        {
            try
            {
                mode = HalfPowerBand.Of(accelerations, near);
            }
            catch (SiteRecordException e)
            {
                notes.Add($"Accelerations tell no frequency: {e.Message}");
            }
        }
        StormFinding sway = 2 * u > 0.5 ? StormFinding.NotKnown : k - 2 * u > 1 + ModelTolerance ? StormFinding.More : k + 2 * u < 1 - ModelTolerance ? StormFinding.Less : StormFinding.AsForeseen;
        if (sway == StormFinding.Less)
            notes.Add("Less sway than foreseen is safe as long as the heading of the storm was one that moves the point less.");
        notes.AddRange(curve.Warnings);
        return new StormReport
        {
            Record = record,
            SwayRatio = k,
            SwayRatioError = u,
            Sway = sway,
            Mode = mode,
            Earlier = earlier,
            Frequency = Changed(mode?.Frequency.Hertz, mode?.FrequencyError.Hertz, earlier?.Frequency.Hertz, earlier?.FrequencyError.Hertz),
            Damping = Changed(mode?.DampingRatio, mode?.DampingError, earlier?.DampingRatio, earlier?.DampingError),
            Tilt = record.TiltLeft is not { } tilt ? StormFinding.NotKnown : Math.Abs(tilt.Radians) > 2 * record.TiltError.Radians ? StormFinding.More : StormFinding.AsForeseen,
            Notes = [.. notes],
        };
    }

    /// <summary>The report as plain text, with the caution.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendLine(text, $"AFTER THE STORM: {Record.Name}");
        TextLayout.AppendWrapped(text, "  ", AsksForInspection ? "INSPECT before the next storm: something was not as foreseen." : "Nothing measured asks for an inspection; what was not measured is not known.");
        TextLayout.AppendWrapped(text, "  sway       ", Invariant($"at {Record.Point} {SwayRatio:0.00} ± {SwayRatioError:0.00} of what was foreseen, from {Record.Readings.Count} readings up to {Record.Readings.Max(r => r.GustSpeed.MetersPerSecond):0.0} m/s: {Word(Sway)}"));
        TextLayout.AppendWrapped(text, "  frequency  ", Mode is null ? "not measured" : $"{Mode}; {(Earlier is null ? "nothing to compare with" : $"before {Earlier}")}: {Word(Frequency, "as before", "lower than before: something gives that did not", "higher than before")}");
        TextLayout.AppendWrapped(text, "  damping    ", Mode is null ? "not measured" : Word(Damping, "as before", "lower than before", "higher than before: something rubs or has come loose"));
        TextLayout.AppendWrapped(text, "  tilt       ", Record.TiltLeft is { } t ? Invariant($"{1000 * t.Radians:0.00} ± {1000 * Record.TiltError.Radians:0.00} mm/m stayed: {Word(Tilt, "within the error of reading", "", "the tower did not come back")}") : "not read");
        foreach (string note in Notes)
            TextLayout.AppendWrapped(text, "  ", note);
        TextLayout.AppendWrapped(text, "  ", Drawing.Caution);
        return text.ToString();
    }

    private static string Word(StormFinding finding, string same = "as foreseen", string less = "less than foreseen", string more = "MORE THAN FORESEEN") => finding switch
    {
        StormFinding.AsForeseen => same,
        StormFinding.Less => less,
        StormFinding.More => more,
        _ => "cannot be told",
    };

    private static StormFinding Changed(double? now, double? error, double? before, double? errorBefore)
    {
        if (now is null || before is null)
            return StormFinding.NotKnown;
        double u = Math.Sqrt(error!.Value * error.Value + errorBefore!.Value * errorBefore.Value), change = now.Value - before.Value;
        return Math.Abs(change) <= 2 * u ? StormFinding.AsForeseen : change > 0 ? StormFinding.More : StormFinding.Less;
    }

    private static (double K, double Error) Ratio(SwayCurve curve, StormRecord record)
    {
        double toMean = curve.DesignMeanSpeed.MetersPerSecond / curve.DesignGustSpeed.MetersPerSecond, ee = 0, em = 0;
        var pairs = new (double E, double M, double U)[record.Readings.Count];
        for (int i = 0; i < pairs.Length; i++)
        {
            StormReading r = record.Readings[i];
            // Calm sway under the weight is there before the wind: only what the wind adds is compared.
            double calm = curve.At(Speed.Zero).At(record.Point).Gust.Meters, e = curve.At(Speed.FromMetersPerSecond(Math.Min(toMean * r.GustSpeed.MetersPerSecond, curve.DesignMeanSpeed.MetersPerSecond))).At(record.Point).Gust.Meters - calm;
            pairs[i] = (e, r.Sway.Meters, r.SwayError.Meters);
            ee += e * e / (pairs[i].U * pairs[i].U);
            em += e * pairs[i].M / (pairs[i].U * pairs[i].U);
        }
        double k = em / ee, chi = pairs.Sum(p => Math.Pow((p.M - k * p.E) / p.U, 2)) / (pairs.Length - 1);
        return (k, Math.Sqrt(Math.Max(1, chi) / ee));
    }
}
