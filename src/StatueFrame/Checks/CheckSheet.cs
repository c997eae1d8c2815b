using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>
/// What was found, for people: results, checks, what was assumed and what was not checked. A sheet can be printed, kept
/// as a stable text, and compared with an earlier one.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A sheet is in one order whatever order its checks came in: by family, the
/// worst first.
/// </remarks>
[TypeFormatterSource(typeof(CheckSheetHtml))]
public sealed record CheckSheet
{
    /// <summary>What every print of a sheet says at its end.</summary>
    public const string Caution =
        "These results are for review and sign-off by a licensed engineer. Local codes govern. Outside the range of the methods, "
        + "seek wind-tunnel tests or specialist advice. What is not on this sheet was not checked.";

    /// <summary>The heading, as in "Saltmere Heron".</summary>
    public required string Title { get; init; }

    /// <summary>What the sheet is for, as in "storm, all headings"; may be empty.</summary>
    public string Subject { get; init; } = "";

    /// <summary>The basis of design in words, a line each: codes, life, winds, heats, materials; empty for sheets made by hand.</summary>
    public ValueList<BasisLine> Basis { get; init; } = [];

    /// <summary>Numbers for information, in the order of the print; lines of a group belong together.</summary>
    public ValueList<ResultLine> Results { get; init; } = [];

    /// <summary>All checks: by family, failed before passed before not checked, the greatest utilization first.</summary>
    public ValueList<Check> Checks { get; init => field = CheckOrder.Sorted(value); } = [];

    /// <summary>What the library took for the user; each once, in the order given.</summary>
    public ValueList<Assumption> Assumptions { get; init => field = value.Distinct().ToValueList(); } = [];

    /// <summary>What the reader should know before trusting the numbers; each once, in the order given.</summary>
    public ValueList<string> Warnings { get; init => field = value.Distinct().ToValueList(); } = [];

    /// <summary>The links by which load travels from the sheet to the ground, and what holds each; empty for sheets made by hand.</summary>
    public ValueList<PathLink> LoadPath { get; init; } = [];

    /// <summary>The links that carry load and that no check holds.</summary>
    public IEnumerable<PathLink> OpenLinks => LoadPath.Where(link => link.State == LinkState.Open);

    /// <summary>The checks that could not be done.</summary>
    public IEnumerable<Check> NotChecked => Checks.Where(check => check.Verdict == Verdict.NotChecked);

    /// <summary>The checks that fail.</summary>
    public IEnumerable<Check> Failed => Checks.Where(check => check.Verdict == Verdict.Fail);

    /// <summary>
    /// True when something was checked, nothing fails, and no link that carries load is open. See also <see cref="Complete"/>
    /// and <see cref="RestsOnAssumedInputs"/>.
    /// </summary>
    public bool Passed => Holds && !OpenLinks.Any();

    /// <summary>True when something was checked, nothing of it fails and nothing broke off by an error; what is open is not asked.</summary>
    public bool Holds => Checks.Any(check => check.Verdict == Verdict.Pass) && !Failed.Any() && !BrokenOff.Any();

    /// <summary>The checks that broke off by an error; see <see cref="Check.Error"/>.</summary>
    public IEnumerable<Check> BrokenOff => Checks.Where(check => check.Error is not null);

    /// <summary>True when there are checks and all of them were done.</summary>
    public bool Complete => Checks.Count > 0 && !NotChecked.Any();

    /// <summary>True when a check passes only with inputs that nobody gave.</summary>
    public bool RestsOnAssumedInputs => Checks.Any(check => check is { Verdict: Verdict.Pass, AssumedInputs.Count: > 0 });

    /// <summary>The check with the greatest utilization; null when nothing was checked. Checks of a method's range never govern.</summary>
    public Check? Governing => GoverningByFamily.Where(check => check.Nature != Nature.Range).MinBy(check => check, CheckOrder.WorstFirst);

    /// <summary>The check with the greatest utilization of each family in which something was checked, by family; checks of a method's range apart.</summary>
    public IEnumerable<Check> GoverningByFamily =>
        Checks.Where(check => check.Verdict != Verdict.NotChecked).DistinctBy(check => (check.Family, check.Nature == Nature.Range));

    /// <summary>The check with the greatest utilization of a family; null when nothing of it was checked.</summary>
    /// <param name="family">The family, as in "bars".</param>
    public Check? GoverningOf(string family) => GoverningByFamily.Where(check => check.Family == family).MinBy(check => check.Nature == Nature.Range);

    /// <summary>
    /// The verdict of the whole sheet in words: what fails, then which links of the load path carry load and are open, then what
    /// holds, as in "FAIL: 1 check fails, 12 pass (3 with assumed inputs), 2 not checked".
    /// </summary>
    public string VerdictText => CheckSheetText.VerdictOf(this);

    /// <summary>
    /// The checks of every kind and part in the one situation where they are worst, beside those that could not be done:
    /// what is left to read when the same question was asked in many situations.
    /// </summary>
    public ValueList<Check> WorstOfParts() =>
        Checks.DistinctBy(check => (check.Id, check.Subject.Part, check.Verdict == Verdict.NotChecked ? check.Reason : null)).ToValueList();

    /// <summary>The sheet as plain text, at most 110 columns wide.</summary>
    /// <param name="form">How much of it; on one page by default.</param>
    /// <param name="units">The units to print in.</param>
    public string Print(SheetForm form = SheetForm.Short, DisplayUnits units = DisplayUnits.Metric) => CheckSheetText.Of(this, form, units);

    /// <summary>All checks of a family, as in "bars", as plain text.</summary>
    /// <param name="family">The family: what stands before the dot of a check's id.</param>
    /// <param name="units">The units to print in.</param>
    /// <exception cref="ArgumentException">The sheet has no such family.</exception>
    public string PrintFamily(string family, DisplayUnits units = DisplayUnits.Metric)
    {
        string[] families = [.. Checks.Select(check => check.Family).Distinct()];
        return families.Contains(family)
            ? CheckSheetText.OfFamily(this, family, units)
            : throw new ArgumentException($"The sheet has no family \"{family}\". {NearNames.Closest(family, families)}", nameof(family));
    }

    /// <summary>The checks as comma-separated values, a line each, with their units in columns of their own.</summary>
    /// <param name="units">The units to write in.</param>
    public string ChecksToCsv(DisplayUnits units = DisplayUnits.Metric) => CheckSheetCsv.Checks(this, units);

    /// <summary>The results as comma-separated values.</summary>
    /// <inheritdoc cref="ChecksToCsv"/>
    public string ResultsToCsv(DisplayUnits units = DisplayUnits.Metric) => CheckSheetCsv.Results(this, units);

    /// <summary>
    /// The sheet as a text that stays the same when nothing but rounding noise changes: SI units, few digits, all checks
    /// in an order that does not depend on their numbers. For comparison with a file that is kept.
    /// </summary>
    /// <param name="digits">Significant digits, from 1 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The digits are out of range.</exception>
    public string ToStableText(int digits = 4) => CheckSheetStableText.Of(this, digits);

    /// <summary>What is different from an earlier sheet, line by line.</summary>
    /// <param name="earlier">The sheet from before.</param>
    /// <param name="tolerance">The relative difference of numbers that does not count.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is negative or not a number.</exception>
    public SheetComparison CompareWith(CheckSheet earlier, double tolerance = 0.001) => SheetComparison.Of(earlier, this, tolerance);

    /// <summary>The sheet on one page, in metric units.</summary>
    public override string ToString() => Print();
}
