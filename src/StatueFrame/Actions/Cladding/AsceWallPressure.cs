using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Pressure on walls by ASCE/SEI 7, components and cladding: GC_p by zone and effective wind area, the gust in it. A wall
/// that faces the wind within a quarter turn is pressed, every wall may be sucked.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: ASCE/SEI 7-16 and 7-22, Figures 30.3-1 (to 60 ft) and 30.4-1 (above), from
/// memory: linear in the logarithm of the area; without the reduction for flat roofs.
/// </remarks>
public sealed record AsceWallPressure : ExternalPressure
{
    private const double SquareFeet = 10.7639;

    /// <summary>Height of the body above ground; null takes the worse of the two figures.</summary>
    public Length? Height { get; init; }

    /// <summary>True for zone 5, next to an edge; false for zone 4, away from edges.</summary>
    public bool IsAtEdge { get; init; } = true;

    /// <inheritdoc/>
    public override string Name => $"walls of a building, zone {(IsAtEdge ? 5 : 4)}";

    /// <inheritdoc/>
    public override Source Source => Source.Asce7_22("Figures 30.3-1 and 30.4-1, from memory");

    /// <inheritdoc/>
    internal override double At(double alpha, double area, double gust)
    {
        double feet = area * SquareFeet;
        (double press, double suck) low = (Between(feet, 10, 1.0, 0.7), IsAtEdge ? Between(feet, 10, -1.4, -0.8) : Between(feet, 10, -1.1, -0.8));
        (double press, double suck) high = (Between(feet, 20, 0.9, 0.6), IsAtEdge ? Between(feet, 20, -1.8, -1.0) : Between(feet, 20, -0.9, -0.7));
        (double most, double least) = Height is not { } height ? (Math.Max(low.press, high.press), Math.Min(low.suck, high.suck)) : height.Feet <= 60 ? low : high;
        return alpha < 0.5 * Math.PI ? most : least;
    }

    private static double Between(double feet, double from, double small, double large) =>
        small + (large - small) * Math.Log(Math.Clamp(feet, from, 500) / from) / Math.Log(500 / from);

    internal override IEnumerable<string> RangeWarnings(double gust) => [];

    internal override void Validate(Validator v)
    {
        if (Height is { } height)
            v.Positive(height, height.Meters, 0.05, 1000, nameof(Height));
    }
}
