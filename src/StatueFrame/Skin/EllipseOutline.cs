using UnitsNet;

namespace StatueFrame;

/// <summary>An outline in the shape of an ellipse, or of a circle when both widths are equal.</summary>
/// <remarks>
/// Immutable and safe to share between threads. In the analysis the ellipse is a polygon of <see cref="PointCount"/>
/// points at equal steps h = 2π/<see cref="PointCount"/> of the parameter angle, from the ellipse's own +x. The points lie
/// on an ellipse larger by (h/2)/sin(h/2), because every chord of the inscribed polygon is sin(h/2)/(h/2) times the
/// arc speed at its middle: so the perimeter, and with it sheet and mass, is that of the ellipse itself (to 1e-9 for
/// widths up to 5:1), and so is the mean width over all headings. The enclosed area comes out 0.04 % small, a width
/// in a single heading at most 0.04 % off.
/// </remarks>
public sealed record EllipseOutline : Outline
{
    /// <summary>Number of points by which the analysis stands for an ellipse.</summary>
    internal const int PointCount = 96;

    /// <summary>Full width along the ellipse's own x (local x when <see cref="Rotation"/> is zero), 0.05 to 100 m.</summary>
    public required Length WidthX { get; init; }

    /// <summary>Full width along the ellipse's own y (local y when <see cref="Rotation"/> is zero), 0.05 to 100 m.</summary>
    public required Length WidthY { get; init; }

    /// <summary>Center along the body's local x.</summary>
    public Length CenterX { get; init; }

    /// <summary>Center along the body's local y.</summary>
    public Length CenterY { get; init; }

    /// <summary>
    /// Anticlockwise angle from the body's local x to the ellipse's own x. Neighboring stations are joined by the
    /// parameter angle, so a skin follows the rotation as a screw does: 180° more is not the same ellipse for the loft.
    /// </summary>
    public Angle Rotation { get; init; }

    internal override PlanCurve Curve()
    {
        const double half = Math.PI / PointCount;
        double enlarge = half / Math.Sin(half);
        return PlanCurve.Ellipse(enlarge * WidthX.Meters, enlarge * WidthY.Meters, CenterX.Meters, CenterY.Meters, Rotation.Radians, PointCount);
    }

    internal override void Validate(Validator v)
    {
        v.Positive(WidthX, WidthX.Meters, LeastWidth, GreatestWidth);
        v.Positive(WidthY, WidthY.Meters, LeastWidth, GreatestWidth);
        v.Within(CenterX, CenterX.Meters, -GreatestOffset, GreatestOffset);
        v.Within(CenterY, CenterY.Meters, -GreatestOffset, GreatestOffset);
        v.Within(Rotation, Rotation.Radians, -8 * Math.PI, 8 * Math.PI);
    }
}
