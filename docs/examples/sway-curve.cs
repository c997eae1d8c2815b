#:project ../../src/StatueFrame/StatueFrame.csproj

// Wind headings and the table beside the anemometer, for a 9 m figure that leans forward.
// All data are invented, the force coefficients too.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

double[] levels = [0, 1.5, 3.5, 5.5, 7.5];
var statue = new Statue
{
    Name = "Saltmere Heron, chick",
    Tower = new Tower
    {
        Levels = [.. levels.Select(z => new TowerLevel($"{z} m", z.Meters))],
        Segments =
        [
            .. levels.SkipLast(1).Zip(levels.Skip(1), (bottom, top) => new MemberSegment
            {
                Section = Mast(bottom), TopSection = Mast(top), Material = StructuralSteel.S355,
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        Stations = [Station(0.5, 1.5, 1.3, 0), Station(4.5, 1.8, 1.2, 0.1), Station(6.5, 1.2, 1.0, 0.3), Station(9, 0.4, 0.3, 0.2)],
        BandEdges = [0.5.Meters, 2.5.Meters, 4.5.Meters, 6.5.Meters, 9.Meters],
    },
    Standoffs =
    [
        .. levels.Skip(1).Select(z => new EvenRing
        {
            Level = $"{z} m", Count = 12, Lay = 30.Degrees, Length = 0.25.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(40.Millimeters, 12.Millimeters), Material = StainlessSteel.Grade316L,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("tip", "band 4"), new NamedPoint("breast", "band 3")],
    BaseAboveGround = 3.Meters,
};

// A wind tunnel gives force coefficients by heading: along the wind, and across it to the left.
var coefficients = new ForceCoefficientTable
{
    Source = new Source("wind-tunnel test of an invented model", "every 45°"),
    Rows =
    [
        new(0.Degrees, 1.05, 0.00), new(45.Degrees, 1.20, 0.25), new(90.Degrees, 1.35, 0.10), new(135.Degrees, 1.25, -0.20),
        new(180.Degrees, 1.10, 0.00), new(225.Degrees, 1.25, 0.20), new(270.Degrees, 1.35, -0.10), new(315.Degrees, 1.20, -0.25),
    ],
};
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.I },
    HeadingCoefficients = coefficients,
    GustEffectFactor = 1.0,
};
StatueModel model = StatueModel.Build(statue);

// Which heading is worst for what, those between the sixteen included.
HeadingStudy headings = HeadingStudy.Of(model, new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] });
Console.WriteLine(headings);

// The points of a rose, to plot: one quantity over the headings.
foreach (RosePoint point in headings.SwayAt("tip").Rose.Where((_, i) => i % 9 == 0))
    Console.WriteLine($"  rose of the tip: {point.Heading.Degrees,5:0.0}°  {1000 * point.Value:0.0} mm");
Console.WriteLine();

// The table that hangs beside the anemometer.
SwayCurve curve = SwayCurve.Of(model, wind, new SwayCurveOptions
{
    AnemometerHeight = 10.Meters,
    Limits = new Criteria { Sway = [new SwayLimit("tip", 20.Millimeters)], BarStressFraction = 1 / 1.5 },
});
Console.WriteLine(curve);

// The same for one heading with random vibration in gusts: its own gust factor at every speed, and accelerations.
SwayCurve vibrating = SwayCurve.Of(model, wind, new SwayCurveOptions
{
    AnemometerHeight = 10.Meters,
    Heading = 90.Degrees,
    MeanSpeeds = [0.MetersPerSecond, 10.MetersPerSecond, 20.MetersPerSecond, 25.MetersPerSecond],
    Limits = new Criteria { Sway = [new SwayLimit("tip", 20.Millimeters)], BarStressFraction = 1 / 1.5 },
    AccelerationLimits = [new AccelerationLimit("breast", Acceleration.FromMetersPerSecondSquared(0.5))],
    Dynamics = new GustSwayDynamics(model, model.Modes(6), DampingModel.Of(DampingCategory.WeldedSteelTube)),
});
Console.WriteLine(vibrating);

Tube Mast(double z) => new((0.34 - 0.02 * z).Meters, 10.Millimeters);

SkinStation Station(double z, double x, double y, double forward) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters, CenterX = forward.Meters },
};
