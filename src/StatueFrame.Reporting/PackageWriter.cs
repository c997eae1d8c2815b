using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>Lays out a <see cref="CalculationPackage"/>.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class PackageWriter(CalculationPackage package, IProgress<double>? progress, CancellationToken cancellation)
{
    private readonly HtmlText html = new();
    private readonly CheckSheet sheet = package.Sheet;
    private readonly List<(string Id, string Title)> sections = [], figures = [];

    /// <summary>The whole file.</summary>
    public string Write()
    {
        // The body is written first, for the contents to know its sections; each file has one heading of the first rank.
        WriteSections();
        var file = new HtmlText();
        file.Trusted("<!DOCTYPE html>\n");
        using (file.Element("html", ("lang", "en")))
        {
            WriteHead(file);
            using (file.Element("body"))
            {
                new PackageCover(package, file, sections, figures).Write();
                using (file.Element("main"))
                    file.Trusted(html.ToString());
                file.Line().Element("footer", CheckSheet.Caution, ("class", "caution"));
            }
        }
        return file.Line().ToString();
    }

    private void WriteHead(HtmlText file)
    {
        using var head = file.Element("head");
        file.Void("meta", ("charset", "utf-8")).Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        file.Element("title", $"Calculation package: {package.Statue.Name}");
        using var style = file.Element("style");
        file.Trusted(PackageStyle.Of(package));
    }

    private void WriteSections()
    {
        var checks = new PackageChecks(package, html);
        Section("basis", "Basis of design and combinations", () =>
        {
            WriteBasis();
            WriteCombinations();
        });
        Section("statue", "The statue", () =>
        {
            new DescriptionText(html, package.Units).Write(package.Statue, 3);
        });
        Section("actions", "Actions and limits", WriteActions, "flows");
        string[] situations = [.. package.Situations.Select(s => s.Name)];
        Section("model", "The model", () => WriteResults(line => !situations.Contains(line.Group)), "flows");
        Section("results", "Results", () => WriteGreatest(situations), "flows");
        var forces = new PackageForces(package, html);
        Section("wind", "Wind on the figure", forces.WriteWind, "flows");
        Section("equilibrium", "Equilibrium", forces.WriteEquilibrium, "flows");
        Section("forces", "Forces in tower and bars", forces.WriteInside, "flows");
        Section("load-path", "Load path", WriteLoadPath, "flows");
        Section("checks", "Checks", checks.WriteSummary);
        Section("not-checked", "What was not checked", WriteNotChecked, "flows");
        Section("warnings", "Warnings", WriteWarnings, "flows");
        Section("workings", "Workings", () => new PackageWorkings(package, checks, html).Write(progress, cancellation), "columns");
        Section("assumptions", "Assumptions", () => WriteAssumptions(checks.Assumptions), "flows");
        foreach ((int i, Appendix appendix) in package.Appendices.Index())
            Section($"appendix-{i + 1}", $"Appendix: {appendix.Title}", () => WriteAppendix(appendix));
        Section("sources", "Index of sources", () => PackageSources.Write(package, html), "flows");
    }

    private void Section(string id, string title, Action write, string? style = null)
    {
        int number = sections.Count + 1;
        sections.Add((id, $"{number}  {title}"));
        using (html.Element("section", ("id", id), ("aria-labelledby", $"{id}-title"), ("class", style)))
        {
            html.Element("h2", $"{number}  {title}", ("id", $"{id}-title")).Line();
            WriteFigures(id);
            write();
        }
        html.Line();
    }

    /// <summary>The figures of a section, numbered through the package.</summary>
    private void WriteFigures(string section)
    {
        Figure[] own = [.. package.Figures.Where(figure => figure.Section.ToString().Equals(section, StringComparison.OrdinalIgnoreCase))];
        if (own.Length == 0)
            return;
        using var grid = html.Element("div", ("class", "figures"));
        foreach (Figure figure in own)
        {
            string id = FormattableString.Invariant($"figure-{figures.Count + 1}"), title = FormattableString.Invariant($"Figure {figures.Count + 1}  {figure.Title}");
            figures.Add((id, title));
            using (html.Element("figure", ("id", id)))
            {
                html.Void("img", ("src", PackageStyle.DataUri(figure.Svg)), ("alt", figure.Description));
                html.Element("figcaption", title);
            }
            html.Line();
        }
    }

    private void WriteBasis()
    {
        using var table = html.Element("table", ("class", "description"));
        using var body = html.Element("tbody");
        foreach (BasisLine line in sheet.Basis.Where(line => line.Name != "situations"))
        {
            using var row = html.Element("tr");
            html.Element("th", line.Name, ("scope", "row")).Element("td", line.Value);
        }
    }

    /// <summary>One line a situation: its factor on every action, and the rule.</summary>
    private void WriteCombinations()
    {
        html.Element("h3", "Combinations");
        html.Element("p", "Factors on the actions of every situation that was checked. Where weights help, each check also runs with them at their own value, and overturning and sliding with 0.9 of them.");
        StatueAction[] actions = [.. package.Situations.SelectMany(s => s.Actions).Select(a => a.Action).Distinct()];
        using (html.Element("div", ("class", "wide")))
        using (html.Element("table", ("class", "checks")))
        {
            using (html.Element("thead"))
            using (html.Element("tr"))
            {
                html.Element("th", "situation", ("scope", "col")).Element("th", "for", ("scope", "col"));
                foreach ((int i, StatueAction action) in actions.Index())
                    html.Element("th", TitleOf(action, i, actions), ("scope", "col"), ("class", "number"));
                html.Element("th", "rule", ("scope", "col"));
            }
            using var body = html.Element("tbody");
            foreach (Situation situation in package.Situations)
            {
                using (html.Element("tr"))
                {
                    html.Element("th", situation.Name, ("scope", "row")).Element("td", situation.LimitState == LimitState.Strength ? "strength" : "service");
                    foreach (StatueAction action in actions)
                    {
                        double factor = situation.Actions.Where(a => a.Action.Equals(action)).Sum(a => a.Factor);
                        html.Element("td", factor == 0 ? "–" : FormattableString.Invariant($"{factor:0.###}").Replace('-', '−'), ("class", "number"));
                    }
                    html.Element("td", situation.Factors.Count > 0 ? situation.Factors[0].Source.ToString() : "written by hand");
                }
                html.Line();
            }
        }
    }

    private static string TitleOf(StatueAction action, int index, StatueAction[] all)
    {
        int same = all.Count(a => a.Title == action.Title), number = all[..(index + 1)].Count(a => a.Title == action.Title);
        return same == 1 ? action.Title : FormattableString.Invariant($"{action.Title} {number}");
    }

    private void WriteAssumptions(AssumptionOrder order)
    {
        html.Element("p", "The library took these for the user; what carries most comes first. A check that rests on one says so by its number.");
        if (sheet.Assumptions.Count == 0)
        {
            html.Element("p", "None.");
            return;
        }
        using (html.Element("table"))
        {
            Heads("no.", "what", "value taken", "source");
            using var body = html.Element("tbody");
            foreach ((int i, Assumption assumption) in order.All.Index())
            {
                using var row = html.Element("tr", ("id", $"assumption-{i + 1}"));
                html.Element("th", $"{i + 1}", ("scope", "row")).Element("td", assumption.Subject).Element("td", assumption.Value).Element("td", assumption.Source.ToString());
            }
        }
    }

    private void WriteActions()
    {
        var description = new DescriptionText(html, package.Units);
        StatueAction[] actions = [.. package.Situations.SelectMany(s => s.Actions).Select(a => a.Action).Where(a => a is not SelfWeight).Distinct()];
        foreach ((int i, StatueAction action) in actions.Index())
        {
            html.Element("h3", $"Action: {TitleOf(action, i, actions)}").Line();
            description.Write(action, 4);
        }
        if (package.Criteria is { } criteria)
        {
            html.Element("h3", "Limits").Line();
            description.Write(criteria, 4);
        }
    }

    private void WriteResults(Func<ResultLine, bool> which)
    {
        using var table = html.Element("table");
        Heads("group", "result", "value", "remark");
        using var body = html.Element("tbody");
        foreach (IGrouping<string, ResultLine> group in sheet.Results.Where(which).GroupBy(line => line.Group))
        {
            foreach ((int i, ResultLine line) in group.Index())
            {
                using (html.Element("tr", ("class", i == 0 ? "first" : null)))
                {
                    html.Element("td", i == 0 ? group.Key : "").Element("td", line.Name);
                    html.Element("td", line.Dimension.Format(line.Value, package.Units).Replace('-', '−'), ("class", "number"));
                    html.Element("td", line.Note);
                }
                html.Line();
            }
        }
    }

    /// <summary>Of every result the situation in which it is greatest; one situation is shown as it is.</summary>
    private void WriteGreatest(string[] situations)
    {
        if (situations.Length == 1)
        {
            WriteResults(line => situations.Contains(line.Group));
            return;
        }
        html.Element("p", "The greatest of each over the situations; the sheet lists them situation by situation.");
        using var table = html.Element("table");
        Heads("result", "value", "situation", "remark");
        using var body = html.Element("tbody");
        foreach (IGrouping<string, ResultLine> same in sheet.Results.Where(line => situations.Contains(line.Group)).GroupBy(line => line.Name))
        {
            ResultLine greatest = same.MaxBy(line => Math.Abs(line.Value))!;
            using (html.Element("tr"))
            {
                html.Element("td", greatest.Name).Element("td", greatest.Dimension.Format(greatest.Value, package.Units).Replace('-', '−'), ("class", "number"));
                html.Element("td", greatest.Group).Element("td", greatest.Note);
            }
            html.Line();
        }
    }

    private void WriteLoadPath()
    {
        html.Element("p", "The links by which a force travels from the sheet metal to the ground. One that no check holds is open: it needs a check of its own before this statue is said to stand.");
        using var table = html.Element("table");
        Heads("state", "link", "what of it", "utilization", "held by, or why not");
        using var body = html.Element("tbody");
        foreach (PathLink link in sheet.LoadPath)
        {
            using (html.Element("tr"))
            {
                html.Element("td", link.State switch { LinkState.Fails => "FAILS", LinkState.Open => "OPEN", _ => "holds" }).Element("td", link.Link).Element("td", link.What);
                html.Element("td", link.WorstText, ("class", "number"));
                html.Element("td", link.State == LinkState.Open ? link.Reason : string.Join(", ", link.Ids));
            }
            html.Line();
        }
    }

    private void WriteNotChecked()
    {
        Check[] open = [.. sheet.NotChecked];
        if (open.Length == 0)
        {
            html.Element("p", "Nothing that the library knows of. What it does not know of is for the engineer to see.");
            return;
        }
        using var table = html.Element("table");
        Heads("check", "where", "why not");
        using var body = html.Element("tbody");
        foreach (Check check in open)
        {
            using (html.Element("tr"))
            {
                using (html.Element("td"))
                    html.Text($"{check.Title} ").Element("code", check.Id);
                html.Element("td", PackageChecks.Place(check)).Element("td", check.Reason);
            }
            html.Line();
        }
    }

    private void WriteAppendix(Appendix appendix)
    {
        foreach (string note in appendix.Notes)
            html.Element("p", note);
        using (html.Element("div", ("class", "wide")))
        using (html.Element("table", ("class", "forces")))
        {
            Heads(appendix.Heads.AsSpan());
            using var body = html.Element("tbody");
            foreach (ValueList<string> cells in appendix.Rows)
            {
                using (html.Element("tr"))
                {
                    foreach (string cell in cells)
                        html.Element("td", cell, ("dir", "auto"));
                }
                html.Line();
            }
        }
    }

    private void WriteWarnings()
    {
        if (sheet.Warnings.Count == 0)
        {
            html.Element("p", "None.");
            return;
        }
        using var list = html.Element("ul");
        foreach (string warning in sheet.Warnings)
            html.Element("li", warning).Line();
    }

    private void Heads(params ReadOnlySpan<string> heads) => PackageChecks.Heads(html, heads);
}
