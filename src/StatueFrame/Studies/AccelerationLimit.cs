using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The greatest peak acceleration allowed at a named point, for people at work there or for what hangs there.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The point's name.</param>
/// <param name="Limit">Peak acceleration.</param>
public sealed record AccelerationLimit(string Point, Acceleration Limit)
{
    /// <summary>Where the limit comes from; the user, unless it is said.</summary>
    public Source Source { get; init; } = Source.User;
}
