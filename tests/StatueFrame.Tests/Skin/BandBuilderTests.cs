using CsCheck;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using static StatueFrame.Tests.Skins.Shells;

namespace StatueFrame.Tests.Skins;

/// <summary>Invariants of cutting and joining: splitting, rotation, order of vertices, correspondence of outlines.</summary>
public class BandBuilderTests
{
    public static TheoryData<string> Kinds => [.. Skins.Keys];

    private static Dictionary<string, Skin> Skins { get; } = new()
    {
        ["cone"] = Open(At(0, Ellipse(4, 2)), At(3, Ellipse(2, 1))),
        ["twisted ellipses"] = Open(At(0, Ellipse(4, 2, 0, 0, 0.1), 2e-3, 1.2), At(3, Ellipse(1.5, 3, 0.5, -0.3, 0.4), 3e-3, 1.6)),
        ["box to ellipse"] = Open(At(0, Box(3, 2)), At(2, Ellipse(2.5, 2.5, 0.2, 0, -3 * Math.PI / 4))),
        ["triangle to box"] = Open(At(0, Polygon((-2, -1), (2, -1), (0, 2))), At(2, Box(2, 2))),
    };

    [Theory, MemberData(nameof(Kinds))]
    public void Splitting_a_band_conserves_area_mass_centroid_and_inertia(string kind)
    {
        Skin skin = Skins[kind] with { ArmatureMass = UnitsNet.AreaDensity.FromKilogramsPerSquareMeter(6) };
        double top = skin.Stations[1].Elevation.Meters;
        SkinBand whole = BandBuilder.Bands(skin)[0];
        Gen.Double[0.05, 0.95].Sample(t =>
        {
            SkinBand[] parts = BandBuilder.Bands(skin.WithEdges(0, t * top, top));
            Near(whole.OutlineArea, parts.Sum(b => b.OutlineArea));
            Near(whole.SheetArea, parts.Sum(b => b.SheetArea));
            Near(whole.Mass, parts.Sum(b => b.Mass));
            Close(whole.Centroid, (parts[0].Mass * parts[0].Centroid + parts[1].Mass * parts[1].Centroid) / whole.Mass);
            InertiaTensor a = Moved(parts[0], whole.Centroid), b = Moved(parts[1], whole.Centroid), all = whole.Inertia;
            double digits = 1e-9 * (all.XX + all.YY + all.ZZ);
            Close(all.XX, a.XX + b.XX, digits);
            Close(all.YY, a.YY + b.YY, digits);
            Close(all.ZZ, a.ZZ + b.ZZ, digits);
            Close(all.XY, a.XY + b.XY, digits);
            Close(all.YZ, a.YZ + b.YZ, digits);
            Close(all.XZ, a.XZ + b.XZ, digits);
        }, iter: 20);
    }

    [Fact]
    public void A_band_over_several_stations_is_the_sum_of_its_parts()
    {
        Skin skin = Open(At(0, Ellipse(4, 2)), At(1, Ellipse(3, 2)), At(3, Ellipse(2, 1)), At(4, Ellipse(1, 1)));
        SkinBand[] four = BandBuilder.Bands(skin), two = BandBuilder.Bands(skin.WithEdges(0, 2, 4));
        Near(four.Sum(b => b.Mass), two.Sum(b => b.Mass));
        foreach (Vector3D wind in new[] { Heading(0), Heading(Math.PI / 2), new Vector3D(0.6, 0, 0.8), Vector3D.UnitZ })
            Near(four.Sum(b => b.Exposure(wind).ProjectedArea), two.Sum(b => b.Exposure(wind).ProjectedArea));
        Assert.Equal([(0.0, 2.0), (2.0, 4.0)], two.Select(b => (b.Bottom, b.Top)));
        Assert.Equal(["band 1", "band 2"], two.Select(b => b.Name));
    }

