using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>A mode in an earthquake: the mass that shakes with it, and how hard.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Number">Its number, from 1 for the lowest.</param>
/// <param name="Frequency">Natural frequency.</param>
/// <param name="MassX">Effective modal mass for motion of the base along x.</param>
/// <param name="MassY">Effective modal mass along y.</param>
/// <param name="MassZ">Effective modal mass along z.</param>
/// <param name="First">Spectral acceleration of the first horizontal component.</param>
/// <param name="Second">Spectral acceleration of the second horizontal component.</param>
/// <param name="Vertical">Spectral acceleration of the vertical component; zero without one.</param>
public sealed record EarthquakeMode(
    int Number, Frequency Frequency, Mass MassX, Mass MassY, Mass MassZ, Acceleration First, Acceleration Second, Acceleration Vertical)
{
    /// <summary>Natural period.</summary>
    public Duration Period => Duration.FromSeconds(1 / Frequency.Hertz);
}
