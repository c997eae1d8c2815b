#:project ../../src/StatueFrame/StatueFrame.csproj

// The Saltmere Heron: an invented 30 m heron on an invented harbor mole. All data are invented for this example.
// Copper sheet on flat bars, over a four-legged lattice tower that narrows to a slender neck, with one half-raised wing.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

// The tower: braced panels up to the shoulders, then a tapering tube inside the neck. After the base, a level stands at
// the middle of every metre, where a ring of standoffs carries that metre's band of skin.
Bolt M(double diameter) => new() { Diameter = diameter.Millimeters, Grade = BoltGrade.Class88 };
// Braces and plan bracing meet the legs on gussets; legs are spliced with plates inside and outside.
var gusset = new JointPlate { Thickness = 12.Millimeters, Width = 160.Millimeters, Material = StructuralSteel.S355, FreeLength = 80.Millimeters, Eccentricity = 30.Millimeters, Throat = 6.Millimeters, WeldLength = 300.Millimeters };
var cover = new JointPlate { Thickness = 36.Millimeters, Width = 340.Millimeters, Material = StructuralSteel.S355, FreeLength = 130.Millimeters, Eccentricity = 13.Millimeters };
var frame = new LevelFrame
{
    Horizontals = new RectangularTube(200.Millimeters, 200.Millimeters, 11.Millimeters),
    Throat = 8.Millimeters,
    PlanBracing = new AngleBar(80.Millimeters, 8.Millimeters),
    PlanBracingJoint = new MemberConnection { Bolt = M(16), InLine = 2, EndDistance = 35.Millimeters, EdgeDistance = 30.Millimeters, Pitch = 55.Millimeters, Plate = gusset },
    Material = StructuralSteel.S355,
};
// Arms from the neck's tube, and from the wing's root, to the four legs; they brace the plan there.
var hub = new Hub { Arms = new RectangularTube(250.Millimeters, 250.Millimeters, 16.Millimeters), Material = StructuralSteel.S355, Throat = 15.Millimeters };
TowerLevel[] shaft =
[
    new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(2.8.Meters) },
    .. Enumerable.Range(1, 18).Select(i => new TowerLevel($"L{i}", (i - 0.5).Meters) { Plan = TowerPlan.Square((2.8 - 0.1 * i).Meters), Frame = i is 14 or 18 ? frame with { PlanBracing = null, PlanBracingJoint = null } : frame, Hub = i is 14 or 18 ? hub : null }),
];
TowerLevel[] neck = [.. Enumerable.Range(19, 12).Select(i => new TowerLevel($"N{i}", (i - 0.5).Meters))];

TowerSegment panel = new LatticeSegment
{
    Legs = new AngleBar(200.Millimeters, 26.Millimeters),
    Braces = new AngleBar(80.Millimeters, 8.Millimeters),
    Material = StructuralSteel.S355,
    ConnectionMassFraction = 0.10,
    LegSplice = new MemberConnection { Bolt = M(24) with { Hole = 24.2.Millimeters }, InLine = 8, Lines = 2, BothLegs = true, ShearPlanes = 2, EndDistance = 60.Millimeters, EdgeDistance = 60.Millimeters, Pitch = 80.Millimeters, Plate = cover },
    BraceJoint = new MemberConnection { Bolt = M(20), InLine = 3, EndDistance = 45.Millimeters, EdgeDistance = 40.Millimeters, Pitch = 70.Millimeters, Plate = gusset },
};
double NeckDiameter(double z) => 0.80 - 0.037 * (z - 18);
MemberSegment NeckTube(double bottom) => new()
{
    Section = new Tube(NeckDiameter(bottom).Meters, 15.Millimeters),
    TopSection = new Tube(NeckDiameter(bottom + 1).Meters, 15.Millimeters),
    Material = StructuralSteel.S355,
    LowerJoint = new FlangeJoint
    {
        Bolt = M(30), Count = 20, Thickness = 35.Millimeters, PreTension = 300.Kilonewtons, Weld = new WeldedTubeJoint(),
        BoltCircle = (NeckDiameter(bottom) + 0.12).Meters, OuterDiameter = (NeckDiameter(bottom) + 0.23).Meters,
    },
};

var tower = new Tower
{
    Levels = [.. shaft, .. neck],
    Segments = [.. Enumerable.Repeat(panel, 18), .. Enumerable.Range(0, 12).Select(i => NeckTube(17.5 + i))],
    Base = TowerBase.Fixed,
};

