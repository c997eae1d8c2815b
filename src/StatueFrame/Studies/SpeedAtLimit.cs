using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A limit and the wind speed that brings the statue to it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SpeedAtLimit
{
    internal SpeedAtLimit()
    {
    }

    /// <summary>What is limited, as in "sway at tip".</summary>
    public required string Name { get; init; }

    /// <summary>The limit in SI units.</summary>
    public required double Limit { get; init; }

    /// <summary>What the limit measures.</summary>
    public required Dimension Dimension { get; init; }

    /// <summary>Where the limit comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>Whether the limit is met.</summary>
    public required LimitReach Reach { get; init; }

    /// <summary>Mean speed at the anemometer at which the limit is met; null when it is not.</summary>
    public Speed? MeanSpeed { get; init; }

    /// <summary>Gust speed at the anemometer that goes with <see cref="MeanSpeed"/>.</summary>
    public Speed? GustSpeed { get; init; }

    /// <summary>The heading that meets the limit first; null when it is not met.</summary>
    public Angle? Heading { get; init; }
}
