#:project ../../src/StatueFrame/StatueFrame.csproj

// One statue in the winds of two codes: EN 1991-1-4 and ASCE/SEI 7-22. All data are invented.
// The two map speeds do not stand for the same return period: the tables show how the codes work, not which is safer.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

double[] levels = [0, 1.5, 4.5, 7.5, 10.5, 13.5, 16.5];
var statue = new Statue
{
    Name = "Saltmere Heron, slender study",
    Tower = new Tower
    {
        Levels = [.. levels.Select((z, i) => new TowerLevel($"L{i}", z.Meters) { Plan = TowerPlan.Square((1.5 - 0.06 * z).Meters) })],
        Segments =
        [
            .. levels.Skip(1).Select(_ => new LatticeSegment
            {
                Legs = new AngleBar(120.Millimeters, 12.Millimeters), Braces = new AngleBar(70.Millimeters, 7.Millimeters),
                Bays = 2, Material = StructuralSteel.S355, ConnectionMassFraction = 0.1,
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        FoldFactor = 1.15,
        ArmatureMass = 9.KilogramsPerSquareMeter,
        Stations = [Station(0, 2.2, 2.0), Station(6, 2.4, 1.9), Station(12, 1.8, 1.5), Station(18, 0.6, 0.5)],
        BandEdges = [.. Enumerable.Range(0, 7).Select(i => (3.0 * i).Meters)],
    },
    Standoffs =
    [
        .. Enumerable.Range(1, 6).Select(i => new EvenRing
        {
            Level = $"L{i}", Count = 24, Lay = 30.Degrees, Length = 0.3.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(50.Millimeters, 15.Millimeters), Material = StainlessSteel.Grade316L,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("platform", "L5"), new NamedPoint("tip", "band 6") { At = new Point3(0.Meters, 0.Meters, 18.Meters) }],
    BaseAboveGround = 4.Meters,
};
StatueModel model = StatueModel.Build(statue);
ModalResponse modes = model.Modes(8);
Console.WriteLine($"{statue.Name}: {model.Masses.Total.Tonnes:0.0} t, {modes.First}");
Console.WriteLine();

var heading = 0.Degrees;
var damping = DampingModel.Of(DampingCategory.FrictionBoltedLattice);
WindAction Wind(WindProfile profile) => new() { Profile = profile, ForceCoefficient = 1.2, Headings = [heading] };
WindAction[] winds =
[
    Wind(new En1991Wind { FundamentalVelocity = 24.MetersPerSecond, Terrain = TerrainCategory.I }),
    Wind(new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 48.MetersPerSecond, Exposure = AsceExposure.D }),
];
var assumptions = new List<Assumption>();
var warnings = new List<string>();

Console.WriteLine("PROFILE over height above ground: mean and gust speed, turbulence, peak pressure");
Console.WriteLine($"{"",-42}{"z",6}{"mean",12}{"gust",12}{"turbulence",13}{"pressure",12}");
foreach (WindProfile profile in winds.Select(w => w.Profile))
{
    foreach (Length z in new[] { 4.Meters, 10.Meters, 22.Meters })
        Console.WriteLine(
            $"{profile.Name,-42}{z.Meters,4:0} m{profile.MeanSpeed(z).MetersPerSecond,8:0.0} m/s{profile.GustSpeed(z).MetersPerSecond,8:0.0} m/s"
            + $"{profile.TurbulenceIntensity(z),13:0.000}{profile.PeakPressure(z).Kilopascals,8:0.00} kPa");
    warnings.AddRange(profile.RangeWarnings(22.Meters));
}
Console.WriteLine();

// The gust factors of the codes take the statue's own frequency, mode shape, width, mass and damping.
Console.WriteLine($"GUST FACTORS, damping of the structure {damping.StructuralDecrement:0.000} as a logarithmic decrement\n    {damping.StructuralSource}");
double[] factors = new double[winds.Length];
if (GustFactors.En1991(model, modes, winds[0], heading, damping) is { } en)
{
    Console.WriteLine($"{"EN 1991-1-4, Annex B",-42}c_s c_d {en.AnnexB.Factor:0.000} = {en.AnnexB.SizeFactor:0.000} × {en.AnnexB.DynamicFactor:0.000}, air adds a decrement of {en.AerodynamicDecrement:0.000}");
    Console.WriteLine($"{"EN 1991-1-4, Annex C",-42}c_s c_d {en.AnnexC.Factor:0.000} = {en.AnnexC.SizeFactor:0.000} × {en.AnnexC.DynamicFactor:0.000}");
    factors[0] = en.Factor;
    assumptions.AddRange(en.Assumptions);
}
if (GustFactors.Asce7(model, modes, winds[1], heading, damping) is { } asce)
{
    Console.WriteLine($"{"ASCE/SEI 7-22, 26.11.4, rigid",-42}G       {asce.Rigid.Factor:0.000}");
    Console.WriteLine($"{"ASCE/SEI 7-22, 26.11.5, flexible",-42}G_f     {asce.Flexible.Factor:0.000}, damping ratio {asce.DampingRatio:0.000}; {asce.Frequency.Hertz:0.00} Hz counts as {(asce.IsFlexible ? "flexible" : "rigid")}");
    factors[1] = asce.Factor;
    assumptions.AddRange(asce.Assumptions);
}
Console.WriteLine();

Console.WriteLine("FORCE in statics with that factor, and in random vibration, wind towards 0°");
Console.WriteLine($"{"",-42}{"factor",8}{"wind force",13}{"overturning",14}{"tip sway",12}");
GustResponse[] gusts = [.. winds.Select(w => GustResponse.Of(model, modes, w, heading, damping))];
foreach ((WindAction wind, double factor, GustResponse gust) in winds.Zip(factors, gusts))
{
    // Weight would add to the sway what it does to a leaning figure; here the wind acts alone, as it does in the gusts.
    Response response = model.Respond(new Situation
    {
        Name = "wind", LimitState = LimitState.Service, Actions = [wind with { GustEffectFactor = factor }],
    });
    Line(wind.Profile.Name, factor, response.WindForceGoverns.WindForce, response.OverturningGoverns.Base.Overturning, response.GreatestSway("tip").Sway);
    Line("  by random vibration", gust.StructuralFactor, gust.BaseShear.Peak, gust.Overturning.Peak, gust.Of("tip").Sway.Peak);
    assumptions.AddRange(gust.Assumptions);
}
Console.WriteLine();

Console.WriteLine("RANDOM VIBRATION of the tip: mean, standard deviations, expected peaks");
Console.WriteLine($"{"",-42}{"mean",9}{"background",12}{"resonant",11}{"peak",9}{"peak acceleration",19}");
foreach ((WindAction wind, GustMovement tip) in winds.Zip(gusts, (w, g) => (w, g.Of("tip"))))
    Console.WriteLine(
        $"{wind.Profile.Name,-42}{Mm(tip.Sway.Mean),9}{Mm(tip.Sway.Background),12}{Mm(tip.Sway.Resonant),11}{Mm(tip.Sway.Peak),9}"
        + $"{tip.Acceleration.Peak.MetersPerSecondSquared,14:0.00} m/s²");
Console.WriteLine();

// Sheets, seams and saddles see more than the whole body does: the worst of all headings on the highest band.
Console.WriteLine("CLADDING, band 6, net of the pressure inside");
foreach (WindAction wind in winds)
{
    CladdingPressure local = new CladdingWind { Profile = wind.Profile, LoadedArea = 1.SquareMeters }.OnBand(statue, 6);
    Console.WriteLine($"{wind.Profile.Name,-42}{local}, c_pe {local.InwardCoefficient:0.00} and {local.SuctionCoefficient:0.00}");
    foreach (Source source in local.Sources)
        Console.WriteLine($"    {source}");
    assumptions.AddRange(local.Assumptions);
    warnings.AddRange(local.Warnings);
}
Console.WriteLine();

Console.WriteLine("ACROSS THE WIND by EN 1991-1-4, Annex E");
AcrossWindReport across = AcrossWind.Of(model, modes, winds[0] with { Headings = Headings.AllRound }, new AcrossWindInput
{
    Damping = DampingModel.Of(DampingCategory.FrictionBoltedLattice),
    Sections = [new BodySection("trunk", BluffShape.Round)],
    AmplitudeLimit = 50.Millimeters,
}, "wind");
foreach (AcrossWindCase found in across.Cases.Where(c => !c.Vortex.IsBeyondRange))
    Console.WriteLine(
        $"{found.Where,-18}{found.Mode.Frequency.Hertz,6:0.00} Hz, critical at {found.Vortex.CriticalSpeed.MetersPerSecond:0.0} m/s, "
        + $"Sc {found.Vortex.ScrutonNumber:0}, amplitude {found.Vortex.Amplitude.Millimeters:0.0} mm, {found.Vortex.Cycles:0.0e0} cycles");
foreach (Check worst in across.Checks.GroupBy(c => c.Id).Select(kind => kind.MaxBy(c => c.Utilization ?? double.MaxValue)!))
{
    Console.WriteLine($"{worst.Id,-18}worst: {worst.Where}, {worst.Utilization:0.00}");
    Console.WriteLine(Wrapped(worst.VerdictText));
}
assumptions.AddRange(across.Assumptions);
warnings.AddRange(across.Warnings);
Console.WriteLine();

// Comfort is a matter of the wind of one year: three quarters of the fundamental velocity, (4.2) with p = 0.63.
Console.WriteLine("COMFORT of people on the platform in the wind of a year");
WindAction yearly = Wind(new En1991Wind { FundamentalVelocity = 0.75 * 24.MetersPerSecond, Terrain = TerrainCategory.I });
GustMovement platform = GustResponse.Of(model, modes, yearly, heading, damping).Of("platform");
Check comfort = ComfortChecks.Sway("platform", platform.Acceleration.Peak, modes.First.Frequency, ComfortUse.Office, "wind of a year");
Console.WriteLine(comfort);
Console.WriteLine(comfort.Working());
Console.WriteLine();

Console.WriteLine("TAKEN FOR THE USER, to be replaced by known values");
foreach (var taken in assumptions.Distinct().GroupBy(a => a.Short))
    Console.WriteLine($"  {taken.Key}\n    {string.Join("; ", taken.Select(a => a.Source).Distinct())}");
Console.WriteLine("CAUTIONS");
foreach (string warning in warnings.Distinct())
    Console.WriteLine(Wrapped(warning));

string Wrapped(string text) => string.Join('\n', Lines(text.Split(' ')));

IEnumerable<string> Lines(string[] words)
{
    string line = " ";
    foreach (string word in words)
    {
        if (line.Length + word.Length > 105)
        {
            yield return line;
            line = "   ";
        }
        line += $" {word}";
    }
    yield return line;
}

string Mm(Length sway) => $"{sway.Millimeters:0.0} mm";

void Line(string name, double factor, Force force, Torque overturning, Length sway) =>
    Console.WriteLine($"{name,-42}{factor,8:0.000}{force.Kilonewtons,10:0.0} kN{overturning.KilonewtonMeters,10:0} kNm{Mm(sway),12}");

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