// The skin: outlines at stations, cut into bands of one metre.
SkinStation Station(double z, double widthX, double widthY, double centerX = 0, double? folds = null) => new()
{
    Elevation = z.Meters,
    Outline = new EllipseOutline { WidthX = widthX.Meters, WidthY = widthY.Meters, CenterX = centerX.Meters },
    FoldFactor = folds,
};

// Stainless armature bars behind the sheet, half a metre apart; flush seams of copper rivets on straps. No code gives the fatigue of
// copper: this is what tests of the Heron's own sheet would have to show (invented).
var riveted = new DetailCategory("40, riveted copper", 40.Megapascals, false, Source.User);
var armature = new Armature
{
    Bar = new FlatBar(40.Millimeters, 10.Millimeters),
    Material = StainlessSteel.Duplex2205,
    Spacing = 0.35.Meters,
    PanelLength = 0.5.Meters,
    Span = 0.55.Meters,
    Edges = PanelEdges.Clamped,
    FatigueDetail = DetailCategory.FilletToe,
    Straps = new SaddleStrap
    {
        Distance = 0.2.Meters, Width = 40.Millimeters, Thickness = 2.Millimeters, Material = Copper.HalfHardR240,
        Rivet = Rivet.Of(5.Millimeters, Copper.HalfHardR240), Rivets = 4, Reach = 12.Millimeters, EndDistance = 10.Millimeters, FatigueDetail = riveted,
    },
};
var seam = new RivetedSeam
{
    Kind = SeamKind.FlushWithStrap,
    Rivet = Rivet.Of(5.Millimeters, Copper.HalfHardR240) with { IsCountersunk = true },
    Pitch = 25.Millimeters,
    Rows = 2,
    EdgeDistance = 12.Millimeters,
};

var skin = new Skin
{
    Material = Copper.HalfHardR240,
    Thickness = 2.4.Millimeters,
    FoldFactor = 1.15,
    ArmatureMass = 11.KilogramsPerSquareMeter,
    Armature = armature,
    SheetSeam = seam,
    FatigueDetail = riveted,
    Joints = [.. Enumerable.Range(1, 29).Select(z => new SkinJoint((1.0 * z).Meters, 4.Millimeters))],
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
        Station(30, 0.7, 0.6, 0.12),
    ],
    BandEdges = [.. Enumerable.Range(0, 31).Select(i => (1.0 * i).Meters)],
};

// The standoffs: stainless flats, laid obliquely so that they flex when the skin grows with heat. Their saddles are clamped lightly, as
// what they rub with every day tires the brackets; a stop holds the skin in suction.
var flat = new Standoff
{
    Section = new FlatBar(90.Millimeters, 22.Millimeters),
    Material = StainlessSteel.Duplex2205,
    TowerFixity = EndFixity.Rigid,
    SkinFixity = EndFixity.Rigid,
    TowerFixing = new WeldedFixing { Throat = 10.Millimeters },
    SkinFixing = new WeldedFixing { Throat = 10.Millimeters },
    Clearance = 120.Millimeters,
    Slide = SaddleSlide.AlongBar,
    Saddle = new Saddle { Clamp = 3.Kilonewtons, Friction = 0.2, LeastFriction = 0.1, Travel = 20.Millimeters, Stop = 4.Kilonewtons },
    FatigueDetail = DetailCategory.FilletToe,
};
var neckFlat = flat with { Section = new FlatBar(90.Millimeters, 20.Millimeters) };

// Brackets reach from the nearest leg, horizontal or tube to each standoff: square hollow sections, welded all round.
Bracket Arm(double side, double wall) => new()
{
    Section = new RectangularTube(side.Millimeters, side.Millimeters, wall.Millimeters),
    Material = StructuralSteel.S355,
    TowerFixity = EndFixity.Rigid,
    Throat = wall.Millimeters,
};

