using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>
/// What happens when a single part is gone: any standoff, saddle, ring, brace or anchor. Each removal is solved anew and
/// compared by its forces and movements; of the worst of each kind the whole sheet is made.
/// </summary>
/// <remarks>
/// The part is gone before the loads come: no shock of its loss. Choose situations and criteria for the damaged statue, as of
/// accidental design situations. Immutable and safe to share between threads.
/// </remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class RobustnessStudy
{
    private RobustnessStudy(Statue statue, CheckSheet whole, ScreenedRemoval[] all, WorstRemoval[] worst, CheckSheet sheet)
    {
        (Statue, Whole, Sheet) = (statue, whole, sheet);
        (All, Worst) = (ValueList.Create<ScreenedRemoval>(all), ValueList.Create<WorstRemoval>(worst));
    }

    /// <summary>Takes the parts away one by one.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="criteria">What is enough without the part.</param>
    /// <param name="situations">What acts then; at least one.</param>
    /// <param name="options">What to take away, and how closely to look; everything by default.</param>
    /// <param name="progress">Told the part that is done, 0 to 1, from any thread.</param>
    /// <param name="cancellation">Stops the study.</param>
    /// <exception cref="InvalidStatueException">The description, the criteria, the situations or the options have problems.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static RobustnessStudy Of(
        Statue statue, Criteria criteria, ValueList<Situation> situations, RobustnessOptions? options = null,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentNullException.ThrowIfNull(situations);
        options ??= new RobustnessOptions();
        var v = new Validator();
        options.Validate(v.At("Options"));
        v.ThrowIfAny();
        cancellation.ThrowIfCancellationRequested();
        // Contacts and slow loss of metal have nothing to do with a part that is gone.
        Statue given = statue;
        statue = statue with { Corrosion = null };
        CheckSheet whole = statue.Check(criteria, situations.AsSpan());
        Removal[] removals = [.. Removals.Of(statue).Where(removal => options.Kinds?.Contains(removal.Kind) ?? true), .. options.More];
        var probe = new DamageProbe(statue, criteria, situations);
        var screened = new ScreenedRemoval[removals.Length];
        int done = 0;
        ParallelWork.ForEach(removals.Length, i =>
        {
            screened[i] = probe.Screen(removals[i]);
            progress?.Report(0.8 * Interlocked.Increment(ref done) / removals.Length);
        }, cancellation);
        ScreenedRemoval[] closer = [.. screened.GroupBy(s => s.Removal.Kind).SelectMany(kind => Candidates(kind, options.SheetsOfEachKind))];
        var looked = new WorstRemoval[closer.Length];
        done = 0;
        ParallelWork.ForEach(closer.Length, i =>
        {
            looked[i] = Look(closer[i], statue, criteria, situations, whole);
            progress?.Report(0.8 + 0.2 * Interlocked.Increment(ref done) / closer.Length);
        }, cancellation);
        WorstRemoval[] worst = [.. looked.GroupBy(look => look.Removal.Kind).OrderBy(kind => kind.Key).Select(kind => kind.ToList().FirstWorst())];
        progress?.Report(1);
        return new RobustnessStudy(given, whole, screened, worst, RobustnessSheet.Of(statue, situations, options, worst));
    }

    /// <summary>The statue that loses parts.</summary>
    public Statue Statue { get; }

    /// <summary>The sheet of the whole statue.</summary>
    public CheckSheet Whole { get; }

    /// <summary>Every removal, with how bad it looks.</summary>
    public ValueList<ScreenedRemoval> All { get; }

    /// <summary>The worst removal of each kind, with its sheet.</summary>
    public ValueList<WorstRemoval> Worst { get; }

    /// <summary>A sheet with one check for each kind: whether the statue passes without the worst part of it.</summary>
    public CheckSheet Sheet { get; }

    /// <summary>The worst removal of a kind; null when the statue has none.</summary>
    /// <param name="kind">The kind.</param>
    public WorstRemoval? WorstOf(RemovalKind kind) => Worst.FirstOrDefault(worst => worst.Removal.Kind == kind);

    /// <summary>The study as plain text, at most 110 columns wide.</summary>
    public string ToText() => RobustnessText.Of(this);

    /// <summary>Every removal on a line, as comma-separated values by RFC 4180.</summary>
    public string ToCsv() => RobustnessText.Csv(this);

    /// <summary>The text.</summary>
    public override string ToString() => ToText();

    /// <summary>Those of a kind that look worst; all that the screening cannot tell, and the first of those that fall.</summary>
    private static IEnumerable<ScreenedRemoval> Candidates(IEnumerable<ScreenedRemoval> kind, int most) =>
        kind.Where(s => s.Worst is null).Concat(kind.Where(s => s.Worst is not null).OrderByDescending(s => WithoutNoise(s.Worst!.Value)).Take(most));

    /// <summary>Nine digits, so that removals that are alike by symmetry stay in their order.</summary>
    private static double WithoutNoise(double value) => double.IsFinite(value) ? CheckNumber.WithoutNoise(value) : value;

    private static WorstRemoval Look(ScreenedRemoval screened, Statue statue, Criteria criteria, ValueList<Situation> situations, CheckSheet whole)
    {
        CheckSheet sheet;
        try
        {
            sheet = screened.Falls is { } falls
                ? RobustnessSheet.OfFallen(statue, screened.Removal, falls)
                : (screened.Removal.From(statue) with { Name = $"{statue.Name} {screened.Removal}" }).Check(criteria, situations.AsSpan());
        }
        catch (InvalidStatueException e)
        {
            screened = screened with { Worst = double.PositiveInfinity, Falls = e.Problems[0].ToString() };
            sheet = RobustnessSheet.OfFallen(statue, screened.Removal, screened.Falls);
        }
        return new WorstRemoval(screened, sheet, sheet.CompareWith(whole), Worse(whole, sheet));
    }

    private static ValueList<WorsenedCheck> Worse(CheckSheet whole, CheckSheet sheet)
    {
        Dictionary<StudyKey, Check> before = StudyKey.WorstOf(whole);
        return StudyKey.WorstOf(sheet)
            .Select(pair => new WorsenedCheck(before.GetValueOrDefault(pair.Key), pair.Value))
            .Where(check => check.After.Utilization > (check.Before?.Utilization ?? 0) * (1 + DamageProbe.Noticeable))
            .OrderBy(check => check.After, CheckOrder.WorstFirst).ToValueList();
    }
}
