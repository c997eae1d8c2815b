using System.Text;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>
/// Variants of a statue side by side: each is built, analyzed and checked, on all cores; one that fails says why in its
/// row and stops no other.
/// </summary>
/// <remarks>Immutable and safe to share between threads. The rows do not depend on the number of threads or shards.</remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class VariantStudy
{
    internal VariantStudy(ValueList<VariantRow> rows) => Rows = rows;

    /// <summary>Runs a study; <see cref="VariantPlan"/> describes one that is run in shards.</summary>
    /// <param name="statue">The statue that is varied.</param>
    /// <param name="variants">The variants, with names of their own.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentException">There is no variant, or two have one name.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static VariantStudy Of(Statue statue, IReadOnlyList<Variant> variants, Criteria criteria, IReadOnlyList<Situation> situations, StudyOptions? options = null) =>
        new VariantPlan(statue, variants, criteria, situations).Run(options);

    /// <summary>One row a variant, in their order.</summary>
    public ValueList<VariantRow> Rows { get; }

    /// <summary>The row of a name.</summary>
    /// <param name="name">The variant's name.</param>
    /// <exception cref="ArgumentException">There is no such variant.</exception>
    public VariantRow this[string name] => Rows.FirstOrDefault(r => r.Name == name)
        ?? throw new ArgumentException($"There is no variant \"{name}\". {NearNames.Closest(name, Rows.Select(r => r.Name))}", nameof(name));

    /// <summary>The best of the variants that are good enough: the first with the least objective; null when there is none.</summary>
    /// <param name="objective">What is to be least, as in <c>r => r.Mass!.Value.Kilograms</c>.</param>
    /// <param name="accept">
    /// What is good enough of those that were worked out; null for those in which nothing fails. Another rule sets checks aside,
    /// as in <c>r => r.UtilizationOf("bars") &lt;= 1</c>.
    /// </param>
    public VariantRow? Best(Func<VariantRow, double> objective, Func<VariantRow, bool>? accept = null) =>
        Rows.Where(r => r.Error.Length == 0 && (accept?.Invoke(r) ?? r.Passes) && double.IsFinite(objective(r))).MinBy(objective);

    /// <summary>What is different between the sheets of two variants.</summary>
    /// <param name="from">Name of the earlier one.</param>
    /// <param name="to">Name of the later one.</param>
    /// <param name="tolerance">The relative difference of numbers that does not count.</param>
    /// <exception cref="ArgumentException">There is no such variant, or one of them has no sheet.</exception>
    public SheetComparison Compare(string from, string to, double tolerance = 0.001)
    {
        (CheckSheet earlier, CheckSheet later) = (SheetOf(from), SheetOf(to));
        return later.CompareWith(earlier, tolerance);
    }

    /// <summary>Why two variants differ: the inputs that changed, and the numbers in the working of each family's governing check that moved with them.</summary>
    /// <inheritdoc cref="Compare"/>
    public VariantDifference Explain(string from, string to, double tolerance = 0.01)
    {
        (CheckSheet earlier, CheckSheet later) = (SheetOf(from), SheetOf(to));
        return new VariantDifference(from, to, InputChange.Between(this[from].Statue!, this[to].Statue!), CheckReason.Between(earlier, later, tolerance));
    }

    /// <summary>The rows as comma-separated values: verdict, governing check, masses, frequencies, and each family's utilization and place.</summary>
    /// <param name="units">The units of masses and frequencies.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric)
    {
        string[] families = [.. Rows.SelectMany(r => r.Families.Select(f => f.Subject.Family)).Distinct().Order(StringComparer.Ordinal)];
        string[] masses = [.. Rows.SelectMany(r => r.Masses.Select(m => m.Name)).Distinct()];
        int modes = Rows.Max(r => r.Frequencies.Count);
        var text = new StringBuilder();
        CsvText.AppendLine(text,
        [
            "variant", "verdict", "governs", "utilization",
            .. masses.Select(m => CsvText.Head($"mass {m}", Dimension.Mass, units)), .. Enumerable.Range(1, modes).Select(m => CsvText.Head($"mode {m}", Dimension.Frequency, units)),
            .. families.SelectMany(f => new[] { f, $"{f} governs" }), "error",
        ]);
        foreach (VariantRow row in Rows)
        {
            CsvText.AppendLine(text,
            [
                row.Name, row.VerdictText, row.Governing?.Subject.ToString() ?? "", CsvText.Number(row.Governing?.Utilization, Dimension.Number, units),
                .. masses.Select(name => CsvText.Number(row.Masses.Where(m => m.Name == name).Select(m => (double?)m.Mass.Kilograms).FirstOrDefault(), Dimension.Mass, units)),
                .. Enumerable.Range(0, modes).Select(m => CsvText.Number(m < row.Frequencies.Count ? row.Frequencies[m].Hertz : null, Dimension.Frequency, units)),
                .. families.SelectMany(f => new[]
                {
                    CsvText.Number(row.UtilizationOf(f), Dimension.Number, units), row.Families.FirstOrDefault(g => g.Subject.Family == f)?.Subject.ToString() ?? "",
                }),
                row.Error,
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
                row.Name, row.VerdictText, Text(row.Mass?.Kilograms, Dimension.Mass, units), Text(row.Frequency?.Hertz, Dimension.Frequency, units),
                row.Governing?.UtilizationText ?? "–", row.Error.Length > 0 ? row.Error : row.Governing?.Subject.ToString() ?? "nothing checked",
            ]);
        }
        TextLayout.AppendTable(text, 2, [new(30), new(18), new(12, Right: true), new(10, Right: true), new(6, Right: true), new(0)], rows);
        TextLayout.AppendWrapped(text.Append('\n'), "", CheckSheet.Caution);
        return text.ToString();
    }

    /// <summary>The rows as plain text in metric units.</summary>
    public override string ToString() => Print();

    private CheckSheet SheetOf(string name)
    {
        VariantRow row = this[name];
        return row.Sheet ?? throw new ArgumentException($"\"{name}\" has no sheet: {row.Error}");
    }

    private static string Text(double? si, Dimension dimension, DisplayUnits units) => si is { } value ? TextLayout.Unbroken(TextLayout.Format(value, dimension, units)) : "–";
}
