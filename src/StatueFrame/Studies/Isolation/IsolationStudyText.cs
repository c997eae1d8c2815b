using System.Text;
using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>Lays out an <see cref="IsolationStudy"/> as plain text and as comma-separated values.</summary>
internal static class IsolationStudyText
{
    private sealed record Column(string Name, string Kind, Dimension Dimension, Func<IsolationRow, double?> Value);

    public static string Of(IsolationStudy study, DisplayUnits units)
    {
        var text = new StringBuilder();
        TextLayout.AppendWrapped(text, "", $"THE SAME BLOW ON DIFFERENT BARS: {study.Statue.Name}");
        TextLayout.AppendWrapped(text, "", Describe(study, units));
        if (study.Rows[0].Overturning is { } overturning)
            TextLayout.AppendWrapped(text, "", $"Lifts about the edge of: {overturning.Base}{(study.Options.Limits.HoldDown.Newtons > 0 ? ", hold-downs " + TextLayout.Format(study.Options.Limits.HoldDown.Newtons, Dimension.Force, units) : "")}.");
        if (study.Rows[0].Rocking is { } free)
            TextLayout.AppendWrapped(text, "", $"Free to rock: {string.Join("; ", free.Assumptions.Select(a => a.Short))}.");
        text.Append("\nBY WAY OF HOLDING THE SKIN\n");
        Column[] columns = Columns(study);
        StudyTable.Append(text, [Names(study)], [.. columns.Select(Cells), Verdicts(study)]);
        text.Append("\nIN WORDS\n");
        foreach (IsolationRow row in study.Rows)
            TextLayout.AppendWrapped(text, "  ", Words(row, units));
        string[] warnings = [.. study.Rows.SelectMany(r => r.Response.Warnings.Select(w => $"{r.Variant.Name}: {w}"))];
        if (warnings.Length > 0)
            text.Append("\nWARNINGS\n");
        foreach (string warning in warnings)
            TextLayout.AppendWrapped(text, "  ", warning);
        text.Append("\nCAUTION\n");
        TextLayout.AppendWrapped(text, "  ", IsolationStudy.Caution);
        return text.ToString();

        StudyColumn Cells(Column column) => new(
            [column.Name, column.Kind, column.Dimension.Unit(units)],
            [.. study.Rows.Select(row => column.Value(row) is { } value ? column.Dimension.FormatNumber(value, units) : "–")]);
    }

    public static string Csv(IsolationStudy study, DisplayUnits units)
    {
        var text = new StringBuilder();
        Column[] columns = Columns(study);
        CsvText.AppendLine(text, ["skin held by", .. columns.Select(c => CsvText.Head($"{c.Name}, {c.Kind}", c.Dimension, units)), "base", "worst bar"]);
        foreach (IsolationRow row in study.Rows)
        {
            CsvText.AppendLine(text, [
                row.Variant.Name, .. columns.Select(c => CsvText.Number(c.Value(row), c.Dimension, units)), Verdict(row), row.WorstBar?.Where ?? ""]);
        }
        return text.ToString();
    }

    private static Column[] Columns(IsolationStudy study)
    {
        var columns = new List<Column>
        {
            new("skin on bars", "frequency", Dimension.Frequency, r => r.Variant.IsRigid ? null : r.SkinFrequency?.Hertz),
            new("force on tower", "of all bars", Dimension.Force, r => r.Response.BarForce.Value.Newtons),
            new("force on tower", "two masses", Dimension.Force, r => r.BarForceOfTwoMasses?.Newtons),
            new("base", "shear", Dimension.Force, r => r.Response.BaseShear.Value.Newtons),
            new("base", "overturning", Dimension.Moment, r => r.Response.Overturning.Value.NewtonMeters),
            new("base", "lifts at", Dimension.Moment, r => r.Overturning?.Resistance.NewtonMeters),
            new("overturning", "of lifting", Dimension.Percent, r => r.Overturning?.Ratio),
            new("bar stress", "greatest", Dimension.Stress, r => r.WorstBar?.Stress.Value.Pascals),
            new("bar stress", "of yield", Dimension.Percent, r => r.WorstBar?.YieldFraction),
            new("skin", "moves by", Dimension.SmallLength, r => r.Variant.IsRigid ? null : r.Response.MostMovedBar?.Movement.Value.Meters),
        };
        if (study.Options.IsFreeToRock)
        {
            columns.Add(new("free to rock", "leans to", Dimension.Angle, r => r.Rocking!.PeakRotation.Radians));
            columns.Add(new("free to rock", "of its balance", Dimension.Percent, r => r.Rocking!.PeakOverBalance));
        }
        if (study.Options.Limits.Clearance is { } gap)
            columns.Add(new("skin", "of the gap", Dimension.Percent, r => r.Variant.IsRigid ? null : r.Response.MostMovedBar?.Movement.Value / gap));
        foreach ((int i, NamedPoint point) in study.Statue.Points.Index())
            columns.Add(new($"sway at {point.Name}", "greatest", Dimension.SmallLength, r => r.Response.Points[i].Sway.Value.Meters));
        columns.Add(new("energy", "put in", Dimension.Energy, r => r.Response.Energy.Input.Value.Joules));
        columns.Add(new("energy", "in bars", Dimension.Energy, r => r.Variant.IsRigid ? null : r.Response.Energy.BarStrain.Value.Joules));
        return [.. columns];
    }

