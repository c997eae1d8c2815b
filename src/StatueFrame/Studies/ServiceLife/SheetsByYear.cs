using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The sheets of a corroding statue at the years that were asked for, each made once.</summary>
/// <remarks>For one thread, which fills it from many.</remarks>
internal sealed class SheetsByYear(Statue statue, Criteria criteria, ValueList<Situation> situations, ServiceLifeOptions options)
{
    private sealed record Look(CheckSheet? Sheet, Dictionary<StudyKey, Check> Worst, string? WornThrough);

    private readonly SortedDictionary<int, Look> looks = [];

    /// <summary>The years from the age described that a tick stands for.</summary>
    public double YearsOf(int tick) => options.Span.Years365 * tick / (options.Steps << options.Halvings);

    /// <summary>The sheet; null when something is worn through.</summary>
    public CheckSheet? At(int tick)
    {
        Fill([tick], CancellationToken.None, _ => { });
        return looks[tick].Sheet;
    }

    public Check? CheckAt(int tick, StudyKey key) => looks[tick].Worst.GetValueOrDefault(key);

    /// <summary>Whether a check fails; all do when something is worn through.</summary>
    public bool Fails(int tick, StudyKey key) => looks[tick].Sheet is null || CheckAt(tick, key)?.Verdict == Verdict.Fail;

    /// <summary>The first year at which something is worn through, of those looked at.</summary>
    public (double Years, string Text)? WornThrough()
    {
        foreach ((int tick, Look look) in looks)
        {
            if (look.WornThrough is { } text)
                return (YearsOf(tick), text);
        }
        return null;
    }

    /// <summary>Makes the sheets that are not there yet, on all cores; what comes out does not depend on how many there are.</summary>
    public void Fill(int[] ticks, CancellationToken cancellation, Action<double> tell)
    {
        int[] missing = [.. ticks.Where(tick => !looks.ContainsKey(tick))];
        var made = new Look[missing.Length];
        int done = 0;
        StudyWork.ForEach(missing.Length, cancellation, i =>
        {
            made[i] = Make(missing[i]);
            tell((double)Interlocked.Increment(ref done) / made.Length);
        });
        for (int i = 0; i < missing.Length; i++)
            looks.Add(missing[i], made[i]);
    }

    private Look Make(int tick)
    {
        Statue later;
        try
        {
            later = statue.Corroded(Duration.FromYears365(YearsOf(tick)));
        }
        catch (InvalidStatueException e) when (tick > 0)
        {
            return new Look(null, [], e.Problems[0].ToString());
        }
        CheckSheet sheet = later.Check(criteria, situations.AsSpan());
        return new Look(sheet, StudyKey.WorstOf(sheet), null);
    }
}
