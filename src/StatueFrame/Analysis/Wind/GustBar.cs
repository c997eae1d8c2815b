using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The standoff of a ring that gusts stress most, with the band as a rigid ring. Wind alone, without weight.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record GustBar
{
    internal GustBar()
    {
    }

    /// <summary>The level it stands on.</summary>
    public required string Level { get; init; }

    /// <summary>The band it carries.</summary>
    public required string Band { get; init; }

    /// <summary>Its number in its ring, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Normal stress at its worst corner.</summary>
    public required GustEffect<Pressure> Stress { get; init; }

    /// <summary>Axial force; compression is negative.</summary>
    public required GustEffect<Force> Axial { get; init; }

    /// <summary>The bar and its peak stress on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Band}, bar {Number}: {Stress.Peak.Megapascals:0.0} MPa");
}
