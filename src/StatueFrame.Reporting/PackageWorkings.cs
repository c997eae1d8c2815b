using StatueFrame.Checks;

namespace StatueFrame.Reporting;

/// <summary>The workings of a package: in full, or in full for the worst and as tables for others of the same steps.</summary>
internal sealed class PackageWorkings(CalculationPackage package, PackageChecks checks, HtmlText html)
{
    /// <summary>The most columns of numbers that a page has room for.</summary>
    private const int MostColumns = 8;

    /// <summary>A formula of more characters does not fit into one of two columns.</summary>
    private const int LongestInColumn = 96;

    private readonly DisplayUnits units = package.Units;

    /// <summary>The last result of a working, for which the tables have a column of their own.</summary>
    private static bool IsUtilization(FormulaNode symbol) => symbol is FormulaNode.Symbol { Name: "utilization" };

    public void Write(IProgress<double>? progress, CancellationToken cancellation)
    {
        int done = 0;
        void Tell(int more)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Report((double)(done += more) / checks.Done.Count);
        }

        cancellation.ThrowIfCancellationRequested();
        html.Element("p", "Each formula is the one that was computed: first in symbols, then with its numbers, then its value. Numbers are rounded for print only.");
        if (package.Workings != WorkingExtent.WorstAndTables)
        {
            foreach (Check check in checks.Done)
            {
                if (package.Workings == WorkingExtent.EveryCheck || checks.IsShort(check))
                    WriteWorking(check, check.Working());
                Tell(1);
            }
            return;
        }
        html.Element("p", "The worst check of each kind is shown in full. Others that go by the same steps follow it as a table of their numbers; what is not in the table is as in the full working.");
        // The first of a group is its worst: the checks are in that order.
        foreach (var group in checks.Done.Select(check => (Check: check, Working: check.Working())).GroupBy(item => StepsOf(item.Check, item.Working)))
        {
            (Check Check, Working Working)[] members = [.. group];
            WriteWorking(members[0].Check, members[0].Working);
            if (members.Length > 1)
                WriteOthers(members);
            Tell(members.Length);
        }
    }

    /// <summary>What two checks have in common when one formula after another is the same.</summary>
    private string StepsOf(Check check, Working working) =>
        string.Join('\n', working.Lines.Select(line => line switch
        {
            WorkingLine.Given g => g.Symbol.ToText(units),
            WorkingLine.Computed c => $"{c.Symbol.ToText(units)} = {c.Formula.ToText(units)}",
            WorkingLine.Heading h => h.Text,
            _ => "note",
        }).Prepend($"{check.Id} {check.Source}"));

    private void WriteWorking(Check check, Working working)
    {
        string id = checks.IdOf(check);
        bool isWide = working.Lines.OfType<WorkingLine.Computed>().Any(c => Math.Max(c.Formula.ToText(units).Length, c.Substituted?.ToText(units).Length ?? 0) > LongestInColumn);
        using (html.Element("article", ("class", isWide ? "working spans" : "working"), ("id", id), ("aria-labelledby", $"{id}-title")))
        {
            html.Element("h3", TitleOf(check), ("id", $"{id}-title"));
            using (html.Element("p", ("class", "rule")))
                html.Element("code", check.Id).Text($"  {check.Source}");
            // The last line says the verdict; what it assumes goes by its numbers here.
            foreach (WorkingLine line in working.Lines.SkipLast(1))
                WriteLine(line);
            html.Element("p", checks.VerdictOf(check));
        }
        html.Line();
    }

    private static string TitleOf(Check check) =>
        PackageChecks.Place(check) is { Length: > 0 } place ? $"{check.Title}: {place}" : check.Title;

    /// <summary>The numbers of all but the first, one check a line; columns that are alike in all are left out.</summary>
    private void WriteOthers((Check Check, Working Working)[] members)
    {
        var values = members.Select(m => m.Working.Lines.Select(ValueOf).OfType<(FormulaNode Symbol, double Value, Dimension Dimension)>().ToArray()).ToArray();
        int[] columns = [.. Enumerable.Range(0, values[0].Length).Where(i => !IsUtilization(values[0][i].Symbol) && values.Select(row => NumberOf(row[i])).Distinct().Skip(1).Any())];
        string[] remarks = [.. Remarks(members.Select(m => m.Working))];
        int[][] pages = [.. columns.Chunk(MostColumns)];
        foreach ((int page, int[] shown) in (pages.Length > 0 ? pages : [[]]).Index())
        {
            using (html.Element("table", ("class", "others")))
            {
                html.Element("caption", $"{members[0].Check.Title}, at other places{(page > 0 ? ", continued" : "")}");
                using (html.Element("thead"))
                using (html.Element("tr"))
                {
                    html.Element("th", "where", ("scope", "col"));
                    foreach (int column in shown)
                        WriteHead(values[0][column].Symbol, values[0][column].Dimension);
                    if (page == 0)
                        html.Element("th", "util.", ("scope", "col"), ("class", "number")).Element("th", "verdict", ("scope", "col"));
                }
                using var body = html.Element("tbody");
                for (int i = 1; i < members.Length; i++)
                    WriteRow(members[i].Check, remarks[i], shown.Select(column => NumberOf(values[i][column])), isFirst: page == 0);
            }
            html.Line();
        }
    }

    private void WriteHead(FormulaNode symbol, Dimension dimension)
    {
        using var head = html.Element("th", ("scope", "col"), ("class", "number"));
        new MathText(html, units).Symbol(symbol);
        if (dimension.Unit(units) is { Length: > 0 } unit)
            html.Text($" {unit}");
    }

    /// <summary>What is said in words, where that differs. The last line repeats the verdict, for which there is a column.</summary>
    private static IEnumerable<string> Remarks(IEnumerable<Working> workings)
    {
        string[][] texts = [.. workings.Select(w => w.Lines.SkipLast(1).Select(line => line switch
        {
            WorkingLine.Given g => g.Meaning,
            WorkingLine.Computed c when !IsUtilization(c.Symbol) => c.Meaning,
            WorkingLine.Note n => n.Text,
            _ => "",
        }).ToArray())];
        int[] different = [.. Enumerable.Range(0, texts[0].Length).Where(i => Array.Exists(texts, text => text[i] != texts[0][i]))];
        return texts.Select(text => string.Join("; ", different.Select(i => text[i].TrimEnd('.')).Where(part => part.Length > 0)));
    }

    private void WriteRow(Check check, string remark, IEnumerable<string> numbers, bool isFirst)
    {
        using (html.Element("tr", ("class", check.Verdict == Verdict.Fail ? "fail" : null), ("id", isFirst ? checks.IdOf(check) : null)))
        {
            html.Element("td", isFirst && remark.Length > 0 ? $"{PackageChecks.Place(check)} ({remark})" : PackageChecks.Place(check));
            foreach (string number in numbers)
                html.Element("td", number, ("class", "number"));
            if (isFirst)
                html.Element("td", check.UtilizationText, ("class", "number")).Element("td", checks.VerdictOf(check));
        }
        html.Line();
    }

    private string NumberOf((FormulaNode Symbol, double Value, Dimension Dimension) value) => NumberOf(value.Value, value.Dimension);

    private string NumberOf(double value, Dimension dimension) => dimension.FormatNumber(value, units).Replace('-', '−');

    private static (FormulaNode Symbol, double Value, Dimension Dimension)? ValueOf(WorkingLine line) => line switch
    {
        WorkingLine.Given g => (g.Symbol, g.Value, g.Dimension),
        WorkingLine.Computed c => (c.Symbol, c.Value, c.Dimension),
        _ => null,
    };

    private void WriteLine(WorkingLine line)
    {
        var math = new MathText(html, units);
        switch (line)
        {
            case WorkingLine.Heading h:
                html.Element("h4", h.Text);
                break;
            case WorkingLine.Note n:
                html.Element("p", n.Text);
                break;
            case WorkingLine.Superposition s:
                WriteSuperposition(s);
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

    private void WriteSuperposition(WorkingLine.Superposition s)
    {
        using var table = html.Element("table", ("class", "sums"));
        using (html.Element("thead"))
        using (html.Element("tr"))
        {
            html.Element("th", "cause", ("scope", "col")).Element("th", "factor", ("scope", "col"), ("class", "number"));
            foreach (WorkingLine.Sum sum in s.Quantities)
                WriteHead(sum.Symbol, sum.Dimension);
        }
        using var body = html.Element("tbody");
        foreach (WorkingLine.Term term in s.Terms)
            Row(term.Cause, NumberOf(term.Factor, Dimension.Number), term.Values.Select((value, i) => NumberOf(value, s.Quantities[i].Dimension)));
        Row("sum, times factors", "", s.Quantities.Select(sum => NumberOf(sum.Value, sum.Dimension)));

        void Row(string head, string factor, IEnumerable<string> numbers)
        {
            using var row = html.Element("tr");
            html.Element("th", head, ("scope", "row")).Element("td", factor, ("class", "number"));
            foreach (string number in numbers)
                html.Element("td", number, ("class", "number"));
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
