using UnitsNet;

namespace StatueFrame;

/// <summary>One rivet, driven to fill its hole.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Rivet
{
    /// <summary>Diameter of the hole, which the driven rivet fills, 1.5 to 40 mm.</summary>
    public required Length Hole { get; init; }

    /// <summary>Ultimate tensile strength f_ur of the rivet, 50 to 1000 MPa.</summary>
    public required Pressure UltimateStrength { get; init; }

    /// <summary>Yield or proof strength of the rivet, for metals that are checked by allowable stress; 20 to 900 MPa.</summary>
    public required Pressure YieldStrength { get; init; }

    /// <summary>True for a head that lies flush in its countersink.</summary>
    public bool IsCountersunk { get; init; }

    /// <summary>What its metal is for weather and for other metals; null when not known.</summary>
    public MetalFamily? Family { get; init; }

    /// <summary>Where the strengths come from.</summary>
    public required Source Source { get; init; }

    /// <summary>A rivet of the metal of the parts or of another one, with the strengths of that metal.</summary>
    /// <param name="hole">Diameter of the hole.</param>
    /// <param name="material">The metal.</param>
    public static Rivet Of(Length hole, Material material) => new()
    {
        Hole = hole,
        UltimateStrength = material.UltimateStrength,
        YieldStrength = material.YieldStrength,
        Source = material.Source,
        Family = material.Family,
    };

    internal double d_0 => Hole.Meters;

    internal double Area => Math.PI * d_0 * d_0 / 4;

    internal void Validate(Validator v)
    {
        v.Positive(Hole, d_0, 0.0015, 0.04);
        bool strong = v.Positive(UltimateStrength, UltimateStrength.Pascals, 5e7, 1e9) & v.Positive(YieldStrength, YieldStrength.Pascals, 2e7, 9e8);
        if (strong && UltimateStrength < YieldStrength)
            v.Add(nameof(UltimateStrength), $"is below the yield strength ({QuantityText.Of(UltimateStrength)} < {QuantityText.Of(YieldStrength)})", "Were the two swapped?");
        if (Family is { } family)
            v.Defined(family, nameof(Family));
    }
}