    private static StudyColumn Names(IsolationStudy study) => new(["skin held by", "", ""], [.. study.Rows.Select(r => r.Variant.Name)]);

    private static StudyColumn Verdicts(IsolationStudy study) => new(["the base", "", ""], [.. study.Rows.Select(Verdict)]);

    private static string Verdict(IsolationRow row) => row switch
    {
        { Rocking.Topples: true } => "TOPPLES",
        { Rocking.Lifts: true } => "rocks",
        { Rocking: not null } or { Lifts: false } => "stands",
        { Lifts: true } => "LIFTS",
        _ => "not known",
    };

    private static string Words(IsolationRow row, DisplayUnits units)
    {
        ShockOverturning? o = row.Overturning;
        string lifting = o is null ? "whether the base lifts is not known: give the limits a BaseWidth"
            : Invariant($"at {o.Time.Seconds:0.###} s the moment is {100 * o.Ratio:0} % of that at which the base lifts: it {(o.Lifts ? "LIFTS" : "stands")}");
        string bar = row.WorstBar is { } worst
            ? Invariant($"; {worst.Where} reaches {TextLayout.Format(worst.Stress.Value.Pascals, Dimension.Stress, units)}, {100 * worst.YieldFraction:0} % of its yield strength{(worst.HasYielded ? ", and yields" : worst.YieldFraction > 1 ? ", which it cannot bear" : "")}")
            : "";
        string free = row.Rocking is { } rocking
            ? Invariant($"; free to lift, it {(rocking.Topples ? "TOPPLES" : !rocking.Lifts ? "stays on its base" : Invariant($"rocks to {rocking.PeakRotation.Degrees:0.00}°, {100 * rocking.PeakOverBalance:0.#} % of the way to its balance"))}{(rocking.Lifts ? $", with at most {TextLayout.Format(rocking.Rocking.Value.Joules, Dimension.Energy, units)} in rocking, {TextLayout.Format(rocking.BarStrain.Value.Joules, Dimension.Energy, units)} in the bars, {TextLayout.Format(rocking.SkinMotion.Value.Joules, Dimension.Energy, units)} in the skin's motion" : "")}")
            : "";
        return $"{row.Variant.Name}: {lifting}{bar}{free}.";
    }

    private static string Describe(IsolationStudy study, DisplayUnits units)
    {
        string size = study.Shock switch
        {
            PressurePulse p => Invariant($"pressure pulse, {p.Shape.Name}, peak {TextLayout.Format(p.Peak.Pascals, Dimension.Pressure, units)} for {p.Duration.Seconds:g4} s"),
            Blow b => Invariant($"blow of {b.Impulse.NewtonSeconds:g4} N·s on {b.On}{(b.ContactTime is { } t ? Invariant($", contact {t.Seconds:g4} s") : "")}"),
            Strike s => Invariant($"{TextLayout.Format(s.Mass.Kilograms, Dimension.Mass, units)} at {TextLayout.Format(s.Speed.MetersPerSecond, Dimension.Speed, units)} on {s.On}, restitution {s.Restitution:0.##}"),
            SuddenRelease r => $"release of a pull of {TextLayout.Format(r.Pull.Newtons, Dimension.Force, units)} on {r.On}",
            _ => "shock",
        };
        return Invariant($"{study.Shock.Name}: {size}, towards {study.Shock.Heading.Degrees:0.#}°; with the weight; damping ratio {study.Rows[0].Response.DampingRatio:0.####}.");
    }
}
