using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The sheets of a corroding statue at the moments that were asked for, each made once.</summary>
/// <remarks>For one thread, which fills it from many.</remarks>
internal sealed class SheetsByYear
{
    private sealed record Look(CheckSheet? Sheet, Dictionary<StudyKey, Check> Worst, string? WornThrough);

    private readonly SortedDictionary<LifeInstant, Look> looks = [];
    private readonly Statue[] renewed;
    private readonly double[] renewals;
    private readonly Criteria criteria;
    private readonly ValueList<Situation> situations;

    public SheetsByYear(Statue statue, Criteria criteria, ValueList<Situation> situations, ServiceLifeOptions options)
    {
        BarRenewal[] inOrder = [.. options.Renewals.OrderBy(r => r.After.Seconds)];
        renewed = new Statue[inOrder.Length + 1];
        renewed[0] = statue;
        for (int i = 0; i < inOrder.Length; i++)
            renewed[i + 1] = inOrder[i].Of(renewed[i]);
        renewals = [.. inOrder.Select(r => r.After.Years365)];
        (this.criteria, this.situations) = (criteria, situations);
        double span = options.Span.Years365;
        Steps = [.. Enumerable.Range(0, options.Steps + 1).Select(i => At(span * i / options.Steps))];
        // The old bars are at their worst, and the new ones at their best, when they are changed.
        Instants = [.. Steps.Concat(renewals.Where(r => r <= span).SelectMany(r => new[] { new LifeInstant(r, renewals.Count(other => other < r)), At(r) })).Distinct().Order()];
    }

    /// <summary>The moments at equal steps, from now to the end.</summary>
    public LifeInstant[] Steps { get; }

    /// <summary>The steps, with the moments before and after each renewal.</summary>
    public LifeInstant[] Instants { get; }

    /// <summary>The sheet; null when something is worn through.</summary>
    public CheckSheet? SheetAt(LifeInstant at)
    {
        Fill([at], CancellationToken.None, _ => { });
        return looks[at].Sheet;
    }

    public Check? CheckAt(LifeInstant at, StudyKey key) => looks[at].Worst.GetValueOrDefault(key);

    /// <summary>Whether a check fails; all do when something is worn through.</summary>
    public bool Fails(LifeInstant at, StudyKey key) => looks[at].Sheet is null || CheckAt(at, key)?.Verdict == Verdict.Fail;

    /// <summary>The first year at which something is worn through, of those looked at.</summary>
    public (double Years, string Text)? WornThrough()
    {
        foreach ((LifeInstant at, Look look) in looks)
        {
            if (look.WornThrough is { } text)
                return (at.Years, text);
        }
        return null;
    }

    /// <summary>Makes the sheets that are not there yet, on all cores; what comes out does not depend on how many there are.</summary>
    public void Fill(LifeInstant[] instants, CancellationToken cancellation, Action<double> tell)
    {
        LifeInstant[] missing = [.. instants.Where(at => !looks.ContainsKey(at))];
        var made = new Look[missing.Length];
        int done = 0;
        ParallelWork.ForEach(missing.Length, i =>
        {
            made[i] = Make(missing[i]);
            tell((double)Interlocked.Increment(ref done) / made.Length);
        }, cancellation);
        for (int i = 0; i < missing.Length; i++)
            looks.Add(missing[i], made[i]);
    }

    private LifeInstant At(double years) => new(years, renewals.Count(r => r <= years));

    private Look Make(LifeInstant at)
    {
        Statue later;
        try
        {
            later = renewed[at.Renewals].Corroded(Duration.FromYears365(at.Years));
        }
        catch (InvalidStatueException e) when (at.Years > 0)
        {
            return new Look(null, [], e.Problems[0].ToString());
        }
        CheckSheet sheet = StatueSheet.Of(Analysis.StatueModel.Build(later), criteria, situations.AsSpan(), looksAhead: false);
        return new Look(sheet, StudyKey.WorstOf(sheet), null);
    }
}
