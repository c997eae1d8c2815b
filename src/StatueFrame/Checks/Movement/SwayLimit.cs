using UnitsNet;

namespace StatueFrame;

/// <summary>The greatest sway allowed at a named point, in service situations.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The point's name.</param>
/// <param name="Limit">
/// Horizontal displacement from the undisturbed position, of points on limbs with the rise and fall by all but weights, 1 µm to
/// 10 m. Wind is also taken off the middle of the figure and, on limbs, with lift.
/// </param>
public sealed record SwayLimit(string Point, Length Limit)
{
    /// <summary>Where the limit comes from; the user, unless it is said.</summary>
    public Source Source { get; init; } = Source.User;
}
