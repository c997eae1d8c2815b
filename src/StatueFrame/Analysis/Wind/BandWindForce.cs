using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The wind force on one band of skin in one load case: along the wind γ G q c A, with the factors and values it is made of.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BandWindForce
{
    internal BandWindForce()
    {
    }

    /// <summary>Name of the band, as in "band 3" or "wing/band 2".</summary>
    public required string Band { get; init; }

    /// <summary>Height of its center of pressure above the statue's base.</summary>
    public required Length Elevation { get; init; }

    /// <summary>Load factor γ; zero without wind. Where the wind presses off the middle, the part of it that does is in it.</summary>
    public required double LoadFactor { get; init; }

    /// <summary>Gust factor G.</summary>
    public required double GustFactor { get; init; }

    /// <summary>
    /// Height above ground that q is taken at: of the center of pressure, or with an <see cref="En1991Wind"/> of the band's highest point.
    /// </summary>
    public required Length ReferenceHeight { get; init; }

    /// <summary>Peak velocity pressure q at <see cref="ReferenceHeight"/>.</summary>
    public required Pressure PeakPressure { get; init; }

    /// <summary>Force coefficient c along the wind.</summary>
    public required double Coefficient { get; init; }

    /// <summary>Area A that the band shows to the wind.</summary>
    public required Area Area { get; init; }

    /// <summary>Force along the wind.</summary>
    public required Force Along { get; init; }

    /// <summary>Horizontal force across the wind, anticlockwise from it.</summary>
    public required Force Across { get; init; }
}
