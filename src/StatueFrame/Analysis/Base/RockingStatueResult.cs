using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What a rocking statue did: whether its base lifted, whether it toppled, how far it leaned, and where the energy went.</summary>
/// <remarks>Immutable and safe to share between threads. Energies count from rest, weight and tendon included.</remarks>
public sealed record RockingStatueResult
{
    internal RockingStatueResult()
    {
    }

    /// <summary>Whether an edge left the ground.</summary>
    public required bool Lifts { get; init; }

    /// <summary>When it did first; null when it never did.</summary>
    public required Duration? FirstLift { get; init; }

    /// <summary>Whether it fell: it lay down, or leaned beyond its point of balance and went on.</summary>
    public required bool Topples { get; init; }

    /// <summary>False when it still rocked as the look at it ended, 200/p after the shock.</summary>
    public required bool IsSettled { get; init; }

    /// <summary>The greatest rotation of the base without sign; 90° when it toppled.</summary>
    public required Angle PeakRotation { get; init; }

    /// <summary>The greatest rotation over the rotation at which its weight alone is in balance, θ/α, on the side where it was greater.</summary>
    public required double PeakOverBalance { get; init; }

    /// <summary>How often the base came down.</summary>
    public required int Landings { get; init; }

    /// <summary>The greatest force of the tendon; zero without one.</summary>
    public required Force PeakTendonForce { get; init; }

    /// <summary>Greatest energy that the shock or the ground has put in, less what it has taken back.</summary>
    public required PeakInTime<Energy> Input { get; init; }

    /// <summary>Greatest energy of rocking: weight and tendon raised, and the turn of a rigid body of the same moment of momentum about the edge.</summary>
    public required PeakInTime<Energy> Rocking { get; init; }

    /// <summary>Greatest kinetic energy of the skin, its turn with the base included.</summary>
    public required PeakInTime<Energy> SkinMotion { get; init; }

    /// <summary>Greatest elastic energy of the standoffs.</summary>
    public required PeakInTime<Energy> BarStrain { get; init; }

    /// <summary>Greatest elastic energy of tower, limbs, base springs and seams.</summary>
    public required PeakInTime<Energy> TowerStrain { get; init; }

    /// <summary>What damping has taken by the end.</summary>
    public required Energy Damped { get; init; }

    /// <summary>What landings have taken by the end.</summary>
    public required Energy LostInLandings { get; init; }

    /// <summary>Greatest difference between what came in and where it is, over the greatest input.</summary>
    public required double BalanceError { get; init; }

    /// <summary>Number of modes that bent.</summary>
    public required int ModeCount { get; init; }

    /// <summary>What the library took for the user.</summary>
    public required ValueList<Assumption> Assumptions { get; init; }

    /// <summary>The standoff nearest to its yield strength, on its rigid ring with the weight; null when the statue has none.</summary>
    public required ShockBar? WorstBar { get; init; }

    /// <summary>The motion of the base, at most some ten thousand points, every landing among them.</summary>
    public required ValueList<RockingPoint> History { get; init; }

    /// <summary>The answer on one line.</summary>
    public override string ToString() => !Lifts ? "stays on its base"
        : Topples ? "topples"
        : string.Create(CultureInfo.InvariantCulture, $"rocks to {PeakRotation.Degrees:0.00}°, {100 * PeakOverBalance:0.#} % of the way to its balance, {Landings} landings{(IsSettled ? "" : ", and rocks on")}");
}
