using System.Text;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>
/// The year in which each check of a corroding statue stops passing: its sheet is looked at step by step, and the step in
/// which a check fails is halved. A part that is worn through fails every check that passed before.
/// </summary>
/// <remarks>
/// The checks of the family "metals" do not take part: they look at a design life of their own. Immutable and safe to share
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
        v.ThrowIfAny();
        cancellation.ThrowIfCancellationRequested();
        var years = new SheetsByYear(statue, criteria, situations, options);
        CheckSheet now = years.At(0) ?? throw new InvalidOperationException("A valid statue has a sheet.");
        int ticks = options.Steps << options.Halvings, step = 1 << options.Halvings;
        years.Fill([.. Enumerable.Range(0, options.Steps + 1).Select(i => i * step)], cancellation, part => progress?.Report(0.5 * part));
        Dictionary<StudyKey, Check> first = StudyKey.WorstOf(now);
        (StudyKey Key, int Pass, int Fail)[] open = [.. first.Where(pair => pair.Value.Verdict != Verdict.NotChecked && pair.Value.Family != "metals").Select(pair => FirstStep(pair.Key))];
        for (int halving = 0; halving < options.Halvings; halving++)
        {
            years.Fill([.. open.Where(o => o.Fail - o.Pass > 1 && o.Pass >= 0 && o.Fail <= ticks).Select(o => (o.Pass + o.Fail) / 2).Distinct().Order()], cancellation, _ => { });
            open = Array.ConvertAll(open, o => o.Fail - o.Pass <= 1 || o.Pass < 0 || o.Fail > ticks ? o
                : years.Fails((o.Pass + o.Fail) / 2, o.Key) ? o with { Fail = (o.Pass + o.Fail) / 2 } : o with { Pass = (o.Pass + o.Fail) / 2 });
            progress?.Report(0.5 + 0.5 * (halving + 1) / options.Halvings);
        }
        IEnumerable<CheckLife> lives = open.Select(o => new CheckLife(
            o.Key.Id, o.Key.Place, o.Key.Situation, first[o.Key], o.Pass < 0 ? null : years.YearsOf(o.Pass), o.Fail > ticks ? null : years.YearsOf(o.Fail),
            years.CheckAt(Math.Min(o.Fail, ticks), o.Key)));
        var sheets = Enumerable.Range(0, options.Steps + 1).Select(i => (years.YearsOf(i * step), years.At(i * step))).ToList();
        progress?.Report(1);
        return new ServiceLife(statue, options, lives, sheets, years.WornThrough());

        (StudyKey, int, int) FirstStep(StudyKey key)
        {
            for (int i = 0; i <= options.Steps; i++)
            {
                if (years.Fails(i * step, key))
                    return (key, (i - 1) * step, i * step);
            }
            return (key, ticks, ticks + 1);
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
        CheckLife[] shown = [.. FirstOfFamilies.Concat(Lives.Where(life => life.FirstFail is not null)).Distinct()];
        TextLayout.AppendTable(
            text, 2, [new(40), new(24), new(8, Right: true), new(8, Right: true), new(0)],
            [["check", "place", "now", "then", "fails after"], .. shown.Select(life => new[]
            {
                string.Join(", ", new[] { life.Id, life.Situation }.Where(part => part.Length > 0)), life.Place,
                CheckNumber.Utilization(life.Now.Utilization ?? 0), life.End?.Utilization is { } end ? CheckNumber.Utilization(end) : "",
                life.FirstFail is not { } years ? "passes to the end" : life.LastPass is null ? "fails now" : FormattableString.Invariant($"{years:0.##} years{(life.End is null ? ", worn through" : "")}"),
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
        Csv.AppendLine(text, ["check", "place", "situation", "fails after [a]", .. Sheets.Select(s => FormattableString.Invariant($"{s.Years:0.###} a"))]);
        foreach (CheckLife life in Lives)
        {
            var key = new StudyKey(life.Id, life.Place, life.Situation);
            Csv.AppendLine(text, [life.Id, life.Place, life.Situation, Csv.Number(life.FirstFail, Dimension.Number, DisplayUnits.Metric),
                .. worst.Select(at => Csv.Number(at.TryGetValue(key, out Check? check) ? check.Utilization : null, Dimension.Number, DisplayUnits.Metric))]);
        }
        return text.ToString();
    }

    /// <summary>The text.</summary>
    public override string ToString() => ToText();
}
