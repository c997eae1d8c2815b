using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>One mode of vibration: its frequency and what moves in it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ModeResult
{
    internal ModeResult()
    {
    }

    /// <summary>Its number, from 1 for the lowest.</summary>
    public required int Number { get; init; }

    /// <summary>Natural frequency.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Natural period.</summary>
    public Duration Period => Duration.FromSeconds(1 / Frequency.Hertz);

    /// <summary>Effective modal mass for motion of the base along x, as a fraction of the moving mass.</summary>
    public required double MassFractionX { get; init; }

    /// <summary>Effective modal mass for motion of the base along y, as a fraction of the moving mass.</summary>
    public required double MassFractionY { get; init; }

    /// <summary>Effective modal mass for motion of the base along z, as a fraction of the moving mass.</summary>
    public required double MassFractionZ { get; init; }

    /// <summary>Effective modal inertia for twist of the base about z, as a fraction of the whole.</summary>
    public required double TwistFraction { get; init; }

    /// <summary>What moves, by kinetic energy, as in "sway along x: skin 61 %, tower 30 %, wing 9 %".</summary>
    public required string Description { get; init; }

    /// <summary>Share of the kinetic energy by part: "tower", "skin" and the limbs' names; together 1.</summary>
    public required IReadOnlyDictionary<string, double> EnergyShares { get; init; }

    /// <summary>The mode on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"mode {Number}: {Frequency.Hertz:0.000} Hz, {Description}");
}
