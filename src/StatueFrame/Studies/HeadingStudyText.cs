using System.Globalization;
using System.Text;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>Lays out a <see cref="HeadingStudy"/> as plain text and as comma-separated values.</summary>
internal static class HeadingStudyText
{
    private static readonly TextColumn[] columns =
        [new(50), new(16, Right: true), new(9, Right: true), new(16, Right: true), new(9, Right: true), new(0)];

    public static string Of(HeadingStudy study, DisplayUnits units, bool allRings)
    {
        var text = new StringBuilder();
        var wind = (WindAction)study.Situation.Wind!.Action;
        HeadingSeries[] series = [.. study.Series.Where(s => allRings || !HeadingProbe.IsOfOneRing(s.Name))];
        TextLayout.AppendWrapped(text, "", $"WIND HEADINGS: {study.Model.Statue.Name}");
        TextLayout.AppendWrapped(text, "", $"{study.Situation.Name}: {string.Join(", ", study.Situation.Actions)}; {wind.Profile.Name}");
        if (wind.HeadingCoefficients is { } table)
            TextLayout.AppendWrapped(text, "", $"Force coefficients by heading: {table.Source}");
        TextLayout.AppendWrapped(text, "", "A heading is the plan angle, anticlockwise from +x, that the wind blows towards.");
        text.Append("\nWORST HEADING OF EACH QUANTITY\n");
        bool refined = study.GridHeadings.Count > study.GivenHeadings.Count;
        string[] head = refined
            ? ["", $"of {study.GivenHeadings.Count} given", "towards", "of all between", "towards", "more by"]
            : ["", $"of {study.GivenHeadings.Count} given", "towards", "", "", ""];
        TextLayout.AppendTable(text, 2, columns, [head, .. series.Select(s => Row(s, units, refined))]);
        text.Append("\nTHE GIVEN HEADINGS\n");
        StudyTable.Append(
            text, [new StudyColumn(["", "towards"], [.. study.GivenHeadings.Select(Degrees)])],
            [.. series.Where(s => !HeadingProbe.IsOfOneRing(s.Name)).Select(s => Column(s, study.GivenHeadings, units))]);
        text.Append("\nCAUTION\n");
        TextLayout.AppendTable(text, 2, [new TextColumn(0)], [[CheckSheet.Caution]]);
        return text.ToString();
    }

    public static string Csv(HeadingStudy study, DisplayUnits units)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["wind towards [°]", .. study.Series.Select(s => CsvText.Head(s.Name, s.Dimension, units))]);
        var values = study.Series.Select(s => s.Rose.ToDictionary(p => p.Heading, p => p.Value)).ToList();
        foreach (Angle heading in study.GridHeadings)
        {
            CsvText.AppendLine(text, [
                heading.Degrees.ToString("R", CultureInfo.InvariantCulture),
                .. study.Series.Select((s, i) => CsvText.Number(values[i].TryGetValue(heading, out double value) ? value : null, s.Dimension, units))]);
        }
        return text.ToString();
    }

    private static string[] Row(HeadingSeries s, DisplayUnits units, bool refined) =>
    [
        s.Name, TextLayout.Unbroken(TextLayout.Format(s.WorstGiven.Value, s.Dimension, units)), Degrees(s.WorstGiven.Heading),
        refined ? TextLayout.Unbroken(TextLayout.Format(s.Worst.Value, s.Dimension, units)) : "", refined ? Degrees(s.Worst.Heading) : "",
        s.Missed >= 0.0005 ? string.Create(CultureInfo.InvariantCulture, $"{100 * s.Missed:0.0}\u00A0%") : "",
    ];

    private static StudyColumn Column(HeadingSeries s, ValueList<Angle> headings, DisplayUnits units)
    {
        Dictionary<Angle, double> values = s.Rose.ToDictionary(p => p.Heading, p => p.Value);
        return new StudyColumn(
            [s.Name, s.Dimension.Unit(units)],
            [.. headings.Select(h => values.TryGetValue(h, out double value) ? s.Dimension.FormatNumber(value, units) : "–")]);
    }

    private static string Degrees(Angle heading) => string.Create(CultureInfo.InvariantCulture, $"{heading.Degrees:0.#}°");
}
