using System.Text;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Variants of a statue side by side: each is built, analyzed and checked, on all cores; one that fails says why in its
/// row and stops no other.
/// </summary>
/// <remarks>Immutable and safe to share between threads. The rows do not depend on the number of threads.</remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class VariantStudy
{
    private VariantStudy(ValueList<VariantRow> rows) => Rows = rows;

    /// <summary>Runs a study.</summary>
    /// <param name="statue">The statue that is varied.</param>
    /// <param name="variants">The variants, with names of their own.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentException">There is no variant, or two have one name.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static VariantStudy Of(Statue statue, IReadOnlyList<Variant> variants, Criteria criteria, IReadOnlyList<Situation> situations, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        if (variants.Count == 0)
            throw new ArgumentException("There must be at least one variant.", nameof(variants));
        if (variants.GroupBy(v => v.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two variants are named \"{twice.Key}\"; rows are told apart by name.", nameof(variants));
        var rows = new VariantRow[variants.Count];
        Situation[] all = [.. situations];
        (options ?? new StudyOptions()).For(rows.Length, i => rows[i] = RowOf(statue, variants[i], criteria, all));
        return new VariantStudy(ValueList.Create<VariantRow>(rows));
    }

    /// <summary>One row a variant, in their order.</summary>
    public ValueList<VariantRow> Rows { get; }

    /// <summary>The row of a name.</summary>
    /// <param name="name">The variant's name.</param>
    /// <exception cref="ArgumentException">There is no such variant.</exception>
    public VariantRow this[string name] => Rows.FirstOrDefault(r => r.Name == name)
        ?? throw new ArgumentException($"There is no variant \"{name}\". {StatueNames.Closest(name, Rows.Select(r => r.Name))}", nameof(name));

    /// <summary>The best of the variants that pass: the first with the least objective; null when none passes.</summary>
    /// <param name="objective">What is to be least, as in <c>r => r.Mass!.Value.Kilograms</c>.</param>
    public VariantRow? Best(Func<VariantRow, double> objective) =>
        Rows.Where(r => r.Passes && double.IsFinite(objective(r))).MinBy(objective);

    /// <summary>What is different between the sheets of two variants.</summary>
    /// <param name="from">Name of the earlier one.</param>
    /// <param name="to">Name of the later one.</param>
    /// <param name="tolerance">The relative difference of numbers that does not count.</param>
    /// <exception cref="ArgumentException">There is no such variant, or one of them has no sheet.</exception>
    public SheetComparison Compare(string from, string to, double tolerance = 0.001)
    {
        (VariantRow a, VariantRow b) = (this[from], this[to]);
        return a.Sheet is null || b.Sheet is null
            ? throw new ArgumentException($"\"{(a.Sheet is null ? from : to)}\" has no sheet: {(a.Sheet is null ? a.Error : b.Error)}")
            : b.Sheet.CompareWith(a.Sheet, tolerance);
    }

    /// <summary>The rows as comma-separated values: verdict, governing check, mass, frequency, and each family's utilization.</summary>
    /// <param name="units">The units of mass and frequency.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric)
    {
        string[] families = Families();
        var text = new StringBuilder();
        Csv.AppendLine(text, ["variant", "verdict", "governs", "utilization", Csv.Head("mass", Dimension.Mass, units), Csv.Head("frequency", Dimension.Frequency, units), .. families, "error"]);
        foreach (VariantRow row in Rows)
        {
            Csv.AppendLine(text,
            [
                row.Name, Verdict(row), row.Governing?.Subject.ToString() ?? "", Csv.Number(row.Governing?.Utilization, Dimension.Number, units),
                Csv.Number(row.Mass?.Kilograms, Dimension.Mass, units), Csv.Number(row.Frequency?.Hertz, Dimension.Frequency, units),
                .. families.Select(f => Csv.Number(row.UtilizationOf(f), Dimension.Number, units)), row.Error,
            ]);
        }
        return text.ToString();
    }

    /// <summary>The rows as plain text, at most 110 wide, with the caution.</summary>
    /// <param name="units">The units to print in.</param>
    public string Print(DisplayUnits units = DisplayUnits.Metric)
    {
        var text = new StringBuilder("VARIANTS\n");
        List<string[]> rows = [["variant", "verdict", "mass", "frequency", "util.", "governs"]];
        foreach (VariantRow row in Rows)
        {
            rows.Add(
            [
                row.Name, Verdict(row), Text(row.Mass?.Kilograms, Dimension.Mass, units), Text(row.Frequency?.Hertz, Dimension.Frequency, units),
                row.Governing?.UtilizationText ?? "–", row.Error.Length > 0 ? row.Error : row.Governing?.Subject.ToString() ?? "nothing checked",
            ]);
        }
        TextLayout.AppendTable(text, 2, [new(30), new(18), new(12, Right: true), new(10, Right: true), new(6, Right: true), new(0)], rows);
        TextLayout.AppendWrapped(text.Append('\n'), "", CheckSheet.Caution);
        return text.ToString();
    }

    /// <summary>The rows as plain text in metric units.</summary>
    public override string ToString() => Print();

    private static VariantRow RowOf(Statue statue, Variant variant, Criteria criteria, Situation[] situations)
    {
        Statue? changed = null;
        try
        {
            changed = variant.Change(statue) ?? throw new ArgumentException("the change gave no statue");
            CheckSheet sheet = changed.Check(criteria, situations);
            ResultLine? mass = sheet.Results.FirstOrDefault(r => r is { Group: "masses", Name: "total" }), mode = sheet.Results.FirstOrDefault(r => r is { Group: "frequencies", Name: "mode 1" });
            return new VariantRow
            {
                Name = variant.Name,
                Statue = changed,
                Sheet = sheet,
                Mass = mass is null ? null : Mass.FromKilograms(mass.Value),
                Frequency = mode is null ? null : Frequency.FromHertz(mode.Value),
            };
        }
        // Whatever a user's change throws belongs in its row.
        catch (Exception e) when (e is not OperationCanceledException)
        {
            string reason = e is InvalidStatueException invalid ? string.Join("; ", invalid.Problems.Select(p => p.ToString())) : e.Message;
            return new VariantRow { Name = variant.Name, Statue = changed, Error = reason };
        }
    }

    private static string Verdict(VariantRow row) => row.Sheet switch
    {
        null => "no result",
        { Passed: false } => "FAIL",
        { Complete: false } => "pass, incomplete",
        { RestsOnAssumedInputs: true } => "pass, assumed",
        _ => "pass",
    };

    private static string Text(double? si, Dimension dimension, DisplayUnits units) => si is { } value ? TextLayout.Unbroken(TextLayout.Format(value, dimension, units)) : "–";

    private string[] Families() => [.. Rows.Where(r => r.Sheet is not null).SelectMany(r => r.Sheet!.GoverningByFamily.Select(c => c.Family)).Distinct().Order(StringComparer.Ordinal)];
}
