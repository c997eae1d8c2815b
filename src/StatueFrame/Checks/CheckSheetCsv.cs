using System.Text;

namespace StatueFrame.Checks;

/// <summary>Writes a <see cref="CheckSheet"/> as comma-separated values, one fact a line.</summary>
internal static class CheckSheetCsv
{
    public static string Checks(CheckSheet sheet, DisplayUnits units)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["id", "check", "where", "situation", "demand", "capacity", "unit", "utilization", "verdict", "reason", "assumed inputs", "source"]);
        foreach (Check check in sheet.Checks)
        {
            CsvText.AppendLine(text,
            [
                check.Id, check.Title, check.Where, check.Situation, CsvText.Number(check.Demand, check.Dimension, units), CsvText.Number(check.Capacity, check.Dimension, units),
                check.Dimension.Unit(units), CsvText.Number(check.Utilization, Dimension.Number, units), check.VerdictWord, check.Reason, string.Join("; ", check.AssumedInputs), check.Source.ToString(),
            ]);
        }
        return text.ToString();
    }

    public static string Results(CheckSheet sheet, DisplayUnits units)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["group", "result", "value", "unit", "note"]);
        foreach (ResultLine line in sheet.Results)
            CsvText.AppendLine(text, [line.Group, line.Name, CsvText.Number(line.Value, line.Dimension, units), line.Dimension.Unit(units), line.Note]);
        return text.ToString();
    }
}
