using UnitsNet;

namespace StatueFrame;

/// <summary>Mesh of bars in a block or mat: alike along x and y, at its underside, and at its top when that is said.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record FootingReinforcement
{
    /// <summary>Diameter of the bars, 5 to 60 mm.</summary>
    public required Length Bar { get; init; }

    /// <summary>Distance of the bars, 40 mm to 0.5 m and more than their diameter.</summary>
    public required Length Spacing { get; init; }

    /// <summary>Concrete outside the outer bars, 15 to 200 mm.</summary>
    public required Length Cover { get; init; }

    /// <summary>Characteristic yield strength f_yk, 100 to 1000 MPa.</summary>
    public required Pressure YieldStrength { get; init; }

    /// <summary>Partial factor γ_S, 1 to 1.5; 1.15 by default (EN 1992-1-1, Table 2.1N).</summary>
    public double PartialFactor { get; init; } = 1.15;

    /// <summary>Whether the same mesh lies at the top, which holds where the ground lets go; false by default.</summary>
    public bool AtTop { get; init; }

    /// <summary>Steel area a width, m.</summary>
    internal double A_s => Math.PI / 4 * Bar.Meters * Bar.Meters / Spacing.Meters;

    /// <summary>Depth of the inner layer in a block, m.</summary>
    internal double DepthIn(double thickness) => thickness - Cover.Meters - 1.5 * Bar.Meters;

    internal void Validate(Validator v, double thickness)
    {
        bool thick = v.Positive(Bar, Bar.Meters, 0.005, 0.06);
        v.Positive(Cover, Cover.Meters, 0.015, 0.2);
        v.Positive(YieldStrength, YieldStrength.Pascals, 1e8, 1e9);
        v.InRange(PartialFactor, 1, 1.5, "It is 1.15 in EN 1992-1-1.");
        if (thick)
            v.Within(Spacing, Spacing.Meters, Math.Max(0.04, 1.5 * Bar.Meters), 0.5);
        if (thick && thickness > 0 && DepthIn(thickness) < 0.3 * thickness)
            v.Add(nameof(Cover), "and bars leave less than a third of the block as effective depth", "Is the block thick enough, and the cover in mm?");
    }
}
