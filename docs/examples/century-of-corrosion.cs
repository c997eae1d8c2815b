#:project ../../src/StatueFrame/StatueFrame.csproj

// A century by the sea: a 10 m heron, its air, what keeps its metals apart, and the year in which each check stops passing.
// All data are invented.

using StatueFrame;
using StatueFrame.Analysis;
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
                Section = new FlatBar(48.Millimeters, 13.Millimeters), Material = StructuralSteel.S355,
                TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
            },
        }),
    ],
    Points = [new NamedPoint("tip", "band 5")],

    // The air: salt outside, damp inside; the steel is painted, and the paint lasts 15 years. PTFE lies between copper and
    // steel at the saddles. Without it the check of unlike metals fails, and with nothing said it is not checked.
    Corrosion = new Corrosion
    {
        Air = Atmosphere.Of(Corrosivity.C5),
        AirInside = Atmosphere.Of(Corrosivity.C4),
        StandoffCoating = 15.Years365,
        TowerCoating = 15.Years365,
        Contacts = [new MetalContact { Joint = ContactJoint.Saddle, Isolation = Isolation.Ptfe }],
    },
};
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    ForceCoefficient = 1.2,
    GustEffectFactor = 1.3,
};
var storm = new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] };
var criteria = new Criteria
{
    BarStressFraction = 1 / 1.1,
    Modes = 3,
    Durability = new DurabilityLimit { DesignLife = 100.Years365, GreatestLossFraction = 0.15 },
};

// What the sheet says of the metals today.
CheckSheet today = heron.Check(criteria, storm);
Console.WriteLine("METALS");
foreach (Check check in today.Checks.Where(check => check.Family == "metals"))
    Console.WriteLine($"  {check}");
Console.WriteLine();

// What is left, decade by decade. Corroded is a pure function of the statue and the time: any study takes its result.
Console.WriteLine($"{"years",5}{"skin",12}{"standoff",12}{"leg",10}{"mass",12}{"worst bar",12}");
foreach (double years in new double[] { 0, 20, 40, 60, 80, 100 })
{
    Statue then = heron.Corroded(years.Years365);
    StatueModel model = StatueModel.Build(then);
    double flat = ((EvenRing)then.Standoffs[0]).Standoff.Section.Thickness.Millimeters;
    double leg = ((AngleBar)((LatticeSegment)then.Tower.Segments[0]).Legs).Thickness.Millimeters;
    Console.WriteLine(
        $"{years,5}{then.Skin!.Thickness.Millimeters,9:0.00} mm{flat,9:0.00} mm{leg,7:0.00} mm{model.Masses.Total.Kilograms,9:0} kg"
        + $"{model.Respond(storm).WorstBar!.Stress.Megapascals,8:0} MPa");
}
Console.WriteLine();

// The year in which each check stops passing.
Console.WriteLine(ServiceLife.Of(heron, criteria, [storm], new ServiceLifeOptions { Span = 100.Years365, Steps = 5 }));

// The same with new bars: of the old metal after 40 years, and stainless ones on two levels after 60.
Console.WriteLine(ServiceLife.Of(heron, criteria, [storm], new ServiceLifeOptions
{
    Span = 100.Years365, Steps = 5, Halvings = 3,
    Renewals = [new BarRenewal { After = 40.Years365 }, new BarRenewal { After = 60.Years365, Levels = ["L4", "L5"], Material = StainlessSteel.Duplex2205 }],
}));

SkinStation Station(double z, double x, double y) => new()
{
    Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
};
