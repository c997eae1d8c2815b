using static System.FormattableString;

namespace StatueFrame;

/// <summary>Guards and the one function that the gust factors of both standards share.</summary>
internal static class GustInput
{
    /// <summary>The value, when it is greater than zero and at most <paramref name="most"/>.</summary>
    public static double Positive(double value, double most, string name) =>
        value > 0 && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(name, Invariant($"Must be greater than 0 and at most {most} in SI units, is {value}."));

    public static void Valid(WindProfile wind)
    {
        ArgumentNullException.ThrowIfNull(wind);
        var v = new Validator();
        wind.Validate(v);
        v.ThrowIfAny();
    }

    /// <summary>
    /// How much of a gust acts at once over a length, R(η) = 1/η − (1 − e^(−2η))/(2η²): EN 1991-1-4 (B.7), ASCE/SEI 7
    /// (26.11-15a). R(0) = 1.
    /// </summary>
    public static double Admittance(double eta) =>
        eta < 1e-3
            ? 1 - eta * (2.0 / 3 - eta * (1.0 / 3 - eta * (2.0 / 15)))
            : 1 / eta - (1 - Math.Exp(-2 * eta)) / (2 * eta * eta);
}
