using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>A check that a removal made worse: the worst of its kind, place and situation, before and after.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Before">The check of the whole statue; null when it had none.</param>
/// <param name="After">The check without the part.</param>
public sealed record WorsenedCheck(Check? Before, Check After)
{
    /// <summary>The change on one line, as in "bars.bending, band 3, bar 2, storm: 0.62 → 0.71".</summary>
    public override string ToString() => $"{After.Subject}: {ToText()}";

    internal string ToText() =>
        $"{(Before?.Utilization is { } before ? CheckNumber.Utilization(before) : "none")} → {CheckNumber.Utilization(After.Utilization ?? 0)}{(After.Verdict == Verdict.Fail ? " FAIL" : "")}";
}
