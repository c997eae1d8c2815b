namespace StatueFrame.Reporting;

/// <summary>A table at the end of a calculation package, as a part list or the stages of raising.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Appendix
{
    /// <summary>What it holds, as in "Part list".</summary>
    public required string Title { get; init; }

    /// <summary>What the reader should know of it, a paragraph each.</summary>
    public ValueList<string> Notes { get; init; } = [];

    /// <summary>The heads of its columns.</summary>
    public required ValueList<string> Heads { get; init; }

    /// <summary>Its rows, each with as many cells as there are heads.</summary>
    public required ValueList<ValueList<string>> Rows { get; init; }
}
