using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The normal stress of a standoff in an earthquake with what else acts, at its worst corner. At each corner the stress of
/// each mode is taken with its sign, and only then combined; the corner's static stress is added without sign.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EarthquakeBar
{
    internal EarthquakeBar()
    {
    }

    /// <summary>The level it stands on.</summary>
    public required string Level { get; init; }

    /// <summary>The band it carries.</summary>
    public required string Band { get; init; }

    /// <summary>Its number in its ring, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it is made of and how it is fastened.</summary>
    public required Standoff Standoff { get; init; }

    /// <summary>The assumption on the skin that is worse.</summary>
    public required SkinAssumption Assumption { get; init; }

    /// <summary>The stress of what else acts, at the worst corner, without sign.</summary>
    public required Pressure StaticStress { get; init; }

    /// <summary>The peak stress of the earthquake there, its factor included.</summary>
    public required Pressure EarthquakeStress { get; init; }

    /// <summary>The peak axial force of the earthquake, its factor included, without sign.</summary>
    public required Force Axial { get; init; }

    /// <summary>Both stresses together.</summary>
    public Pressure Stress => StaticStress + EarthquakeStress;

    /// <summary>Where it is, as in "band 3, bar 2".</summary>
    public string Where => string.Create(CultureInfo.InvariantCulture, $"{Band}, bar {Number}");

    internal double OfYield => Stress.Pascals / Standoff.Material.YieldStrength.Pascals;

    /// <summary>The bar and its stress on one line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Where}: {Stress.Megapascals:0.0} MPa");
}
