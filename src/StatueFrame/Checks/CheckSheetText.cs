using System.Text;

namespace StatueFrame.Checks;

/// <summary>Lays out a <see cref="CheckSheet"/> as plain text.</summary>
internal static class CheckSheetText
{
    private static readonly TextColumn[] checkColumns =
        [new(24), new(18), new(14), new(11, Right: true), new(11, Right: true), new(5, Right: true), new(0)];

    public static string Of(CheckSheet sheet, SheetForm form, DisplayUnits units) => form switch
    {
        SheetForm.Short => ShortSheetText.Of(sheet, units),
        SheetForm.Failures => Failures(sheet, units),
        SheetForm.Full or SheetForm.Parts or SheetForm.Everything => Full(sheet, form, units),
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "There is no such form."),
    };

    public static string OfFamily(CheckSheet sheet, string family, DisplayUnits units)
    {
        StringBuilder text = Head(sheet);
        var assumptions = new AssumptionOrder(sheet);
        AppendTable(text, $"Checks of {family}", sheet.Checks.Where(check => check.Family == family && check.Verdict != Verdict.NotChecked), assumptions, units);
        AppendNotChecked(text, sheet.NotChecked.Where(check => check.Family == family));
        AppendCaution(text);
        return text.ToString();
    }

    private static string Failures(CheckSheet sheet, DisplayUnits units)
    {
        StringBuilder text = Head(sheet);
        var assumptions = new AssumptionOrder(sheet);
        AppendTable(text, "Checks that fail", sheet.Failed.OrderBy(check => check, CheckOrder.WorstFirst), assumptions, units);
        AppendCaution(text);
        return text.ToString();
    }

    private static StringBuilder Head(CheckSheet sheet)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"CHECK SHEET: {sheet.Title}");
        TextLayout.AppendWrapped(text, "", VerdictOf(sheet));
        return text;
    }

    private static string Full(CheckSheet sheet, SheetForm form, DisplayUnits units)
    {
        var text = new StringBuilder();
        var assumptions = new AssumptionOrder(sheet);
        TextLayout.AppendWrapped(text, "", $"CHECK SHEET: {sheet.Title}");
        if (sheet.Subject.Length > 0)
            TextLayout.AppendWrapped(text, "", sheet.Subject);
        TextLayout.AppendWrapped(text, "", VerdictOf(sheet));
        if (sheet.Governing is { } governing)
            TextLayout.AppendWrapped(text, "", $"Governs: {governing.Subject}: {CheckNumber.Utilization(governing.Utilization!.Value)} {assumptions.VerdictOf(governing)}");
        AppendSection(text, "Basis of design", sheet.Basis.Where(line => line.Name != "situations").Select(line => new[] { line.Name, line.Value }), new(20), new(0));
        AppendLoadPath(text, sheet);
        AppendResults(text, sheet, units);
        AppendChecks(text, sheet, assumptions, units, form);
        AppendSection(text, "Assumptions, those that carry most first", assumptions.Own.Select(a => new[] { $"{assumptions.NumberOf(a)}", a.Subject, $"{a.Value} [{a.Source}]" }), new(3, Right: true), new(36), new(0));
        if (assumptions.Neutral.Count > 0)
        {
            string list = string.Join("; ", assumptions.Neutral.Select(a => $"{assumptions.NumberOf(a)} {a.Subject}{a.Value.TrimStart('1', '.', '0')} [{a.Source}]"));
            TextLayout.AppendWrapped(text, "  ", $"Taken as 1: {list}");
        }
        AppendNotChecked(text, sheet.NotChecked);
        AppendSection(text, "Warnings", sheet.Warnings.Select(w => new[] { w }), new TextColumn(0));
        AppendCaution(text);
        return text.ToString();
    }

    private static void AppendNotChecked(StringBuilder text, IEnumerable<Check> checks) =>
        AppendSection(text, "Not checked", checks.Select(c => new[] { c.Id, Place(c), c.Reason }), new(30), new(36), new(0));

    private static void AppendCaution(StringBuilder text) => AppendSection(text, "Caution", [[CheckSheet.Caution]], new TextColumn(0));

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

    private static void AppendChecks(StringBuilder text, CheckSheet sheet, AssumptionOrder assumptions, DisplayUnits units, SheetForm form)
    {
        Check[] done = [.. sheet.Checks.Where(check => check.Verdict != Verdict.NotChecked)];
        HashSet<Check> governing = new(sheet.GoverningByFamily, ReferenceEqualityComparer.Instance);
        Append("Governing check of each family", done.Where(check => governing.Contains(check) && check.Nature != Nature.Range));
        Append("Whether the methods may be used", done.Where(check => check.Nature == Nature.Range && (governing.Contains(check) || check.Verdict == Verdict.Fail)));
        if (form != SheetForm.Full)
        {
            IEnumerable<Check> all = form == SheetForm.Parts ? sheet.WorstOfParts().Where(check => check.Verdict != Verdict.NotChecked) : done;
            Append(form == SheetForm.Parts ? "Other checks, each part where it is worst" : "Other checks", all.Where(check => !governing.Contains(check)));
            return;
        }
        Append("Other checks that fail", done.Where(check => check.Verdict == Verdict.Fail && check.Nature != Nature.Range && !governing.Contains(check)));
        string[][] counts =
        [
            .. done.Where(check => check.Verdict == Verdict.Pass && !governing.Contains(check))
                .GroupBy(check => check.Id)
                .OrderBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => new[] { group.Key, Count(group), $"up to {CheckNumber.Utilization(group.Max(check => check.Utilization!.Value))}" }),
        ];
        AppendSection(text, "Other checks that pass", counts, new(30), new(40), new(0));

        void Append(string title, IEnumerable<Check> checks) => AppendTable(text, title, checks, assumptions, units);
    }

    private static void AppendTable(StringBuilder text, string title, IEnumerable<Check> checks, AssumptionOrder assumptions, DisplayUnits units)
    {
        string[][] rows = [.. checks.Select(check => Row(check, assumptions, units))];
        string[] heads = ["check", "where", "situation", "demand", "capacity", "util.", "verdict"];
        if (rows.Length > 0)
            AppendSection(text, title, [heads, .. rows], checkColumns);
    }

    private static string Count(IGrouping<string, Check> checks)
    {
        int assumed = checks.Count(check => check.AssumedInputs.Count > 0);
        return $"{checks.Count()} pass" + (assumed > 0 ? $" ({assumed} with assumed inputs)" : "");
    }

    private static string[] Row(Check check, AssumptionOrder assumptions, DisplayUnits units) =>
    [
        check.Id, check.Where, check.Situation,
        TextLayout.Unbroken(TextLayout.Format(check.Demand ?? double.NaN, check.Dimension, units)),
        TextLayout.Unbroken(TextLayout.Format(check.Capacity ?? double.NaN, check.Dimension, units)),
        CheckNumber.Utilization(check.Utilization ?? double.NaN),
        assumptions.VerdictOf(check),
    ];

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
