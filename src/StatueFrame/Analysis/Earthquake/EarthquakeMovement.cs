using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The peak movement of a point in an earthquake relative to the base, without sign. Displacements hold the spectrum's
/// displacement factor, so that they are those of the statue that yields, if a behavior factor was given.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EarthquakeMovement
{
    internal EarthquakeMovement()
    {
    }

    /// <summary>The point, level or band.</summary>
    public required string Point { get; init; }

    /// <summary>Displacement along x.</summary>
    public required Length X { get; init; }

    /// <summary>Displacement along y.</summary>
    public required Length Y { get; init; }

    /// <summary>Displacement along z.</summary>
    public required Length Z { get; init; }

    /// <summary>The greatest displacement along any plan direction.</summary>
    public required Length Sway { get; init; }

    /// <summary>Twist about z.</summary>
    public required Angle Twist { get; init; }

    /// <summary>Greatest absolute acceleration along any plan direction, from spectral accelerations, without displacement factor.</summary>
    public required Acceleration Acceleration { get; init; }

    /// <summary>Absolute vertical acceleration.</summary>
    public required Acceleration VerticalAcceleration { get; init; }

    /// <summary>The sway on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Point}: sway {Sway.Millimeters:0.0} mm, {Acceleration.MetersPerSecondSquared:0.00} m/s²");
}
