using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>How a named point moves at one wind speed.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PointSway
{
    internal PointSway()
    {
    }

    /// <summary>The point's name.</summary>
    public required string Point { get; init; }

    /// <summary>Sway from the undisturbed position under the weight and the mean wind.</summary>
    public required Length Mean { get; init; }

    /// <summary>Sway from the undisturbed position under the weight and the gust, its gust factor included.</summary>
    public required Length Gust { get; init; }

    /// <summary>The heading for which <see cref="Gust"/> is worst; null in calm.</summary>
    public required Angle? Heading { get; init; }

    /// <summary>The acceleration at the heading with the greatest peak; null when it is not known.</summary>
    public required PointAcceleration? Acceleration { get; init; }
}
