using System.Text;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>Lays out a <see cref="SwayCurve"/> as plain text and as comma-separated values.</summary>
internal static class SwayCurveText
{
    private sealed record Column(string Name, string Kind, Dimension Dimension, Func<SwayCurveRow, double?> Value);

    public static string Of(SwayCurve curve, DisplayUnits units)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"WIND SPEED AND SWAY: {curve.Model.Statue.Name}");
        TextLayout.AppendWrapped(text, "", $"{curve.Wind.Profile.Name}; {Direction(curve)}; with {string.Join(", ", curve.Options.Calm.Select(a => a.Factor == 1 ? a.Action.Title : a.ToString()))}");
        TextLayout.AppendWrapped(text, "", $"Anemometer {Format(curve.Options.AnemometerHeight.Meters, Dimension.Length)} above ground. {curve.Wind.Profile.SpeedsInWords}");
        TextLayout.AppendWrapped(text, "", $"Design wind there: mean {Format(curve.DesignMeanSpeed.MetersPerSecond, Dimension.Speed)}, gust {Format(curve.DesignGustSpeed.MetersPerSecond, Dimension.Speed)}.");
        if (curve.Wind.HeadingCoefficients is { } table)
            TextLayout.AppendWrapped(text, "", $"Force coefficients by heading: {table.Source}");
        if (curve.Options.Dynamics is { } dynamics)
            TextLayout.AppendWrapped(text, "", $"Vibration in gusts: {dynamics.Title}");
        text.Append("\nBY WIND SPEED\n");
        StudyTable.Append(text, [.. Speeds.Select(Cells)], [.. PointColumns(curve, forPeople: true).Concat(OtherColumns(curve)).Select(Cells)]);
        AppendLimits(text, curve, units);
        AppendSection(text, "Assumptions", curve.Assumptions.Select(a => new[] { a.Subject, $"{a.Value} [{a.Source}]" }), new TextColumn(36), new TextColumn(0));
        AppendSection(text, "Warnings", curve.Warnings.Select(w => new[] { w }), new TextColumn(0));
        AppendSection(text, "Caution", [[SwayCurve.Caution]], new TextColumn(0));
        return text.ToString();

        StudyColumn Cells(Column column) => new(
            [column.Name, column.Kind, column.Dimension.Unit(units)],
            [.. curve.Rows.Select(row => column.Value(row) is { } value ? column.Dimension.FormatNumber(value, units) : "–")]);

        string Format(double si, Dimension dimension) => TextLayout.Format(si, dimension, units);
    }

    public static string Csv(SwayCurve curve, DisplayUnits units)
    {
        Column[] columns = [.. Speeds, .. PointColumns(curve, forPeople: false), .. OtherColumns(curve), .. HeadingColumns(curve)];
        bool hasBars = curve.Rows[0].WorstBar is not null;
        var text = new StringBuilder();
        CsvText.AppendLine(text, [.. columns.Select(c => CsvText.Head($"{c.Name}, {c.Kind}", c.Dimension, units)), .. hasBars ? ["worst bar"] : Array.Empty<string>()]);
        foreach (SwayCurveRow row in curve.Rows)
        {
            CsvText.AppendLine(text, [
                .. columns.Select(c => CsvText.Number(c.Value(row), c.Dimension, units)),
                .. row.WorstBar is { } bar ? [bar.Where] : Array.Empty<string>()]);
        }
        return text.ToString();
    }

    private static Column[] Speeds { get; } =
    [
        new("wind", "mean", Dimension.Speed, row => row.MeanSpeed.MetersPerSecond),
        new("wind", "gust", Dimension.Speed, row => row.GustSpeed.MetersPerSecond),
    ];

    private static IEnumerable<Column> PointColumns(SwayCurve curve, bool forPeople)
    {
        foreach ((int i, NamedPoint point) in curve.Model.Statue.Points.Index())
        {
            yield return new($"sway at {point.Name}", "mean", Dimension.SmallLength, row => row.Points[i].Mean.Meters);
            yield return new($"sway at {point.Name}", "gust", Dimension.SmallLength, row => row.Points[i].Gust.Meters);
            if (!curve.Rows.Any(row => row.Points[i].Acceleration is not null))
                continue;
            yield return new($"accel. at {point.Name}", "peak", Dimension.Acceleration, row => row.Points[i].Acceleration?.Peak.MetersPerSecondSquared);
            if (!forPeople)
                yield return new($"accel. at {point.Name}", "rms", Dimension.Acceleration, row => row.Points[i].Acceleration?.Rms.MetersPerSecondSquared);
        }
    }

    private static IEnumerable<Column> OtherColumns(SwayCurve curve)
    {
        yield return new("overturning", "gust", Dimension.Moment, row => row.Overturning.NewtonMeters);
        if (curve.Rows[0].WorstBar is null)
            yield break;
        yield return new("bar stress", "gust", Dimension.Stress, row => row.WorstBar?.Stress.Pascals);
        yield return new("bar stress", "of yield", Dimension.Percent, row => row.WorstBar?.YieldFraction);
    }

    private static IEnumerable<Column> HeadingColumns(SwayCurve curve)
    {
        foreach ((int i, NamedPoint point) in curve.Model.Statue.Points.Index())
            yield return new($"sway at {point.Name}", "wind towards", Dimension.Angle, row => row.Points[i].Heading?.Radians);
        yield return new("overturning", "wind towards", Dimension.Angle, row => row.OverturningHeading?.Radians);
        if (curve.Rows[0].WorstBar is not null)
            yield return new("bar stress", "wind towards", Dimension.Angle, row => row.WorstBar?.Heading?.Radians);
    }

    private static void AppendLimits(StringBuilder text, SwayCurve curve, DisplayUnits units)
    {
        var rows = curve.Limits.Select(l => new[] { l.Name, TextLayout.Unbroken(TextLayout.Format(l.Limit, l.Dimension, units)), Reached(l) }).ToList();
        foreach (NamedPoint point in curve.Model.Statue.Points)
        {
            if (curve.Options.Limits.Sway.All(l => l.Point != point.Name))
                rows.Add([$"sway at {point.Name}", "–", "no limit was given"]);
        }
        AppendSection(text, "Speeds at limits, in the gust", rows, new TextColumn(40), new TextColumn(14, Right: true), new TextColumn(0));

        string Reached(SpeedAtLimit l) => l.Reach switch
        {
            LimitReach.Reached => Invariant(
                $"mean {Speed(l.MeanSpeed)}, gust {Speed(l.GustSpeed)}, wind towards {l.Heading!.Value.Degrees:0.#}°"),
            LimitReach.NotReached => "not reached up to the design speed",
            LimitReach.ExceededInCalm => "EXCEEDED IN CALM",
            _ => "NOT KNOWN: no method for vibration gave it",
        };

        string Speed(Speed? speed) => TextLayout.Format(speed!.Value.MetersPerSecond, Dimension.Speed, units);
    }

    private static string Direction(SwayCurve curve) => curve.Options.Heading is { } heading
        ? Invariant($"wind towards {heading.Degrees:0.#}°")
        : curve.HeadingCount == 1 ? Invariant($"wind towards {curve.Wind.Headings[0].Degrees:0.#}°")
        : $"each value at the worst of {curve.HeadingCount} headings";

    private static void AppendSection(StringBuilder text, string title, IEnumerable<string[]> rows, params TextColumn[] columns)
    {
        string[][] all = [.. rows];
        if (all.Length == 0)
            return;
        text.Append('\n').Append(title.ToUpperInvariant()).Append('\n');
        TextLayout.AppendTable(text, 2, columns, all);
    }
}
