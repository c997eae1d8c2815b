using System.Globalization;
using System.Text.RegularExpressions;

namespace StatueFrame.Testing;

/// <summary>How a check value is known.</summary>
public enum ValueKind
{
    /// <summary>From a published document that is named, with its edition and its place in it.</summary>
    Published,
    /// <summary>From a published document as another page, that is no document to sign by, quotes it.</summary>
    SecondHand,
    /// <summary>From a closed form, another method or a finer model, computed in the test.</summary>
    IndependentComputation,
    /// <summary>A fact of the trade for which no document was found.</summary>
    CommonPracticeNoSource,
    /// <summary>Recalled from memory; not looked up.</summary>
    FromMemory,
}

/// <summary>
/// One row of the validation page: what is checked, against which source, with which value and tolerance, and how we
/// compute it. A test class lists its rows in a public static property <c>Rows</c> of type
/// <c>IEnumerable&lt;PublishedValue&gt;</c>, and is then found by <see cref="ValidationPage"/>.
/// </summary>
/// <param name="Feature">What is checked, as in "cantilever tip stiffness".</param>
/// <param name="Source">Document with edition, and the clause, table, figure or example; ", second hand" when another page quotes it.</param>
/// <param name="Expected">The published value.</param>
/// <param name="Unit">Its unit; "-" for a plain number.</param>
/// <param name="Tolerance">Allowed relative difference, as set by the digits of the published value.</param>
/// <param name="Compute">Our value in the same unit.</param>
/// <param name="GivenKind">How the value is known, when its source is the document itself.</param>
public sealed partial record PublishedValue(
    string Feature, string Source, double Expected, string Unit, double Tolerance, Func<double> Compute,
    ValueKind GivenKind = ValueKind.Published)
{
    private const string Quoted = "second hand";

    /// <summary>True when the row reads a constant of the library back: a transcription, which proves no formula.</summary>
    public bool IsReadBack { get; init; }

    /// <summary>How the value is known.</summary>
    public ValueKind Kind => GivenKind == ValueKind.Published && Source.Contains(Quoted, StringComparison.Ordinal) ? ValueKind.SecondHand : GivenKind;

    /// <summary>What a published row lacks to be found again: its edition, its place, or a document at all; null when nothing.</summary>
    public string? Lacks =>
        Kind != ValueKind.Published ? null
        : !Edition().IsMatch(Source) ? "its source has no edition or year"
        : !PlaceInIt().IsMatch(Source) ? "its source has no table, equation, figure, clause, example or page"
        : WebPage().IsMatch(Source) ? "its source is a web page: name the document, and \", second hand\" when it was not read itself"
        : null;

    public double Difference(double ours) =>
        Expected == 0 ? Math.Abs(ours) : Math.Abs(ours - Expected) / Math.Abs(Expected);

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Feature} = {Expected} {Unit} [{Source}]");

    [GeneratedRegex(@"(18|19|20)\d\d|\d(st|nd|rd|th) ed|ed\. \d|rev\. \d|-\d\d\b|v\d+\.\d")]
    private static partial Regex Edition();

    [GeneratedRegex(@"Table|Figure|[Ff]ig\.|[Ee]q\.|\(\d|\(A-|Art\.|Annex|Appendix|\b[A-Z]\.\d|\b[A-Z]\d+\.\d|\bE\d\b|\b(FV|LE)\d|\b\d+\.\d|p\. ?\d|pp\. ?\d|page|[Ee]xample|[Cc]hapter|[Pp]roblem|section|clause|abstract|curve")]
    private static partial Regex PlaceInIt();

    [GeneratedRegex(@"https?:|www\.|\.(com|app|dev|net)\b|scribd")]
    private static partial Regex WebPage();
}
