using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks;

/// <summary>A ring whose bars are of two metals.</summary>
public class WeakestBarTests
{
    /// <summary>Six steel bars and a copper one at the same spacing; the copper is less stressed but nearer to yield.</summary>
    private static readonly Statue statue = new()
    {
        Name = "mixed",
        Tower = new Tower
        {
            Levels = [new TowerLevel("L0", 0.Meters), new TowerLevel("L1", 2.Meters)],
            Segments = [new MemberSegment { Section = new Tube(300.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [Station(1), Station(3)],
        },
        Standoffs = [new ExplicitRing { Level = "L1", Bars = [.. Enumerable.Range(0, 7).Select(Bar)] }],
    };

    private static SkinStation Station(double z) => new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = 2.Meters, WidthY = 2.Meters } };

    private static StandoffBar Bar(int k)
    {
        (double sin, double cos) = Math.SinCos(2 * Math.PI * k / 7);
        return new StandoffBar
        {
            TowerEnd = Point3.FromMeters(0.15 * cos, 0.15 * sin, 2),
            SkinEnd = Point3.FromMeters(cos, sin, 2),
            Standoff = new Standoff
            {
                Section = new FlatBar(60.Millimeters, 8.Millimeters),
                Material = k == 0 ? Copper.SoftR220 : StainlessSteel.Duplex2205,
                TowerFixity = EndFixity.Rigid,
                SkinFixity = EndFixity.Pinned,
            },
        };
    }

    [Fact]
    public void The_sheet_checks_the_bar_nearest_to_yield_not_the_one_with_most_stress()
    {
        var situation = new Situation { Name = "weight", Actions = [5 * new SelfWeight()] };
        Response response = StatueModel.Build(statue).Respond(situation);
        double worst = response.Bars.Max(bar => bar.Stress / bar.Standoff.Material.YieldStrength);
        Assert.NotEqual(1, response.WorstBar!.Number);
        Check check = statue.Check(new Criteria { BarStressFraction = 0.5 }, situation).Checks.Single(c => c.Id == "bars.bending");
        Assert.Equal("band 1, bar 1", check.Where);
        Assert.Equal(worst / 0.5, check.Utilization!.Value, 1e-9);
    }
}
