using CsCheck;

namespace StatueFrame.Tests.Files;

/// <summary>Parts of a statue from tables of comma-separated values.</summary>
public class StatueTableTests
{
    private static readonly SkinStation like = SkinStation.Ellipse(0.Meters, 1.Meters, 1.Meters);
    private static readonly Standoff flat = new() { Section = new FlatBar(60.Millimeters, 10.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned };
    private static readonly StandoffBar bar = new() { TowerEnd = new(0.Meters, 0.Meters, 0.Meters), SkinEnd = new(1.Meters, 0.Meters, 0.Meters), Standoff = flat };

    [Fact]
    public void A_row_is_like_what_is_given_but_for_its_cells()
    {
        ValueList<SkinStation> stations = StatueTable.Read("elevation [m],outline.widthX [m],outline.widthY [ft],thickness [mm],foldFactor\n0,4.8,15,2.5,\n\"1.5\",4.4,14,,1.2\n", like);
        Assert.Equal(
            [
                new SkinStation { Elevation = 0.Meters, Outline = new EllipseOutline { WidthX = 4.8.Meters, WidthY = 15.Feet }, Thickness = 2.5.Millimeters },
                new SkinStation { Elevation = 1.5.Meters, Outline = new EllipseOutline { WidthX = 4.4.Meters, WidthY = 14.Feet }, FoldFactor = 1.2 },
            ],
            stations);
    }

    [Fact]
    public void Levels_and_bars_come_from_tables_too()
    {
        ValueList<TowerLevel> levels = StatueTable.Read("name;elevation;offsetX\nL0;0 m;\n7;3000 mm;20 cm", new TowerLevel("", 0.Meters) { Plan = TowerPlan.Square(2.Meters) });
        Assert.Equal([new TowerLevel("L0", 0.Meters) { Plan = TowerPlan.Square(2.Meters) }, new TowerLevel("7", 3000.Millimeters) { Plan = TowerPlan.Square(2.Meters), OffsetX = 20.Centimeters }], levels);
        ValueList<StandoffBar> bars = StatueTable.Read("towerEnd.x [m]\tskinEnd.x [m]\tskinEnd.z [m]\r\n0.5\t1.5\t0.1\r\n", bar);
        Assert.Equal([bar with { TowerEnd = new(0.5.Meters, 0.Meters, 0.Meters), SkinEnd = new(1.5.Meters, 0.Meters, 0.1.Meters) }], bars);
    }

    /// <summary>What is written with full digits is read back bit by bit.</summary>
    [Fact]
    public void Numbers_come_back_bit_by_bit() => Gen.Double[-1e6, 1e6].Array[1, 20].Sample(z =>
        StatueTable.Read("elevation [m]\n" + string.Join('\n', z.Select(e => e.ToString("R", System.Globalization.CultureInfo.InvariantCulture))), like)
            .Select(station => station.Elevation.Meters).SequenceEqual(z), iter: 200);

    [Theory]
    [InlineData("", 1, "is empty")]
    [InlineData("elevatoin [m]\n1", 1, "is no member", "elevation")]
    [InlineData("elevation [kg]\n1", 2, "is no unit of Length")]
    [InlineData("elevation\n1", 2, "has no unit")]
    [InlineData("elevation [m]\n\n\nhigh", 4, "does not begin with a number")]
    [InlineData("elevation [m]\n1\n2,5", 3, "has 2 cells, the head has 1")]
    [InlineData("elevation [m]\n1e999", 2, "is too great a number")]
    [InlineData("foldFactor [m]\n1", 1, "has no unit")]
    [InlineData("foldFactor\none", 2, "must be a number")]
    [InlineData("elevation [m],elevation [mm]\n1,2", 1, "heads two columns")]
    [InlineData("outline,outline.widthX [m]\n1,2", 1, "as does outline.widthX within it")]
    [InlineData("outline.widthX [m],outline\n2,1", 1, "as does outline.widthX within it")]
    [InlineData("elevation.meters\n1", 1, "has no members")]
    [InlineData("outline.kind\nPolygonOutline", 1, "is no member")]
    [InlineData("two words\n1", 1, "is no head of a column")]
    [InlineData("elevation [m]\n\"1", 2, "quotes that do not match")]
    public void Bad_tables_are_refused_with_line_and_reason(string text, int line, string message, string hint = "")
    {
        StatueFileException refused = Assert.Throws<StatueFileException>(() => StatueTable.Read(text, like));
        StatueFileProblem problem = refused.Problems[0];
        Assert.Equal(line, problem.Line);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_are_told_at_once()
    {
        StatueFileException refused = Assert.Throws<StatueFileException>(() => StatueTable.Read("elevation [m],thickness [mm]\nx,2\n1,y\n2,2\nz,", like));
        Assert.Equal([2, 3, 5], refused.Problems.Select(problem => problem.Line));
    }

    /// <summary>Any text gives rows or problems, nothing else.</summary>
    [Fact]
    public void Any_text_gives_rows_or_problems() => Gen.String[Gen.Char["elvation,;\"[m].\n\r\t12 "], 0, 60].Sample(text =>
    {
        try
        {
            StatueTable.Read("elevation [m]\n" + text, like);
            StatueTable.Read(text, like);
        }
        catch (StatueFileException)
        {
        }
    }, iter: 3000);
}
