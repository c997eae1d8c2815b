using System.Text;

namespace StatueFrame.Checks;

/// <summary>Lays out a <see cref="CheckSheet"/> as plain text.</summary>
internal static class CheckSheetText
{
    private static readonly TextColumn[] checkColumns =
        [new(24), new(18), new(14), new(11, Right: true), new(11, Right: true), new(5, Right: true), new(0)];

    public static string Of(CheckSheet sheet, DisplayUnits units, bool allChecks)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"CHECK SHEET: {sheet.Title}");
        if (sheet.Subject.Length > 0)
            TextLayout.AppendWrapped(text, "", sheet.Subject);
        TextLayout.AppendWrapped(text, "", VerdictOf(sheet));
        if (sheet.Governing is { } governing)
            TextLayout.AppendWrapped(text, "", $"Governs: {governing.Subject}: {CheckNumber.Utilization(governing.Utilization!.Value)} {VerdictOf(governing, sheet)}");
        AppendLoadPath(text, sheet);
        AppendResults(text, sheet, units);
        AppendChecks(text, sheet, units, allChecks);
        AppendSection(text, "Assumptions", sheet.Assumptions.Select((a, i) => new[] { $"{i + 1}", a.Subject, $"{a.Value} [{a.Source}]" }), new(3, Right: true), new(36), new(0));
        AppendSection(text, "Not checked", sheet.NotChecked.Select(c => new[] { c.Id, Place(c), c.Reason }), new(30), new(36), new(0));
        AppendSection(text, "Warnings", sheet.Warnings.Select(w => new[] { w }), new TextColumn(0));
        AppendSection(text, "Caution", [[CheckSheet.Caution]], new TextColumn(0));
        return text.ToString();
    }

    public static string VerdictOf(CheckSheet sheet)
    {
        int failed = sheet.Failed.Count(), notDone = sheet.NotChecked.Count(), passed = sheet.Checks.Count - failed - notDone;
        int assumed = sheet.Checks.Count(check => check is { Verdict: Verdict.Pass, AssumedInputs.Count: > 0 });
        string[] open = [.. sheet.OpenLinks.Select(link => link.Link).Distinct()];
        Check[] broken = [.. sheet.BrokenOff];
        if (failed + passed == 0 && broken.Length == 0)
            return notDone == 0 ? "NOTHING CHECKED" : $"NOTHING CHECKED: {notDone} not checked";
        var parts = new List<string>();
        if (failed > 0)
            parts.Add(failed == 1 ? "1 check fails" : $"{failed} checks fail");
        if (broken.Length > 0)
            parts.Add($"{broken.Length} broke off by an internal error ({string.Join(", ", broken.Select(check => check.Where.Length > 0 ? $"{check.Id}, {check.Where}" : check.Id).Distinct().Take(5))})");
        if (open.Length > 0)
            parts.Add($"{sheet.OpenLinks.Count()} links carry load unchecked ({string.Join(", ", open)})");
        if (passed > 0)
            parts.Add((passed == 1 ? "1 passes" : $"{passed} pass") + (assumed > 0 ? $" ({assumed} with assumed inputs)" : ""));
        if (notDone > 0)
            parts.Add($"{notDone} not checked");
        string word = failed > 0 ? "FAIL" : broken.Length > 0 ? "BROKEN OFF" : open.Length > 0 ? "OPEN" : notDone > 0 ? "PASS, BUT NOT COMPLETE" : assumed > 0 ? "PASS, WITH ASSUMED INPUTS" : "PASS";
        return $"{word}: {string.Join(", ", parts)}";
    }

    private static void AppendLoadPath(StringBuilder text, CheckSheet sheet)
    {
        LinkState[] order = [LinkState.Fails, LinkState.Open, LinkState.Holds];
        AppendSection(text, "Load path, from the sheet to the ground", order.SelectMany(state => sheet.LoadPath.Where(link => link.State == state)).Select(link => new[]
        {
            link.State switch { LinkState.Fails => "FAILS", LinkState.Open => "OPEN", _ => "holds" }, link.Link, link.What,
            link.WorstText, link.Reason,
        }), new(6), new(13), new(40), new(5, Right: true), new(0));
    }

    private static void AppendResults(StringBuilder text, CheckSheet sheet, DisplayUnits units)
    {
        var rows = new List<string[]>();
        foreach (IGrouping<string, ResultLine> group in sheet.Results.GroupBy(line => line.Group))
        {
            foreach ((int i, ResultLine line) in group.Index())
                rows.Add([i == 0 ? group.Key : "", line.Name, TextLayout.Format(line.Value, line.Dimension, units), line.Note]);
        }
        AppendSection(text, "Results", rows, new(20), new(40), new(20, Right: true), new(0));
    }

    private static void AppendChecks(StringBuilder text, CheckSheet sheet, DisplayUnits units, bool allChecks)
    {
        Check[] done = [.. sheet.Checks.Where(check => check.Verdict != Verdict.NotChecked)];
        HashSet<Check> governing = new(sheet.GoverningByFamily, ReferenceEqualityComparer.Instance);
        AppendTable("Governing check of each family", check => governing.Contains(check) && check.Nature != Nature.Range);
        AppendTable("Whether the methods may be used", check => check.Nature == Nature.Range && (governing.Contains(check) || check.Verdict == Verdict.Fail));
        if (allChecks)
        {
            AppendTable("Other checks", check => !governing.Contains(check));
            return;
        }
        AppendTable("Other checks that fail", check => check.Verdict == Verdict.Fail && check.Nature != Nature.Range && !governing.Contains(check));
        string[][] counts =
        [
            .. done.Where(check => check.Verdict == Verdict.Pass && !governing.Contains(check))
                .GroupBy(check => check.Id)
                .OrderBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => new[] { group.Key, Count(group), $"up to {CheckNumber.Utilization(group.Max(check => check.Utilization!.Value))}" }),
        ];
        AppendSection(text, "Other checks that pass", counts, new(30), new(40), new(0));

        void AppendTable(string title, Func<Check, bool> which)
        {
            string[][] rows = [.. done.Where(which).Select(check => Row(check, sheet, units))];
            string[] heads = ["check", "where", "situation", "demand", "capacity", "util.", "verdict"];
            if (rows.Length > 0)
                AppendSection(text, title, [heads, .. rows], checkColumns);
        }
    }

    private static string Count(IGrouping<string, Check> checks)
    {
        int assumed = checks.Count(check => check.AssumedInputs.Count > 0);
        return $"{checks.Count()} pass" + (assumed > 0 ? $" ({assumed} with assumed inputs)" : "");
    }

    private static string[] Row(Check check, CheckSheet sheet, DisplayUnits units) =>
    [
        check.Id, check.Where, check.Situation,
        TextLayout.Unbroken(TextLayout.Format(check.Demand ?? double.NaN, check.Dimension, units)),
        TextLayout.Unbroken(TextLayout.Format(check.Capacity ?? double.NaN, check.Dimension, units)),
        CheckNumber.Utilization(check.Utilization ?? double.NaN),
        VerdictOf(check, sheet),
    ];

    /// <summary>The verdict in words, with listed assumptions by their numbers, as in "pass (assumed 1–5, 7)".</summary>
    private static string VerdictOf(Check check, CheckSheet sheet)
    {
        var numbers = new List<int>();
        foreach ((int i, Assumption assumption) in sheet.Assumptions.Index())
        {
            if (check.AssumedInputs.Contains(assumption.Short))
                numbers.Add(i + 1);
        }
        if (numbers.Count < check.AssumedInputs.Count)
            return check.VerdictText;
        string word = check.Verdict == Verdict.Pass ? "pass" : "FAIL";
        return word + (numbers.Count > 0 ? $" (assumed {Ranges(numbers)})" : "") + (check.Reason.Length > 0 ? $": {check.Reason}" : "");
    }

    private static string Ranges(List<int> numbers)
    {
        var parts = new List<string>();
        for (int first = 0, last; first < numbers.Count; first = last + 1)
        {
            for (last = first; last + 1 < numbers.Count && numbers[last + 1] == numbers[last] + 1;)
                last++;
            parts.Add(last == first ? $"{numbers[first]}" : $"{numbers[first]}–{numbers[last]}");
        }
        return string.Join(", ", parts);
    }

    private static string Place(Check check) => string.Join(", ", new[] { check.Where, check.Situation }.Where(part => part.Length > 0));

    private static void AppendSection(StringBuilder text, string title, IEnumerable<string[]> rows, params TextColumn[] columns)
    {
        string[][] all = [.. rows];
        if (all.Length == 0)
            return;
        text.Append('\n').Append(title.ToUpperInvariant()).Append('\n');
        TextLayout.AppendTable(text, 2, columns, all);
    }
}
