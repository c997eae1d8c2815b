using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What the catalogue says of a variant, in numbers: every entry that its sheet holds, situation by situation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SheetNumbers
{
    private readonly (Pressure? Stress, Length? Deflection, ValueList<CheckUtilization> Utilizations)[] situations;

    public SheetNumbers(Statue variant, Criteria criteria, Situation[] situations)
    {
        StatueModel model = ModelBuilder.BuildValid(variant);
        CheckSheet sheet = StatueSheet.Of(model, criteria, situations);
        ILookup<string, Check> bySituation = sheet.Checks.ToLookup(check => check.Situation);
        this.situations = Array.ConvertAll(situations, situation =>
        {
            Response response = model.Respond(situation);
            return ((Pressure?)response.WorstBar?.Stress, (Length?)response.MostDeflectedBar?.Deflection, Tally(bySituation[situation.Name]));
        });
        Others = Tally(sheet.Checks.Where(check => !Array.Exists(situations, s => s.Name == check.Situation)));
        Holds = sheet.Holds;
    }

    /// <summary>Of the checks that belong to no situation alone.</summary>
    public ValueList<CheckUtilization> Others { get; }

    public bool Holds { get; }

    public (Pressure? Stress, Length? Deflection, ValueList<CheckUtilization> Utilizations) Of(int situation) => situations[situation];

    private static ValueList<CheckUtilization> Tally(IEnumerable<Check> checks) =>
    [
        .. checks.GroupBy(check => check.Id).Select(kind =>
            new CheckUtilization(kind.Key, kind.Max(check => check.Utilization), kind.Count(check => check.Verdict == Verdict.NotChecked))),
    ];
}
