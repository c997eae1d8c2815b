using System.Globalization;

namespace StatueFrame.Testing;

/// <summary>How a check value is known.</summary>
public enum ValueKind
{
    /// <summary>From a published document that is named.</summary>
    Published,
    /// <summary>From another method or a finer model, computed in the test.</summary>
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
/// <param name="Source">Document with edition, and the clause, table, figure or example.</param>
/// <param name="Expected">The published value.</param>
/// <param name="Unit">Its unit; "-" for a plain number.</param>
/// <param name="Tolerance">Allowed relative difference, as set by the digits of the published value.</param>
/// <param name="Compute">Our value in the same unit.</param>
/// <param name="Kind">How the value is known.</param>
public sealed record PublishedValue(
    string Feature, string Source, double Expected, string Unit, double Tolerance, Func<double> Compute,
    ValueKind Kind = ValueKind.Published)
{
    public double Difference(double ours) =>
        Expected == 0 ? Math.Abs(ours) : Math.Abs(ours - Expected) / Math.Abs(Expected);

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Feature} = {Expected} {Unit} [{Source}]");
}
