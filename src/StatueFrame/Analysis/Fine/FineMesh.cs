using UnitsNet;

namespace StatueFrame;

/// <summary>How finely the skin of a <see cref="Analysis.FineModel"/> is divided, and what of it carries.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record FineMesh
{
    /// <summary>The most nodes of skin.</summary>
    internal const int MostNodes = 120_000;

    /// <summary>The longest side of a triangle, 5 mm to 5 m; null for a quarter of the mean distance of neighboring bars.</summary>
    public Length? Size { get; init; }

    /// <summary>
    /// Whether the bars of a described <see cref="Skin.Armature"/> stiffen the sheet: along the outline, one through every ring
    /// and the others at their spacing, inside the sheet. True by default.
    /// </summary>
    public bool Armature { get; init; } = true;

    internal void Validate(Validator v)
    {
        if (Size is { } size)
            v.Positive(size, size.Meters, 0.005, 5, nameof(Size));
    }
}
