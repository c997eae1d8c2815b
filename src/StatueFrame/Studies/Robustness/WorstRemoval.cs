using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>The worst removal of a kind, its sheet, and what is different from the whole statue's.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Screened">What is gone.</param>
/// <param name="Sheet">The sheet without it; of a part that falls, one that says so.</param>
/// <param name="Changes">What is different from the sheet of the whole statue, line by line.</param>
/// <param name="Worse">
/// The checks that got worse, kind by kind and place by place whatever the number of the bar or member; the greatest
/// utilization first.
/// </param>
public sealed record WorstRemoval(ScreenedRemoval Screened, CheckSheet Sheet, SheetComparison Changes, ValueList<WorsenedCheck> Worse)
{
    /// <summary>The check with the greatest utilization of those that got worse; null when none did.</summary>
    public Check? Worsened => Worse.Count == 0 ? null : Worse[0].After;

    /// <summary>What is gone.</summary>
    public Removal Removal => Screened.Removal;
}
