using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace StatueFrame.Works;

/// <summary>Opens a table that a user wrote, and asks for the columns that it must have.</summary>
internal static class CsvTable
{
    /// <param name="csv">The text.</param>
    /// <param name="columns">The columns, in any order and case; others may stand beside them.</param>
    /// <exception cref="InvalidStatueException">The text is empty, or a column is missing.</exception>
    public static CsvReader Open(string csv, params ReadOnlySpan<string> columns)
    {
        ArgumentNullException.ThrowIfNull(csv);
        var v = new Validator();
        var reader = new CsvReader(new StringReader(csv), new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            MissingFieldFound = null,
            BadDataFound = null,
            TrimOptions = TrimOptions.Trim,
            PrepareHeaderForMatch = h => h.Header.ToLowerInvariant(),
        });
        bool hasHead = reader.Read() && reader.ReadHeader();
        if (!hasHead)
            v.Add("", "the table is empty", $"Begin with the heading {string.Join(',', columns.ToArray())}.");
        foreach (string column in columns)
        {
            if (hasHead && !reader.HeaderRecord!.Contains(column, StringComparer.OrdinalIgnoreCase))
                v.Add("line 1", $"the heading lacks \"{column}\"", NearNames.Closest(column, reader.HeaderRecord!));
        }
        v.ThrowIfAny();
        return reader;
    }
}
