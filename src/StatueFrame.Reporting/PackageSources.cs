using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>The documents that a package rests on, and the places in them.</summary>
internal static class PackageSources
{
    /// <summary>The documents by name.</summary>
    public static IEnumerable<string> Documents(CalculationPackage package) =>
        All(package.Sheet).Where(IsDocument).Select(s => s.Document).Distinct().Order(StringComparer.Ordinal);

    /// <summary>Every document with its places.</summary>
    public static void Write(CalculationPackage package, HtmlText html)
    {
        using var table = html.Element("table");
        PackageChecks.Heads(html, ["document", "places"]);
        using var body = html.Element("tbody");
        foreach (IGrouping<string, Source> document in All(package.Sheet).Distinct().GroupBy(s => s.Document).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            using (html.Element("tr"))
            {
                html.Element("th", document.Key, ("scope", "row"));
                html.Element("td", string.Join("; ", document.Select(s => s.Place).Where(p => p.Length > 0).Distinct().Order(StringComparer.Ordinal)));
            }
            html.Line();
        }
    }

    private static bool IsDocument(Source source) =>
        source != Source.CommonPractice && source != Source.User && source.Document != Source.Assumed("").Document;

    /// <summary>The sources of the checks, of every line of their workings, and of the assumptions.</summary>
    private static IEnumerable<Source> All(CheckSheet sheet)
    {
        foreach (Assumption assumption in sheet.Assumptions)
            yield return assumption.Source;
        foreach (Check check in sheet.Checks)
            yield return check.Source;
        // The checks of one kind share their sources: the first of each kind speaks for all.
        foreach (Check check in sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked).DistinctBy(c => (c.Id, c.Source)))
        {
            foreach (WorkingLine line in check.Working().Lines)
            {
                Source? source = line switch { WorkingLine.Given g => g.Source, WorkingLine.Computed c => c.Source, _ => null };
                if (source is not null)
                    yield return source;
            }
        }
    }
}
