using System.Globalization;

namespace StatueFrame;

/// <summary>Refuses numbers that a formula cannot take, with the name of the input.</summary>
internal static class CheckInput
{
    public static double Positive(double value, string name) =>
        double.IsFinite(value) && value > 0 ? value : throw Bad(name, "must be greater than zero", value);

    public static double NotNegative(double value, string name) =>
        double.IsFinite(value) && value >= 0 ? value : throw Bad(name, "must be zero or more", value);

    public static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw Bad(name, "must be finite", value);

    public static double Within(double value, double least, double most, string name) =>
        double.IsFinite(value) && value >= least && value <= most
            ? value
            : throw Bad(name, string.Create(CultureInfo.InvariantCulture, $"must be from {least:g6} to {most:g6}"), value);

    private static ArgumentOutOfRangeException Bad(string name, string rule, double value) =>
        new(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} {rule} (SI units), is {value:g6}."));
}
