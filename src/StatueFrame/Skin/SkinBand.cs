using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>
/// A slice of skin across the body's axis that moves as one ring. All in SI units and body axes: z along the axis, x and
/// y across it.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SkinBand
{
    private const double AlongAxis = 1e-12;

    /// <summary>"band 1" for the lowest, and so on.</summary>
    public required string Name { get; init; }

    /// <summary>Place in the list of bands, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Lower edge, m.</summary>
    public required double Bottom { get; init; }

    /// <summary>Upper edge, m.</summary>
    public required double Top { get; init; }

    /// <summary>Area of the smooth lateral surface with its slope, m²; without folds and cap.</summary>
    public required double OutlineArea { get; init; }

    /// <summary>Area enclosed by the upper edge when it closes the skin, m²; zero for all other bands.</summary>
    public required double CapArea { get; init; }

    /// <summary>Area of sheet, m²: lateral surface and cap, folds included.</summary>
    public required double SheetArea { get; init; }

    /// <summary>Mass of sheet and armature, kg.</summary>
    public required double Mass { get; init; }

    /// <summary>Centroid of the mass of the thin shell.</summary>
    public required Vector3D Centroid { get; init; }

    /// <summary>Inertia of the thin shell about <see cref="Centroid"/>, kg·m².</summary>
    public required InertiaTensor Inertia { get; init; }

    /// <summary>Force coefficient the user gave for this band or for the skin; null when none was given.</summary>
    public required double? ForceCoefficient { get; init; }

    /// <summary>Coefficients by heading that the user gave in its place; null when none were given.</summary>
    public ForceCoefficientTable? HeadingCoefficients { get; init; }

    public required PlanCurve BottomOutline { get; init; }

    /// <summary>The outline halfway between the edges.</summary>
    public required PlanCurve MidOutline { get; init; }

    public required PlanCurve TopOutline { get; init; }

    /// <summary>Sheet thickness at mid elevation, m.</summary>
    public required double MidThickness { get; init; }

    /// <summary>Sections with the height each stands for: two Gauss points in each slab of the band.</summary>
    public required WindSection[] WindSections { get; init; }

    /// <summary>The slabs that make up the band, from the lowest up.</summary>
    public required List<SkinSlab> Slabs { get; init; }

    /// <summary>Frontal area of the taper for a wind along the axis, m²: Σ |A_upper − A_lower| over the slabs.</summary>
    public required double TaperArea { get; init; }

    /// <summary>The outline at an elevation; at the nearest edge for an elevation outside the band.</summary>
    public PlanCurve OutlineAt(double z) => z == 0.5 * (Bottom + Top) ? MidOutline : SectionAt(z).Curve;

    /// <summary>Outline, thickness and folds at an elevation; at the nearest edge for an elevation outside the band.</summary>
    public SkinSection SectionAt(double z)
    {
        int i = 0;
        while (i + 1 < Slabs.Count && Slabs[i].Upper.Z < z)
            i++;
        return Slabs[i].At(Math.Clamp(z, Slabs[i].Lower.Z, Slabs[i].Upper.Z));
    }

    /// <summary>Mean over the height of the width across a horizontal heading, m.</summary>
    /// <param name="direction">The heading; its part along the axis is ignored, the rest must not be zero.</param>
    public double ProjectedWidth(Vector3D direction)
    {
        double s = Math.Sqrt(direction.X * direction.X + direction.Y * direction.Y), sum = 0;
        foreach (WindSection section in WindSections)
        {
            (double least, double greatest) = section.Extent(-direction.Y / s, direction.X / s);
            sum += section.Height * (greatest - least);
        }
        return sum / (Top - Bottom);
    }

    /// <summary>Whether a wind comes from any side but along the axis, and the width that it meets.</summary>
    public bool MeetsWind(Vector3D wind, out double width)
    {
        bool fromSide = Math.Sqrt(wind.X * wind.X + wind.Y * wind.Y) > AlongAxis;
        width = fromSide ? ProjectedWidth(wind) : 0;
        return fromSide;
    }

    /// <summary>
    /// The projected area and the pressure center for a wind. With s = √(wx²+wy²) and t = (−wy, wx)/s across the wind,
    /// the area is s∫b(z)dz with the extent b of the outline along t, plus |wz| times the frontal area of taper and cap.
    /// The center is the area's mean: of the middle of the extent along t, of the outline's centroid along the wind, and
    /// of the height. The integrals are exact where the outermost points stay the same between two stations, else of
    /// fourth order in the height of the slab.
    /// </summary>
    /// <param name="wind">Unit vector in body axes, the way the wind blows.</param>
    public WindExposure Exposure(Vector3D wind)
    {
        double s = Math.Sqrt(wind.X * wind.X + wind.Y * wind.Y), axial = Math.Abs(wind.Z);
        double area = axial * (TaperArea + CapArea);
        Vector3D moment = axial * (TaperArea * Center(MidOutline, 0.5 * (Bottom + Top)) + CapArea * Center(TopOutline, Top));
        if (s > AlongAxis)
        {
            double ux = wind.X / s, uy = wind.Y / s;
            foreach (WindSection section in WindSections)
            {
                (double least, double greatest) = section.Extent(-uy, ux);
                double strip = s * section.Height * (greatest - least);
                double across = 0.5 * (least + greatest), along = section.CentroidX * ux + section.CentroidY * uy;
                area += strip;
                moment += strip * new Vector3D(along * ux - across * uy, along * uy + across * ux, section.Z);
            }
        }
        return new WindExposure(area, area > 0 ? moment / area : Center(MidOutline, 0.5 * (Bottom + Top)));
    }

    /// <summary>
    /// The width that a strip of the mid outline shows to a wind, m: ∫ max(0, −n·w) ds with the outward normal n across
    /// the axis. For a convex outline the whole perimeter gives s times its width.
    /// </summary>
    /// <param name="strip">A stretch of <see cref="MidOutline"/>.</param>
    /// <param name="wind">Unit vector in body axes, the way the wind blows.</param>
    public double ProjectedWidth(in PlanStretch strip, Vector3D wind) => MidOutline.WindwardWidth(strip, wind.X, wind.Y);

    /// <summary>The position on the mid outline nearest to a point, in meters anticlockwise from vertex 0.</summary>
    public double NearestPerimeterPosition(double x, double y) => MidOutline.NearestPosition(x, y);

    private static Vector3D Center(PlanCurve curve, double z) => new(curve.CentroidX, curve.CentroidY, z);
}
