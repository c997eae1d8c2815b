using UnitsNet;

namespace StatueFrame;

/// <summary>A plate under the tower, or under one of its legs: it spreads the compression over the block below.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BasePlate
{
    /// <summary>Place of its center along x from that of the tower's base, −50 to 50 m; zero by default.</summary>
    public Length X { get; init; }

    /// <summary>Place of its center along y from that of the tower's base, −50 to 50 m; zero by default.</summary>
    public Length Y { get; init; }

    /// <summary>Width along x, 0.05 to 30 m.</summary>
    public required Length WidthX { get; init; }

    /// <summary>Width along y, 0.05 to 30 m.</summary>
    public required Length WidthY { get; init; }

    /// <summary>Thickness, 3 to 500 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>What it is made of.</summary>
    public required Material Material { get; init; }

    /// <summary>The metal with the strengths of its thickness.</summary>
    internal Material Metal => Material.For(Thickness.Meters);

    /// <summary>Width along x of what stands on it, at most its own; between the plate's edge and this it bends.</summary>
    public required Length FootX { get; init; }

    /// <summary>Width along y of what stands on it, at most its own.</summary>
    public required Length FootY { get; init; }

    /// <summary>Throat of the fillet weld all round what stands on it, on both faces of open sections, 2 to 40 mm; null leaves the weld unchecked.</summary>
    public Length? LegWeld { get; init; }

    /// <summary>How far the plate overhangs what stands on it, along x and y, m.</summary>
    internal (double X, double Y) Overhang => (0.5 * (WidthX.Meters - FootX.Meters), 0.5 * (WidthY.Meters - FootY.Meters));

    internal void Validate(Validator v)
    {
        v.Within(X, X.Meters, -50, 50);
        v.Within(Y, Y.Meters, -50, 50);
        bool wide = v.Positive(WidthX, WidthX.Meters, 0.05, 30) & v.Positive(WidthY, WidthY.Meters, 0.05, 30);
        v.Positive(Thickness, Thickness.Meters, 0.003, 0.5);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        if (LegWeld is { } throat)
            v.Positive(throat, throat.Meters, 0.002, 0.04, nameof(LegWeld));
        if (wide)
        {
            v.Within(FootX, FootX.Meters, 0.001, WidthX.Meters);
            v.Within(FootY, FootY.Meters, 0.001, WidthY.Meters);
        }
    }
}
