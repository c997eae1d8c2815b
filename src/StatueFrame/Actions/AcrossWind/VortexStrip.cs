using UnitsNet;

namespace StatueFrame;

/// <summary>A piece of a body along its axis, for vortices and galloping in one mode.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Length">Length along the axis, above 0.</param>
/// <param name="Width">Width b across the wind, 1 mm to 500 m.</param>
/// <param name="Amplitude">Modal amplitude across wind and axis at the middle, in any scale.</param>
/// <param name="MeanSpeed">Mean wind speed v_m across the axis there, characteristic.</param>
/// <param name="Section">The cross-section.</param>
/// <param name="Mass">Mass per length, for the inertia force only; zero by default.</param>
public sealed record VortexStrip(
    Length Length, Length Width, double Amplitude, Speed MeanSpeed, BluffSection Section, LinearDensity Mass = default);
