using System.Text;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>
/// The year in which each check of a corroding statue stops passing: its sheet is looked at step by step, and the step in
/// which a check fails is halved. Bars can be renewed at given years, after which a check may pass again. A part that is worn
/// through fails every check.
/// </summary>
/// <remarks>
/// The loss of thickness and the end of the design life do not take part: they look at a life of their own. Unlike metals in contact do. Immutable and safe to share
/// between threads.
/// </remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class ServiceLife
{
    private ServiceLife(Statue statue, ServiceLifeOptions options, IEnumerable<CheckLife> lives, IReadOnlyList<(double Years, CheckSheet? Sheet)> sheets, (double Years, string Text)? wornThrough)
    {
        (Statue, Options) = (statue, options);
        Lives = lives.OrderBy(life => life.FirstFail ?? double.PositiveInfinity).ThenBy(life => life.Now, CheckOrder.WorstFirst).ToValueList();
        Sheets = sheets.Where(s => s.Sheet is not null).Select(s => (s.Years, s.Sheet!)).ToValueList();
        WornThrough = wornThrough?.Text;
        WornThroughAfter = wornThrough?.Years;
    }

    /// <summary>Looks at the years ahead.</summary>
    /// <param name="statue">The statue, with <see cref="Statue.Corrosion"/> described.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <param name="options">How far and how finely to look; 100 years in ten steps by default.</param>
    /// <param name="progress">Told the part that is done, 0 to 1, from any thread.</param>
    /// <param name="cancellation">Stops the study.</param>
    /// <exception cref="InvalidStatueException">The description, the criteria, the situations or the options have problems.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static ServiceLife Of(
        Statue statue, Criteria criteria, ValueList<Situation> situations, ServiceLifeOptions? options = null,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentNullException.ThrowIfNull(situations);
        options ??= new ServiceLifeOptions();
        var v = new Validator();
        statue.Validate(v);
        options.Validate(v.At(nameof(Options)), statue);
        StatueSheet.Validate(v, statue, criteria, situations.AsSpan());
        v.ThrowIfAny();
        cancellation.ThrowIfCancellationRequested();
        var years = new SheetsByYear(statue, criteria, situations, options);
        LifeInstant[] instants = years.Instants;
        CheckSheet now = years.SheetAt(instants[0]) ?? throw new InvalidOperationException("A valid statue has a sheet.");
        years.Fill(instants, cancellation, part => progress?.Report(0.5 * part));
        Dictionary<StudyKey, Check> first = StudyKey.WorstOf(now);
        StudyKey[] keys = [.. first.Where(pair => pair.Value.Verdict != Verdict.NotChecked && pair.Value.Id is not "metals.loss").Select(pair => pair.Key)];
        (StudyKey Key, LifeInstant Before, LifeInstant After)[] turns =
        [
            .. keys.SelectMany(key => instants.Zip(instants.Skip(1)).Where(pair => years.Fails(pair.First, key) != years.Fails(pair.Second, key)).Select(pair => (key, pair.First, pair.Second))),
        ];
        for (int halving = 0; halving < options.Halvings; halving++)
        {
            years.Fill([.. turns.Where(IsOpen).Select(t => t.Before.Middle(t.After)).Distinct().Order()], cancellation, _ => { });
            turns = Array.ConvertAll(turns, t => !IsOpen(t) ? t
                : years.Fails(t.Before.Middle(t.After), t.Key) == years.Fails(t.Before, t.Key) ? t with { Before = t.Before.Middle(t.After) } : t with { After = t.Before.Middle(t.After) });
            progress?.Report(0.5 + 0.5 * (halving + 1) / options.Halvings);
        }
        ILookup<StudyKey, (LifeInstant Before, LifeInstant After)> turnsOf = turns.ToLookup(t => t.Key, t => (t.Before, t.After));
        var sheets = years.Steps.Select(at => (at.Years, years.SheetAt(at))).ToList();
        progress?.Report(1);
        return new ServiceLife(statue, options, keys.Select(Life), sheets, years.WornThrough());

        static bool IsOpen((StudyKey, LifeInstant Before, LifeInstant After) turn) => turn.Before.Years < turn.After.Years;

        CheckLife Life(StudyKey key)
        {
            bool failsNow = years.Fails(instants[0], key);
            (LifeInstant Before, LifeInstant After)[] own = [.. turnsOf[key]];
            // Every second turn begins a spell of failing, the first one when it passes now.
            LifeInstant[] starts = [.. own.Where((_, i) => i % 2 == (failsNow ? 1 : 0)).Select(t => t.After)], ends = [.. own.Where((_, i) => i % 2 == (failsNow ? 0 : 1)).Select(t => t.After)];
            if (failsNow)
                starts = [instants[0], .. starts];
            LifeInstant shown = starts.Length > 0 ? starts[0] : instants[^1];
            return new CheckLife(
                key.Id, key.Place, key.Situation, first[key], failsNow ? null : own.Length > 0 ? own[0].Before.Years : instants[^1].Years,
                starts.Length > 0 ? starts[0].Years : null, years.CheckAt(shown, key))
            {
                Failing = starts.Select((from, i) => new FailingSpell(from.Years, i < ends.Length ? ends[i].Years : null)).ToValueList(),
            };
        }
    }

    /// <summary>The statue at the age described.</summary>
    public Statue Statue { get; }

    /// <summary>How far and how finely was looked.</summary>
    public ServiceLifeOptions Options { get; }

    /// <summary>All checks that were done at the age described, the first to fail first.</summary>
    public ValueList<CheckLife> Lives { get; }

    /// <summary>The check that fails first; null when all pass to the end.</summary>
    public CheckLife? FirstToFail => Lives.FirstOrDefault(life => life.FirstFail is not null);

    /// <summary>The first to fail of each family, the first of all first.</summary>
    public IEnumerable<CheckLife> FirstOfFamilies => Lives.DistinctBy(life => life.Now.Family);

    /// <summary>The sheets of the steps, with the years from the age described.</summary>
    public ValueList<(double Years, CheckSheet Sheet)> Sheets { get; }

    /// <summary>What was found worn through; null when nothing was.</summary>
    public string? WornThrough { get; }

    /// <summary>The first year, of those looked at, at which something was worn through; null when nothing was.</summary>
    public double? WornThroughAfter { get; }

    /// <summary>The life of each family and of every check that fails, as plain text, at most 110 columns wide.</summary>
    public string ToText()
    {
        var text = new StringBuilder();
        Corrosion corrosion = Statue.Corrosion!;
        TextLayout.AppendWrapped(text, "", $"SERVICE LIFE: {Statue.Name}");
        TextLayout.AppendWrapped(text, "", FormattableString.Invariant($"{Options.Span.Years365:0.#} years in {corrosion.Air}{(corrosion.AirInside is { } inside ? $"; inside {inside}" : "; inside as outside (assumed)")}; corrosion even over each face"));
        foreach (BarRenewal renewal in Options.Renewals)
            TextLayout.AppendWrapped(text, "", $"Renewed: {renewal}");
        CheckLife[] shown = [.. FirstOfFamilies.Concat(Lives.Where(life => life.FirstFail is not null)).Distinct()];
        TextLayout.AppendTable(
            text, 2, [new(40), new(24), new(8, Right: true), new(8, Right: true), new(0)],
            [["check", "place", "now", "then", "life"], .. shown.Select(life => new[]
            {
                string.Join(", ", new[] { life.Id, life.Situation }.Where(part => part.Length > 0)), life.Place,
                CheckNumber.Utilization(life.Now.Utilization ?? 0), life.End?.Utilization is { } end ? CheckNumber.Utilization(end) : "",
                $"{life.VerdictText}{(life.FirstFail is not null && life.End is null ? ", worn through" : "")}",
            })]);
        if (WornThrough is not null)
            TextLayout.AppendWrapped(text, "  ", FormattableString.Invariant($"Looked at after {WornThroughAfter:0.##} years: {WornThrough}"));
        text.Append("\nCAUTION\n");
        TextLayout.AppendTable(text, 2, [new TextColumn(0)], [[CheckSheet.Caution]]);
        return text.ToString();
    }

    /// <summary>The utilization of every check at every step, as comma-separated values by RFC 4180.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        var worst = Sheets.Select(s => StudyKey.WorstOf(s.Sheet)).ToList();
        CsvText.AppendLine(text, ["check", "place", "situation", "fails after [a]", .. Sheets.Select(s => FormattableString.Invariant($"{s.Years:0.###} a"))]);
        foreach (CheckLife life in Lives)
        {
            var key = new StudyKey(life.Id, life.Place, life.Situation);
            CsvText.AppendLine(text, [life.Id, life.Place, life.Situation, CsvText.Number(life.FirstFail, Dimension.Number, DisplayUnits.Metric),
                .. worst.Select(at => CsvText.Number(at.TryGetValue(key, out Check? check) ? check.Utilization : null, Dimension.Number, DisplayUnits.Metric))]);
        }
        return text.ToString();
    }

    /// <summary>The text.</summary>
    public override string ToString() => ToText();
}
