#:project ../../src/StatueFrame/StatueFrame.csproj

// A 14 m heron while it is built, then under ice, then under every situation that two codes write. All data are invented.
// The figure leans forward, so that its own weight tips it too; a platform for visitors hangs at the tower's top.

using StatueFrame;
using StatueFrame.Analysis;
using UnitsNet;

double[] levels = [0, 1, 3, 5, 7, 9, 11, 13];
double Side(double z) => 1.5 - 0.08 * z;
var statue = new Statue
{
    Name = "Saltmere Heron, fledgling",
    Tower = new Tower
    {
        Levels = [.. levels.Select((z, i) => new TowerLevel($"L{i}", z.Meters) { Plan = TowerPlan.Square(Side(z).Meters) })],
        Segments =
        [
            .. levels.Skip(1).Select(_ => new LatticeSegment
            {
                Legs = new AngleBar(70.Millimeters, 7.Millimeters), Braces = new AngleBar(45.Millimeters, 5.Millimeters),
                Material = StructuralSteel.S355, ConnectionMassFraction = 0.1,
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        FoldFactor = 1.15,
        Stations = [Station(0, 2.4, 2.2, 0), Station(4, 2.6, 2.0, 0.2), Station(8, 2.2, 1.8, 0.2), Station(14, 0.8, 0.6, 0.3)],
        BandEdges = [.. Enumerable.Range(0, 8).Select(i => (2.0 * i).Meters)],
    },
    Standoffs =
    [
        .. Enumerable.Range(1, 7).Select(i => new EvenRing
        {
            Level = $"L{i}", Count = 20, Lay = 30.Degrees, Length = 0.3.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(50.Millimeters, 14.Millimeters), Material = StainlessSteel.Grade316L,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("tower top", "L7"), new NamedPoint("tip", "band 7")],
    BaseAboveGround = 2.Meters,
};

// A stage stands for one summer: a season factor lowers its wind (EN 1991-1-4, 4.2 (2); the national annex says how far).
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.I },
    ForceCoefficient = 1.2,
    GustEffectFactor = 1.0,
};
var stageWind = wind with
{
    Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.I, SeasonFactor = 0.8 },
};
var weight = new SelfWeight();
Statue[] stages = [statue.CladUpTo(0.Meters), statue.CladUpTo(6.Meters), statue];

Console.WriteLine($"STAGES in {stageWind.Profile.Name} times 0.8, characteristic");
Console.WriteLine($"{"stage",-42}{"mass",9}{"wind force",12}{"overturning",14}{"tower top",12}{"tip",9}");
foreach (Statue stage in stages)
{
    StatueModel model = StatueModel.Build(stage);
    Response response = model.Respond(new Situation { Name = "stage", LimitState = LimitState.Service, Actions = [weight, stageWind] });
    Console.WriteLine(
        $"{stage.Name,-42}{model.Masses.Total.Tonnes,7:0.00} t{response.WindForceGoverns.WindForce.Kilonewtons,9:0.0} kN"
        + $"{response.OverturningGoverns.Base.Overturning.KilonewtonMeters,10:0} kNm{Sway("tower top"),12}{Sway("tip"),9}");

    // A point on skin that is not there yet has no sway.
    string Sway(string point) =>
        stage.Points.Any(p => p.Name == point) ? $"{response.GreatestSway(point).Sway.Millimeters:0.0} mm" : "-";
}
Console.WriteLine();

// Glaze of 30 mm, with the wind that may blow together with it. Bare members grow thicker; skin does not count as wider.
var ice = new IceAction { Class = IceClass.Glaze(3) };
double k = ice.Class.WindFactor;
Console.WriteLine($"ICE {ice.Class.Name}: {ice.Class.Thickness.Millimeters:0} mm of {ice.Class.Density.KilogramsPerCubicMeter:0} kg/m³; wind with it times k = {k:0.00}");
Console.WriteLine($"{"stage and actions",-58}{"weight",10}{"wind force",12}{"overturning",14}");
foreach (Statue stage in stages)
{
    StatueModel model = StatueModel.Build(stage);
    Situation[] situations =
    [
        new() { Name = "wind", Actions = [weight, wind] },
        new() { Name = $"ice and {k:0.0} wind", Actions = [weight, ice, k * wind] },
    ];
    foreach (Situation situation in situations)
    {
        Response response = model.Respond(situation);
        Console.WriteLine(
            $"{$"{stage.Name}: {situation.Name}",-58}{-response.Cases[0].Base.ForceZ.Kilonewtons,7:0.0} kN"
            + $"{response.WindForceGoverns.WindForce.Kilonewtons,9:0.0} kN{response.OverturningGoverns.Base.Overturning.KilonewtonMeters,10:0} kNm");
    }
}
Console.WriteLine();

// The basis of design makes the situations; each says what its factors rest on.
var visitors = new ImposedLoad { Name = "visitors", On = "L7", Down = 6.Kilonewtons, At = new Point3(0.8.Meters, 0.Meters, 13.Meters) };
var asceWind = wind with
{
    Profile = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 52.MetersPerSecond, Exposure = AsceExposure.D, DirectionalityFactor = 0.95 },
    GustEffectFactor = 0.85,
};
StatueModel complete = StatueModel.Build(statue);
Print("EN 1990: STRENGTH AND SERVICE", new EurocodeBasis().Combine(new CharacteristicActions { Variable = [wind, visitors, ice] }));
Print("ASCE/SEI 7-22: STRENGTH DESIGN AND SERVICE", new AsceBasis().Combine(new CharacteristicActions { Variable = [asceWind, visitors] }));

void Print(string title, IReadOnlyList<Situation> situations)
{
    (Situation Situation, LoadCase Case)[] found = [.. situations.Select(s => (s, complete.Respond(s).OverturningGoverns))];
    (Situation governing, LoadCase worst) = found.MaxBy(f => f.Case.Base.Overturning.NewtonMeters);
    Console.WriteLine(title);
    foreach ((Situation situation, LoadCase load) in found)
    {
        Console.WriteLine($"{situation.Name,-55}{load.Base.Overturning.KilonewtonMeters,8:0.0} kNm{(situation == governing ? "  governs" : "")}");
        Console.WriteLine($"    {string.Join(" + ", situation.Actions)}");
    }
    Console.WriteLine($"Overturning is governed by \"{governing.Name}\", wind towards {worst.Heading?.Degrees:0.#}°.");
    foreach (Assumption factor in governing.Factors)
        Console.WriteLine($"  {factor.Short}\n    {factor.Source}");
    Console.WriteLine();
}

SkinStation Station(double z, double x, double y, double forward) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters, CenterX = forward.Meters },
};
