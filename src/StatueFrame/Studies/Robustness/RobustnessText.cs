using System.Text;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>Lays out a <see cref="RobustnessStudy"/> as plain text and as comma-separated values.</summary>
internal static class RobustnessText
{
    private const int Lines = 6;

    public static string Of(RobustnessStudy study)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"ROBUSTNESS: {study.Statue.Name}");
        TextLayout.AppendWrapped(text, "", $"{study.Sheet.Subject}; {study.All.Count} removals");
        text.Append("\nWORST OF EACH KIND\n");
        TextLayout.AppendTable(
            text, 2, [new(22), new(36), new(8, Right: true), new(8, Right: true), new(0)],
            [["without", "which", "whole", "damaged", ""], .. study.Worst.Select(worst => Row(study, worst))]);
        foreach (WorstRemoval worst in study.Worst)
        {
            if (worst.Screened.Falls is not null)
                continue;
            text.Append('\n');
            TextLayout.AppendWrapped(text, "", $"{worst.Removal}");
            TextLayout.AppendTable(text, 2, [new(84), new(0)], [.. worst.Worse.Take(Lines).Select(check => new[] { $"{check.After.Subject}", check.ToText() })]);
        }
        text.Append("\nVERDICT\n");
        TextLayout.AppendWrapped(text, "  ", study.Sheet.VerdictText);
        text.Append("\nCAUTION\n");
        TextLayout.AppendTable(text, 2, [new TextColumn(0)], [[CheckSheet.Caution]]);
        return text.ToString();
    }

    public static string Csv(RobustnessStudy study)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["without", "which", "worst of what gets worse", "where", "falls"]);
        foreach (ScreenedRemoval s in study.All)
            CsvText.AppendLine(text, [s.Removal.Title, s.Removal.Where, CsvText.Number(s.Worst, Dimension.Number, DisplayUnits.Metric), s.Item, s.Falls ?? ""]);
        return text.ToString();
    }

    private static string[] Row(RobustnessStudy study, WorstRemoval worst) =>
    [
        worst.Removal.Title, worst.Removal.Where,
        study.Whole.Governing?.Utilization is { } before ? CheckNumber.Utilization(before) : "",
        worst.Sheet.Governing?.Utilization is { } after && worst.Screened.Falls is null ? CheckNumber.Utilization(after) : "",
        worst.Screened.Falls is not null ? "FALLS" : worst.Worsened is { } worsened ? $"worst of what gets worse: {worsened.Id} {CheckNumber.Utilization(worsened.Utilization ?? 0)}" : "nothing gets worse",
    ];
}
