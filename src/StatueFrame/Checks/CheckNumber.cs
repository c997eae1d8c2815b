using System.Globalization;

namespace StatueFrame.Checks;

/// <summary>Numbers of a check sheet as text, the same on every machine.</summary>
internal static class CheckNumber
{
    // Two computations of one number agree to far more digits than this, and two numbers that matter differ in fewer.
    private const int DigitsAboveNoise = 9;
    private const double Noise = 1e-9;

    /// <summary>A utilization to two decimals; one above 1 never reads as 1.00, and one below 1 may.</summary>
    public static string Utilization(double value) =>
        double.IsPositiveInfinity(value) ? "∞"
        : value > 1 && value < 1.005 ? ">1.00"
        : value.ToString(value < 100 ? "0.00" : "0", CultureInfo.InvariantCulture);

    /// <summary>The value without the digits that two machines may see differently.</summary>
    public static double WithoutNoise(double value) => Round(value, DigitsAboveNoise);

    /// <summary>
    /// The value to some significant digits. Noise is rounded away first, so that a value half-way between two texts
    /// always gets the same one; a value that is noise beside <paramref name="scale"/> is 0.
    /// </summary>
    public static string Stable(double value, int digits, double scale = 0)
    {
        double rounded = Math.Abs(value) <= Noise * scale ? 0 : Round(WithoutNoise(value), digits);
        return rounded.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>True when two values differ by more than a fraction of the greater, and by more than noise.</summary>
    public static bool Differ(double a, double b, double tolerance, double scale) =>
        double.IsFinite(a) && double.IsFinite(b)
            ? Math.Abs(a - b) > Math.Max(tolerance * Math.Max(Math.Abs(a), Math.Abs(b)), Noise * scale)
            : !a.Equals(b);

    private static double Round(double value, int digits) =>
        value == 0 || !double.IsFinite(value) ? value
        : double.Parse(value.ToString("e" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
