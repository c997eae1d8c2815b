#:project ../../src/StatueFrame/StatueFrame.csproj

// An earthquake under a 9 m figure: spectra of EN 1998-1, a record in time, and whether it would topple if it stood free.
// All data are invented, the record too.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Checks;
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
        Stations = [Station(0.5, 1.5, 1.3), Station(4.5, 1.8, 1.2), Station(6.5, 1.2, 1.0), Station(9, 0.4, 0.3)],
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
    Fittings = [new Fitting { Name = "plinth", On = "0 m", Mass = 6.Tonnes, At = new Point3(0.Meters, 0.Meters, (-0.4).Meters) }],
    Points = [new NamedPoint("tip", "band 4")],
};

// The design spectrum of the place, with the low behavior factor of a tower without ductile details.
var horizontal = new En1998Spectrum
{
    ReferenceAcceleration = 1.6.MetersPerSecondSquared, Ground = GroundType.B, ImportanceFactor = 1.2, BehaviorFactor = 1.5,
};
var quake = new EarthquakeAction { Horizontal = horizontal, Vertical = horizontal.Vertical(behaviorFactor: 1.5) };

CheckSheet sheet = statue.Check(
    new Criteria
    {
        BarStressFraction = 1 / 1.1,
        Sway = [new SwayLimit("tip", 150.Millimeters)],
        Earthquake = new EarthquakeCriteria { BaseHalfWidthX = 1.1.Meters, BaseHalfWidthY = 1.1.Meters, Friction = 0.5 },
    },
    new Situation { Name = "earthquake", Actions = [new SelfWeight(), quake] });
foreach (Check check in sheet.Checks.Where(c => c.Family == "earthquake"))
    Console.WriteLine(check);
Console.WriteLine();
Console.WriteLine(sheet.Checks.First(c => c.Id == "earthquake.overturning").Working());

// The table of modes, as far as they shake.
StatueModel model = StatueModel.Build(statue);
EarthquakeResponse response = EarthquakeResponse.Of(model, quake);
foreach (EarthquakeMode mode in response.Modes.Where(m => m.MassX + m.MassY + m.MassZ > 0.01 * model.Masses.Total).Take(8))
    Console.WriteLine($"mode {mode.Number,2}: {mode.Frequency.Hertz,6:0.00} Hz, x {mode.MassX.Kilograms,5:0} kg, y {mode.MassY.Kilograms,5:0} kg, S_a {mode.First.MetersPerSecondSquared:0.00} m/s²");
Console.WriteLine($"mass in modes: x {100 * response.MassShareX:0} %, y {100 * response.MassShareY:0} %; the plinth follows the ground");
Console.WriteLine($"base shear {response.Base.Shear.Kilonewtons:0.0} kN, overturning {response.Base.Overturning.KilonewtonMeters:0.0} kNm, {response.Of("tip")}");
Console.WriteLine();

// A record: noise that swells and dies away, with a fixed seed.
var random = new Random(2024);
double[] noise = [.. Enumerable.Range(0, 1500).Select(i => 4 * (random.NextDouble() - 0.5) * (i / 200.0) * Math.Exp(1 - i / 200.0))];
var record = new BaseMotionRecord { Name = "made-up shaking", Step = 0.01.Seconds, X = [.. noise], Z = [.. noise.Reverse().Select(a => 0.3 * a)] };
BaseMotionResponse shaken = BaseMotionResponse.Of(model, record, dampingRatio: 0.02);
Console.WriteLine($"in the record: {shaken.Of("tip")}, base shear {shaken.BaseShear.Kilonewtons:0.0} kN, {shaken.Rings.MaxBy(r => r.Stress)}");
Console.WriteLine();

// If it stood free on its plinth: when does it lift, when does it topple?
RockingBlock block = RockingBlock.Of(model, heading: 0.Degrees, front: 0.4.Meters);
Console.WriteLine($"as a block: lifts at {block.UpliftAcceleration.MetersPerSecondSquared:0.00} m/s², p = {block.FrequencyParameter:0.00} rad/s; in the record it {block.Shake(record)}");
foreach (OverturningPoint point in OverturningSpectrum.Of(block, PulseShape.FullSine, [1.Seconds, 2.Seconds, 4.Seconds]).Points)
    Console.WriteLine($"  one wave of {point.PulseDuration.Seconds:0.0} s topples it from {point.Overturning?.MetersPerSecondSquared:0.00} m/s² on");

Tube Mast(double z) => new((0.34 - 0.02 * z).Meters, 10.Millimeters);

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
