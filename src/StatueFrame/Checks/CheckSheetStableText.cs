using System.Text;

namespace StatueFrame.Checks;

/// <summary>Writes a <see cref="CheckSheet"/> for comparison with a kept file: one fact a line, SI units.</summary>
internal static class CheckSheetStableText
{
    public static string Of(CheckSheet sheet, int digits)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, 9);
        var scales = new ResultScales(sheet);
        var text = new StringBuilder();
        Line("sheet", sheet.Title, sheet.Subject);
        Line("verdict", sheet.VerdictText);
        foreach (PathLink link in sheet.LoadPath)
            Line("link", link.Link, link.What, link.State.ToString().ToLowerInvariant(), link.Reason);
        foreach (ResultLine line in sheet.Results)
            Line("result", line.Group, line.Name, CheckNumber.Stable(line.Value, digits, scales.Of(line.Dimension)), line.Note);
        foreach (Check check in sheet.Checks.Order(Comparer<Check>.Create((a, b) => CheckOrder.CompareSubjects(a.Subject, b.Subject))))
            Line("check", check.Id, check.Where, check.Situation, Number(check.Demand), Number(check.Capacity), Number(check.Utilization), check.VerdictText);
        foreach (Assumption assumption in sheet.Assumptions)
            Line("assumption", assumption.ToString());
        foreach (string warning in sheet.Warnings)
            Line("warning", warning);
        return text.ToString();

        void Line(params string[] cells) => text.AppendJoin(" | ", cells.Select(TextLayout.Visible)).Append('\n');

        string Number(double? value) => value is { } v ? CheckNumber.Stable(v, digits) : "-";
    }
}
