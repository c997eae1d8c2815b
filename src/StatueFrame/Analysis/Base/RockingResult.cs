using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What a rocking block did: whether it lifted, whether it toppled, and how far it leaned.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RockingResult
{
    internal RockingResult()
    {
    }

    /// <summary>Whether an edge left the ground.</summary>
    public required bool Lifts { get; init; }

    /// <summary>Whether it fell: it lay down, or leaned beyond its point of balance for good.</summary>
    public required bool Topples { get; init; }

    /// <summary>The greatest rotation without sign; 90° when it toppled.</summary>
    public required Angle PeakRotation { get; init; }

    /// <summary>The greatest rotation over the rotation at which its weight alone is in balance, θ/α, on the side where it was greater.</summary>
    public required double PeakOverBalance { get; init; }

    /// <summary>How often it came down on its base.</summary>
    public required int Impacts { get; init; }

    /// <summary>The greatest force of the tendon; zero without one.</summary>
    public required Force PeakTendonForce { get; init; }

    /// <summary>The motion, at most some ten thousand points, every impact among them.</summary>
    public required ValueList<RockingPoint> History { get; init; }

    /// <summary>The answer on one line.</summary>
    public override string ToString() => !Lifts ? "stays on its base"
        : Topples ? "topples"
        : string.Create(CultureInfo.InvariantCulture, $"rocks to {PeakRotation.Degrees:0.00}°, {100 * PeakOverBalance:0} % of the way to its balance, {Impacts} impacts");
}
