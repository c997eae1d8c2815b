using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>One wind speed of a <see cref="SwayCurve"/> and what it does.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SwayCurveRow
{
    internal SwayCurveRow()
    {
    }

    /// <summary>Mean speed at the anemometer.</summary>
    public required Speed MeanSpeed { get; init; }

    /// <summary>Speed of the gust that goes with it at the anemometer.</summary>
    public required Speed GustSpeed { get; init; }

    /// <summary>Every named point of the statue.</summary>
    public required ValueList<PointSway> Points { get; init; }

    /// <summary>Overturning moment at the base in the gust, without direction.</summary>
    public required Torque Overturning { get; init; }

    /// <summary>The heading for which <see cref="Overturning"/> is worst; null in calm.</summary>
    public required Angle? OverturningHeading { get; init; }

    /// <summary>The standoff nearest to yielding; null when the statue has none.</summary>
    public required BarDemand? WorstBar { get; init; }

    /// <summary>A named point.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public PointSway At(string point) => Points.FirstOrDefault(p => p.Point == point)
        ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, Points.Select(p => p.Point))}", nameof(point));
}
