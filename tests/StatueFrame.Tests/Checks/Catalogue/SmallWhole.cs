using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Checks.Catalogue;

/// <summary>A small statue with every kind of part, from the sheet to the ground, of about the strength it needs.</summary>
internal static class SmallWhole
{
    public static SmallStatue Of(double wind = 26, double thickness = 10, int count = 6, double legs = 0.6, double plinth = 3.4, bool welded = true, bool slides = false, double load = 1)
    {
        Standoff flat = SmallStatue.Flat with
        {
            Section = new FlatBar(60.Millimeters, thickness.Millimeters),
            Slide = slides ? SaddleSlide.AlongBar : SaddleSlide.None,
            Saddle = new Saddle { Clamp = 8.Kilonewtons, Friction = 0.3, LeastFriction = 0.2 },
            Clearance = 60.Millimeters,
            TowerFixing = welded
                ? new WeldedFixing { Throat = 5.Millimeters }
                : new BoltedFixing { Bolt = M(16), Rows = 2, Pitch = 50.Millimeters, EndDistance = 35.Millimeters, Heel = 30.Millimeters },
            SkinFixing = new WeldedFixing { Throat = 5.Millimeters },
        };
        LatticeSegment panel = SmallStatue.Panel with
        {
            Legs = new AngleBar((70 + 50 * legs).Millimeters, (8 + 5 * legs).Millimeters),
            LegSplice = new MemberConnection { Bolt = M(20), InLine = 3, BothLegs = true, Lines = 2, EndDistance = 40.Millimeters, EdgeDistance = 35.Millimeters, Pitch = 60.Millimeters },
            BraceJoint = new MemberConnection { Bolt = M(16), InLine = 2, EndDistance = 35.Millimeters, EdgeDistance = 30.Millimeters, Pitch = 50.Millimeters },
        };
        MemberSegment mast = SmallStatue.Mast with
        {
            Section = new Tube(300.Millimeters, (6 + 6 * legs).Millimeters),
            LowerJoint = new FlangeJoint { Bolt = M(20), Count = 12, BoltCircle = 0.4.Meters, OuterDiameter = 0.48.Meters, Thickness = 25.Millimeters },
        };
        WindAction storm = SmallStatue.Wind with { Profile = new En1991Wind { FundamentalVelocity = wind.MetersPerSecond, Terrain = TerrainCategory.II } };
        return SmallStatue.Good with
        {
            Situations =
            [
                new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * storm] },
                new Situation { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), storm] },
            ],
            Statue = SmallStatue.Good.Statue with
            {
                Tower = SmallStatue.Trunk with { Segments = [panel, mast] },
                Skin = SmallStatue.Body with
                {
                    Joints = [new SkinJoint(3.Meters, 4.Millimeters)],
                    ArmatureMass = 12.KilogramsPerSquareMeter,
                    Armature = new Armature { Bar = new FlatBar(40.Millimeters, 8.Millimeters), Material = StainlessSteel.Duplex2205, Spacing = 0.4.Meters, PanelLength = 0.6.Meters, Span = 0.8.Meters },
                    SheetSeam = new RivetedSeam { Rivet = Rivet.Of(4.Millimeters, Copper.HalfHardR240), Pitch = 25.Millimeters, EdgeDistance = 12.Millimeters },
                },
                Standoffs = [SmallStatue.Ring("base") with { Standoff = flat, Count = count }, SmallStatue.Ring("mid") with { Standoff = flat, Count = count }],
                Fittings = [new Fitting { Name = "lamp", On = "top", Mass = (100 * load).Kilograms }],
                HoldDown = Anchors,
                Pedestal = new Pedestal
                {
                    Courses =
                    [
                        new PedestalCourse { Section = BlockSection.Rectangle(plinth.Meters, plinth.Meters), Height = 1.2.Meters, Material = Concrete.OfStrength(30.Megapascals) },
                        new PedestalCourse { Section = BlockSection.Rectangle(plinth.Meters, plinth.Meters), Height = 1.Meters, Material = Cores.BlockChecksTests.Stone },
                    ],
                },
                Foundation = new Foundation
                {
                    WidthX = (plinth + 0.5).Meters,
                    WidthY = (plinth + 0.5).Meters,
                    Thickness = 0.8.Meters,
                    Depth = 1.Meters,
                    Material = Concrete.OfStrength(30.Megapascals),
                    Soil = new Soil { FrictionAngle = 32.Degrees, AllowableBearing = 200.Kilopascals, ShearModulus = 40.Megapascals },
                },
                Corrosion = new Corrosion
                {
                    Air = Atmosphere.Of(Corrosivity.C4),
                    Contacts = [.. new[] { ContactJoint.Saddle, ContactJoint.Fixing, ContactJoint.Armature, ContactJoint.Seam }.Select(joint => new MetalContact { Joint = joint, Isolation = Isolation.Ptfe })],
                },
            },
        };
    }

    private static HoldDown Anchors
    {
        get
        {
            (double X, double Y)[] corners = [(0.8, 0.8), (-0.8, 0.8), (-0.8, -0.8), (0.8, -0.8)];
            return new HoldDown
            {
                Plates = [.. corners.Select(c => new BasePlate { X = c.X.Meters, Y = c.Y.Meters, WidthX = 0.4.Meters, WidthY = 0.4.Meters, Thickness = 30.Millimeters, FootX = 0.2.Meters, FootY = 0.2.Meters, Material = StructuralSteel.S355 })],
                Bars = [.. corners.Select(c => new AnchorBar { X = c.X.Meters, Y = c.Y.Meters, Diameter = 36.Millimeters, Material = StructuralSteel.S355, FreeLength = 0.8.Meters, Embedment = 0.8.Meters, HeadWidth = 0.12.Meters, PreTension = 100.Kilonewtons })],
                Friction = 0.3,
            };
        }
    }

    private static Bolt M(double diameter) => new() { Diameter = diameter.Millimeters, Grade = BoltGrade.Class88 };
}
