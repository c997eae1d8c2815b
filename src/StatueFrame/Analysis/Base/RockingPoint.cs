using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>A rocking block at one time.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Time">Time from the start of the motion.</param>
/// <param name="Rotation">Rotation; positive towards the front.</param>
/// <param name="Velocity">Angular velocity.</param>
public readonly record struct RockingPoint(Duration Time, Angle Rotation, RotationalSpeed Velocity);
