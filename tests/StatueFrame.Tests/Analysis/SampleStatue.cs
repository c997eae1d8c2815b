namespace StatueFrame.Tests.Analyses;

/// <summary>
/// A small statue with a bit of everything, which can be turned as a whole about z: braced panels, a tapered neck, an
/// elliptical skin, rings of many kinds, an inclined limb with its own skin, a fitting, named points.
/// </summary>
internal sealed record SampleStatue
{
    /// <summary>Turn of the whole about z, rad.</summary>
    public double Turn { get; init; }

    public TowerBase Base { get; init; } = TowerBase.Fixed;

    public SeamStiffness? Seams { get; init; }

    public Bracing Bracing { get; init; } = Bracing.Cross;

    public int Bays { get; init; } = 1;

    /// <summary>Thickness of all even rings' flats, mm.</summary>
    public double Thickness { get; init; } = 8;

    public bool HasLimb { get; init; } = true;

    public static TowerBase Springs { get; } = new()
    {
        X = 3e8.NewtonsPerMeter,
        Y = 3e8.NewtonsPerMeter,
        Z = 9e8.NewtonsPerMeter,
        RotationX = 2e8.NewtonMetersPerRadian,
        RotationY = 2e8.NewtonMetersPerRadian,
        RotationZ = 1e8.NewtonMetersPerRadian,
    };

    public static double Gust => 35;

