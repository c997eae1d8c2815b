using UnitsNet;
using static StatueFrame.Tests.Skins.Shells;

namespace StatueFrame.Tests.Skins;

public class SkinValidationTests
{
    private static readonly Skin Good = Open(At(0, Ellipse(3, 2)), At(2, Ellipse(2, 1)), At(3, Ellipse(1, 1)));

    [Fact]
    public void A_good_skin_has_no_problems()
    {
        Assert.Empty(ProblemsOf(Good));
        Assert.Empty(ProblemsOf(Good.WithEdges(0, 0.7, 2.5, 3)));
    }

    [Fact]
    public void All_problems_are_told_at_once_with_their_paths()
    {
        Skin bad = Good with
        {
            Thickness = Length.FromMeters(2.4),
            FoldFactor = 0.8,
            ArmatureMass = AreaDensity.FromKilogramsPerSquareMeter(-1),
            ForceCoefficient = 40,
            Stations = [Good.Stations[0], At(2, Ellipse(-1, 2), 2.4, 9), At(3, Polygon((0, 0), (1, 0)))],
        };
        Assert.Equal(
        [
            "Thickness", "FoldFactor", "ArmatureMass", "ForceCoefficient", "Stations[1].Thickness", "Stations[1].FoldFactor",
            "Stations[1].Outline.WidthX", "Stations[2].Outline.Vertices",
        ], ProblemsOf(bad));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(0.0005)]
    public void Stations_must_ascend(double elevation) =>
        Assert.Equal(["Stations[1].Elevation"], ProblemsOf(Open(At(0, Ellipse(1, 1)), At(elevation, Ellipse(1, 1)))));

    [Fact]
    public void One_station_is_not_a_skin() => Assert.Equal(["Stations"], ProblemsOf(Open(At(0, Ellipse(1, 1)))));

    [Fact]
    public void A_skin_that_pinches_between_stations_is_told()
    {
        Assert.Equal(["Stations[1].Outline"], ProblemsOf(Open(At(0, Ellipse(2, 1)), At(1, Ellipse(2, 1, rotation: 1.2)))));
        Assert.Equal(["Stations[1].Outline"], ProblemsOf(Open(At(0, Box(1, 1)), At(1, Polygon((0.5, 0.5), (-0.5, 0.5), (-0.5, -0.5), (0.5, -0.5))))));
        Assert.Empty(ProblemsOf(Open(At(0, Ellipse(2, 1)), At(1, Ellipse(2, 1, rotation: 0.9)))));
    }

    public static TheoryData<string, PolygonOutline> BadPolygons => new()
    {
        { "crossing", Polygon((0, 0), (1, 1), (1, 0), (0, 1)) },
        { "touching", Polygon((0, 0), (2, 0), (2, 2), (1, 0), (0, 2)) },
        { "spike", Polygon((0, 0), (2, 0), (1, 0), (1, 1)) },
        { "flat", Polygon((0, 0), (1, 1), (2, 2)) },
        { "repeated", Polygon((0, 0), (1, 0), (1, 1), (0, 0)) },
        { "millimeters taken as meters", Polygon((0, 0), (150, 0), (150, 150)) },
        { "too narrow", Polygon((0, 0), (1, 0), (1, 0.01)) },
    };

    [Theory, MemberData(nameof(BadPolygons))]
    public void Bad_polygons_are_told(string what, PolygonOutline outline)
    {
        string[] paths = ProblemsOf(Open(At(0, outline), At(1, outline)));
        Assert.True(paths.Length > 0, what);
        Assert.All(paths, p => Assert.StartsWith("Stations[", p));
        Assert.All(paths, p => Assert.EndsWith("].Outline.Vertices", p));
    }

    [Fact]
    public void Notched_polygons_are_good()
    {
        PolygonOutline notched = Polygon((0, 0), (2, 0), (2, 2), (1, 0.5), (0, 2));
        Assert.Empty(ProblemsOf(Open(At(0, notched), At(1, notched))));
    }

    [Fact]
    public void Band_edges_must_ascend_and_cover_the_skin()
    {
        Assert.Equal(["BandEdges"], ProblemsOf(Good.WithEdges(0)));
        Assert.Equal(["BandEdges[0]", "BandEdges[1]"], ProblemsOf(Good.WithEdges(0.5, 4)));
        Assert.Equal(["BandEdges[2]"], ProblemsOf(Good.WithEdges(0, 2, 2, 3)));
        Assert.Equal(["BandEdges[2]"], ProblemsOf(Good.WithEdges(0, 2, 1, 3)));
    }

    [Fact]
    public void Force_coefficients_must_name_a_band_once()
    {
        Assert.Equal(["BandForceCoefficients[0].Band"], ProblemsOf(Good with { BandForceCoefficients = [new(3, 1.2)] }));
        Assert.Equal(["BandForceCoefficients[0].Band"], ProblemsOf(Good with { BandForceCoefficients = [new(0, 1.2)] }));
        Assert.Equal(["BandForceCoefficients[1].Band"], ProblemsOf(Good with { BandForceCoefficients = [new(1, 1.2), new(1, 1.3)] }));
        Assert.Equal(["BandForceCoefficients[0].Value"], ProblemsOf(Good with { BandForceCoefficients = [new(1, 0)] }));
        ForceCoefficientTable table = new() { Rows = [new(0.Degrees, 1), new(180.Degrees, 1)], Source = Source.Assumed("test") };
        Assert.Equal(["HeadingCoefficients"], ProblemsOf(Good with { ForceCoefficient = 1, HeadingCoefficients = table }));
        Assert.Equal(["BandHeadingCoefficients[0].Band"], ProblemsOf(Good with { BandForceCoefficients = [new(1, 1)], BandHeadingCoefficients = [new(1, table)] }));
        Assert.Equal(["BandHeadingCoefficients[0].Band"], ProblemsOf(Good with { BandHeadingCoefficients = [new(9, table)] }));
        Assert.Equal(["BandHeadingCoefficients[0].Table.Rows"], ProblemsOf(Good with { BandHeadingCoefficients = [new(1, table with { Rows = [] })] }));
    }

    [Fact]
    public void Sums_of_a_bad_skin_throw_with_the_problems()
    {
        var thrown = Assert.Throws<InvalidStatueException>(() => (Good with { FoldFactor = 0 }).Mass());
        Assert.Equal("Skin.FoldFactor", Assert.Single(thrown.Problems).Path);
    }

    [Fact]
    public void Skins_compare_by_value()
    {
        Skin again = Open(At(0, Ellipse(3, 2)), At(2, Ellipse(2, 1)), At(3, Ellipse(1, 1)));
        Assert.Equal(Good, again);
        Assert.NotEqual(Good, again with { FoldFactor = 1.1 });
    }

    private static string[] ProblemsOf(Skin skin)
    {
        var v = new Validator();
        skin.Validate(v);
        return [.. v.Problems.Select(p => p.Path)];
    }
}
