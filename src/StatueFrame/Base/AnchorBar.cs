using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A bar that ties the tower's base down: it runs from the nut on the base plate, free to stretch, to a head or plate deep
/// in the masonry or concrete.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AnchorBar
{
    /// <summary>Place along x from the center of the tower's base, −50 to 50 m.</summary>
    public required Length X { get; init; }

    /// <summary>Place along y from the center of the tower's base, −50 to 50 m.</summary>
    public required Length Y { get; init; }

    /// <summary>Nominal diameter, 6 to 300 mm.</summary>
    public required Length Diameter { get; init; }

    /// <summary>What it is made of.</summary>
    public required Material Material { get; init; }

    /// <summary>The metal with the strengths of its thickness.</summary>
    internal Material Metal => Material.For(Diameter.Meters);

    /// <summary>Tensile stress area; null takes 0.78 of the nominal area, as of metric coarse threads.</summary>
    public Area? StressArea { get; init; }

    /// <summary>Length that stretches freely, from the nut to where the bar is held, 0.02 to 50 m.</summary>
    public required Length FreeLength { get; init; }

    /// <summary>Depth h_ef of the head or anchor plate below the top of the block, 0.02 to 50 m.</summary>
    public required Length Embedment { get; init; }

    /// <summary>Force in the bar when it has been tightened or jacked and locked off; zero by default.</summary>
    public Force PreTension { get; init; }

    /// <summary>Side of the square head or anchor plate, from twice the bar's diameter; null for a bar held by bond or by a girder alone.</summary>
    public Length? HeadWidth { get; init; }

    /// <summary>Length over which the bar is bonded, for a bar without a head; zero by default.</summary>
    public Length BondLength { get; init; }

    /// <summary>True when the bar is ribbed, which bond asks for.</summary>
    public bool Ribbed { get; init; }

    internal double A_s => StressArea?.SquareMeters ?? 0.78 * Math.PI / 4 * Diameter.Meters * Diameter.Meters;

    /// <summary>Stiffness of the free length, N/m.</summary>
    internal double Stiffness => Material.YoungsModulus.Pascals * A_s / FreeLength.Meters;

    /// <summary>Area that the head bears on, m²: its square less the bar.</summary>
    internal double? HeadArea => HeadWidth is { } w ? w.Meters * w.Meters - Math.PI / 4 * Diameter.Meters * Diameter.Meters : null;

    internal void Validate(Validator v)
    {
        v.Within(X, X.Meters, -50, 50);
        v.Within(Y, Y.Meters, -50, 50);
        bool thick = v.Positive(Diameter, Diameter.Meters, 0.006, 0.3);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        double gross = Math.PI / 4 * Diameter.Meters * Diameter.Meters;
        if (thick && StressArea is { } area)
            v.Within(area, area.SquareMeters, 0.4 * gross, gross, nameof(StressArea));
        v.Positive(FreeLength, FreeLength.Meters, 0.02, 50);
        v.Positive(Embedment, Embedment.Meters, 0.02, 50);
        v.NotNegative(PreTension, PreTension.Newtons, 1e8);
        v.NotNegative(BondLength, BondLength.Meters, 50);
        if (thick && HeadWidth is { } head)
            v.Within(head, head.Meters, 1.2 * Diameter.Meters, 5, nameof(HeadWidth));
        if (Material?.For(Diameter.Meters) is { } m && thick && PreTension.Newtons > m.YieldStrength.Pascals * A_s)
            v.Add(nameof(PreTension), "is above the bar's yield force", "Pre-tension is usually 0.3 to 0.7 of yield strength times stress area.");
    }
}
