#:project ../../src/StatueFrame/StatueFrame.csproj

// A first statue: an 8 m copper figure on a tapered steel mast. All data are invented.

using StatueFrame;
using UnitsNet;

var statue = new Statue
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
    Standoffs =
    [
        .. new[] { 1, 3, 5, 7 }.Select(z => new EvenRing
        {
            Level = $"{z} m", Count = 16, Lay = 30.Degrees, Length = 0.25.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(40.Millimeters, 14.Millimeters), Material = StainlessSteel.Grade316L,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("tip", "band 4")],
};

var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
    ForceCoefficient = 1.2,
    GustEffectFactor = 1.1,
};
CheckSheet sheet = statue.Check(
    new Criteria { Sway = [new SwayLimit("tip", 40.Millimeters)], BarStressFraction = 1 / 1.1, Modes = 3 },
    new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] },
    new Situation { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), wind] });
Console.WriteLine(sheet);

Tube Mast(double z) => new((0.32 - 0.02 * z).Meters, 10.Millimeters);

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
