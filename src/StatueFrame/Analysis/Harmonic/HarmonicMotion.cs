using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The steady swing of a point along a direction, a·cos(Ωt + φ), under a load or motion that swings as cos(Ωt).</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Frequency">Frequency of the load, Ω/2π.</param>
/// <param name="Displacement">Amplitude of the displacement, relative to the base.</param>
/// <param name="Phase">Its phase φ, −180° to 180°; negative lags behind the load.</param>
/// <param name="Acceleration">Amplitude of the absolute acceleration.</param>
public readonly record struct HarmonicMotion(Frequency Frequency, Length Displacement, Angle Phase, Acceleration Acceleration)
{
    /// <summary>The swing on one line.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Frequency.Hertz:0.000} Hz: {Displacement.Millimeters:0.000} mm, {Phase.Degrees:0.0}°, {Acceleration.MetersPerSecondSquared:0.0000} m/s²");
}
