using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>The checks of a package in their order, governing ones first, and the tables that list them.</summary>
internal sealed class PackageChecks
{
    /// <summary>How many parts of a kind have a line of their own.</summary>
    private const int MostParts = 6;

    /// <summary>Kinds of check that are nowhere used to so much have no working in what is printed; the appendix has it.</summary>
    private const double LeastShown = 0.25;

    private readonly CalculationPackage package;
    private readonly HtmlText html;
    private readonly Check[] done;
    private readonly Dictionary<Check, int> numbers = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Check> full;

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
        full = new(
            done.DistinctBy(c => c.Id).Where(c => c.Utilization >= LeastShown).Concat(done.DistinctBy(c => c.Family)).Concat(done.Where(c => c.Verdict == Verdict.Fail)),
            ReferenceEqualityComparer.Instance);
        Assumptions = new AssumptionOrder(package.Sheet);
    }

    /// <summary>The assumptions with their numbers.</summary>
    public AssumptionOrder Assumptions { get; }

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
        if (done.Any(c => c.Verdict == Verdict.Fail))
        {
            html.Element("h3", "Checks that fail");
            WriteTable(done.Where(c => c.Verdict == Verdict.Fail));
        }
        html.Element("h3", "Kinds of check");
        if (package.Workings == WorkingExtent.WorstAndTables)
            html.Element("p", "Each check stands with its numbers under Workings.");
        else if (package.Workings == WorkingExtent.WorstOfEachKind)
            html.Element("p", FormattableString.Invariant($"A kind that is nowhere used to {100 * LeastShown:0} % has no working here, unless it governs its family; its numbers stand below, its working in a package of all workings."));
        WriteKinds();
        if (package.Workings == WorkingExtent.WorstOfEachKind)
        {
            html.Element("h3", "Every part where it is used most");
            html.Element("p", $"One line for each kind of check and each part, in the situation where it is worst; the {MostParts} worst parts of a kind.");
            using (html.Element("div", ("class", "columns")))
                WriteParts();
        }
        else if (package.Workings == WorkingExtent.EveryCheck)
        {
            html.Element("h3", "All checks");
            WriteTable(done);
        }
    }

    /// <summary>A table a kind of check, whose lines are short: what is alike in all of them stands in its caption.</summary>
    private void WriteParts()
    {
        foreach (IGrouping<string, Check> kind in package.Sheet.WorstOfParts().Where(c => c.Utilization is not null).OrderByDescending(c => c.Utilization).GroupBy(c => c.Id).Where(kind => kind.Skip(1).Any()))
        {
            using (html.Element("table", ("class", "others")))
            {
                using (html.Element("caption"))
                    html.Text($"{kind.First().Title} ").Element("code", kind.Key);
                Heads(html, ["where", "demand", "capacity", "util."]);
                using var body = html.Element("tbody");
                foreach (Check check in kind.Take(MostParts))
                {
                    using (html.Element("tr", ("class", check.Verdict == Verdict.Fail ? "fail" : null)))
                    {
                        html.Element("td", Place(check));
                        html.Element("td", Number(check.Demand, check), ("class", "number")).Element("td", Number(check.Capacity, check), ("class", "number"));
                        html.Element("td", check.UtilizationText, ("class", "number"));
                    }
                    html.Line();
                }
                Check[] others = [.. kind.Skip(MostParts)];
                if (others.Length > 0)
                {
                    using var row = html.Element("tr");
                    html.Element("td", FormattableString.Invariant($"and {others.Length} more parts")).Element("td", "").Element("td", "").Element("td", $"≤ {others[0].UtilizationText}", ("class", "number"));
                }
            }
            html.Line();
        }
    }

    /// <summary>True when the check's numbers stand under the workings.</summary>
    private bool HasNumbers(Check check) =>
        package.Workings != WorkingExtent.WorstOfEachKind || IsShort(check);

    /// <summary>True when the check belongs to the shortest extent.</summary>
    public bool IsShort(Check check) => full.Contains(check);

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
                    html.Element("a", worst.Title, ("href", HasNumbers(worst) ? $"#{IdOf(worst)}" : null)).Text(" ").Element("code", worst.Id);
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
        string assumed = string.Join("; ", Assumptions.Unlisted(check).Prepend(Assumptions.NumbersOf(check)).Where(part => part.Length > 0));
        return check.VerdictWord + (assumed.Length > 0 ? $", assuming {assumed}" : "") + (check.Reason.Length > 0 ? $": {check.Reason}" : "");
    }
}
