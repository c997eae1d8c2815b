using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A body's skin as stations with outlines and fold factors, and what the slicing cost in exactness. All errors fall with
/// the square of the band height where the shape is smooth.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SlicedSkin
{
    /// <summary>The stations, from the lowest up.</summary>
    public required ValueList<SkinStation> Stations { get; init; }

    /// <summary>The sheet of each band between stations, measured on the mesh; the end bands hold all that lies beyond.</summary>
    public required ValueList<SheetBand> Bands { get; init; }

    /// <summary>Area of the sheet, measured on the mesh.</summary>
    public required Area SheetArea { get; init; }

    /// <summary>Area of sheet that the stations stand for, with the uppermost outline closed.</summary>
    public required Area ModelArea { get; init; }

    /// <summary>How far the plan areas of the skin halfway between stations lie off those of the mesh, as a part of the volume.</summary>
    public required double OutlineError { get; init; }

    /// <summary>Greatest difference, over eight headings, between the projected area of the mesh and that of the stations, relative.</summary>
    public required double ProjectedError { get; init; }

    /// <summary>What was left out or assumed, in words.</summary>
    public required ValueList<string> Notes { get; init; }

    /// <summary>The stations as a skin.</summary>
    /// <param name="metal">The metal of the sheets.</param>
    /// <param name="thickness">Their thickness.</param>
    public Skin ToSkin(Material metal, Length thickness) => new() { Stations = Stations, Material = metal, Thickness = thickness };
}
