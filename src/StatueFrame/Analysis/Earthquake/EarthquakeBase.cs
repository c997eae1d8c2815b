using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The peak forces and moments that an earthquake puts on the base, about the base's center; without sign, and not at one
/// time. Mass on held freedoms is in them.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EarthquakeBase
{
    internal EarthquakeBase()
    {
    }

    /// <summary>Force along x.</summary>
    public required Force ForceX { get; init; }

    /// <summary>Force along y.</summary>
    public required Force ForceY { get; init; }

    /// <summary>Vertical force.</summary>
    public required Force ForceZ { get; init; }

    /// <summary>Moment about x.</summary>
    public required Torque MomentX { get; init; }

    /// <summary>Moment about y.</summary>
    public required Torque MomentY { get; init; }

    /// <summary>Twisting moment about z.</summary>
    public required Torque MomentZ { get; init; }

    /// <summary>The greatest horizontal force along any plan direction.</summary>
    public required Force Shear { get; init; }

    /// <summary>The greatest moment about any horizontal axis.</summary>
    public required Torque Overturning { get; init; }
}