    public WindAction Wind(params double[] headings) => new()
    {
        Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(10.Meters, Gust.MetersPerSecond, null)] },
        Headings = headings.Select(h => (h + Turn).Radians).ToValueList(),
        ForceCoefficient = 1.3,
        GustEffectFactor = 1.1,
    };

    public ImposedLoad Imposed(string on, double x, double y, double down, Point3? at = null)
    {
        (double px, double py) = Turned(x, y);
        return new ImposedLoad { Name = "pull", On = on, AlongX = px.Newtons, AlongY = py.Newtons, Down = down.Newtons, At = at };
    }

    private static Bracket Arm { get; } = new()
    {
        Section = new FlatBar(80.Millimeters, 12.Millimeters),
        Material = StructuralSteel.S355,
        TowerFixity = EndFixity.Spring(60_000.NewtonMetersPerRadian),
        Throat = 5.Millimeters,
        Roll = 25.Degrees,
    };

    public Point3 Point(double x, double y, double z)
    {
        (double px, double py) = Turned(x, y);
        return Point3.FromMeters(px, py, z);
    }

    public Statue Statue
    {
        get
        {
            Standoff flat = new()
            {
                Section = new FlatBar(60.Millimeters, Thickness.Millimeters),
                Material = StainlessSteel.Grade316L,
                TowerFixity = EndFixity.Spring(40_000.NewtonMetersPerRadian),
                SkinFixity = new EndFixity { WeakAxis = 3000.NewtonMetersPerRadian, StrongAxis = 9000.NewtonMetersPerRadian, Twist = 2000.NewtonMetersPerRadian },
            };
            Standoff rigid = flat with { TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };
            return new Statue
            {
                Name = "sample",
                Tower = new Tower
                {
                    Levels =
                    [
                        Level("L0", 0, 0, 0, 2.2), Level("L1", 3, 0.05, -0.03, 1.9), Level("L2", 6, 0.1, 0.02, 1.5), Level("L3", 9, 0.1, 0.1, null),
                    ],
                    Segments = [Panel, Panel with { Bracing = Bracing.KBrace, Bays = 1 }, Neck(0.5, 0.3)],
                    Base = Base,
                },
                Skin = new Skin
                {
                    Material = Copper.HalfHardR240,
                    Thickness = 2.4.Millimeters,
                    FoldFactor = 1.2,
                    ArmatureMass = 8.KilogramsPerSquareMeter,
                    Stations = [Station(0, 3.4, 3.0, 0.1, 0), Station(3, 3.2, 2.8, 0.2, 0.1), Station(6, 2.6, 2.4, 0, 0.1), Station(9.5, 1.5, 1.2, 0.2, 0.1)],
                },
                Seams = Seams,
                Standoffs =
                [
                    new EvenRing { Level = "L1", Rise = (-1).Meters, Count = 7, FirstAngle = Turn.Radians, Lay = 35.Degrees, Length = 1.3.Meters, Standoff = flat, Bracket = Arm },
                    new EvenRing { Level = "L1", Rise = 0.8.Meters, Count = 6, FirstAngle = (Turn + 0.2).Radians, Lay = (-12).Degrees, Standoff = flat with { Roll = 20.Degrees } },
                    new EvenRing { Level = "L2", Count = 8, FirstAngle = (Turn - 0.3).Radians, Length = 0.5.Meters, Standoff = rigid with { Slide = SaddleSlide.AlongSkin }, Bracket = Arm with { TowerFixity = EndFixity.Rigid, Roll = 0.Degrees } },
                    new EvenRing { Level = "L3", Rise = (-1.5).Meters, Count = 5, FirstAngle = Turn.Radians, Lay = 60.Degrees, Length = 1.7.Meters, Standoff = rigid with { Slide = SaddleSlide.AlongBar } },
                    new ExplicitRing
                    {
                        Level = "L3", Band = 3,
                        Bars =
                        [
                            Bar((0.2, 0.1, 8.9), (0.8, 0.3, 8.6), rigid with { Roll = 50.Degrees }),
                            Bar((-0.1, 0.2, 8.7), (-0.5, 0.5, 8.7), flat with { Slide = SaddleSlide.AlongAxis }),
                            Bar((0.1, -0.1, 8.8), (0.1, -0.1, 9.3), flat),
                            Bar((0.1, 0, 9.0), (0.2, -0.5, 9.2), rigid with { SkinFixity = EndFixity.Pinned, Roll = (-30).Degrees }),
                        ],
                    },
                ],
                Limbs = HasLimb ? [Wing(rigid)] : [],
                Fittings =
                [
                    new Fitting { Name = "stair", On = "L2", Mass = 500.Kilograms, At = Point(0.7, -0.4, 5.5) },
                    new Fitting { Name = "lamp", On = "band 3", Mass = 80.Kilograms, At = Point(0.1, 0.6, 9.4) },
                    new Fitting { Name = "pump", On = "L0", Mass = 900.Kilograms, At = Point(0.8, 0.3, 0.4) },
                ],
                Points =
                [
                    new NamedPoint("tip", "band 3") { At = Point(0.2, 0.1, 9.5) }, new NamedPoint("neck", "L3"),
                    .. HasLimb ? [new NamedPoint("wing tip", "wing/band 2") { At = Point(1.5, 1.8, 8) }] : (NamedPoint[])[],
                ],
                BaseAboveGround = 4.Meters,
            };
        }
    }

    private LatticeSegment Panel => new()
    {
        Legs = new Tube(114.Millimeters, 8.Millimeters),
        Braces = new AngleBar(60.Millimeters, 6.Millimeters),
        Horizontals = new AngleBar(70.Millimeters, 6.Millimeters),
        Material = StructuralSteel.S355,
        Bracing = Bracing,
        Bays = Bays,
        ConnectionMassFraction = 0.1,
    };

    private Limb Wing(Standoff rigid) => new()
    {
        Name = "wing",
        From = "L2",
        Heading = (0.9 + Turn).Radians,
        Inclination = 30.Degrees,
        Root = Point(0.1, -0.2, 0.3),
        Tower = new Tower
        {
            Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("W1", 1.2.Meters) { OffsetX = 0.05.Meters }, new TowerLevel("W2", 2.4.Meters)],
            Segments = [Neck(0.3, 0.25), Neck(0.25, 0.15)],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations =
            [
                new SkinStation { Elevation = 0.6.Meters, Outline = new EllipseOutline { WidthX = 1.2.Meters, WidthY = 0.9.Meters } },
                new SkinStation { Elevation = 1.8.Meters, Outline = new EllipseOutline { WidthX = 1.0.Meters, WidthY = 0.8.Meters, CenterY = 0.05.Meters } },
                new SkinStation { Elevation = 2.8.Meters, Outline = new EllipseOutline { WidthX = 0.6.Meters, WidthY = 0.5.Meters } },
            ],
        },
        Seams = Seams,
        Standoffs =
        [
            new EvenRing { Level = "W1", Rise = (-0.1).Meters, Count = 5, Lay = 25.Degrees, Length = 0.4.Meters, Standoff = rigid },
            new EvenRing { Level = "W2", Rise = 0.1.Meters, Count = 4, Lay = (-40).Degrees, Length = 0.3.Meters, Standoff = rigid },
        ],
    };

    private static MemberSegment Neck(double bottom, double top) => new()
    {
        Section = new Tube(bottom.Meters, 10.Millimeters),
        TopSection = new Tube(top.Meters, 8.Millimeters),
        Material = StructuralSteel.S355,
    };

    private TowerLevel Level(string name, double z, double x, double y, double? diameter)
    {
        (double px, double py) = Turned(x, y);
        return new TowerLevel(name, z.Meters)
        {
            OffsetX = px.Meters,
            OffsetY = py.Meters,
            Plan = diameter is { } d ? new PolygonPlan(4, d.Meters, (0.25 * Math.PI + Turn).Radians) : null,
            Frame = diameter is null ? null : new LevelFrame { Horizontals = new AngleBar(80.Millimeters, 8.Millimeters), PlanBracing = new AngleBar(50.Millimeters, 5.Millimeters), Material = StructuralSteel.S355 },
        };
    }

    private SkinStation Station(double z, double a, double b, double x, double y)
    {
        (double px, double py) = Turned(x, y);
        return new SkinStation
        {
            Elevation = z.Meters,
            Outline = new EllipseOutline { WidthX = a.Meters, WidthY = b.Meters, CenterX = px.Meters, CenterY = py.Meters, Rotation = Turn.Radians },
        };
    }

    private StandoffBar Bar((double X, double Y, double Z) tower, (double X, double Y, double Z) skin, Standoff standoff) =>
        new() { TowerEnd = Point(tower.X, tower.Y, tower.Z), SkinEnd = Point(skin.X, skin.Y, skin.Z), Standoff = standoff };

    private (double X, double Y) Turned(double x, double y)
    {
        (double sin, double cos) = Math.SinCos(Turn);
        return (cos * x - sin * y, sin * x + cos * y);
    }
}
