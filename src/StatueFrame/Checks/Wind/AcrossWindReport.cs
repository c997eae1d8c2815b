namespace StatueFrame.Checks;

/// <summary>What vortices and galloping do to a statue, ready for a check sheet.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AcrossWindReport
{
    internal AcrossWindReport() { }

    /// <summary>Every body in every mode that moves it across some wind.</summary>
    public ValueList<AcrossWindCase> Cases { get; init; } = [];

    /// <summary>Checks "wind.vortex" and "wind.galloping", and what was not checked.</summary>
    public ValueList<Check> Checks { get; init; } = [];

    /// <summary>The worst amplitude of each body.</summary>
    public ValueList<ResultLine> Results { get; init; } = [];

    /// <summary>What was taken for the user.</summary>
    public ValueList<Assumption> Assumptions { get; init; } = [];

    /// <summary>Where the standard's limits are left.</summary>
    public ValueList<string> Warnings { get; init; } = [];
}
