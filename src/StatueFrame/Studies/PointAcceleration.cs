using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>How a named point is accelerated in gusts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The point's name.</param>
/// <param name="Rms">Standard deviation of the acceleration.</param>
/// <param name="Peak">Greatest acceleration to expect while the mean speed lasts.</param>
public sealed record PointAcceleration(string Point, Acceleration Rms, Acceleration Peak);
