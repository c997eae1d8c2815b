using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Smoother ground upwind of the statue, as a lake before a town. The wind that comes over it has not slowed down yet: the smoother
/// category holds where the change lies nearer than 2 km for category 0, or 1 km for I to III.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, A.2, procedure 1, from memory.</remarks>
public sealed record SmootherTerrain
{
    /// <summary>Category of the ground upwind, smoother than that of the site.</summary>
    public required TerrainCategory Terrain { get; init; }

    /// <summary>Distance from where it ends to the statue.</summary>
    public required Length Distance { get; init; }

    /// <summary>Whether its wind still blows at the statue.</summary>
    internal bool Reaches => Distance.Kilometers < (Terrain == TerrainCategory.Zero ? 2 : 1);

    internal void Validate(Validator v, TerrainCategory site)
    {
        v.Defined(Terrain);
        v.Within(Distance, Distance.Meters, 0, 1e6);
        if (Terrain >= site)
            v.Add(nameof(Terrain), $"must be smoother than the site's, {site}, is {Terrain}", "Rougher ground upwind calms nothing by this rule: leave it out.");
    }
}
