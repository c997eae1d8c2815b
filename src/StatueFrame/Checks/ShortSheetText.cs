using System.Text;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Lays out a <see cref="CheckSheet"/> on one page: the verdict, what it rests on, what governs and what is open.</summary>
internal static class ShortSheetText
{
    public const int MostLines = 40;

    private const int MostBasis = 8, MostAssumptions = 5, MostFailures = 6;

    public static string Of(CheckSheet sheet, DisplayUnits units)
    {
        var head = new StringBuilder();
        TextLayout.AppendWrapped(head, "", $"CHECK SHEET: {sheet.Title}");
        TextLayout.AppendWrapped(head, "", CheckSheet.Caution);
        TextLayout.AppendWrapped(head, "", sheet.VerdictText);
        List<string> lines = [.. head.ToString().TrimEnd('\n').Split('\n')];
        AddBasis(lines, sheet);
        var foot = new List<string>();
        AddAssumptions(foot, sheet);
        foot.Add(Invariant($"In full: {sheet.Checks.Count} checks, {sheet.Results.Count} results, {sheet.Assumptions.Count} assumptions, {sheet.NotChecked.Count()} not checked, {sheet.Warnings.Count} warnings: Print(SheetForm.Full)"));
        AddLinks(lines, sheet, units, MostLines - lines.Count - foot.Count);
        return string.Concat([.. lines.Concat(foot).Select(line => Cut(line) + "\n")]);
    }

    private static void AddBasis(List<string> lines, CheckSheet sheet)
    {
        if (sheet.Basis.Count == 0)
            return;
        lines.Add("BASIS OF DESIGN");
        int width = sheet.Basis.Max(line => line.Name.Length);
        foreach (BasisLine line in sheet.Basis.Take(MostBasis))
            lines.Add($"  {line.Name.PadRight(width)}  {line.Value}");
        if (sheet.Basis.Count > MostBasis)
            lines.Add(Invariant($"  and {sheet.Basis.Count - MostBasis} lines more"));
    }

    private static void AddAssumptions(List<string> lines, CheckSheet sheet)
    {
        var order = new AssumptionOrder(sheet);
        Assumption[] most = [.. order.Own.Where(a => order.CarriedBy(a).Count > 0).Take(MostAssumptions)];
        if (most.Length == 0)
            return;
        lines.Add("ASSUMPTIONS THAT CARRY MOST");
        foreach (Assumption a in most)
            lines.Add(Invariant($"  {order.NumberOf(a),2}  under {order.CarriedBy(a).Count} checks up to {CheckNumber.Utilization(order.CarriedBy(a).Utilization)}: {a.Short}"));
    }

    /// <summary>One line a link: how it stands, what governs it, and what of it is open; links that are hardly used together.</summary>
    private static void AddLinks(List<string> lines, CheckSheet sheet, DisplayUnits units, int room)
    {
        var rows = new List<(LinkState State, double Worst, string Name, string Text)>();
        foreach (IGrouping<string, PathLink> link in sheet.LoadPath.GroupBy(l => l.Link))
        {
            LinkState state = link.Any(l => l.State == LinkState.Fails) ? LinkState.Fails : link.Any(l => l.State == LinkState.Open) ? LinkState.Open : LinkState.Holds;
            Check? worst = link.Select(l => l.Governing).OfType<Check>().MinBy(check => check, CheckOrder.WorstFirst);
            string governs = worst is null ? "" : $"{worst.Subject}, {Number(worst.Demand, worst, units)} of {Number(worst.Capacity, worst, units)}";
            string open = string.Join("; ", link.Where(l => l.State == LinkState.Open).Select(l => l.What));
            rows.Add((state, worst?.Utilization ?? 0, link.Key, string.Join("; ", new[] { open.Length > 0 ? $"open: {open}" : "", governs }.Where(part => part.Length > 0))));
        }
        bool hasPath = rows.Count > 0;
        lines.Add(hasPath ? "LOAD PATH: WHAT GOVERNS EACH LINK, AND WHAT IS OPEN" : "WHAT GOVERNS");
        foreach (Check check in hasPath ? sheet.Failed.Where(check => sheet.LoadPath.All(link => !link.Ids.Contains(check.Id))).DistinctBy(check => check.Id).Take(MostFailures) : sheet.GoverningByFamily)
            rows.Add((check.Verdict == Verdict.Fail ? LinkState.Fails : LinkState.Holds, check.Utilization ?? 0, check.Family, $"{check.Subject}, {Number(check.Demand, check, units)} of {Number(check.Capacity, check, units)}"));
        room--;
        // As they stand along the path; where there is no room, those that hold and are used least are put together.
        var folded = new HashSet<int>();
        if (rows.Count > room)
        {
            foreach (int i in Enumerable.Range(0, rows.Count).OrderByDescending(i => rows[i].State).ThenByDescending(i => rows[i].Worst).Skip(room - 1))
                folded.Add(i);
        }
        int width = rows.Select(row => row.Name.Length).DefaultIfEmpty(1).Max();
        foreach (((LinkState state, double worst, string name, string text), int i) in rows.Select((row, i) => (row, i)).OrderByDescending(r => r.row.State))
        {
            if (!folded.Contains(i))
                lines.Add($"  {Word(state),-5}  {name.PadRight(width)}  {(worst > 0 ? CheckNumber.Utilization(worst) : ""),4}  {text}");
        }
        if (folded.Count > 0)
            lines.Add(Invariant($"  and {folded.Count} more up to {CheckNumber.Utilization(folded.Max(i => rows[i].Worst))}: {string.Join(", ", folded.Order().Select(i => $"{rows[i].Name} {Word(rows[i].State)}"))}"));
    }

    private static string Word(LinkState state) => state switch { LinkState.Fails => "FAILS", LinkState.Open => "OPEN", _ => "holds" };

    private static string Number(double? value, Check check, DisplayUnits units) => TextLayout.Format(value ?? double.NaN, check.Dimension, units);

    private static string Cut(string line)
    {
        string seen = TextLayout.Visible(line).TrimEnd();
        return seen.Length <= TextLayout.Width ? seen : seen[..(TextLayout.Width - 1)].TrimEnd() + "…";
    }
}
