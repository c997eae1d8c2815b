namespace StatueFrame.Reporting;

/// <summary>A picture in a calculation package, with the words for those who cannot see it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Figure
{
    /// <summary>What it shows, printed below it.</summary>
    public required string Title { get; init; }

    /// <summary>Where it stands: at the head of that section, in the order given, under a number that runs through the package.</summary>
    public PackageSection Section { get; init; } = PackageSection.Statue;

    /// <summary>What there is to see, in a sentence or two, for readers who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>The drawing as an SVG document. It is embedded as a picture, so that no script in it can run.</summary>
    public required string Svg { get; init; }
}
