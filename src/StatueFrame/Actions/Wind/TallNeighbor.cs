using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A tall building near the statue. It turns the wind down: the statue meets the wind of the height z_n, which is r/2 up to a distance of r
/// and falls evenly to the statue's own height at 2r; r is the building's height, at most twice its greater width.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A statue taller than half the building is not reached by the rule. Source: EN
/// 1991-1-4:2005, A.4 (A.14), from memory; it is a rule for loads, and knows nothing of how wakes shake slender figures.
/// </remarks>
public sealed record TallNeighbor
{
    /// <summary>Height of the building.</summary>
    public required Length Height { get; init; }

    /// <summary>Its greater width in plan.</summary>
    public required Length GreaterWidth { get; init; }

    /// <summary>Distance from it to the statue.</summary>
    public required Length Distance { get; init; }

    /// <summary>Height of the statue with its pedestal above ground.</summary>
    public required Length StatueHeight { get; init; }

    /// <summary>z_n, m; 0 when the building is too far or too low to count.</summary>
    internal double ReferenceHeightSi
    {
        get
        {
            double high = Height.Meters, low = StatueHeight.Meters, x = Distance.Meters, r = Math.Min(high, 2 * GreaterWidth.Meters);
            return low > high / 2 || x >= 2 * r ? 0
                : x <= r ? r / 2
                : (r - (1 - 2 * low / r) * (x - r)) / 2;
        }
    }

    internal void Validate(Validator v)
    {
        v.Positive(Height, Height.Meters, 1, 1000);
        v.Positive(GreaterWidth, GreaterWidth.Meters, 1, 1000);
        v.Within(Distance, Distance.Meters, 0, 10_000);
        v.Positive(StatueHeight, StatueHeight.Meters, 0.1, 1000);
    }
}
