using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Works.Tests.Raising;

public class RaisingTests
{
    private static readonly RaisingStudy Study = RaisingStudy.Of(Heron.Statue, Heron.Document.Criteria, Heron.Document.Actions!,
        new RaisingStage { Name = "tower to L14, bare", TowerTo = "L14", CladTo = 0.Meters, Stands = Duration.FromDays(2) },
        new RaisingStage { Name = "no wing, clad to 12 m", CladTo = 12.Meters, WithoutLimbs = ["wing"], Stands = Duration.FromDays(100) });

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { (2.0, 2), (60, 5), (300, 10), (800, 50) }.Select(r => new PublishedValue($"a stage of {r.Item1} days: return period of its wind", "EN 1991-1-6:2005, Table 3.1", r.Item2, "years", 1e-9,
            () => new RaisingStage { Name = "", CladTo = 0.Meters, Stands = Duration.FromDays(r.Item1) }.ReturnPeriod, ValueKind.FromMemory) { IsReadBack = true }),
    ];

    [Fact]
    public void A_stage_is_what_stands_and_nothing_else()
    {
        Statue first = Study.Stages[0].Statue, second = Study.Stages[1].Statue;
        Assert.Equal("L14", first.Tower.Levels[^1].Name);
        Assert.Null(first.Skin);
        Assert.Equal(12, second.Skin!.BandCount);
        Assert.Empty(second.Limbs);
        Assert.All(Study.Stages, s => Assert.NotNull(s.Sheet));
    }

    [Fact]
    public void A_stage_that_stands_longer_meets_a_stronger_wind()
    {
        var wind = Study.Stages.Select(s => s.Sheet!.Basis.First(b => b.Name == "wind").Value).ToArray();
        Assert.NotEqual(wind[0], wind[1]);
        RaisingStage clad = Study.Stages[1].Stage;
        RaisingStudy two = RaisingStudy.Of(Heron.Statue, Heron.Document.Criteria, Heron.Document.Actions!, clad with { Stands = Duration.FromDays(1) }, clad);
        Assert.True(Compression(two.Stages[0].Sheet!) < Compression(two.Stages[1].Sheet!));

        static double Compression(CheckSheet sheet) => sheet.Checks.Where(c => c.Id == "tower.compression").Max(c => c.Utilization!.Value);
    }

    /// <summary>A core whose shape nobody gave meets no wind before it is clad: the stage is open there, and no error.</summary>
    [Fact]
    public void A_stage_that_catches_no_wind_is_no_error()
    {
        var rigidity = Rigidity.FromNewtonSquareMeters(5e9);
        SkinStation Station(double z) => new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = 2.Meters, WidthY = 2.Meters } };
        var statue = new Statue
        {
            Name = "post",
            Tower = new Tower
            {
                Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("mid", 4.Meters), new TowerLevel("top", 8.Meters)],
                Segments = [.. Enumerable.Repeat((TowerSegment)new CoreSegment { BendingX = rigidity, BendingY = rigidity, Torsion = rigidity, Axial = 1e10.Newtons, Mass = LinearDensity.FromKilogramsPerMeter(500) }, 2)],
            },
            Skin = new Skin { Material = Copper.HalfHardR240, Thickness = 2.Millimeters, Stations = [Station(3), Station(9)], BandEdges = [3.Meters, 6.Meters, 9.Meters] },
            Standoffs =
            [
                .. new[] { "mid", "top" }.Select(level => (StandoffRing)new EvenRing { Level = level, Count = 8, Length = 0.5.Meters, Standoff = new Standoff { Section = new FlatBar(60.Millimeters, 10.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid } }),
            ],
        };
        Assert.Empty(statue.FindProblems());
        WindAction wind = new() { Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.II }, GustByBand = [1.1, 1.2] };
        RaisedStage stage = Assert.Single(RaisingStudy.Of(statue, Heron.Document.Criteria with { Sway = [], Platforms = [], AcrossWind = null, Fine = null }, new CharacteristicActions { Variable = [wind] },
            new RaisingStage { Name = "bare", CladTo = 0.Meters, Stands = Duration.FromDays(20) }).Stages);
        Assert.NotNull(stage.Sheet);
        Assert.NotEqual(Verdict.Pass, stage.Sheet!.Checks.First(c => c.Id == "wind.bare").Verdict);
    }

    [Fact]
    public void Slips_in_stages_are_told_together()
    {
        InvalidStatueException error = Assert.Throws<InvalidStatueException>(() => RaisingStudy.Of(Heron.Statue, Heron.Document.Criteria, Heron.Document.Actions!,
            new RaisingStage { Name = "a", TowerTo = "L99", WithoutLimbs = ["tail"], CladTo = 0.Meters, Stands = Duration.FromDays(1) }));
        Assert.Equal(2, error.Problems.Count);
    }

    [Fact]
    public void Holes_meet_when_the_play_is_more_than_the_deviations()
    {
        var chain = new ToleranceChain
        {
            Name = "seam",
            Fastener = 5.Millimeters,
            Hole = 5.5.Millimeters,
            Reaming = 0.5.Millimeters,
            Links = [new("template", 0.3.Millimeters), new("marking", 0.4.Millimeters), new("drilling", 0.5.Millimeters)],
        };
        Assert.Equal(1.2, chain.WorstCase.Millimeters, 1e-9);
        Assert.Equal(Math.Sqrt(0.5), chain.Statistical.Millimeters, 1e-9);
        IReadOnlyList<Check> checks = chain.Checks();
        Assert.Equal(Verdict.Pass, checks[0].Verdict);
        Assert.Equal(Verdict.Fail, checks[1].Verdict);
        Assert.Throws<InvalidStatueException>(() => (chain with { Hole = 4.Millimeters }).Checks());
    }
}
