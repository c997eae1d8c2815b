using CsCheck;
using StatueFrame.Mechanics;
using static StatueFrame.Tests.Skins.Shells;

namespace StatueFrame.Tests.Skins;

/// <summary>Projected area, pressure center and windward strips of bands.</summary>
public class SkinWindTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { 0, 30, 45, 60, 90 }.Select(degrees => new PublishedValue(
            $"width of an ellipse, 3 m × 1 m, across a heading {degrees}° from its long axis", "closed form, 2√(a²sin²θ + b²cos²θ)",
            EllipseWidth(3, 1, degrees * Math.PI / 180), "m", 5e-4,
            () => Band(At(0, Ellipse(3, 1)), At(2, Ellipse(3, 1))).ProjectedWidth(Heading(degrees * Math.PI / 180)), ValueKind.IndependentComputation)),
        new("pressure center height of a frustum of widths 4 and 1 m, h = 3 m", "closed form, trapezoid: h(b₁+2b₂)/(3(b₁+b₂))", 3 * (4 + 2.0) / (3 * 5), "m", 1e-9,
            () => Frustum(2, 0.5, 3).Exposure(Vector3D.UnitX).PressureCenter.Z, ValueKind.IndependentComputation),
        new("mean width of an elliptic cylinder over all headings, 3 m × 1 m", "Cauchy's theorem, perimeter/π", Ellipse(3, 1).Curve().Perimeter / Math.PI, "m", 1e-5,
            () => Enumerable.Range(0, 720).Average(i => Band(At(0, Ellipse(3, 1)), At(2, Ellipse(3, 1))).ProjectedWidth(Heading(i * Math.PI / 720))), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Wind_along_the_axis_meets_the_base_of_a_closed_cone()
    {
        Skin cone = Open(At(0, Box(4, 3)), At(1, Box(3, 2.5)), At(5, Box(0.1, 0.2))) with { ClosedTop = true };
        Close(12, BandBuilder.Bands(cone).Sum(b => b.Exposure(Vector3D.UnitZ).ProjectedArea));
        Close(12, BandBuilder.Bands(cone).Sum(b => b.Exposure(-Vector3D.UnitZ).ProjectedArea));
    }

    [Fact]
    public void Oblique_wind_sees_width_by_the_sine_and_ends_by_the_cosine()
    {
        Skin prism = Open(At(0, Box(2, 1)), At(3, Box(2, 1))) with { ClosedTop = true };
        var wind = new Vector3D(0.6, 0, 0.8);
        WindExposure exposure = BandBuilder.Bands(prism)[0].Exposure(wind);
        Close(0.6 * 3 + 0.8 * 2, exposure.ProjectedArea);
        Close(new(0, 0, (0.6 * 3 * 1.5 + 0.8 * 2 * 3) / 3.4), exposure.PressureCenter);
    }

    [Fact]
    public void Wind_along_an_open_cylinder_meets_nothing_and_still_gives_a_center()
    {
        WindExposure exposure = Frustum(1, 1, 2).Exposure(Vector3D.UnitZ);
        Assert.Equal(0, exposure.ProjectedArea);
        Close(new(0, 0, 1), exposure.PressureCenter);
    }

    [Fact]
    public void Pressure_center_follows_an_offset_outline()
    {
        SkinBand band = Band(At(1, Ellipse(3, 1, 2, -1)), At(2, Ellipse(3, 1, 2, -1)));
        for (int i = 0; i < 16; i++)
            Close(new(2, -1, 1.5), band.Exposure(Heading(i * Math.PI / 8)).PressureCenter);
    }

    [Fact]
    public void Pressure_center_of_an_unsymmetric_outline_is_mid_width_across_and_centroid_along()
    {
        SkinBand band = Band(At(0, Polygon((0, 0), (3, 0), (0, 3))), At(1, Polygon((0, 0), (3, 0), (0, 3))));
        Close(new(1, 1.5, 0.5), band.Exposure(Vector3D.UnitX).PressureCenter);
        Close(new(1.5, 1, 0.5), band.Exposure(-Vector3D.UnitY).PressureCenter);
    }

    [Fact]
    public void Leaning_band_has_its_center_weighted_by_width()
    {
        // Width 2 − z and middle z/2 across the wind: ∫(2−z)(z/2)dz / ∫(2−z)dz = (1/2 − 1/6)/(3/2).
        SkinBand band = Band(At(0, Box(2, 2)), At(1, Box(1, 1, 0, 0.5)));
        Vector3D center = band.Exposure(Vector3D.UnitX).PressureCenter;
        Close(1 / 3.0 / 1.5, center.Y);
    }

    [Fact]
    public void Opposite_headings_see_the_same_area_and_center() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-1, 1]).Sample((angle, z) =>
        {
            SkinBand band = Band(At(0, Ellipse(3, 1, 0.3, 0.1, 0.2)), At(2, Ellipse(2, 2, 0.1, 0.6)));
            Vector3D w = new Vector3D(Math.Cos(angle), Math.Sin(angle), z).Normalized();
            WindExposure there = band.Exposure(w), back = band.Exposure(-w);
            Close(there.ProjectedArea, back.ProjectedArea);
            Close(there.PressureCenter, back.PressureCenter);
        });

    [Fact]
    public void Strips_of_a_box_are_its_windward_walls()
    {
        // Vertex 0 at (−1.5, −0.5); walls −y (3 m), +x (1 m), +y (3 m), −x (1 m).
        SkinBand band = Band(At(0, Box(3, 1)), At(1, Box(3, 1)));
        Close(1, Shells.Strip(band, 0, 1, Vector3D.UnitX));
        Close(1, Shells.Strip(band, 7 / 8.0, 1, Vector3D.UnitX));
        Close(0, Shells.Strip(band, 0, 7 / 8.0, Vector3D.UnitX));
        Close(1.5, Shells.Strip(band, 0, 1.5 / 8, Vector3D.UnitY));
        Close(0.5 * 0.6 + 2 * 0.8, Shells.Strip(band, 7.5 / 8, 2 / 8.0, new Vector3D(0.6, 0.8, 0)));
        Close(0.5 * 0.6 + 2 * 0.8, Shells.Strip(band, -0.5 / 8, 2 / 8.0, new Vector3D(0.6, 0.8, 0)));
    }

    [Fact]
    public void Strips_add_up_to_the_width_of_a_convex_outline() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0, 0.5], Gen.Double[0.51, 1]).Sample((angle, p, q) =>
        {
            SkinBand band = Band(At(0, Ellipse(3, 1, 1, 2, 0.4)), At(1, Ellipse(3, 1, 1, 2, 0.4)));
            double sum = Shells.Strip(band, p, q, Heading(angle)) + Shells.Strip(band, q, p, Heading(angle));
            Close(band.ProjectedWidth(Heading(angle)), sum);
        });

    [Fact]
    public void Nearest_perimeter_position_counts_from_the_first_vertex()
    {
        SkinBand band = Band(At(0, Box(3, 1)), At(1, Box(3, 1)));
        Close(0, band.NearestPerimeterPosition(-2, -2));
        Close(1.5, band.NearestPerimeterPosition(0, -1));
        Close(3.5, band.NearestPerimeterPosition(9, 0));
        Close(7.25, band.NearestPerimeterPosition(-1.4, 0.25));
    }

    private static double EllipseWidth(double a, double b, double theta) =>
        Math.Sqrt(Math.Pow(a * Math.Sin(theta), 2) + Math.Pow(b * Math.Cos(theta), 2));
}
