using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A girder laid in the masonry or concrete that two like bars pull up against: it bends between and beyond them under the
/// even bearing of the block above.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AnchorGirder
{
    /// <summary>Length, 0.1 to 30 m.</summary>
    public required Length Length { get; init; }

    /// <summary>Distance of its two bars, placed alike about its middle, below its length.</summary>
    public required Length BarDistance { get; init; }

    /// <summary>Width that bears on the block, 0.02 to 3 m.</summary>
    public required Length Width { get; init; }

    /// <summary>Section modulus for bending, positive.</summary>
    public required Volume SectionModulus { get; init; }

    /// <summary>Area that takes shear, positive.</summary>
    public required Area ShearArea { get; init; }

    /// <summary>What it is made of.</summary>
    public required Material Material { get; init; }

    internal void Validate(Validator v)
    {
        if (v.Positive(Length, Length.Meters, 0.1, 30))
            v.Within(BarDistance, BarDistance.Meters, 0.01, Length.Meters);
        v.Positive(Width, Width.Meters, 0.02, 3);
        v.Positive(SectionModulus, SectionModulus.CubicMeters, 1e-7, 1);
        v.Positive(ShearArea, ShearArea.SquareMeters, 1e-6, 1);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
    }
}
