using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>How far a named point moves in a shock, from where it is at rest.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The point's name.</param>
/// <param name="Sway">Greatest horizontal movement, without direction.</param>
/// <param name="Travel">Greatest movement in space.</param>
public sealed record ShockMovement(string Point, PeakInTime<Length> Sway, PeakInTime<Length> Travel);
