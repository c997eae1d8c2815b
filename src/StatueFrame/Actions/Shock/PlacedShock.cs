namespace StatueFrame;

/// <summary>A shock at one place: a level or a band, and a point that moves rigidly with it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record PlacedShock : ShockAction
{
    private protected PlacedShock()
    {
    }

    /// <summary>The level or band that is struck, as in "L7", "band 3" or "wing/band 2".</summary>
    public required string On { get; init; }

    /// <summary>Where, in the statue's axes; null for the center of the level or the centroid of the band.</summary>
    public Point3? At { get; init; }

    internal sealed override void ValidatePlaces(Validator v, StatueNames names)
    {
        names.Require(v, nameof(On), On);
        At?.Validate(v.At(nameof(At)));
    }
}
