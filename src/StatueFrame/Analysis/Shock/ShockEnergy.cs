using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>Where the energy of a shock goes: the greatest amounts, and what has become of it at the end.</summary>
/// <remarks>Immutable and safe to share between threads. The weight's work is not part of it: all is counted from rest.</remarks>
public sealed record ShockEnergy
{
    internal ShockEnergy()
    {
    }

    /// <summary>Greatest energy that the shock has put in, less what it has taken back.</summary>
    public required PeakInTime<Energy> Input { get; init; }

    /// <summary>Greatest kinetic energy of the skin.</summary>
    public required PeakInTime<Energy> SkinMotion { get; init; }

    /// <summary>Greatest kinetic energy of tower, limbs' inner structure, fittings and the bars' tower ends.</summary>
    public required PeakInTime<Energy> TowerMotion { get; init; }

    /// <summary>Greatest elastic energy of the standoffs.</summary>
    public required PeakInTime<Energy> BarStrain { get; init; }

    /// <summary>Greatest elastic energy of tower, limbs, base springs and seams.</summary>
    public required PeakInTime<Energy> TowerStrain { get; init; }

    /// <summary>What damping has taken by the end.</summary>
    public required Energy Damped { get; init; }

    /// <summary>What yielding bars have taken by the end.</summary>
    public required Energy Plastic { get; init; }

    /// <summary>Greatest difference between what came in and where it is, over the greatest input.</summary>
    public required double BalanceError { get; init; }
}
