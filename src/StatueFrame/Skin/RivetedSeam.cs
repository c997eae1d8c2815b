using UnitsNet;

namespace StatueFrame;

/// <summary>The line of rivets that joins neighboring sheets.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RivetedSeam
{
    /// <summary>Lapped, or flush with a strap.</summary>
    public SeamKind Kind { get; init; } = SeamKind.Lapped;

    /// <summary>The rivets; countersunk ones lose bearing.</summary>
    public required Rivet Rivet { get; init; }

    /// <summary>Distance of rivets along a row, 5 to 500 mm.</summary>
    public required Length Pitch { get; init; }

    /// <summary>Rows of rivets that carry the force; of a strap, on each side of the joint; 1 to 4.</summary>
    public int Rows { get; init; } = 1;

    /// <summary>Distance from the outer row to the edge of the sheet, 2 to 200 mm.</summary>
    public required Length EdgeDistance { get; init; }

    /// <summary>Thickness of the strap of a flush seam; null for that of the sheet.</summary>
    public Length? StrapThickness { get; init; }

    /// <summary>Diameter of the head of a domed rivet; null takes 1.75 holes. A countersunk head takes 1.6.</summary>
    public Length? HeadDiameter { get; init; }

    /// <summary>True when the seam is to keep rain out, which limits the pitch.</summary>
    public bool IsSealed { get; init; } = true;

    /// <summary>The part of the heat movement that the seam must hold, 0 (sheets slide on their saddles) to 1 (held all round).</summary>
    public double HeatRestraint { get; init; }

    internal void Validate(Validator v)
    {
        v.Required(Rivet)?.Validate(v.At(nameof(Rivet)));
        v.Defined(Kind);
        v.Positive(Pitch, Pitch.Meters, 0.005, 0.5);
        v.InRange(Rows, 1, 4, "It is the number of rows on one side of the joint.");
        v.Positive(EdgeDistance, EdgeDistance.Meters, 0.002, 0.2);
        if (StrapThickness is { } strap)
            v.Positive(strap, strap.Meters, 2e-4, 0.03, nameof(StrapThickness));
        if (HeadDiameter is { } head && Rivet is not null)
            v.Within(head, head.Meters, Rivet.d_0, 4 * Rivet.d_0, nameof(HeadDiameter));
        v.InRange(HeatRestraint, 0, 1, "0 when sheets slide, 1 when they are held all round.");
    }
}
