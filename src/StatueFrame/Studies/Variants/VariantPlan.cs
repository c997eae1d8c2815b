using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A study of variants that can be run here or in shards: the statue, the changes, the situations and what is enough.</summary>
/// <remarks>Immutable and safe to share between threads when the changes are.</remarks>
public sealed class VariantPlan : StudyPlan<VariantStudy>
{
    private readonly Situation[] situations;

    /// <summary>Describes a study.</summary>
    /// <param name="statue">The statue that is varied.</param>
    /// <param name="variants">The variants, with names of their own.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <exception cref="ArgumentException">There is no variant, or two have one name.</exception>
    public VariantPlan(Statue statue, IReadOnlyList<Variant> variants, Criteria criteria, IReadOnlyList<Situation> situations)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(variants);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentNullException.ThrowIfNull(situations);
        if (variants.Count == 0)
            throw new ArgumentException("There must be at least one variant.", nameof(variants));
        if (variants.GroupBy(v => v.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two variants are named \"{twice.Key}\"; rows are told apart by name.", nameof(variants));
        (Statue, Variants, Criteria, this.situations) = (statue, variants.ToValueList(), criteria, [.. situations]);
    }

    /// <summary>The statue that is varied.</summary>
    public Statue Statue { get; }

    /// <summary>The variants.</summary>
    public ValueList<Variant> Variants { get; }

    /// <summary>What is enough.</summary>
    public Criteria Criteria { get; }

    /// <inheritdoc/>
    public override int Items => Variants.Count;

    private protected override string Kind => "variants";

    /// <inheritdoc/>
    public override VariantStudy Run(StudyOptions? options = null)
    {
        var rows = new VariantRow[Items];
        (options ?? new StudyOptions()).For(Items, i => rows[i] = Row(Variants[i]));
        return new VariantStudy(ValueList.Create<VariantRow>(rows));
    }

    internal override string Record(int item) => VariantRecord.Write(Row(Variants[item]));

    private protected override VariantStudy FromRecords(string[] records) => new(records.Select((record, i) =>
    {
        // Where there is none, the shard met the same and says so in its record.
        var changed = Changed(Variants[i]) as Statue;
        return VariantRecord.Read(record, changed, () => changed!.Check(Criteria, situations));
    }).ToValueList());

    private protected override IEnumerable<string> Identity()
    {
        yield return DescriptionBits.Of(Statue, Criteria, situations);
        foreach (Variant variant in Variants)
            yield return DescriptionBits.Of(variant.Name, Changed(variant));
    }

    /// <summary>The changed statue, or why there is none.</summary>
    private object? Changed(Variant variant)
    {
        try
        {
            return variant.Change(Statue);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return e.Message;
        }
    }

    private VariantRow Row(Variant variant)
    {
        Statue? changed = null;
        try
        {
            changed = variant.Change(Statue) ?? throw new ArgumentException("the change gave no statue");
            CheckSheet sheet = changed.Check(Criteria, situations);
            return new VariantRow(() => changed.Check(Criteria, situations))
            {
                Name = variant.Name,
                Statue = changed,
                VerdictText = VerdictOf(sheet),
                Passes = sheet.Holds,
                // A method used beyond its range fails a variant too, and then says so.
                Governing = GoverningCheck.Of(sheet.Governing?.Verdict == Verdict.Fail ? sheet.Governing : sheet.Failed.MinBy(check => check, CheckOrder.WorstFirst) ?? sheet.Governing),
                Families = sheet.GoverningByFamily.Select(c => GoverningCheck.Of(c)).OfType<GoverningCheck>().ToValueList(),
                Masses = sheet.Results.Where(r => r.Group == "masses").Select(r => (r.Name, Mass.FromKilograms(r.Value))).ToValueList(),
                Frequencies = sheet.Results.Where(r => r.Group == "frequencies" && r.Dimension == Dimension.Frequency).Select(r => Frequency.FromHertz(r.Value)).ToValueList(),
            };
        }
        // Whatever a user's change throws belongs in its row.
        catch (Exception e) when (e is not OperationCanceledException)
        {
            string reason = e is InvalidStatueException invalid ? string.Join("; ", invalid.Problems.Select(p => p.ToString())) : e.Message;
            return new VariantRow(null) { Name = variant.Name, Statue = changed, VerdictText = "no result", Error = reason.Length > 0 ? reason : e.GetType().Name };
        }
    }

    private static string VerdictOf(CheckSheet sheet) => sheet switch
    {
        { Holds: false } => "FAIL",
        { Passed: false } => "open",
        { Complete: false } => "pass, incomplete",
        { RestsOnAssumedInputs: true } => "pass, assumed",
        _ => "pass",
    };
}
