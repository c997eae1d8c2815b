#:project ../../src/StatueFrame/StatueFrame.csproj

// The same blow on thick and on thin bars: a short wave of pressure against an invented 12 m figure that stands on its
// weight alone. Size and duration of the wave are invented too; whoever is competent for the cause must give them.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

double[] levels = [0, 1, 3, 5, 7, 9, 11];
var statue = new Statue
{
    Name = "Saltmere Heron, half size",
    Tower = new Tower
    {
        Levels = [.. levels.Select(z => new TowerLevel($"{z} m", z.Meters) { Plan = TowerPlan.Square((1.3 - 0.06 * z).Meters) })],
        Segments = [.. Enumerable.Repeat<TowerSegment>(new LatticeSegment
        {
            Legs = new AngleBar(100.Millimeters, 10.Millimeters),
            Braces = new AngleBar(60.Millimeters, 6.Millimeters),
            Material = StructuralSteel.S355,
        }, levels.Length - 1)],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        FoldFactor = 1.2,
        ArmatureMass = 9.KilogramsPerSquareMeter,
        Stations = [Station(0, 2.6, 2.4), Station(6, 2.8, 2.4), Station(12, 1.2, 1.0)],
        BandEdges = [.. Enumerable.Range(0, 7).Select(i => (2.0 * i).Meters)],
    },
    Standoffs =
    [
        .. levels.Skip(1).Select(z => new EvenRing
        {
            Level = $"{z} m", Count = 16, Lay = 60.Degrees, Length = 0.9.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(60.Millimeters, 20.Millimeters), Material = StainlessSteel.Duplex2205,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid, Slide = SaddleSlide.AlongBar,
            },
        }),
    ],
    Fittings = [new Fitting { Name = "ballast", On = "1 m", Mass = 9.Tonnes }],
    Points = [new NamedPoint("tip", "band 6")],
};

var wave = new PressurePulse
{
    Name = "pressure wave",
    Shape = new TrianglePulse(),
    Peak = 9.Kilopascals,
    Duration = 0.015.Seconds,
    Heading = 0.Degrees,
    WaveSpeed = 340.MetersPerSecond,
};
DampingModel damping = DampingModel.OfRatio(0.02);
var limits = new ShockLimits { BaseWidth = 2.2.Meters, Clearance = 80.Millimeters };

IsolationStudy study = IsolationStudy.Of(statue, wave, new IsolationOptions
{
    Variants = [IsolationVariant.RigidLinks, IsolationVariant.Thickness(20.Millimeters), IsolationVariant.Thickness(8.Millimeters)],
    Damping = damping,
    Limits = limits,
    IsFreeToRock = true,
});
Console.WriteLine(study);

// How the bars pass on a swinging force, and how much of this pulse reaches bars of any frequency.
Frequency[] frequencies = [.. new[] { 1.0, 2, 4, 8, 16, 32 }.Select(f => f.Hertz)];
foreach (TransmissibilityPoint p in study.Transmissibility(study.Rows[2], frequencies))
    Console.WriteLine($"  force that swings at {p.Frequency.Hertz,2} Hz: {p.Bars,6:0.000} of it in the bars, {p.Tower,6:0.000} in the tower");
foreach ((Frequency f, PulseResponse r) in study.ShockSpectrum(frequencies))
    Console.WriteLine($"  skin at {f.Hertz,2} Hz on its bars: {r.Factor:0.000} of the pulse's peak");
Console.WriteLine();

// The same wave as a situation on the check sheet.
CheckSheet sheet = statue.Check(
    new Criteria { Damping = damping, Shock = limits, BarStressFraction = 1 },
    new Situation { Name = "wave", Actions = [new SelfWeight(), wave] });
foreach (Check check in sheet.Checks.Where(c => c.Family == "shock"))
    Console.WriteLine(check);

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
