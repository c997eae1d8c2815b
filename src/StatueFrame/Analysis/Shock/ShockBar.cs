using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// One standoff in a shock, as part of a rigid ring. The stress is |N|/A + |M_weak|/W_weak + |M_strong|/W_strong at the
/// worse end, weight included; in a bar that has yielded it is nominal, that of the elastic formula for its true forces.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ShockBar
{
    internal ShockBar()
    {
    }

    /// <summary>The level it stands on.</summary>
    public required string Level { get; init; }

    /// <summary>The band it carries.</summary>
    public required string Band { get; init; }

    /// <summary>Its number in its ring, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it is made of.</summary>
    public required Standoff Standoff { get; init; }

    /// <summary>Greatest normal stress.</summary>
    public required PeakInTime<Pressure> Stress { get; init; }

    /// <summary>The end forces at that time.</summary>
    public required BarForces Forces { get; init; }

    /// <summary>Greatest movement of the skin there against the tower, from rest: what a gap must leave room for.</summary>
    public required PeakInTime<Length> Movement { get; init; }

    /// <summary>True when the bar has yielded; always false where bars are taken as elastic.</summary>
    public required bool HasYielded { get; init; }

    /// <summary>Stress over yield strength.</summary>
    public double YieldFraction => Stress.Value.Pascals / Standoff.Material.YieldStrength.Pascals;

    /// <summary>Where it is, as in "band 3, bar 2".</summary>
    public string Where => string.Create(CultureInfo.InvariantCulture, $"{Band}, bar {Number}");

    /// <summary>The bar and its stress on one line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Where}: {Stress.Value.Megapascals:0.0} MPa at {Stress.Time.Seconds:0.000} s");
}
