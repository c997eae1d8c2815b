using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What came of one variant: numbers that are kept, and the whole sheet when it is asked for.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Sheets have thousands of checks, so that a large study keeps none of them:
/// <see cref="Sheet"/> is worked out again, to the same bits, when it is first asked for. Two rows are equal when name, statue
/// and kept numbers are.
/// </remarks>
public sealed record VariantRow
{
    private readonly Lazy<CheckSheet>? sheet;

    internal VariantRow(Func<CheckSheet>? check) => sheet = check is null ? null : new Lazy<CheckSheet>(check);

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>The statue; null when the change itself failed.</summary>
    public Statue? Statue { get; init; }

    /// <summary>Why there is no sheet; empty when there is one.</summary>
    public string Error { get; init; } = "";

    /// <summary>The verdict in words: "FAIL", "open" when nothing fails but a link that carries load is unchecked, "pass, incomplete", "pass, assumed", "pass" or "no result".</summary>
    public required string VerdictText { get; init; }

    /// <summary>True when it was worked out and nothing fails. What was not checked is on the sheet.</summary>
    public bool Passes { get; init; }

    /// <summary>The governing check, or what fails where that does not; null when nothing was checked.</summary>
    public GoverningCheck? Governing { get; init; }

    /// <summary>The governing check of each family in which something was checked, by family.</summary>
    public ValueList<GoverningCheck> Families { get; init; } = [];

    /// <summary>The masses of the sheet, as "skin" and "total".</summary>
    public ValueList<(string Name, Mass Mass)> Masses { get; init; } = [];

    /// <summary>The frequencies of the sheet, the lowest first.</summary>
    public ValueList<Frequency> Frequencies { get; init; } = [];

    /// <summary>Total mass; null when it could not be worked out.</summary>
    public Mass? Mass => Masses.Any(m => m.Name == "total") ? Masses.First(m => m.Name == "total").Mass : null;

    /// <summary>Lowest frequency; null when it could not be worked out.</summary>
    public Frequency? Frequency => Frequencies.Count > 0 ? Frequencies[0] : null;

    /// <summary>Its sheet; null when it could not be worked out.</summary>
    public CheckSheet? Sheet => sheet?.Value;

    /// <summary>The greatest utilization of a family; null when nothing of it was checked.</summary>
    /// <param name="family">The family, as in "bars".</param>
    public double? UtilizationOf(string family) => Families.FirstOrDefault(f => f.Subject.Family == family)?.Utilization;

    /// <inheritdoc/>
    public bool Equals(VariantRow? other) =>
        other is not null && Name == other.Name && Error == other.Error && VerdictText == other.VerdictText && Passes == other.Passes
        && Equals(Governing, other.Governing) && Families.Equals(other.Families) && Masses.Equals(other.Masses) && Frequencies.Equals(other.Frequencies)
        && Equals(Statue, other.Statue);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Error, VerdictText, Governing, Masses);

    /// <summary>The row on one line.</summary>
    public override string ToString() => $"{Name}: {VerdictText}{(Error.Length > 0 ? $", {Error}" : Governing is { } g ? $", {g}" : "")}";
}
