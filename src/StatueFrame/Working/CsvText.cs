using System.Globalization;
using System.Text;

namespace StatueFrame;

/// <summary>Comma-separated values by RFC 4180, with full digits and a point for the decimals.</summary>
internal static class CsvText
{
    /// <summary>Appends a line.</summary>
    public static void AppendLine(StringBuilder text, IEnumerable<string> fields) =>
        text.Append(string.Join(',', fields.Select(Quoted))).Append("\r\n");

    /// <summary>A column's head, as in "sway at tip [mm]".</summary>
    public static string Head(string name, Dimension dimension, DisplayUnits units)
    {
        string unit = dimension.Unit(units);
        return unit.Length == 0 ? name : $"{name} [{unit}]";
    }

    /// <summary>A number in the display units; empty when there is none.</summary>
    public static string Number(double? si, Dimension dimension, DisplayUnits units) =>
        si is { } value && double.IsFinite(value) ? dimension.Value(value, units).ToString("R", CultureInfo.InvariantCulture) : "";

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny("\",\r\n") < 0 ? field : $"\"{field.Replace("\"", "\"\"")}\"";
}