EvenRing BodyRing(int i) => new() { Level = $"L{i}", Count = 40, Lay = 75.Degrees, Length = 0.42.Meters, Standoff = flat, Bracket = i <= 6 ? Arm(60, 5) : i is >= 11 and <= 14 ? Arm(90, 6) : Arm(80, 6) };
// On the last ring the outline turns so sharply that bars as flat as the others' would come through it.
EvenRing NeckRing(int i) => new() { Level = $"N{i}", Count = 16, Lay = (i < 30 ? 75 : 70).Degrees, Length = (i < 30 ? 0.22 : 0.20).Meters, Standoff = neckFlat, Bracket = Arm(80, 6) };

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
                Section = new Tube((0.52 - 0.036 * s.Item1).Meters, 14.Millimeters),
                TopSection = new Tube((0.52 - 0.036 * s.Item2).Meters, 14.Millimeters),
                Material = StructuralSteel.S355,
                LowerJoint = new WeldedTubeJoint(),
            }),
        ],
    },
    Skin = new Skin
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        FoldFactor = 1.2,
        ArmatureMass = 11.KilogramsPerSquareMeter,
        Armature = armature,
        SheetSeam = seam,
        FatigueDetail = riveted,
        Stations =
        [
            Station(1.9, 2.0, 1.0),
            Station(4.0, 1.9, 0.9),
            Station(6.0, 1.4, 0.8),
            Station(8.2, 0.5, 0.3),
        ],
        Joints = [.. new[] { 3.4, 5.0, 6.6 }.Select(z => new SkinJoint(z.Meters, 4.Millimeters))],
        BandEdges = [1.9.Meters, 3.4.Meters, 5.0.Meters, 6.6.Meters, 8.2.Meters],
    },
    Standoffs =
    [
        .. Enumerable.Range(1, 4).Select(i => new EvenRing
        {
            Level = $"W{i}", Count = 16, Lay = 60.Degrees, Length = 0.18.Meters, Standoff = neckFlat, Bracket = Arm(80, 6),
        }),
    ],
};

(double X, double Y)[] Corners(double at) => [(at, at), (-at, at), (-at, -at), (at, -at)];
var granite = new Masonry
{
    Name = "granite ashlar", Density = 2600.KilogramsPerCubicMeter, YoungsModulus = 8.Gigapascals, CompressiveStrength = 8.Megapascals,
    InitialShearStrength = 0.1.Megapascals, Source = Source.User,
};

// What coupons of the bars' metal lost in the harbor air in a year; standards give no value for stainless steel.
var stainless = new FirstYearLoss(MetalFamily.StainlessSteel, 0.05.Micrometers, Source.User);

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
    Fittings =
    [
        new Fitting { Name = "ladder", On = "L10", Mass = 600.Kilograms, WindArea = Area.Zero, At = new Point3(0.4.Meters, 0.Meters, 10.Meters), Fixing = new FittingFixing { Bolt = M(16), Count = 8, Lever = 0.5.Meters, Reach = 0.3.Meters } },
        new Fitting { Name = "damper", On = "N30", Mass = 150.Kilograms, WindArea = Area.Zero, Fixing = new FittingFixing { Bolt = M(16), Count = 6, Lever = 0.25.Meters, Reach = 0.4.Meters } },
        new Fitting { Name = "wing damper", On = "wing/W4", Mass = 60.Kilograms, WindArea = Area.Zero, Fixing = new FittingFixing { Bolt = M(16), Count = 4, Lever = 0.2.Meters, Reach = 0.15.Meters } },
    ],
    Points =
    [
        new NamedPoint("eye", "band 28"),
        new NamedPoint("tip", "band 30") { At = new Point3(0.12.Meters, 0.Meters, 30.Meters) },
        new NamedPoint("wing tip", "wing/band 4") { At = new Point3(0.Meters, 6.72.Meters, 18.20.Meters) },
    ],
    BaseAboveGround = 6.Meters,
    HoldDown = new HoldDown
    {
        Plates =
        [
            .. Corners(1.4).Select(foot => new BasePlate
            {
                X = foot.X.Meters, Y = foot.Y.Meters, WidthX = 0.6.Meters, WidthY = 0.6.Meters, Thickness = 60.Millimeters,
                FootX = 0.4.Meters, FootY = 0.4.Meters, Material = StructuralSteel.S355, LegWeld = 20.Millimeters,
            }),
        ],
        Bars =
        [
            .. Corners(0.2).SelectMany(bar => Corners(1.4).Select(foot => new AnchorBar
            {
                X = (foot.X + bar.X).Meters, Y = (foot.Y + bar.Y).Meters, Diameter = 48.Millimeters, Material = StructuralSteel.S355,
                FreeLength = 2.2.Meters, Embedment = 2.2.Meters, HeadWidth = 0.25.Meters, PreTension = 250.Kilonewtons,
            })),
        ],
        Losses = new PreTensionLosses { Embedding = 0.1.Millimeters, Relaxation1000Hours = 0.04 },
    },
    Pedestal = new Pedestal
    {
        Courses =
        [
            new PedestalCourse { Section = BlockSection.Rectangle(7.5.Meters, 7.5.Meters), Height = 3.2.Meters, Material = Concrete.OfStrength(35.Megapascals) with { CreepCoefficient = 1.5 } },
            .. Enumerable.Range(0, 3).Select(_ => new PedestalCourse { Section = BlockSection.Rectangle(8.Meters, 8.Meters), Height = 1.Meters, Material = granite }),
        ],
    },
    Foundation = new Foundation
    {
        WidthX = 10.Meters, WidthY = 10.Meters, Thickness = 1.8.Meters, Depth = 2.Meters, Material = Concrete.OfStrength(30.Megapascals),
        Soil = new Soil { FrictionAngle = 33.Degrees, AllowableBearing = 300.Kilopascals, ShearModulus = 80.Megapascals },
    },
    Corrosion = new Corrosion
    {
        Air = Atmosphere.Of(Corrosivity.C5) with { Known = [stainless] },
        AirInside = Atmosphere.Of(Corrosivity.C3) with { Known = [stainless] },
        TowerCoating = 25.Years365,
        Contacts = [.. new[] { ContactJoint.Saddle, ContactJoint.Fixing, ContactJoint.Armature, ContactJoint.Seam }.Select(joint => new MetalContact { Joint = joint, Isolation = Isolation.Ptfe })],
    },
};

