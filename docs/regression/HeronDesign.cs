using StatueFrame;
using StatueFrame.Checks;
using UnitsNet;

namespace Regression;

/// <summary>The design that is held: an 8 m study for a heron. All data are invented.</summary>
internal static class HeronDesign
{
    public static Standoff Bar { get; } = new()
    {
        Section = new FlatBar(40.Millimeters, 12.Millimeters),
        Material = StainlessSteel.Grade316L,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Pinned,
    };

    public static Statue AsDrawn { get; } = new()
    {
        Name = "Study for a heron",
        Tower = new Tower
        {
            Levels = [.. new[] { 0.0, 1, 3, 5, 7 }.Select(z => new TowerLevel($"{z} m", z.Meters))],
            Segments =
            [
                .. new[] { (0.0, 1.0), (1.0, 3.0), (3.0, 5.0), (5.0, 7.0) }.Select(z => new MemberSegment
                {
                    Section = Mast(z.Item1), TopSection = Mast(z.Item2), Material = StructuralSteel.S355,
                }),
            ],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [Station(0, 1.6, 1.4), Station(4, 1.8, 1.2), Station(8, 0.5, 0.4)],
            BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters, 8.Meters],
        },
        Standoffs = [.. new[] { 1, 3, 5, 7 }.Select(z => new EvenRing { Level = $"{z} m", Count = 16, Lay = 30.Degrees, Length = 0.25.Meters, Standoff = Bar })],
        Points = [new NamedPoint("tip", "band 4")],
    };

    /// <summary>The variant on the drawing board: fewer bars in every ring.</summary>
    public static Statue FewerBars => AsDrawn with { Standoffs = [.. AsDrawn.Standoffs.Cast<EvenRing>().Select(ring => ring with { Count = 14 })] };

    public static CheckSheet SheetOf(Statue statue)
    {
        var wind = new WindAction
        {
            Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
            ForceCoefficient = 1.2,
            GustEffectFactor = 1.4,
        };
        return statue.Check(
            new Criteria { Sway = [new SwayLimit("tip", 42.Millimeters)], BarStressFraction = 1 / 1.1, Modes = 3 },
            new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] },
            new Situation { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), wind] });
    }

    private static Tube Mast(double z) => new((0.32 - 0.02 * z).Meters, 10.Millimeters);

    private static SkinStation Station(double z, double x, double y) => new()
    {
        Elevation = z.Meters,
        Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
    };
}
