using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of what people feel of the sway on a platform.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class ComfortChecks
{
    private const string Title = "comfort of people on a platform";

    /// <summary>The peak horizontal acceleration of a platform in the strongest wind of a year against ISO 10137.</summary>
    /// <param name="platform">Name of the point.</param>
    /// <param name="peak">Peak horizontal acceleration there, zero or more.</param>
    /// <param name="frequency">Frequency of the sway there: in one mode the natural frequency, in many that at which the acceleration crosses zero upwards.</param>
    /// <param name="use">What people do there.</param>
    /// <param name="situation">Name of the situation, the wind of a year.</param>
    /// <remarks>A frequency outside the curve, 0.06 to 5 Hz, is not checked, with the reason.</remarks>
    public static Check Sway(string platform, Acceleration peak, Frequency frequency, ComfortUse use, string situation = "")
    {
        var subject = new CheckSubject("comfort.sway", Title, platform, situation);
        double a = peak.MetersPerSecondSquared, f = frequency.Hertz;
        if (!ComfortCurves.IsInside(f, ComfortCurves.YearlyRange))
            return Check.NotChecked(subject, Invariant($"the curve of ISO 10137 runs from 0.06 to 5 Hz; the frequency is {f:0.###} Hz"), ComfortCurves.Iso10137);
        return Check.Of(subject, Dimension.Acceleration, ComfortCurves.Iso10137, w =>
        {
            w.Given(f, Dimension.Frequency, "frequency of the sway");
            double limit = ComfortCurves.YearlyPeak(w, f, use);
            return (w.Given(a, Dimension.Acceleration, "peak acceleration in the wind of a year"), limit);
        });
    }

    /// <summary>The root-mean-square acceleration of a platform in the worst ten minutes of a five-year storm against ISO 6897.</summary>
    /// <param name="platform">Name of the point.</param>
    /// <param name="rms">Root mean square of the horizontal acceleration there, zero or more.</param>
    /// <param name="frequency">Natural frequency of the sway.</param>
    /// <param name="situation">Name of the situation, the wind of five years.</param>
    /// <remarks>A frequency outside the curve, 0.063 to 1 Hz, is not checked, with the reason.</remarks>
    public static Check StormSway(string platform, Acceleration rms, Frequency frequency, string situation = "")
    {
        var subject = new CheckSubject("comfort.storm-sway", Title, platform, situation);
        double a = rms.MetersPerSecondSquared, f = frequency.Hertz;
        if (!ComfortCurves.IsInside(f, ComfortCurves.RmsRange))
            return Check.NotChecked(subject, Invariant($"the curve of ISO 6897 runs from 0.063 to 1 Hz; the frequency is {f:0.###} Hz"), ComfortCurves.Iso6897);
        return Check.Of(subject, Dimension.Acceleration, ComfortCurves.Iso6897, w =>
        {
            w.Given(f, Dimension.Frequency, "natural frequency");
            double limit = ComfortCurves.FiveYearRms(w, f);
            return (w.Given(a, Dimension.Acceleration, "rms acceleration in the worst ten minutes of five years"), limit);
        });
    }
}
