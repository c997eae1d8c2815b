using UnitsNet;

namespace StatueFrame;

/// <summary>One bolt of a metric coarse thread, or of a unified thread whose area is given.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Bolt
{
    /// <summary>Nominal diameter d, 4 to 64 mm.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Strength.</summary>
    public required BoltGrade Grade { get; init; }

    /// <summary>Tensile stress area; null takes that of the metric coarse thread.</summary>
    public Area? StressArea { get; init; }

    /// <summary>Diameter d₀ of the hole; null takes the normal clearance: 1 mm up to M14, 2 mm up to M24, 3 mm above.</summary>
    public Length? Hole { get; init; }

    /// <summary>True when a shear plane passes through the thread, as it mostly does.</summary>
    public bool ThreadsInShearPlane { get; init; } = true;

    internal double d => Diameter.Meters;

    internal double d_0 => Hole?.Meters ?? d + (d <= 0.0141 ? 0.001 : d <= 0.0241 ? 0.002 : 0.003);

    /// <summary>Mass of the bolt with nut and washers, kg: about a steel rod six diameters long (common practice, no source).</summary>
    internal double SetMass => 7850 * Shank * 6 * d;

    internal double Shank => Math.PI * d * d / 4;

    /// <summary>ISO 898-1: A_s = π/4 (d − 0.9382 P)², with the pitch of the coarse thread (ISO 261).</summary>
    internal double TensileArea => StressArea?.SquareMeters ?? Math.PI / 4 * Math.Pow(d - 0.9382e-3 * CoarsePitch(1e3 * d), 2);

    private static double CoarsePitch(double d) => d switch
    {
        < 4.5 => 0.7,
        < 5.5 => 0.8,
        < 7.5 => 1,
        < 9 => 1.25,
        < 11 => 1.5,
        < 13 => 1.75,
        < 17 => 2,
        < 23 => 2.5,
        < 28 => 3,
        < 35 => 3.5,
        < 41 => 4,
        < 47 => 4.5,
        < 54 => 5,
        < 62 => 5.5,
        _ => 6,
    };

    internal void Validate(Validator v)
    {
        v.Positive(Diameter, d, 0.004, 0.064);
        v.Positive(Grade.UltimateStrength, Grade.UltimateStrength.Pascals, 1e8, 2e9);
        v.InRange(Grade.ThreadShearFactor, 0.3, 0.6, "It is 0.5 or 0.6 in EN 1993-1-8, Table 3.4.");
        if (StressArea is { } area)
            v.Within(area, area.SquareMeters, 0.4 * Shank, Shank, nameof(StressArea));
        if (Hole is { } hole)
            v.Within(hole, hole.Meters, d, 2.5 * d, nameof(Hole));
    }
}
