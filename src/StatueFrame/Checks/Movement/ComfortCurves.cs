using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>How much horizontal sway in the wind people accept, by its frequency.</summary>
/// <remarks>
/// Pure functions, safe on any thread. The curves are guides to comfort, not limits of safety, and were made for people
/// inside buildings; nobody measured visitors inside statues.
/// </remarks>
public static class ComfortCurves
{
    internal static readonly Source Iso10137 = new("ISO 10137:2007", "Annex D, Figure D.1");
    internal static readonly Source Iso6897 = new("ISO 6897:1984", "curve 1 of Figure 1");

    /// <summary>
    /// Peak acceleration in the strongest wind of a year, for a lowest natural frequency from 0.06 to 5 Hz: offices
    /// 0.06 f^−0.445 m/s² up to 1 Hz, 0.06 m/s² up to 2 Hz, 0.03 f above; residences two thirds of that.
    /// </summary>
    /// <param name="frequency">Lowest natural frequency in the direction of the sway, 0.06 to 5 Hz.</param>
    /// <param name="use">What people do there.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is outside the curve, or the use is unknown.</exception>
    public static Acceleration YearlyPeak(Frequency frequency, ComfortUse use)
    {
        double f = frequency.Hertz;
        if (!IsInside(f, YearlyRange))
            throw new ArgumentOutOfRangeException(nameof(frequency), Invariant($"The curve runs from 0.06 to 5 Hz, not to {f} Hz."));
        return Acceleration.FromMetersPerSecondSquared(YearlyPeak(null, f, use));
    }

    /// <summary>
    /// Root-mean-square acceleration in the worst ten minutes of a five-year storm, for a natural frequency from 0.063 to
    /// 1 Hz: 0.026 f^−0.412 m/s², at which about one in fifty people in a general building would complain.
    /// </summary>
    /// <param name="frequency">Natural frequency, 0.063 to 1 Hz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is outside the curve.</exception>
    public static Acceleration FiveYearRms(Frequency frequency)
    {
        double f = frequency.Hertz;
        if (!IsInside(f, RmsRange))
            throw new ArgumentOutOfRangeException(nameof(frequency), Invariant($"The curve runs from 0.063 to 1 Hz, not to {f} Hz."));
        return Acceleration.FromMetersPerSecondSquared(FiveYearRms(null, f));
    }

    internal static (double Least, double Most) YearlyRange => (0.06, 5);

    internal static (double Least, double Most) RmsRange => (0.063, 1);

    internal static bool IsInside(double f, (double Least, double Most) range) => f >= range.Least && f <= range.Most;

    internal static double YearlyPeak(Working? w, double f, ComfortUse use)
    {
        double a_0 = w.Given("a_0", use switch
        {
            ComfortUse.Office => 0.06,
            ComfortUse.Residence => 0.04,
            _ => throw new ArgumentOutOfRangeException(nameof(use)),
        }, Dimension.Acceleration, use == ComfortUse.Office ? "offices, 1 to 2 Hz" : "residences, 1 to 2 Hz", Iso10137);
        double f_1 = w.Given("f_1", f < 1 ? 1 : 2, Dimension.Frequency, "end of the level stretch");
        return f < 1 ? w.Let("a_limit", a_0 * Math.Pow(f / f_1, -0.445), Dimension.Acceleration, Iso10137)
            : f <= 2 ? w.Let("a_limit", a_0, Dimension.Acceleration, Iso10137)
            : w.Let("a_limit", a_0 * f / f_1, Dimension.Acceleration, Iso10137);
    }

    internal static double FiveYearRms(Working? w, double f)
    {
        double a_1 = w.Given("a_1", 0.026, Dimension.Acceleration, "curve 1 at 1 Hz", Iso6897);
        double f_1 = w.Given("f_1", 1, Dimension.Frequency, "where the curve is a_1");
        return w.Let("a_limit", a_1 * Math.Pow(f / f_1, -0.412), Dimension.Acceleration, Iso6897);
    }
}