    [Fact]
    public void Turning_outline_and_heading_together_changes_nothing() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-1, 1]).Sample((turn, heading, z) =>
        {
            SkinBand band = Band(At(0, Ellipse(4, 2, 0.5, 0.1)), At(2, Ellipse(2, 3, 0.2, 0.4, 0.3)));
            SkinBand turned = Band(At(0, Turned(4, 2, 0.5, 0.1, 0, turn)), At(2, Turned(2, 3, 0.2, 0.4, 0.3, turn)));
            Vector3D wind = new Vector3D(Math.Cos(heading), Math.Sin(heading), z).Normalized();
            WindExposure here = band.Exposure(wind), there = turned.Exposure(Rotate(wind, turn));
            Near(band.Mass, turned.Mass);
            Near(band.OutlineArea, turned.OutlineArea);
            Close(Rotate(band.Centroid, turn), turned.Centroid);
            Near(here.ProjectedArea, there.ProjectedArea);
            Close(Rotate(here.PressureCenter, turn), there.PressureCenter);
            Close(Shells.Strip(band, 0.1, 0.5, wind), Shells.Strip(turned, 0.1, 0.5, Rotate(wind, turn)), 1e-8);
            Near(band.Inertia.ZZ, turned.Inertia.ZZ);
            Near(band.Inertia.XX + band.Inertia.YY, turned.Inertia.XX + turned.Inertia.YY);
            InertiaTensor i = turned.Inertia;
            Vector3D axis = Rotate(Vector3D.UnitX, turn);
            Near(band.Inertia.XX, i.XX * axis.X * axis.X + i.YY * axis.Y * axis.Y + 2 * i.XY * axis.X * axis.Y);
        }, iter: 50);

    [Fact]
    public void Clockwise_polygons_equal_anticlockwise_ones()
    {
        SkinBand band = Band(At(0, Polygon((0, 0), (3, 0), (2, 2))), At(2, Polygon((0, 0), (2, 0), (1, 1))));
        SkinBand reversed = Band(At(0, Polygon((0, 0), (2, 2), (3, 0))), At(2, Polygon((0, 0), (1, 1), (2, 0))));
        Assert.Equal(band.Mass, reversed.Mass);
        Assert.Equal(band.Centroid, reversed.Centroid);
        Assert.Equal(band.Inertia, reversed.Inertia);
        Assert.Equal(band.Exposure(Heading(1)), reversed.Exposure(Heading(1)));
        Assert.Equal(Shells.Strip(band, 0.2, 0.4, Heading(1)), Shells.Strip(reversed, 0.2, 0.4, Heading(1)));
    }

    [Fact]
    public void An_extra_vertex_on_an_edge_changes_nothing()
    {
        SkinBand plain = Band(At(0, Box(2, 2)), At(2, Box(1, 1)));
        SkinBand extra = Band(At(0, Polygon((-1, -1), (0.2, -1), (1, -1), (1, 1), (-1, 1))), At(2, Box(1, 1)));
        Near(plain.OutlineArea, extra.OutlineArea);
        Near(plain.Inertia.XX, extra.Inertia.XX);
        Near(plain.Exposure(Heading(0.3)).ProjectedArea, extra.Exposure(Heading(0.3)).ProjectedArea);
    }

    [Fact]
    public void Joining_a_polygon_with_an_ellipse_keeps_both_ends()
    {
        SkinBand band = BandBuilder.Bands(Skins["box to ellipse"])[0];
        Near(6, band.BottomOutline.Area);
        Near(10, band.BottomOutline.Perimeter);
        Near(Ellipse(2.5, 2.5).Curve().Area, band.TopOutline.Area);
        Assert.Equal(band.BottomOutline.Count, band.TopOutline.Count);
    }

    [Fact]
    public void Thicker_sheet_is_heavier_in_proportion() =>
        Gen.Double[0.3e-3, 10e-3].Sample(t =>
            Near(t / Thickness * Frustum(2, 1, 3).Mass, Band(At(0, Ellipse(4, 4), t), At(3, Ellipse(2, 2), t)).Mass));

    [Fact]
    public void Same_skin_gives_the_same_bits()
    {
        Skin skin = Skins["twisted ellipses"];
        Assert.Equal(BandBuilder.Bands(skin)[0].Inertia, BandBuilder.Bands(skin)[0].Inertia);
    }

    [Fact]
    public void Force_coefficients_go_to_their_bands()
    {
        Skin skin = Open(At(0, Box(1, 1)), At(1, Box(1, 1)), At(2, Box(1, 1)));
        Assert.Equal([null, null], BandBuilder.Bands(skin).Select(b => b.ForceCoefficient));
        skin = skin with { ForceCoefficient = 1.3, BandForceCoefficients = [new(2, 1.8)] };
        Assert.Equal([1.3, 1.8], BandBuilder.Bands(skin).Select(b => b.ForceCoefficient));
    }

    private static EllipseOutline Turned(double a, double b, double x, double y, double rotation, double turn)
    {
        Vector3D center = Rotate(new Vector3D(x, y, 0), turn);
        return Ellipse(a, b, center.X, center.Y, rotation + turn);
    }

    private static Vector3D Rotate(Vector3D v, double turn)
    {
        (double s, double c) = Math.SinCos(turn);
        return new Vector3D(c * v.X - s * v.Y, s * v.X + c * v.Y, v.Z);
    }

    /// <summary>Parallel axes: the inertia of a band about another point.</summary>
    private static InertiaTensor Moved(SkinBand band, Vector3D to)
    {
        (double x, double y, double z) = band.Centroid - to;
        InertiaTensor i = band.Inertia;
        double m = band.Mass;
        return new InertiaTensor(i.XX + m * (y * y + z * z), i.YY + m * (z * z + x * x), i.ZZ + m * (x * x + y * y),
            i.XY - m * x * y, i.XZ - m * z * x, i.YZ - m * y * z);
    }
}
