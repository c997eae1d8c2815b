using UnitsNet;

namespace StatueFrame;

/// <summary>A steady pull that is let go at once: the usual test on site for frequencies and damping.</summary>
/// <remarks>
/// Immutable and safe to share between threads. The statue stands still under the pull until the time 0. The response is
/// that of free vibration.
/// </remarks>
public sealed record SuddenRelease : PlacedShock
{
    /// <summary>The pull along the heading, 0.01 N to 1e8 N.</summary>
    public required Force Pull { get; init; }

    private protected override void ValidateSize(Validator v) => v.Positive(Pull, Pull.Newtons, 0.01, 1e8);
}
