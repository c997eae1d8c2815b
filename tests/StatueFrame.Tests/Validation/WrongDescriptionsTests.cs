using UnitsNet;
using static StatueFrame.Tests.Validation.SmallStatue;

namespace StatueFrame.Tests.Validation;

/// <summary>Every way of being wrong: one spoiled member a row, with the path and the heart of the message.</summary>
public class WrongDescriptionsTests
{
    public static IEnumerable<TheoryDataRow<SpoiledStatue>> Rows =>
        [.. Whole, .. Towers, .. Segments, .. Skins, .. Standoffs, .. Limbs, .. Hangers, .. Limits, .. Situations, .. Winds];

    [Theory, MemberData(nameof(Rows))]
    public void Problem_is_named_with_its_path_and_a_hint(SpoiledStatue spoiled)
    {
        var thrown = Assert.Throws<InvalidStatueException>(() => spoiled.Statue.Check());
        Problem problem = Assert.Single(thrown.Problems);
        Assert.Equal(spoiled.Path, problem.Path);
        Assert.Contains(spoiled.Message, problem.Message);
        Assert.Contains(spoiled.Hint, problem.Hint);
        Assert.NotEmpty(problem.Hint);
        Assert.Contains(problem.ToString(), thrown.Message);
    }

    [Fact]
    public void Statue_that_the_rows_spoil_is_good()
    {
        Assert.Empty(Good.Statue.FindProblems());
        Assert.Contains(Good.Check().Checks, check => check.Verdict == StatueFrame.Checks.Verdict.Pass);
    }

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Whole =>
    [
        Statue(s => s with { Name = "" }, "Name", "must not be empty"),
        Statue(s => s with { Name = null! }, "Name", "must not be empty"),
        Statue(s => s with { Name = new string('x', 201) }, "Name", "too long for a name: 201"),
        Statue(s => s with { BaseAboveGround = (-6).Meters }, "BaseAboveGround", "must not be negative, is -6 m", "Accepted are 0 m to 2000 m"),
        Statue(s => s with { BaseAboveGround = 6000.Meters }, "BaseAboveGround", "is not plausible: 6000 m", "did you mean 6000 mm?"),
        Statue(s => s with { Standoffs = null! }, "Standoffs", "is missing (null)"),
        Statue(s => s with { Limbs = null!, Points = [] }, "Limbs", "is missing (null)", criteria: new Criteria()),
        Statue(s => s with { Fittings = null! }, "Fittings", "is missing (null)"),
        Statue(s => s with { Points = null! }, "Points", "is missing (null)", criteria: new Criteria()),
        Statue(s => s with { Standoffs = [] }, "Standoffs", "nothing holds the skin"),
        Statue(s => s with { Fittings = [.. Enumerable.Repeat(s.Fittings[0], 1001)] }, "Fittings", "too many: 1001, of at most 1000"),
        Statue(s => s with { Seams = new SeamStiffness((-1).Pascals, 1.Pascals) }, "Seams.Across", "must not be negative"),
        Statue(s => s with { Seams = new SeamStiffness(1.Pascals, 1e15.Pascals) }, "Seams.Along", "not plausible"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Towers =>
    [
        Statue(s => s with { Tower = null!, Skin = null, Standoffs = [], Limbs = [], Fittings = [], Points = [] }, "Tower", "is missing (null)", "type Tower", new Criteria()),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Elevation = 6000.Meters }) }, "Tower.Levels[2].Elevation", "is out of range: 6000 m", "Accepted are -1 m to 1000 m; did you mean 6000 mm?"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Elevation = 2.Meters }) }, "Tower.Levels[2].Elevation", "2 m after 3 m", "from the base up"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Elevation = 3.Meters }) }, "Tower.Levels[2].Elevation", "at least 1 mm above the level before"),
        Trunk(t => t with { Levels = t.Levels.With(0, t.Levels[0] with { OffsetX = 400.Meters }) }, "Tower.Levels[0].OffsetX", "is out of range: 400 m", "did you mean 400 mm?"),
        Trunk(t => t with { Levels = t.Levels.With(1, t.Levels[1] with { Plan = new RectangularPlan(1200.Meters, 1.2.Meters) }) }, "Tower.Levels[1].Plan.WidthX", "1200 m", "did you mean 1200 mm?"),
        Trunk(t => t with { Levels = t.Levels.With(1, t.Levels[1] with { Plan = new RectangularPlan(1.Meters, 0.Meters) }) }, "Tower.Levels[1].Plan.WidthY", "must be greater than zero, is 0 m"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Plan = TowerPlan.Round((-1).Meters) }) }, "Tower.Levels[2].Plan.Diameter", "must be greater than zero, is -1 m"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Plan = new PolygonPlan(2, 1.Meters) }) }, "Tower.Levels[2].Plan.LegCount", "must be from 3 to 24, is 2"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Plan = new PolygonPlan(int.MaxValue, 1.Meters) }) }, "Tower.Levels[2].Plan.LegCount", "must be from 3 to 24"),
        Trunk(t => t with { Levels = t.Levels.With(1, t.Levels[1] with { Plan = null }) }, "Tower.Segments[0]", "needs a plan with legs at \"base\" and at \"mid\"", "TowerPlan.Square"),
        Trunk(t => t with { Levels = t.Levels.With(1, t.Levels[1] with { Plan = new PolygonPlan(6, 1.Meters) }) }, "Tower.Segments[0]", "4 legs at \"base\" and 6 at \"mid\""),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Name = "band 1" }) }, "Tower.Levels[2].Name", "is the name of a band"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Name = "mid" }) }, "Tower.Levels[2].Name", "is also the name of Levels[1]"),
        Trunk(t => t with { Levels = t.Levels.With(2, t.Levels[2] with { Name = "a/b" }) }, "Tower.Levels[2].Name", "must not contain '/'"),
        Trunk(t => t with { Levels = t.Levels.With(2, null!) }, "Tower.Levels[2]", "is missing (null)", "TowerLevel"),
        Trunk(t => t with { Levels = [.. t.Levels, new TowerLevel("crown", 7.Meters)] }, "Tower.Segments", "one item fewer than Levels (3), has 2"),
        Trunk(t => t with { Segments = [] }, "Tower.Segments", "one item fewer than Levels (2), has 0"),
        Trunk(t => t with { Segments = null! }, "Tower.Segments", "is missing (null)"),
        Trunk(t => t with { Segments = t.Segments.With(1, null!) }, "Tower.Segments[1]", "is missing (null)"),
        Trunk(t => t with { Base = null! }, "Tower.Base", "is missing (null)"),
        Trunk(t => t with { Base = new TowerBase { X = ForcePerLength.Zero } }, "Tower.Base.X", "must be greater than zero"),
        Trunk(t => t with { Base = new TowerBase { RotationX = (-1).NewtonMetersPerRadian } }, "Tower.Base.RotationX", "must be greater than zero"),
    ];

    private static readonly MemberConnection joint = new() { Bolt = new Bolt { Diameter = 16.Millimeters, Grade = BoltGrade.Class88 }, InLine = 1, EndDistance = 40.Millimeters, EdgeDistance = 30.Millimeters };

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Segments =>
    [
        Lattice(p => p with { Bays = 0 }, "Bays", "must be from 1 to 20, is 0"),
        Lattice(p => p with { Bays = 100 }, "Bays", "must be from 1 to 20, is 100", "levels between"),
        Lattice(p => p with { Bracing = (Bracing)9 }, "Bracing", "is not a Bracing: 9", "KBrace"),
        Lattice(p => p with { ConnectionMassFraction = double.NaN }, "ConnectionMassFraction", "must be from 0 to 1, is NaN"),
        Lattice(p => p with { ConnectionMassFraction = 10 }, "ConnectionMassFraction", "must be from 0 to 1, is 10"),
        Lattice(p => p with { Legs = null! }, "Legs", "is missing (null)", "type Section"),
        Lattice(p => p with { Braces = new AngleBar(80.Millimeters, 8.Millimeters), BraceJoint = joint with { EdgeDistance = 65.Millimeters } }, "BraceJoint.EdgeDistance", "leaves no room for the fasteners: 82", "wider member"),
        Lattice(p => p with { Braces = new FlatBar(80.Millimeters, 8.Millimeters), BraceJoint = joint with { Lines = 2, Gauge = 25.Millimeters } }, "BraceJoint.EdgeDistance", "leaves no room for the fasteners: 85"),
        Lattice(p => p with { Braces = new AngleBar(60.Meters, 60.Millimeters, 6.Millimeters) }, "Braces.LongLeg", "is not plausible: 60 m", "did you mean 60 mm?"),
        Lattice(p => p with { Braces = new AngleBar(6.Millimeters, 60.Millimeters) }, "Braces.Thickness", "must be less than the short leg"),
        Lattice(p => p with { Material = null! }, "Material", "is missing (null)"),
        Lattice(p => p with { Material = p.Material with { YoungsModulus = 210.Megapascals } }, "Material.YoungsModulus", "is not plausible: 210 MPa", "did you mean 210 GPa?"),
        Lattice(p => p with { Material = p.Material with { Density = 7.85.KilogramsPerCubicMeter } }, "Material.Density", "is not plausible: 7.85 kg/m³", "did you mean 7.85 g/cm³?"),
        Lattice(p => p with { Material = p.Material with { UltimateStrength = 300.Megapascals } }, "Material.UltimateStrength", "is below the yield strength (300 MPa < 355 MPa)"),
        Lattice(p => p with { Material = p.Material with { ThermalExpansion = 12.PpmPerKelvin * 1e6 } }, "Material.ThermalExpansion", "is not plausible"),
        Lattice(p => p with { Material = p.Material with { Source = null! } }, "Material.Source", "is missing (null)"),
        Lattice(p => p with { Material = p.Material with { Name = " " } }, "Material.Name", "must not be empty"),
        Member(m => m with { Section = null! }, "Section", "is missing (null)"),
        Member(m => m with { Section = new Tube(400.Millimeters, 200.Millimeters) }, "Section.Wall", "less than half the outer diameter", "RoundBar"),
        Member(m => m with { Section = new Tube(400.Meters, 10.Millimeters) }, "Section.OuterDiameter", "is not plausible: 400 m", "Accepted are 0.002 m to 30 m; did you mean 400 mm?"),
        Member(m => m with { TopSection = new RoundBar(100.Millimeters) }, "TopSection", "must have the shape of the lower section (Tube)"),
        Member(m => m with { Roll = 1000.Degrees }, "Roll", "is out of range: 1000 °"),
        Core(c => c with { Torsion = Rigidity.FromNewtonSquareMeters(double.NaN) }, "Torsion", "is NaN N·m²"),
        Core(c => c with { BendingX = default }, "BendingX", "must be greater than 1 N·m²"),
        Core(c => c with { ShearY = 1e20.Newtons }, "ShearY", "less than 1e18 N"),
        Core(c => c with { Mass = (-5).KilogramsPerMeter }, "Mass", "must not be negative, is -5 kg/m"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Skins =>
    [
        Skin(k => k with { Thickness = 2.4.Meters }, "Thickness", "is not plausible: 2.4 m", "Accepted are 0.0002 m to 0.03 m; did you mean 2.4 mm?"),
        Skin(k => k with { Thickness = 0.Millimeters }, "Thickness", "must be greater than zero, is 0 mm"),
        Skin(k => k with { FoldFactor = double.PositiveInfinity }, "FoldFactor", "must be from 1 to 5, is Infinity"),
        Skin(k => k with { ForceCoefficient = double.NaN }, "ForceCoefficient", "must be from 0.1 to 4, is NaN"),
        Skin(k => k with { ArmatureMass = (-1).KilogramsPerSquareMeter }, "ArmatureMass", "must not be negative, is -1 kg/m²"),
        Skin(k => k with { Material = null! }, "Material", "is missing (null)"),
        Skin(k => k with { Stations = null! }, "Stations", "is missing (null)"),
        Skin(k => k with { Stations = [] }, "Stations", "must be at least 2, are 0"),
        Skin(k => k with { Stations = k.Stations.With(1, null!) }, "Stations[1]", "is missing (null)"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { Outline = null! }) }, "Stations[1].Outline", "is missing (null)"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { Elevation = 7.Meters }) }, "Stations[2].Elevation", "6 m after 7 m", "from the lowest up"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { FoldFactor = 0.5 }) }, "Stations[1].FoldFactor", "must be from 1 to 5, is 0.5"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { Outline = new EllipseOutline { WidthX = 3000.Meters, WidthY = 3.Meters } }) }, "Stations[1].Outline.WidthX", "3000 m", "did you mean 3000 mm?"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { Outline = new PolygonOutline { Vertices = null! } }) }, "Stations[1].Outline.Vertices", "is missing (null)"),
        Skin(k => k with { Stations = k.Stations.With(1, k.Stations[1] with { Outline = new PolygonOutline { Vertices = [.. Enumerable.Repeat(default(PlanPoint), 1001)] } }) }, "Stations[1].Outline.Vertices", "too many: 1001"),
        Skin(k => k with { BandEdges = [0.Meters] }, "BandEdges", "must be at least 2, are 1"),
        Skin(k => k with { BandEdges = [0.Meters, 4.Meters, 3.Meters, 6.Meters] }, "BandEdges[2]", "3 m after 4 m"),
        Skin(k => k with { BandForceCoefficients = null! }, "BandForceCoefficients", "is missing (null)"),
        Skin(k => k with { BandForceCoefficients = [null!] }, "BandForceCoefficients[0]", "is missing (null)"),
        Skin(k => k with { BandForceCoefficients = [new(9, 1.2)] }, "BandForceCoefficients[0].Band", "there is no band 9"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Standoffs =>
    [
        First(r => r with { Level = "basee" }, "Level", "there is no level \"basee\"", "Did you mean \"base\"?"),
        First(r => r with { Level = null! }, "Level", "must not be empty"),
        First(r => r with { Count = 0 }, "Count", "must be from 1 to 400, is 0"),
        First(r => r with { Count = int.MinValue }, "Count", "must be from 1 to 400"),
        First(r => r with { Band = 0 }, "Band", "must be 1 or more, is 0"),
        First(r => r with { Band = 7 }, "Band", "there is no band 7", "from 0 m to 6 m and has 2 bands"),
        First(r => r with { Band = 2 }, "Band", "band 2 reaches from 3 m to 6 m, but the ring meets the skin at 1 m"),
        First(r => r with { Level = "top", Rise = 1.Meters }, "Band", "there is no skin at 7 m", "from 0 m to 6 m"),
        First(r => r with { FirstAngle = 400.Degrees }, "FirstAngle", "is out of range: 400 °"),
        First(r => r with { Lay = 40.Radians }, "Lay", "is out of range: 40 rad", "did you mean 40 °?"),
        First(r => r with { Length = 1500.Meters }, "Length", "1500 m long", "millimeters"),
        First(r => r with { Length = 0.5.Meters }, "Rise", "is not less than the bar's length (1 m of 0.5 m)"),
        First(r => r with { Standoff = null! }, "Standoff", "is missing (null)"),
        First(r => r with { Standoff = Flat with { Section = null! } }, "Standoff.Section", "is missing (null)"),
        First(r => r with { Standoff = Flat with { Section = new FlatBar(60.Millimeters, 8.Meters) } }, "Standoff.Section.Thickness", "is not plausible: 8 m", "did you mean 8 mm?"),
        First(r => r with { Standoff = Flat with { TowerFixity = null! } }, "Standoff.TowerFixity", "is missing (null)"),
        First(r => r with { Standoff = Flat with { SkinFixity = new EndFixity { WeakAxis = (-1).NewtonMetersPerRadian } } }, "Standoff.SkinFixity.WeakAxis", "must not be negative"),
        First(r => r with { Standoff = Flat with { Slide = null! } }, "Standoff.Slide", "is missing (null)"),
        First(r => r with { Standoff = Flat with { Slide = SaddleSlide.Along(double.NaN, 0, 0) } }, "Standoff.Slide", "must be a direction"),
        Statue(s => s with { Standoffs = s.Standoffs.With(0, null!) }, "Standoffs[0]", "is missing (null)", "StandoffRing"),
        Statue(s => s with { Standoffs = [s.Standoffs[0]] }, "Standoffs", "band 2, from 3 m to 6 m, has no standoffs: nothing holds it", "Add a ring"),
        Statue(s => s with { Skin = null, Standoffs = [s.Standoffs[0]], Points = [] }, "Standoffs[0]", "needs a skin to carry", criteria: new Criteria()),
        Explicit(p => p with { Bars = null! }, "Bars", "is missing (null)"),
        Explicit(p => p with { Bars = [] }, "Bars.Count", "must be from 1 to 400, is 0"),
        Explicit(p => p with { Bars = p.Bars.With(1, null!) }, "Bars[1]", "is missing (null)"),
        Explicit(p => p with { Bars = p.Bars.With(1, p.Bars[1] with { Standoff = null! }) }, "Bars[1].Standoff", "is missing (null)"),
        Explicit(p => p with { Bars = p.Bars.With(1, p.Bars[1] with { SkinEnd = p.Bars[1].TowerEnd }) }, "Bars[1].SkinEnd", "the bar is 0 m long"),
        Explicit(p => p with { Bars = p.Bars.With(1, p.Bars[1] with { SkinEnd = Point3.FromMeters(-6, 0, 1) }) }, "Bars[1].SkinEnd", "m off the outline of the skin"),
        Explicit(p => p with { Level = "top", Bars = [.. p.Bars.Take(1).Select(b => b with { TowerEnd = Point3.FromMeters(0.8, 0, 0.5) })] }, "Bars[0].TowerEnd", "lies 5.5 m below the level \"top\"", "nearer level"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Limbs =>
    [
        Limb(l => l with { From = "midd" }, "From", "there is no level \"midd\"", "Did you mean \"mid\"?"),
        Limb(l => l with { From = "arm/root" }, "From", "does not belong to the trunk or to a limb listed before", "List limbs after"),
        Limb(l => l with { From = null! }, "From", "must not be empty"),
        Limb(l => l with { Name = "" }, "Name", "must not be empty"),
        Limb(l => l with { Name = "left/arm" }, "Name", "must not contain '/'"),
        Limb(l => l with { Inclination = 100.Degrees }, "Inclination", "is out of range: 100 °", "-90 ° to 90 °"),
        Limb(l => l with { Heading = 400.Degrees }, "Heading", "is out of range: 400 °"),
        Limb(l => l with { Root = Point3.FromMeters(0, 2500, 0) }, "Root.Y", "is out of range: 2500 m", "did you mean 2500 mm?"),
        Limb(l => l with { Tower = l.Tower with { Levels = [l.Tower.Levels[1], l.Tower.Levels[0]] } }, "Tower.Levels[1].Elevation", "0 m after 4 m"),
        Limb(l => l with { Tower = null!, Skin = null, Standoffs = [] }, "Tower", "is missing (null)"),
        Limb(l => l with { Standoffs = [] }, "Standoffs", "nothing holds the skin"),
        Limb(l => l with { Standoffs = [Ring("hand") with { Length = 1.2.Meters }] }, "Standoffs[0].Band", "there is no skin at 5 m", "from 2.5 m to 4.5 m"),
        Limb(l => l with { Standoffs = [Ring("mid", 0)] }, "Standoffs[0].Level", "there is no level \"mid\" in this tower", "There are \"root\", \"hand\"."),
        Statue(s => s with { Limbs = [s.Limbs[0], s.Limbs[0]] }, "Limbs[1].Name", "is the name of an earlier limb"),
        Statue(s => s with { Limbs = [s.Limbs[0], null!] }, "Limbs[1]", "is missing (null)"),
        Statue(s => s with { Limbs = [Arm with { Name = "first", From = "arm/hand" }, Arm] }, "Limbs[0].From", "does not belong to the trunk or to a limb listed before"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Hangers =>
    [
        Fitting(f => f with { On = "tip" }, "On", "there is no level or band \"tip\"", "Did you mean \"top\"?"),
        Fitting(f => f with { On = null! }, "On", "must not be empty"),
        Fitting(f => f with { Name = "" }, "Name", "must not be empty"),
        Fitting(f => f with { Mass = 0.Kilograms }, "Mass", "must be greater than zero, is 0 kg"),
        Fitting(f => f with { Mass = 50_000_000.Kilograms }, "Mass", "is not plausible: 5e+07 kg", "did you mean 5e+07 g?"),
        Fitting(f => f with { At = Point3.FromMeters(0, 0, 6000) }, "At.Z", "is out of range: 6000 m", "did you mean 6000 mm?"),
        Statue(s => s with { Fittings = [null!] }, "Fittings[0]", "is missing (null)"),
        Statue(s => s with { Points = s.Points.With(1, new NamedPoint("hand", "arm/band 2")) }, "Points[1].On", "there is no level or band \"arm/band 2\"", "Did you mean \"arm/band 1\"?"),
        Statue(s => s with { Points = s.Points.With(1, new NamedPoint("tip", "top")) }, "Points[1].Name", "is the name of an earlier point"),
        Statue(s => s with { Points = s.Points.With(1, null!) }, "Points[1]", "is missing (null)"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Limits =>
    [
        Criteria(c => c with { Sway = null! }, "Sway", "is missing (null)"),
        Criteria(c => c with { Sway = [null!] }, "Sway[0]", "is missing (null)"),
        Criteria(c => c with { Sway = [new SwayLimit("tipp", 50.Millimeters)] }, "Sway[0].Point", "has no point \"tipp\"", "Did you mean \"tip\"?"),
        Criteria(c => c with { Sway = [new SwayLimit("tip", 50.Meters)] }, "Sway[0].Limit", "is not plausible: 50 m", "did you mean 50 mm?"),
        Criteria(c => c with { Sway = [new SwayLimit("tip", 50.Millimeters) { Source = null! }] }, "Sway[0].Source", "is missing (null)"),
        Criteria(c => c with { BarStressFraction = double.NaN }, "BarStressFraction", "must be from 0.05 to 1, is NaN"),
        Criteria(c => c with { BarStressFraction = 1.5 }, "BarStressFraction", "must be from 0.05 to 1, is 1.5"),
        Criteria(c => c with { LeastBucklingFactor = double.NegativeInfinity }, "LeastBucklingFactor", "must be from 1 to 100"),
        Criteria(c => c with { Modes = 0 }, "Modes", "must be from 1 to 100, is 0"),
        Criteria(c => c with { Modes = int.MaxValue }, "Modes", "must be from 1 to 100"),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Situations =>
    [
        Asked("Situations", "must not be empty"),
        Asked("Situations[1]", "is missing (null)", Storm, null!),
        Asked("Situations[1].Name", "is the name of an earlier situation", Storm, Storm),
        Asked("Situations[0].Name", "must not be empty", Storm with { Name = null! }),
        Asked("Situations[0].Actions", "is missing (null)", Storm with { Actions = null! }),
        Asked("Situations[0].Actions", "must not be empty", Storm with { Actions = [] }),
        Asked("Situations[0].Actions[0]", "is missing (null)", Storm with { Actions = [null!, Wind] }),
        Asked("Situations[0].Actions[0].Action", "is missing (null)", Storm with { Actions = [1.5 * (StatueAction)null!] }),
        Asked("Situations[0].Actions[0].Factor", "must be from 0 to 10, is NaN", Storm with { Actions = [double.NaN * new SelfWeight()] }),
        Asked("Situations[0].Actions", "has more than one wind", Storm with { Actions = [Wind, 0.5 * Wind] }),
        Asked("Situations[0].LimitState", "is not a LimitState: 7", Storm with { LimitState = (LimitState)7 }),
        Asked("Situations[0].Actions[0].Action.On", "there is no level or band \"tp\"", Storm with { Actions = [People("tp")] }),
        Asked("Situations[0].Actions[0].Action.Down", "is out of range", Storm with { Actions = [People("top") with { Down = 1e12.Newtons }] }),
    ];

    private static IEnumerable<TheoryDataRow<SpoiledStatue>> Winds =>
    [
        Blowing(w => w with { Profile = null! }, "Profile", "is missing (null)"),
        Blowing(w => w with { Headings = [] }, "Headings", "must not be empty", "AllRound"),
        Blowing(w => w with { Headings = null! }, "Headings", "is missing (null)"),
        Blowing(w => w with { Headings = [0.Degrees, 90.Radians] }, "Headings[1]", "is out of range: 90 rad", "did you mean 90 °?"),
        Blowing(w => w with { Headings = [.. Enumerable.Repeat(0.Degrees, 721)] }, "Headings", "too many: 721"),
        Blowing(w => w with { ForceCoefficient = double.NaN }, "ForceCoefficient", "must be from 0.05 to 5, is NaN"),
        Blowing(w => w with { GustEffectFactor = double.PositiveInfinity }, "GustEffectFactor", "must be from 0.5 to 5"),
        Blowing(w => w with { Profile = new En1991Wind { FundamentalVelocity = 270.MetersPerSecond, Terrain = TerrainCategory.II } }, "Profile.FundamentalVelocity", "is not plausible: 270 m/s", "did you mean 270 km/h?"),
        Blowing(w => w with { Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = (TerrainCategory)8 } }, "Profile.Terrain", "is not a TerrainCategory: 8", "Zero, I, II, III, IV"),
        Blowing(w => w with { Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = null! } }, "Profile.Rows", "is missing (null)"),
        Blowing(w => w with { Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [null!] } }, "Profile.Rows[0]", "is missing (null)"),
        Blowing(w => w with { Profile = new TableWind { SpeedIs = (WindSpeedBasis)5, Rows = [new(10.Meters, 40.MetersPerSecond)] } }, "Profile.SpeedIs", "is not a WindSpeedBasis: 5"),
        Blowing(w => w with { Profile = new AsceWind { BasicSpeed = 50.MetersPerSecond, Exposure = AsceExposure.C, Edition = AsceEdition.Asce7_22, TopographicFactor = double.NaN } }, "Profile.TopographicFactor", "must be from 1 to 4, is NaN"),
    ];

    private static TheoryDataRow<SpoiledStatue> Row(SmallStatue statue, string path, string message, string hint = "") =>
        new(new SpoiledStatue(statue, path, message, hint)) { TestDisplayName = $"{path} {message}" };

    private static TheoryDataRow<SpoiledStatue> Statue(Func<Statue, Statue> spoil, string path, string message, string hint = "", Criteria? criteria = null) =>
        Row(Good.With(spoil) with { Criteria = criteria ?? Good.Criteria }, path, message, hint);

    private static TheoryDataRow<SpoiledStatue> Trunk(Func<Tower, Tower> spoil, string path, string message, string hint = "") =>
        Row(Good.With(s => s with { Tower = spoil(SmallStatue.Trunk), Fittings = [] }), path, message, hint);

    private static TheoryDataRow<SpoiledStatue> Lattice(Func<LatticeSegment, LatticeSegment> spoil, string path, string message, string hint = "") =>
        Trunk(t => t with { Segments = [spoil(Panel), Mast] }, $"Tower.Segments[0].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Member(Func<MemberSegment, MemberSegment> spoil, string path, string message, string hint = "") =>
        Trunk(t => t with { Segments = [Panel, spoil(Mast)] }, $"Tower.Segments[1].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Core(Func<CoreSegment, CoreSegment> spoil, string path, string message, string hint = "") =>
        Trunk(t => t with { Segments = [Panel, spoil(SmallStatue.Core)] }, $"Tower.Segments[1].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Skin(Func<Skin, Skin> spoil, string path, string message, string hint = "") =>
        Row(new SmallStatue(Good.Statue with { Skin = spoil(Body), Points = [] }, new Criteria(), Storm), $"Skin.{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> First(Func<EvenRing, EvenRing> spoil, string path, string message, string hint = "") =>
        Statue(s => s with { Standoffs = [spoil(Ring("base")), Ring("mid")] }, $"Standoffs[0].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Explicit(Func<ExplicitRing, ExplicitRing> spoil, string path, string message, string hint = "") =>
        Statue(s => s with { Standoffs = [spoil(Props), Ring("mid")] }, $"Standoffs[0].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Limb(Func<Limb, Limb> spoil, string path, string message, string hint = "") =>
        Statue(s => s with { Limbs = [spoil(Arm)], Points = [new NamedPoint("tip", "band 2")] }, $"Limbs[0].{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Fitting(Func<Fitting, Fitting> spoil, string path, string message, string hint = "") =>
        Statue(s => s with { Fittings = [spoil(s.Fittings[0])] }, $"Fittings[0].{path}", message, hint);

    private static ImposedLoad People(string on) => new() { Name = "people", On = on, Down = 1.Kilonewtons };

    private static TheoryDataRow<SpoiledStatue> Asked(string path, string message, params Situation[] situations) =>
        Row(Good with { Situations = situations }, path, message);

    private static TheoryDataRow<SpoiledStatue> Blowing(Func<WindAction, WindAction> spoil, string path, string message, string hint = "") =>
        Row(Good with { Situations = [Storm with { Actions = [spoil(Wind)] }] }, $"Situations[0].Actions[0].Action.{path}", message, hint);

    private static TheoryDataRow<SpoiledStatue> Criteria(Func<Criteria, Criteria> spoil, string path, string message, string hint = "") =>
        Row(Good with { Criteria = spoil(Good.Criteria) }, $"Criteria.{path}", message, hint);
}
