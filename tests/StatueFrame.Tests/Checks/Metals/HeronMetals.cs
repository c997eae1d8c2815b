namespace StatueFrame.Tests.Checks.Metals;

/// <summary>A 6 m invented heron: copper on steel flats over a lattice and a tube, with a fin for a limb.</summary>
internal static class HeronMetals
{
    public static Corrosion Sea { get; } = new() { Air = Atmosphere.Of(Corrosivity.C5), AirInside = Atmosphere.Of(Corrosivity.C3) };

    public static Standoff Flat { get; } = new()
    {
        Section = new FlatBar(50.Millimeters, 12.Millimeters),
        Material = StructuralSteel.S355,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Rigid,
    };

    public static LatticeSegment Panel { get; } = new()
    {
        Legs = new AngleBar(80.Millimeters, 8.Millimeters),
        Braces = new AngleBar(50.Millimeters, 6.Millimeters),
        Material = StructuralSteel.S355,
    };

    public static Statue Statue { get; } = new()
    {
        Name = "heron",
        Tower = new Tower
        {
            Levels =
            [
                new TowerLevel("L0", 0.Meters) { Plan = TowerPlan.Square(1.2.Meters) },
                new TowerLevel("L1", 1.Meters) { Plan = TowerPlan.Square(1.1.Meters) },
                new TowerLevel("L2", 3.Meters) { Plan = TowerPlan.Square(0.9.Meters) },
                new TowerLevel("L3", 5.Meters),
            ],
            Segments = [Panel, Panel, new MemberSegment { Section = new Tube(0.3.Meters, 8.Millimeters), TopSection = new Tube(0.25.Meters, 8.Millimeters), Material = StructuralSteel.S355 }],
        },
        Skin = SkinOf(3, 0, 2, 4, 6),
        Standoffs = [.. Enumerable.Range(1, 3).Select(i => new EvenRing { Level = $"L{i}", Count = 8, FirstAngle = 22.5.Degrees, Length = 0.5.Meters, Standoff = Flat })],
        Limbs =
        [
            new Limb
            {
                Name = "fin", From = "L2", Heading = 0.Degrees, Inclination = 20.Degrees,
                Tower = new Tower
                {
                    Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("tip", 2.5.Meters)],
                    Segments = [new MemberSegment { Section = new RectangularTube(150.Millimeters, 100.Millimeters, 6.Millimeters), Material = StainlessSteel.Grade316L }],
                },
                Skin = SkinOf(0.8, 2, 3),
                Standoffs = [new EvenRing { Level = "tip", Count = 6, Length = 0.3.Meters, Standoff = Flat }],
            },
        ],
        Points = [new NamedPoint("tip", "band 3")],
        Corrosion = Sea,
    };

    public static WindAction Wind { get; } = new()
    {
        Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(10.Meters, 40.MetersPerSecond, null)] },
        ForceCoefficient = 1.3,
        GustEffectFactor = 1,
    };

    public static Situation Storm { get; } = new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Wind] };

    public static Criteria Criteria { get; } = new() { BarStressFraction = 0.9, Modes = 2, Durability = new DurabilityLimit { DesignLife = 50.Years365, GreatestLossFraction = 0.2 } };

    private static Skin SkinOf(double width, params double[] stations) => new()
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        Stations = [.. stations.Select(z => new SkinStation { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = (0.8 * width).Meters, WidthY = (0.8 * width).Meters } })],
    };
}
