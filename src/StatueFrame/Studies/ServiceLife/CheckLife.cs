using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>How long one check passes.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Id">The kind of check, as in "bars.bending".</param>
/// <param name="Place">The level, band or part, without the number of the bar; may be empty.</param>
/// <param name="Situation">The situation; empty for all.</param>
/// <param name="Now">The check at the age described.</param>
/// <param name="LastPass">Years from now at which it was last seen to pass; null when it fails now.</param>
/// <param name="FirstFail">Years from now at which it was first seen to fail; null when it passes to the end.</param>
/// <param name="End">The check at <paramref name="FirstFail"/>, or at the end of the span; null when a part is worn through then.</param>
public sealed record CheckLife(string Id, string Place, string Situation, Check Now, double? LastPass, double? FirstFail, Check? End)
{
    /// <summary>The times in which it fails, the first first; more than one when renewals mend it.</summary>
    public ValueList<FailingSpell> Failing { get; init; } = [];

    /// <summary>The life on one line, as in "bars.bending, band 3, storm: fails after 62.5 years".</summary>
    public override string ToString()
    {
        string subject = string.Join(", ", new[] { Id, Place, Situation }.Where(part => part.Length > 0));
        return $"{subject}: {VerdictText}";
    }

    /// <summary>The life in words, as in "fails after 62.5 years".</summary>
    internal string VerdictText => FirstFail is not { } years ? "passes to the end"
        : LastPass is null ? $"fails now{Again}"
        : FormattableString.Invariant($"fails after {years:0.##} years{Again}");

    private string Again => Failing is [{ To: { } to }, ..]
        ? FormattableString.Invariant($", passes again after {to:0.##}{(Failing.Count > 1 ? FormattableString.Invariant($", fails again after {Failing[1].From:0.##}") : "")}")
        : "";
}
