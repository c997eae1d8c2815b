using System.Globalization;

namespace Regression;

/// <summary>What differs between two stable texts of sheets, in words for the one who reads a failed test.</summary>
internal static class SheetDifference
{
    private sealed record Line(string Key, string Number, string Words);

    /// <summary>The lines that differ by more than one unit of the last significant digit, and what governs; empty when none does.</summary>
    public static string Of(string kept, string now, int digits)
    {
        Dictionary<string, Line> before = Lines(kept), after = Lines(now);
        string[] changes =
        [
            .. before.Values.Where(line => !after.ContainsKey(line.Key)).Select(line => $"- {line.Key}: {line.Number} {line.Words}"),
            .. after.Values.Where(line => !before.ContainsKey(line.Key)).Select(line => $"+ {line.Key}: {line.Number} {line.Words}"),
            .. after.Values.Where(line => before.ContainsKey(line.Key)).Select(line => Change(before[line.Key], line, digits)).OfType<string>(),
        ];
        return changes.Length == 0 ? "" : string.Join('\n', [$"governed: {Governing(before.Values)}", $"governs now: {Governing(after.Values)}", .. changes]);
    }

    private static string? Change(Line before, Line after, int digits)
    {
        string verdict = before.Words == after.Words ? "" : $", {before.Words} → {after.Words}";
        if (!double.TryParse(before.Number, CultureInfo.InvariantCulture, out double x) || !double.TryParse(after.Number, CultureInfo.InvariantCulture, out double y))
            return before.Number == after.Number && verdict.Length == 0 ? null : $"  {after.Key}: {string.Join(" → ", new[] { before.Number, after.Number }.Distinct())}{verdict}";
        // A number may stand on the edge between two roundings: one unit of the last digit is noise.
        double size = Math.Max(Math.Abs(x), Math.Abs(y));
        double unit = size == 0 ? 0 : Math.Pow(10, Math.Floor(Math.Log10(size)) + 1 - digits);
        if (Math.Abs(x - y) <= 1.001 * unit && verdict.Length == 0)
            return null;
        string part = x == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({100 * (y - x) / Math.Abs(x):+0.0;-0.0} %)");
        return $"  {after.Key}: {before.Number} → {after.Number}{part}{verdict}";
    }

    private static string Governing(IEnumerable<Line> lines) =>
        lines.Where(line => line.Key.StartsWith("check", StringComparison.Ordinal))
            .Select(line => (line.Key, Utilization: double.TryParse(line.Number, CultureInfo.InvariantCulture, out double u) ? u : -1))
            .OrderByDescending(line => line.Utilization).ThenBy(line => line.Key, StringComparer.Ordinal).Select(line => $"{line.Key}: {line.Utilization.ToString(CultureInfo.InvariantCulture)}").FirstOrDefault("nothing");

    /// <summary>A check is known by id, place and situation and has a utilization; a result by group and name and has a value.</summary>
    private static Dictionary<string, Line> Lines(string text)
    {
        var lines = new Dictionary<string, Line>();
        foreach (string row in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] f = [.. row.Split(" | ").Select(field => field.Trim())];
            Line line = f switch
            {
                ["check", var id, var where, var situation, _, _, var utilization, var verdict] => new($"check {id}, {where}, {situation}", utilization, verdict),
                ["result", var group, var name, var value, ..] => new($"result {group}, {name}", value, ""),
                ["verdict", var verdict] => new("verdict", "", verdict),
                _ => new(row, "", ""),
            };
            // Lines of the same name are told apart by their order.
            string key = line.Key;
            for (int n = 2; !lines.TryAdd(key, line with { Key = key }); n++)
                key = $"{line.Key} ({n})";
        }
        return lines;
    }
}
