#:project ../../src/StatueFrame/StatueFrame.csproj

// The Saltmere Heron: an invented 30 m heron on an invented harbor mole. All data are invented for this example.
// Copper sheet on flat bars, over a four-legged lattice tower that narrows to a slender neck, with one half-raised wing.

using StatueFrame;
using StatueFrame.Checks;
using UnitsNet;

// The tower: braced panels up to the shoulders, then a tapering tube inside the neck. After the base, a level stands at
// the middle of every metre, where a ring of standoffs carries that metre's band of skin.
TowerLevel[] shaft =
[
    new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(2.8.Meters) },
    .. Enumerable.Range(1, 18).Select(i => new TowerLevel($"L{i}", (i - 0.5).Meters) { Plan = TowerPlan.Square((2.8 - 0.1 * i).Meters) }),
];
TowerLevel[] neck = [.. Enumerable.Range(19, 12).Select(i => new TowerLevel($"N{i}", (i - 0.5).Meters))];

TowerSegment panel = new LatticeSegment
{
    Legs = new AngleBar(150.Millimeters, 15.Millimeters),
    Braces = new AngleBar(80.Millimeters, 8.Millimeters),
    Material = StructuralSteel.S355,
    ConnectionMassFraction = 0.10,
};
double NeckDiameter(double z) => 0.80 - 0.037 * (z - 18);
MemberSegment NeckTube(double bottom) => new()
{
    Section = new Tube(NeckDiameter(bottom).Meters, 14.Millimeters),
    TopSection = new Tube(NeckDiameter(bottom + 1).Meters, 14.Millimeters),
    Material = StructuralSteel.S355,
};

var tower = new Tower
{
    Levels = [.. shaft, .. neck],
    Segments = [.. Enumerable.Repeat(panel, 18), .. Enumerable.Range(0, 12).Select(i => NeckTube(17.5 + i))],
    Base = TowerBase.Rocking(6e9.NewtonMetersPerRadian),
};

// The skin: outlines at stations, cut into bands of one metre.
SkinStation Station(double z, double widthX, double widthY, double centerX = 0, double? folds = null) => new()
{
    Elevation = z.Meters,
    Outline = new EllipseOutline { WidthX = widthX.Meters, WidthY = widthY.Meters, CenterX = centerX.Meters },
    FoldFactor = folds,
};

var skin = new Skin
{
    Material = Copper.HalfHardR240,
    Thickness = 2.4.Millimeters,
    FoldFactor = 1.15,
    ArmatureMass = 9.KilogramsPerSquareMeter,
    Stations =
    [
        Station(0, 4.8, 4.8, folds: 1.4),
        Station(4, 4.2, 4.0, folds: 1.3),
        Station(8, 5.6, 4.4, 0.2),
        Station(12, 6.2, 4.8, 0.3),
        Station(15, 5.2, 4.0, 0.2),
        Station(18, 2.6, 2.4),
        Station(20, 1.7, 1.6),
        Station(26, 1.3, 1.2),
        Station(28, 1.6, 1.2, 0.2),
        Station(30, 0.7, 0.6, 0.3),
    ],
    BandEdges = [.. Enumerable.Range(0, 31).Select(i => (1.0 * i).Meters)],
};

// The standoffs: stainless flats, laid obliquely so that they flex when the skin grows with heat.
var flat = new Standoff
{
    Section = new FlatBar(60.Millimeters, 18.Millimeters),
    Material = StainlessSteel.Duplex2205,
    TowerFixity = EndFixity.Rigid,
    SkinFixity = EndFixity.Rigid,
};
var neckFlat = flat with { Section = new FlatBar(60.Millimeters, 14.Millimeters) };

EvenRing BodyRing(int i) => new() { Level = $"L{i}", Count = 30, Lay = 30.Degrees, Length = 0.55.Meters, Standoff = flat };
EvenRing NeckRing(int i) => new() { Level = $"N{i}", Count = 10, Lay = 25.Degrees, Length = 0.25.Meters, Standoff = neckFlat };

// The wing: half raised to one side, a tapering tube with four bands of its own.
var wing = new Limb
{
    Name = "wing", From = "L14", Heading = 90.Degrees, Inclination = 35.Degrees,
    Tower = new Tower
    {
        Levels = [new TowerLevel("root", 0.Meters), .. Enumerable.Range(1, 4).Select(i => new TowerLevel($"W{i}", (1.0 + 1.6 * i).Meters))],
        Segments =
        [
            .. new[] { (0.0, 2.6), (2.6, 4.2), (4.2, 5.8), (5.8, 7.4) }.Select(s => new MemberSegment
            {
                Section = new Tube((0.42 - 0.03 * s.Item1).Meters, 10.Millimeters),
                TopSection = new Tube((0.42 - 0.03 * s.Item2).Meters, 10.Millimeters),
                Material = StructuralSteel.S355,
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        FoldFactor = 1.2,
        ArmatureMass = 9.KilogramsPerSquareMeter,
        Stations =
        [
            Station(1.9, 2.0, 1.0),
            Station(4.0, 1.9, 0.9),
            Station(6.0, 1.4, 0.8),
            Station(8.2, 0.5, 0.3),
        ],
        BandEdges = [1.9.Meters, 3.4.Meters, 5.0.Meters, 6.6.Meters, 8.2.Meters],
    },
    Standoffs =
    [
        .. Enumerable.Range(1, 4).Select(i => new EvenRing
        {
            Level = $"W{i}", Count = 10, Lay = 25.Degrees, Length = 0.25.Meters, Standoff = neckFlat,
        }),
    ],
};

var heron = new Statue
{
    Name = "Saltmere Heron",
    Tower = tower,
    Skin = skin,
    Standoffs =
    [
        .. Enumerable.Range(1, 18).Select(BodyRing),
        .. Enumerable.Range(19, 12).Select(NeckRing),
    ],
    Limbs = [wing],
    Fittings = [new Fitting { Name = "ladder", On = "L10", Mass = 600.Kilograms, At = new Point3(0.4.Meters, 0.Meters, 10.Meters) }],
    Points =
    [
        new NamedPoint("eye", "band 28"),
        new NamedPoint("tip", "band 30") { At = new Point3(0.3.Meters, 0.Meters, 30.Meters) },
        new NamedPoint("wing tip", "wing/band 4") { At = new Point3(0.Meters, 6.72.Meters, 18.20.Meters) },
    ],
    BaseAboveGround = 6.Meters,
};

// What acts: the design wind of EN 1991-1-4 from all round, factored for strength and as it is for sway.
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    GustEffectFactor = 1.05,
};
var storm = new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] };
var service = new Situation { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), wind] };
var criteria = new Criteria
{
    BarStressFraction = 1 / 1.1,
    Damping = DampingModel.Of(DampingCategory.FrictionBoltedLattice),
    Sway = [new SwayLimit("tip", 200.Millimeters), new SwayLimit("wing tip", 200.Millimeters)],
};

CheckSheet sheet = heron.Check(criteria, storm, service);
Console.WriteLine(sheet);

// Any check shows its working: the formulas as they were computed, with their numbers and sources.
Check bars = sheet.GoverningOf("bars")!;
Console.WriteLine($"WORKING OF A CHECK: {bars.Subject}");
Console.WriteLine(bars.Working());
