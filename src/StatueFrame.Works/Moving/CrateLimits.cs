using UnitsNet;

namespace StatueFrame.Works;

/// <summary>The inside of a crate and what may go into it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record CrateLimits
{
    /// <summary>Inner length, 0.1 to 20 m; the sheets lie with their longer way along it.</summary>
    public required Length Length { get; init; }

    /// <summary>Inner width, 0.1 to 20 m.</summary>
    public required Length Width { get; init; }

    /// <summary>Inner height, 0.05 to 5 m.</summary>
    public required Length Height { get; init; }

    /// <summary>Greatest mass of the sheets of a crate, 1 kg to 100 t.</summary>
    public required Mass GreatestMass { get; init; }

    /// <summary>Least distance of neighboring sheets' faces in a stack, and of stacks and walls, 0 to 0.2 m; 20 mm by default.</summary>
    public Length Padding { get; init; } = Length.FromMillimeters(20);

    internal void Validate(Validator v)
    {
        v.Positive(Length, Length.Meters, 0.1, 20);
        v.Positive(Width, Width.Meters, 0.1, 20);
        v.Positive(Height, Height.Meters, 0.05, 5);
        v.Positive(GreatestMass, GreatestMass.Kilograms, 1, 1e5);
        v.NotNegative(Padding, Padding.Meters, 0.2);
    }
}
