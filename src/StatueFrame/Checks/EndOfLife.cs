using System.Runtime.ExceptionServices;
using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>The statue as it is when its design life ends: the worst check of strength of its own sheet is a check of today's.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class EndOfLife
{
    private static readonly CheckEntry entry = Catalogue.Find("life.end")!;

    private readonly double years;
    private readonly Exception? error;

    private EndOfLife(Statue statue, double years)
    {
        this.years = years;
        try
        {
            Model = ModelBuilder.BuildValid(statue.Corroded(Duration.FromYears365(years)) with { Corrosion = null });
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            error = e;
        }
    }

    /// <summary>The statue then; null when there is none, as what corrodes through can not be analyzed.</summary>
    public StatueModel? Model { get; }

    /// <summary>Null for a statue without corrosion or without a design life.</summary>
    public static EndOfLife? Of(StatueModel model, Criteria criteria) =>
        model.Statue.Corrosion is { } corrosion && (criteria.DesignLife ?? criteria.Durability?.DesignLife.Years365) is { } life
            ? new EndOfLife(model.Statue, Math.Max(0, life - corrosion.Age.Years365)) : null;

    /// <summary>Writes what the sheet of that year finds.</summary>
    /// <param name="lists">The sheet of today.</param>
    /// <param name="then">That of the end.</param>
    public void AddTo(SheetWriter lists, Func<CheckSheet> then)
    {
        try
        {
            if (error is not null)
                ExceptionDispatchInfo.Throw(error);
            AddWorst(lists, then());
        }
        catch (InvalidStatueException e)
        {
            lists.Checks.Add(Check.Of(entry.Subject(Invariant($"after {years:0.#} years: {e.Problems[0]}")), Dimension.Number, Source.Assumed("checks"), _ => (1, 0)));
        }
    }

    private void AddWorst(SheetWriter lists, CheckSheet then)
    {
        Check[] strength = [.. then.Checks.Where(check => check.Family is not ("metals" or "life") && Catalogue.NatureOf(check.Id) == Nature.Strength)];
        if (strength.Where(check => check.Utilization is not null).MinBy(check => check, CheckOrder.WorstFirst) is { } worst)
        {
            CheckSubject subject = entry.Subject(At(worst), worst.Situation);
            lists.Checks.Add(Check.Of(subject, Dimension.Number, worst.Source, w => (w.Given("u", worst.Utilization!.Value, Dimension.Number, "utilization of the corroded statue's worst check"), 1))
                .Assuming([.. worst.AssumedInputs, MetalSheet.EvenLoss.Short]));
            lists.Assumptions.AddRange([.. then.Assumptions.Where(assumption => worst.AssumedInputs.Contains(assumption.Short)), MetalSheet.EvenLoss]);
        }
        // What can be looked at now and not then, as a section that has grown too thin for its rules, must not go without a word.
        HashSet<(string, string, string)> open = [.. lists.Checks.Where(check => check.Verdict == Verdict.NotChecked).Select(Key)];
        if (Array.Find(strength, check => check.Verdict == Verdict.NotChecked && !open.Contains(Key(check))) is { } notDone)
            lists.Checks.Add(entry.NotChecked(notDone.Reason, At(notDone), notDone.Situation));

        string At(Check check) => Invariant($"after {years:0.#} years: {check.Id}, {check.Where}").TrimEnd(',', ' ');

        static (string, string, string) Key(Check check) => (check.Id, check.Situation, check.Reason);
    }
}
