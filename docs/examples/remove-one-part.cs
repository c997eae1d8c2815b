#:project ../../src/StatueFrame/StatueFrame.csproj

// One part gone: a 10 m heron loses, one at a time, every standoff, saddle, ring and brace. All data are invented.

using StatueFrame;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

double[] levels = [0, 1, 3, 5, 7, 9];
var heron = new Statue
{
    Name = "Saltmere Heron, fledgling",
    Tower = new Tower
    {
        Levels = [.. levels.Select((z, i) => new TowerLevel($"L{i}", z.Meters) { Plan = TowerPlan.Square((1.1 - 0.07 * z).Meters) })],
        Segments =
        [
            .. levels.Skip(1).Select(_ => new LatticeSegment
            {
                Legs = new AngleBar(100.Millimeters, 8.Millimeters), Braces = new AngleBar(60.Millimeters, 6.Millimeters), Material = StructuralSteel.S355,
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        FoldFactor = 1.15,
        Stations = [Station(0, 1.9, 1.8), Station(5, 2.2, 1.8), Station(10, 0.9, 0.8)],
        BandEdges = [.. Enumerable.Range(0, 6).Select(i => (2.0 * i).Meters)],
    },
    Standoffs =
    [
        .. Enumerable.Range(1, 5).Select(i => new EvenRing
        {
            Level = $"L{i}", Count = 16, Lay = 30.Degrees, Length = 0.25.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(40.Millimeters, 10.Millimeters), Material = StainlessSteel.Duplex2205,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("tip", "band 5")],
};

// The loss of a part is an accident: EN 1990 asks for the frequent wind with it, without partial factors.
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    ForceCoefficient = 1.2,
    GustEffectFactor = 1.3,
};
var accident = new Situation { Name = "part lost", Actions = [new SelfWeight(), 0.2 * wind] };
var criteria = new Criteria { BarStressFraction = 1, Modes = 2 };

// As described, nothing but its ring holds a band: each whole ring that goes lets its band fall, and the check fails.
Console.WriteLine(RobustnessStudy.Of(heron, criteria, [accident]));

// Seams that tie the bands together carry a band over the gap. Look at the rings alone.
Statue riveted = heron with { Name = "Saltmere Heron, fledgling, riveted seams", Seams = new SeamStiffness(2e8.Pascals, 1e8.Pascals) };
RobustnessStudy rings = RobustnessStudy.Of(riveted, criteria, [accident], new RobustnessOptions { Kinds = [RemovalKind.Ring] });
Console.WriteLine(rings);

// A part of your own: the two lowest braces of one face together.
var both = new Removal(RemovalKind.Other, "both braces of face 1, L0–L1", statue => statue with
{
    Tower = statue.Tower with
    {
        Segments = statue.Tower.Segments.With(0, (LatticeSegment)statue.Tower.Segments[0] with { Missing = ["brace a, face 1, bay 1", "brace b, face 1, bay 1"] }),
    },
});
RobustnessStudy own = RobustnessStudy.Of(riveted, criteria, [accident], new RobustnessOptions { Kinds = [], More = [both] });
Console.WriteLine(string.Join("\n", own.Worst[0].Worse));

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
