using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>The checks of a package: a table with the governing ones first, and the workings.</summary>
internal sealed class PackageChecks
{
    private readonly CalculationPackage package;
    private readonly HtmlText html;
    private readonly Check[] done;
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

    public void WriteSummary()
    {
        html.Element("p", package.Sheet.VerdictText, ("class", "verdict"));
        html.Element("h3", "Governing check of each family");
        WriteTable(package.Sheet.GoverningByFamily.OrderByDescending(c => c.Utilization ?? 0));
        html.Element("h3", "All checks");
        WriteTable(done);
    }

    public void WriteWorkings()
    {
        html.Element("p", "Each formula is the one that was computed: first in symbols, then with its numbers, then its value. Numbers are rounded for print only.");
        foreach ((int i, Check check) in done.Index())
        {
            if (ShowsWorking(check))
                WriteWorking(check, i);
        }
    }

    private bool ShowsWorking(Check check) =>
        package.Workings == WorkingExtent.EveryCheck || check.Verdict == Verdict.Fail
        || ReferenceEquals(check, Array.Find(done, c => c.Id == check.Id));

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
                        int number = Array.FindIndex(done, c => ReferenceEquals(c, check));
                        html.Element("a", check.Title, ("href", ShowsWorking(check) ? $"#working-{number + 1}" : null));
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

    private string VerdictOf(Check check)
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

    private void WriteWorking(Check check, int number)
    {
        using (html.Element("article", ("class", "working"), ("id", $"working-{number + 1}"), ("aria-labelledby", $"working-{number + 1}-title")))
        {
            string place = Place(check);
            html.Element("h3", place.Length > 0 ? $"{check.Title}: {place}" : check.Title, ("id", $"working-{number + 1}-title"));
            using (html.Element("p", ("class", "rule")))
                html.Element("code", check.Id).Text($"  {check.Source}");
            foreach (WorkingLine line in check.Working().Lines)
                WriteLine(line);
        }
        html.Line();
    }

    private void WriteLine(WorkingLine line)
    {
        var math = new MathText(html, package.Units);
        switch (line)
        {
            case WorkingLine.Heading h:
                html.Element("h4", h.Text);
                break;
            case WorkingLine.Note n:
                html.Element("p", n.Text);
                break;
            case WorkingLine.Given g:
                using (html.Element("div", ("class", "step")))
                {
                    math.Equation(g.Symbol);
                    using (html.Element("div"))
                    {
                        math.Value(g.Value, g.Dimension, "");
                        Remark(g.Meaning, g.Source);
                    }
                }
                break;
            case WorkingLine.Computed c:
                using (html.Element("div", ("class", "step")))
                {
                    math.Equation(c.Symbol);
                    using (html.Element("div"))
                        math.Formula(c.Formula);
                    if (c.Substituted is not null)
                    {
                        using (html.Element("div"))
                            math.Formula(c.Substituted, "=");
                    }
                    using (html.Element("div"))
                    {
                        math.Value(c.Value, c.Dimension);
                        Remark(c.Meaning, c.Source);
                    }
                }
                break;
        }
    }

    private void Remark(string meaning, Source? source)
    {
        if (meaning.Length > 0)
            html.Text(" ").Element("span", meaning);
        if (source is not null)
            html.Text(" ").Element("span", $"[{source}]", ("class", "source"));
    }
}
