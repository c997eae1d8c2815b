using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What came of one variant.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record VariantRow
{
    internal VariantRow()
    {
    }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>The statue; null when the change itself failed.</summary>
    public Statue? Statue { get; init; }

    /// <summary>Its sheet; null when it could not be worked out.</summary>
    public CheckSheet? Sheet { get; init; }

    /// <summary>Total mass; null when it could not be worked out.</summary>
    public Mass? Mass { get; init; }

    /// <summary>Lowest frequency; null when it could not be worked out.</summary>
    public Frequency? Frequency { get; init; }

    /// <summary>Why there is no sheet; empty when there is one.</summary>
    public string Error { get; init; } = "";

    /// <summary>The governing check; null when nothing was checked.</summary>
    public Check? Governing => Sheet?.Governing;

    /// <summary>True when it was worked out and nothing fails. What was not checked is on the sheet.</summary>
    public bool Passes => Sheet is { Passed: true };

    /// <summary>The greatest utilization of a family; null when nothing of it was checked.</summary>
    /// <param name="family">The family, as in "bars".</param>
    public double? UtilizationOf(string family) => Sheet?.GoverningOf(family)?.Utilization;
}
