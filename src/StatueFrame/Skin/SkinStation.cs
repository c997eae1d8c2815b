using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A place along a body's axis where the skin's outline is known. Between stations the skin is the ruled surface that
/// joins corresponding points of the two outlines by straight lines; sheet thickness and fold factor run linearly.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SkinStation
{
    /// <summary>Distance along the body's axis: the height above the tower's base, or along a limb from its root; −1000 to 1000 m.</summary>
    public required Length Elevation { get; init; }

    /// <summary>The outline in the plane across the axis.</summary>
    public required Outline Outline { get; init; }

    /// <summary>Sheet thickness here, 0.2 to 30 mm; the skin's own <see cref="Skin.Thickness"/> when not given.</summary>
    public Length? Thickness { get; init; }

    /// <summary>True sheet area over outline area here, 1 to 5; the skin's own <see cref="Skin.FoldFactor"/> when not given.</summary>
    public double? FoldFactor { get; init; }

    /// <summary>A station with an elliptic outline about the body's axis.</summary>
    /// <param name="elevation">Distance along the body's axis.</param>
    /// <param name="widthX">Width along x.</param>
    /// <param name="widthY">Width along y.</param>
    public static SkinStation Ellipse(Length elevation, Length widthX, Length widthY) =>
        new() { Elevation = elevation, Outline = new EllipseOutline { WidthX = widthX, WidthY = widthY } };

    internal void Validate(Validator v)
    {
        v.Within(Elevation, Elevation.Meters, -1000, 1000);
        if (Thickness is { } t)
            Skin.CheckThickness(v, t);
        if (FoldFactor is { } fold)
            Skin.CheckFoldFactor(v, fold);
        v.Required(Outline)?.Validate(v.At(nameof(Outline)));
    }
}
