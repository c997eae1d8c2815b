using UnitsNet;

namespace StatueFrame;

/// <summary>One course or lift of a pedestal: a block of one section, centered on the tower's base; the joint that is checked is the one under it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PedestalCourse
{
    /// <summary>Plan of the course.</summary>
    public required BlockSection Section { get; init; }

    /// <summary>Height, 0.02 to 50 m.</summary>
    public required Length Height { get; init; }

    /// <summary>What it is built of.</summary>
    public required BlockMaterial Material { get; init; }

    /// <summary>Weight without factor, N.</summary>
    internal double Weight => Section.Plan.Whole.A * Height.Meters * Material.Weight;

    internal void Validate(Validator v)
    {
        v.Required(Section)?.Validate(v.At(nameof(Section)));
        v.Positive(Height, Height.Meters, 0.02, 50);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
    }
}
