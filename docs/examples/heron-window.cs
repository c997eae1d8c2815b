#:project ../../src/StatueFrame/StatueFrame.csproj

// Which bar for the whole statue? Over thickness and length of the bars of a half-size Saltmere Heron: the curves on which
// strength, fatigue, heat, sway, shock and clearance are just met, the window between them, its widest margin, and the
// reverse: the bar for a wanted frequency of the skin. Every point is a whole check sheet. All data are invented.

using StatueFrame;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

double[] levels = [0, 1.5, 4.5, 7.5, 10.5];
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 24.MetersPerSecond, Terrain = TerrainCategory.Zero }, ForceCoefficient = 1.2, GustEffectFactor = 1.05, Headings = [0.Degrees],
};
var heat = new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(30) };
var wave = new PressurePulse
{
    Name = "pressure wave", Shape = new TrianglePulse(), Peak = 0.6.Kilopascals, Duration = 0.015.Seconds, Heading = 0.Degrees, WaveSpeed = 340.MetersPerSecond,
};
Situation[] situations =
[
    new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] },
    new() { Name = "summer", Actions = [1.35 * new SelfWeight(), 1.5 * heat] },
    new() { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), wind] },
    new() { Name = "wave", Actions = [new SelfWeight(), wave] },
];
DampingModel damping = DampingModel.OfRatio(0.02);
var criteria = new Criteria
{
    BarStressFraction = 1 / 1.1, Modes = 1, Damping = damping, DesignLife = 50,
    Sway = [new SwayLimit("tip", 30.Millimeters)], Shock = new ShockLimits { BaseWidth = 2.2.Meters, Clearance = 80.Millimeters },
};

var t = new WindowInput("thickness", Dimension.SmallLength, 0.020, 0.032);
var L = new WindowInput("length", Dimension.SmallLength, 0.4, 0.9);
DesignWindow window = StatueWindow.Of(t, L, Heron, criteria, situations, StatueLimit.Standoff, columns: 2, samples: 3, accuracy: 2e-2);

Console.WriteLine("limit               thickness   length at which it is just met");
foreach (LimitPoint p in window.Curves.OrderBy(p => p.Limit, StringComparer.Ordinal).ThenBy(p => p.X).ThenBy(p => p.Y))
    Console.WriteLine(FormattableString.Invariant($"{p.Limit,-18} {1e3 * p.X,7:0.0} mm {1e3 * p.Y,6:0} mm, holds {(p.OkAbove ? "above" : "below")}"));
Console.WriteLine("all hold at");
foreach (WindowInterval i in window.Intervals)
    Console.WriteLine(FormattableString.Invariant($"{1e3 * i.X,8:0.0} mm   {1e3 * i.From,4:0} to {1e3 * i.To,4:0} mm"));
Console.WriteLine(window.Widest is { } widest
    ? FormattableString.Invariant($"widest margin {100 * widest.Margin:0} %: {1e3 * widest.X:0.0} mm by {1e3 * widest.Y:0} mm")
    : "no bar holds all limits");

// The reverse: the thickness of bars 0.8 m long on which the skin swings at 22 Hz while the tower is held still.
double SkinFrequency(double thickness) => IsolationStudy.Of(Heron(thickness, 0.8), wave, new IsolationOptions { Variants = [IsolationVariant.AsIs, IsolationVariant.RigidLinks], Damping = damping })
    .Rows[0].SkinFrequency!.Value.Hertz;
foreach (double thickness in StatueWindow.Solve(t, SkinFrequency, wanted: 22, samples: 3, accuracy: 1e-3))
    Console.WriteLine(FormattableString.Invariant($"skin at 22 Hz: bars {1e3 * thickness:0.0} mm thick"));
Console.WriteLine(CheckSheet.Caution);

Statue Heron(double thickness, double length) => new()
{
    Name = "Saltmere Heron, half size",
    Tower = new Tower
    {
        Levels = [.. levels.Select(z => new TowerLevel($"{z} m", z.Meters) { Plan = TowerPlan.Square((1.3 - 0.06 * z).Meters) })],
        Segments = [.. Enumerable.Repeat<TowerSegment>(new LatticeSegment
        {
            Legs = new AngleBar(100.Millimeters, 10.Millimeters), Braces = new AngleBar(60.Millimeters, 6.Millimeters), Material = StructuralSteel.S355,
        }, levels.Length - 1)],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240, Thickness = 2.4.Millimeters, FoldFactor = 1.2, ArmatureMass = 9.KilogramsPerSquareMeter,
        Stations = [Station(0, 2.6, 2.4), Station(6, 2.8, 2.4), Station(12, 1.2, 1.0)],
        BandEdges = [.. Enumerable.Range(0, 5).Select(i => (3.0 * i).Meters)],
    },
    Standoffs =
    [
        .. levels.Skip(1).Select(z => new EvenRing
        {
            Level = $"{z} m", Count = 18, Lay = 60.Degrees, Length = length.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(60.Millimeters, thickness.Meters), Material = StainlessSteel.Duplex2205, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid,
                Clearance = 80.Millimeters, FatigueDetail = DetailCategory.FilletToe,
            },
        }),
    ],
    Points = [new NamedPoint("tip", "band 4")],
};

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
