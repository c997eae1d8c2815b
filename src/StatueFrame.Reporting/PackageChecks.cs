using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>The checks of a package in their order, governing ones first, and the tables that list them.</summary>
internal sealed class PackageChecks
{
    private readonly CalculationPackage package;
    private readonly HtmlText html;
    private readonly Check[] done;
    private readonly Dictionary<Check, int> numbers = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, int> assumptionNumbers = [];

    public PackageChecks(CalculationPackage package, HtmlText html)
    {
        this.package = package;
        this.html = html;
        // Governing checks first: the families by their worst check, then the checks of a family by their utilization.
        done =
        [
            .. package.Sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked)
                .GroupBy(c => c.Family)
                .OrderByDescending(family => family.Max(c => c.Utilization ?? 0))
                .SelectMany(family => family.OrderByDescending(c => c.Utilization ?? 0)),
        ];
        foreach ((int i, Check check) in done.Index())
            numbers[check] = i + 1;
        foreach ((int i, Assumption assumption) in package.Sheet.Assumptions.Index())
            assumptionNumbers.TryAdd(assumption.Short, i + 1);
    }

    /// <summary>Where and in which situation, for a table.</summary>
    public static string Place(Check check) => string.Join(", ", new[] { check.Where, check.Situation }.Where(part => part.Length > 0));

    /// <summary>A row of column heads.</summary>
    public static void Heads(HtmlText html, ReadOnlySpan<string> heads)
    {
        using var head = html.Element("thead");
        using var row = html.Element("tr");
        foreach (string text in heads)
            html.Element("th", text, ("scope", "col"));
    }

    /// <summary>Those that were done, governing ones first.</summary>
    public IReadOnlyList<Check> Done => done;

    /// <summary>The id in the page of a check's working.</summary>
    public string IdOf(Check check) => $"working-{numbers[check]}";

    public void WriteSummary()
    {
        html.Element("p", package.Sheet.VerdictText, ("class", "verdict"));
        html.Element("h3", "Governing check of each family");
        WriteTable(package.Sheet.GoverningByFamily.OrderByDescending(c => c.Utilization ?? 0));
        if (package.Workings == WorkingExtent.WorstAndTables)
        {
            if (done.Any(c => c.Verdict == Verdict.Fail))
            {
                html.Element("h3", "Checks that fail");
                WriteTable(done.Where(c => c.Verdict == Verdict.Fail));
            }
            html.Element("h3", "Kinds of check");
            html.Element("p", "Each check stands with its numbers under Workings.");
            WriteKinds();
        }
        else
        {
            html.Element("h3", "All checks");
            WriteTable(done);
        }
    }

    /// <summary>True when the check's numbers stand under the workings.</summary>
    private bool HasNumbers(Check check) =>
        package.Workings != WorkingExtent.WorstOfEachKind || IsShort(check);

    /// <summary>True when the check belongs to the shortest extent.</summary>
    public bool IsShort(Check check) => check.Verdict == Verdict.Fail || ReferenceEquals(check, Array.Find(done, c => c.Id == check.Id));

    private void WriteKinds()
    {
        using var table = html.Element("table");
        Heads(html, ["kind of check", "done", "fail", "greatest util.", "where"]);
        using var body = html.Element("tbody");
        foreach (IGrouping<string, Check> kind in done.GroupBy(c => c.Id))
        {
            Check worst = kind.First();
            int failing = kind.Count(c => c.Verdict == Verdict.Fail);
            using (html.Element("tr", ("class", failing > 0 ? "fail" : null)))
            {
                using (html.Element("td"))
                    html.Element("a", worst.Title, ("href", $"#{IdOf(worst)}")).Text(" ").Element("code", worst.Id);
                html.Element("td", $"{kind.Count()}", ("class", "number")).Element("td", $"{failing}", ("class", "number"));
                html.Element("td", worst.UtilizationText, ("class", "number")).Element("td", Place(worst));
            }
            html.Line();
        }
    }

    private void WriteTable(IEnumerable<Check> checks)
    {
        using (html.Element("div", ("class", "wide")))
        using (html.Element("table", ("class", "checks")))
        {
            Heads(html, ["check", "where", "demand", "capacity", "util.", "verdict"]);
            using var body = html.Element("tbody");
            foreach (Check check in checks)
            {
                using (html.Element("tr", ("class", check.Verdict == Verdict.Fail ? "fail" : null)))
                {
                    using (html.Element("td"))
                    {
                        html.Element("a", check.Title, ("href", HasNumbers(check) ? $"#{IdOf(check)}" : null));
                        html.Text(" ").Element("code", check.Id);
                    }
                    html.Element("td", Place(check));
                    html.Element("td", Number(check.Demand, check), ("class", "number")).Element("td", Number(check.Capacity, check), ("class", "number"));
                    html.Element("td", check.UtilizationText, ("class", "number"));
                    html.Element("td", VerdictOf(check));
                }
                html.Line();
            }
        }
    }

    private string Number(double? value, Check check) =>
        value is { } v ? check.Dimension.Format(v, package.Units).Replace('-', '−') : "–";

    /// <summary>Pass or fail, the numbers of the assumptions it rests on, and the reason.</summary>
    public string VerdictOf(Check check)
    {
        string word = check.Verdict == Verdict.Pass ? "pass" : "FAIL";
        int[] numbers = [.. check.AssumedInputs.Select(input => assumptionNumbers.GetValueOrDefault(input)).Where(n => n > 0).Distinct().Order()];
        string[] others = [.. check.AssumedInputs.Where(input => !assumptionNumbers.ContainsKey(input))];
        string assumed = string.Join("; ", others.Prepend(Ranges(numbers)).Where(part => part.Length > 0));
        return word + (assumed.Length > 0 ? $", assuming {assumed}" : "") + (check.Reason.Length > 0 ? $": {check.Reason}" : "");
    }

    private static string Ranges(int[] numbers)
    {
        var parts = new List<string>();
        for (int first = 0, last; first < numbers.Length; first = last + 1)
        {
            for (last = first; last + 1 < numbers.Length && numbers[last + 1] == numbers[last] + 1;)
                last++;
            parts.Add(last == first ? $"{numbers[first]}" : $"{numbers[first]}–{numbers[last]}");
        }
        return string.Join(", ", parts);
    }
}
