using StatueFrame.Analysis;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>One way to hold the skin and what the blow does then.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record IsolationRow
{
    internal IsolationRow()
    {
    }

    /// <summary>The way to hold the skin.</summary>
    public required IsolationVariant Variant { get; init; }

    /// <summary>The whole response.</summary>
    public required ShockResponse Response { get; init; }

    /// <summary>How nearly the base lifts; null when its width is not known.</summary>
    public required ShockOverturning? Overturning { get; init; }

    /// <summary>What the statue does with its base free to lift; null when that was not asked for.</summary>
    public required RockingStatueResult? Rocking { get; init; }

    /// <summary>
    /// The statue as two masses: its tower in the shape that the shock's force bends it to, and its skin as that force
    /// moves it on the bars; null when the shock strikes the tower itself.
    /// </summary>
    public required TwoMassSystem? TwoMasses { get; init; }

    /// <summary>Greatest force of the bars on the tower by the two masses; null for a shock that is no pulse.</summary>
    public required Force? BarForceOfTwoMasses { get; init; }

    /// <summary>Frequency of the skin on its bars, the tower held still; null when the shock strikes the tower itself.</summary>
    public Frequency? SkinFrequency => TwoMasses is { } two ? Frequency.FromHertz(Math.Sqrt(two.SpringStiffness / two.C) / (2 * Math.PI)) : null;

    /// <summary>Stress of the bar nearest to yielding; null for rigid links and without bars.</summary>
    public ShockBar? WorstBar => Variant.IsRigid ? null : Response.WorstBar;

    /// <summary>True when the base lifts, false when it does not; null when that is not known.</summary>
    public bool? Lifts => Overturning?.Lifts;
}
