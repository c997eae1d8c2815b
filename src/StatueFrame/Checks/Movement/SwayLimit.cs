using UnitsNet;

namespace StatueFrame;

/// <summary>The greatest sway allowed at a named point, in service situations.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The point's name.</param>
/// <param name="Limit">Horizontal displacement from the undisturbed position, 1 µm to 10 m.</param>
public sealed record SwayLimit(string Point, Length Limit)
{
    /// <summary>Where the limit comes from; the user, unless it is said.</summary>
    public Source Source { get; init; } = Source.User;
}
