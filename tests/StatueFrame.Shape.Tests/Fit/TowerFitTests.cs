using CsCheck;
using UnitsNet;

namespace StatueFrame.Shape.Tests.Fit;

public class TowerFitTests
{
    private static readonly ShapeBody Drum = ShapeBody.Trunk(Solids.Cylinder(2, 10, 10, 720));

    private static readonly TowerFitting Fitting = new() { Levels = [1.Meters, 5.Meters, 9.Meters], Clearance = 0.4.Meters };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("round tower in a drum of radius 2 with 0.4 m clearance: diameter", "2(R − c)", 3.2, "m", 1e-4, () => Fit(TowerShape.Round, 0.4).Levels[1].Width.Meters, ValueKind.IndependentComputation),
        new("square tower in a drum of radius 2 with 0.4 m clearance: side", "√2(R − c)", Math.Sqrt(2) * 1.6, "m", 1e-4, () => Fit(TowerShape.Square, 0.4).Levels[1].Width.Meters, ValueKind.IndependentComputation),
        new("square tower in a cone of radius 2, height 8 at 4 m, no clearance: side", "√2 R/2", Math.Sqrt(2), "m", 2e-3, () => TowerFit.Of(ShapeBody.Trunk(Solids.Cone(2, 8, 100)), Fitting with { Levels = [4.Meters], Clearance = 0.Meters }).Levels[0].Width.Meters, ValueKind.IndependentComputation),
        new("shortest flat of 15 mm that bends 5 mm within 150 MPa", "√(3Etδ/σ)", Math.Sqrt(0.3), "m", 1e-9, () => (Fitting with { Movement = 5.Millimeters }).LeastBar.Meters, ValueKind.IndependentComputation),
    ];

    private static TowerFit Fit(TowerShape shape, double clearance) => TowerFit.Of(Drum, Fitting with { Shape = shape, Clearance = clearance.Meters });

    [Fact]
    public void More_clearance_never_makes_a_wider_tower() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-0.5, 0.5]).Sample((a, b, x) =>
        {
            double Width(double clearance) => TowerFit.Of(Drum, Fitting with { Clearance = clearance.Meters, Center = new PlanPoint(x.Meters, 0.1.Meters) }).Levels[0].Width.Meters;
            return Width(Math.Max(a, b)) <= Width(Math.Min(a, b)) + 1e-9;
        }, iter: 20);

    [Fact]
    public void A_waist_between_levels_draws_the_tower_in()
    {
        ShapeBody waisted = ShapeBody.Trunk(Solids.Turned([(2, 0), (2, 4), (1, 5), (2, 6), (2, 10)], 180));
        TowerFit fit = TowerFit.Of(waisted, Fitting with { Levels = [3.Meters, 7.Meters], Shape = TowerShape.Round });
        Assert.Equal(1.2, fit.Levels[0].Width.Meters, 1e-3);
        Assert.Equal(1.2, fit.Levels[1].Width.Meters, 1e-3);
    }

    [Fact]
    public void Bars_reach_from_tower_to_skin_and_short_ones_are_named()
    {
        TowerFit fit = TowerFit.Of(Drum, Fitting with { BarsPerLevel = 8, Movement = 5.Millimeters, WorstSway = 0.45.Meters });
        Assert.All(fit.Levels, l => Assert.Equal(8, l.Bars.Count));
        Assert.Equal(2, fit.Levels[0].Bars[0].SkinEnd.X.Meters, 1e-3);
        Assert.False(fit.Levels[0].Bars[0].TooShort);
        // At the corners the bar is as long as the clearance: shorter than 0.548 m, and within the sway.
        Assert.True(fit.Levels[0].Bars[1].TooShort);
        Assert.True(fit.Levels[0].Bars[1].Strikes);
        Assert.Equal(0.4, fit.Levels[0].Bars[1].Length.Meters, 1e-3);
        Assert.Equal(24, fit.Problems.Count);
        Assert.Contains("to flex it needs 0.548 m", fit.ToString());
    }

    [Fact]
    public void Where_nothing_fits_it_says_so()
    {
        TowerFit fit = TowerFit.Of(Drum, Fitting with { Clearance = 2.5.Meters });
        Assert.Equal(3, fit.Problems.Count);
        Assert.Null(fit.Levels[0].Plan(TowerShape.Square));
        Assert.Equal(3, TowerFit.Of(Drum, Fitting with { Center = new PlanPoint(5.Meters, 0.Meters) }).Problems.Count);
        Assert.Throws<ArgumentException>(() => TowerFit.Of(Drum, Fitting with { Levels = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => TowerFit.Of(Drum, Fitting with { Clearance = -1.Meters }));
    }

    [Fact]
    public void Fitted_levels_make_a_statue_that_can_be_analyzed()
    {
        Length[] levels = [1.Meters, 3.Meters, 5.Meters, 7.Meters, 9.Meters];
        TowerFit fit = TowerFit.Of(Drum, Fitting with { Levels = [.. levels], BarsPerLevel = 24 });
        SlicedSkin skin = Drum.Slice(new SkinSlicing { Elevations = [.. Enumerable.Range(0, 6).Select(i => Math.Clamp(2.0 * i, 1e-4, 10 - 1e-4).Meters)] });
        var bar = new Standoff { Section = new FlatBar(60.Millimeters, 15.Millimeters), Material = StainlessSteel.Duplex2205, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
        var statue = new Statue
        {
            Name = "drum",
            Tower = new Tower
            {
                Levels = [new TowerLevel("base", 0.Meters) { Plan = fit.Levels[0].Plan(TowerShape.Square) }, .. fit.Levels.Select((l, i) => new TowerLevel($"L{i}", l.Elevation) { Plan = l.Plan(TowerShape.Square) })],
                Segments = [.. levels.Select(_ => new LatticeSegment { Legs = new AngleBar(120.Millimeters, 12.Millimeters), Braces = new AngleBar(70.Millimeters, 7.Millimeters), Material = StructuralSteel.S355 })],
            },
            Skin = skin.ToSkin(Copper.HalfHardR240, 2.Millimeters),
            Standoffs = [.. fit.Levels.Select((l, i) => l.Ring($"L{i}", bar))],
        };
        Assert.Empty(statue.FindProblems());
        Assert.True(Analysis.StatueModel.Build(statue).Modes(2).First.Frequency.Hertz > 0.5);
    }
}