// What acts, each by itself: the wind of EN 1991-1-4 from all round, the sun on the copper, an earthquake, a pressure wave.
// The basis of design makes every situation of them that EN 1990 asks for.
// Gusts need more at the top of the neck and of the wing than what overturning tells: each band has its own gust factor.
// Dampers keep vortices from tiring what carries neck and wing: a pendulum in the head for the two lowest modes, tuned masses in the wing.
DampingModel damping = DampingModel.Of(DampingCategory.FrictionBoltedLattice) with
{
    Dampers = [new TunedDamper { Decrement = 0.15 }, new TunedDamper { Decrement = 0.15, Frequency = 5.7.Hertz }],
};
WindAction wind = GustFactors.ByBand(StatueModel.Build(heron), new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    GustEffectFactor = 1.05,
    // The wing's swing in gusts twists the body by more than the usual 0.15.
    Eccentricity = 0.17,
}, damping);
var spectrum = new En1998Spectrum { ReferenceAcceleration = 0.4.MetersPerSecondSquared, Ground = GroundType.B, ImportanceFactor = 1.2, BehaviorFactor = 1.5 };
var actions = new CharacteristicActions
{
    Variable = [wind, new TemperatureAction { Name = "sun", SkinChange = TemperatureDelta.FromKelvins(18), SunRise = TemperatureDelta.FromKelvins(6), SunSide = 270.Degrees }],
    Seismic = [new EarthquakeAction { Horizontal = spectrum, Vertical = spectrum.Vertical(1.5) }],
    Accidental = [new PressurePulse { Name = "pressure wave", Shape = new TrianglePulse(), Peak = 2.Kilopascals, Duration = 0.02.Seconds, Heading = 0.Degrees, WaveSpeed = 340.MetersPerSecond }],
};
var criteria = new Criteria
{
    Basis = new EurocodeBasis { Consequences = ConsequenceClass.CC2, Execution = ExecutionClass.EXC3, WindReturnPeriod = 50 },
    BarStressFraction = 1 / 1.1,
    Damping = damping,
    Sway = [new SwayLimit("tip", 200.Millimeters), new SwayLimit("wing tip", 200.Millimeters)],
    Skin = new SkinDesign { StressFraction = 1 / 1.1, PanelsHeldInPlane = true, MaintenanceLoad = 0.5.Kilonewtons, LeastPanelFrequency = 20.Hertz },
    Earthquake = new EarthquakeCriteria { Friction = 0.4 },
    Durability = new DurabilityLimit { DesignLife = 100.Years365, GreatestLossFraction = 0.15 },
    DesignLife = 100,
    AcrossWind = new AcrossWindInput
    {
        // The feathers break up the vortices: lateral coefficients as from a wind tunnel.
        Sections =
        [
            new BodySection("trunk", BluffShape.Round) { Section = BluffSection.Given(0.18, 0.12, 0) },
            new BodySection("wing", BluffShape.Round) { Section = BluffSection.Given(0.18, 0.2, 2) },
        ],
        AmplitudeLimit = 200.Millimeters,
    },
    Shock = new ShockLimits { Clearance = 120.Millimeters, HoldDown = 3200.Kilonewtons },
};

CheckSheet sheet = heron.Check(criteria, actions);
Console.WriteLine(sheet);

// Any check shows its working: the formulas as they were computed, with their numbers and sources.
Check bars = sheet.GoverningOf("bars")!;
Console.WriteLine($"WORKING OF A CHECK: {bars.Subject}");
Console.WriteLine(bars.Working());
