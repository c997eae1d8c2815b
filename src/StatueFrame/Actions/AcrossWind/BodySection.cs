namespace StatueFrame;

/// <summary>The cross-section of one body of a statue, for wind that flows round it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Body">"trunk", or the name of a limb.</param>
/// <param name="Shape">What it is like.</param>
public sealed record BodySection(string Body, BluffShape Shape)
{
    /// <summary>Values of its own that stand for the shape's, as measured in a wind tunnel; null for none.</summary>
    public BluffSection? Section { get; init; }
}
