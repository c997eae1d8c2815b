using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace StatueFrame.Testing;

/// <summary>
/// Runs every <see cref="PublishedValue"/> of a test project and keeps that project's part of docs/validation.md. The
/// page fails the tests when it is out of date; set STATUEFRAME_UPDATE=1 to write it anew.
/// </summary>
public static class ValidationPage
{
    private static readonly ConcurrentDictionary<Assembly, IReadOnlyList<(Type Class, PublishedValue Row)>> Rows = new();

    /// <summary>All rows of the assembly, by test class.</summary>
    public static IReadOnlyList<(Type Class, PublishedValue Row)> RowsOf(Assembly assembly) => Rows.GetOrAdd(assembly, Collect);

    private static IReadOnlyList<(Type Class, PublishedValue Row)> Collect(Assembly assembly) =>
    [
        .. assembly.GetTypes()
            .OrderBy(type => type.FullName, StringComparer.Ordinal)
            .SelectMany(type => RowsOf(type).Select(row => (type, row))),
    ];

    private static IEnumerable<PublishedValue> RowsOf(Type type) =>
        type.GetProperty("Rows", BindingFlags.Public | BindingFlags.Static)?.GetValue(null) as IEnumerable<PublishedValue> ?? [];

    public static void Check(PublishedValue row)
    {
        double ours = row.Compute();
        Assert.True(row.Lacks is null, $"{row}: {row.Lacks}.");
        Assert.True(double.IsFinite(ours) && row.Difference(ours) <= row.Tolerance,
            string.Create(CultureInfo.InvariantCulture,
                $"{row}: computed {ours:g10}, off by {row.Difference(ours):g3}, tolerance {row.Tolerance:g3}"));
    }

    /// <summary>Compares the project's part of the page with what the tests say, or writes it.</summary>
    public static void AssertUpToDate(Assembly assembly)
    {
        string page = Path.Combine(Repository.Root, "docs", "validation.md");
        string project = assembly.GetName().Name!;
        string begin = $"<!-- begin {project} -->", end = $"<!-- end {project} -->";
        string text = File.ReadAllText(page).ReplaceLineEndings("\n");
        int from = text.IndexOf(begin, StringComparison.Ordinal), to = text.IndexOf(end, StringComparison.Ordinal);
        Assert.True(from >= 0 && to > from, $"{page} lacks the markers '{begin}' and '{end}'.");
        string updated = text[..from] + begin + "\n" + Render(assembly) + text[to..];
        if (Environment.GetEnvironmentVariable("STATUEFRAME_UPDATE") == "1")
            File.WriteAllText(page, updated);
        else
            Assert.True(updated == text, "docs/validation.md is out of date: run the tests once with STATUEFRAME_UPDATE=1 and commit it.");
    }

    private static string Render(Assembly assembly)
    {
        var text = new StringBuilder();
        IReadOnlyList<(Type Class, PublishedValue Row)> rows = RowsOf(assembly);
        text.Append("\n| kind | rows | of them read back |\n|---|---:|---:|\n");
        foreach (ValueKind kind in Enum.GetValues<ValueKind>())
            text.Append(CultureInfo.InvariantCulture, $"| {KindText(kind)} | {rows.Count(r => r.Row.Kind == kind)} | {rows.Count(r => r.Row.Kind == kind && r.Row.IsReadBack)} |\n");
        foreach (var group in rows.Where(r => !r.Row.IsReadBack).GroupBy(r => r.Class))
            Append(text, Heading(group.Key), group.Select(r => r.Row));
        if (rows.Any(r => r.Row.IsReadBack))
            Append(text, "Constants read back", rows.Where(r => r.Row.IsReadBack).Select(r => r.Row));
        return text.Append('\n').ToString();
    }

    private static void Append(StringBuilder text, string heading, IEnumerable<PublishedValue> rows)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n### {heading}\n\n");
        text.Append("| feature | source | kind | expected | ours | unit | difference |\n|---|---|---|---:|---:|---|---:|\n");
        foreach (PublishedValue row in rows)
        {
            double ours = row.Compute();
            text.Append(CultureInfo.InvariantCulture,
                $"| {row.Feature} | {row.Source} | {KindText(row.Kind)} | {row.Expected:g6} | {ours:g6} | {row.Unit} | {Percent(row.Difference(ours))} |\n");
        }
    }

    private static string Heading(Type type) =>
        string.Concat(type.Name.Replace("Tests", "").Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));

    private static string KindText(ValueKind kind) => kind switch
    {
        ValueKind.Published => "published",
        ValueKind.SecondHand => "second hand",
        ValueKind.IndependentComputation => "independent computation",
        ValueKind.CommonPracticeNoSource => "common practice, no source",
        _ => "from memory",
    };

    private static string Percent(double difference) =>
        difference < 5e-6 ? "0.000 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * difference:f3} %");
}
