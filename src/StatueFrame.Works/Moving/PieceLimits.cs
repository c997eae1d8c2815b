using UnitsNet;

namespace StatueFrame.Works;

/// <summary>What a truck bed takes and a crane lifts of the inner structure.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PieceLimits
{
    /// <summary>Greatest length of a piece, 0.5 to 60 m.</summary>
    public required Length Length { get; init; }

    /// <summary>Greatest width and height of a piece as it lies, 0.1 to 10 m.</summary>
    public required Length Width { get; init; }

    /// <summary>Greatest mass of a piece, 10 kg to 500 t.</summary>
    public required Mass GreatestMass { get; init; }

    /// <summary>Whether level frames and brackets are on the tower when it travels, with their mass and reach; true by default. Standoffs and skin come later.</summary>
    public bool WithBrackets { get; init; } = true;

    internal void Validate(Validator v)
    {
        v.Positive(Length, Length.Meters, 0.5, 60);
        v.Positive(Width, Width.Meters, 0.1, 10);
        v.Positive(GreatestMass, GreatestMass.Kilograms, 10, 5e5);
    }
}
