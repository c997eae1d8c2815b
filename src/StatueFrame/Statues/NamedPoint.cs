namespace StatueFrame;

/// <summary>A point whose movement is asked for: the tip, a wing's tip, eye level. It moves rigidly with a level or a band.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">Short name, unique among the points, as in "tip".</param>
/// <param name="On">The level or band it hangs off, as in "L7", "band 3" or "wing/band 2".</param>
public sealed record NamedPoint(string Name, string On)
{
    /// <summary>Position in the statue's axes; null for the center of the level or the centroid of the band.</summary>
    public Point3? At { get; init; }

    internal void Validate(Validator v)
    {
        v.Named(Name);
        At?.Validate(v.At(nameof(At)));
    }
}
