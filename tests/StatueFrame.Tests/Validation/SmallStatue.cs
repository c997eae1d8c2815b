namespace StatueFrame.Tests.Validation;

/// <summary>One valid small statue with a part of every kind, to be spoiled by tests; and what it is checked for.</summary>
internal sealed record SmallStatue(Statue Statue, Criteria Criteria, params Situation[] Situations)
{
    public static Standoff Flat { get; } = new()
    {
        Section = new FlatBar(60.Millimeters, 8.Millimeters),
        Material = StructuralSteel.S355,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Rigid,
    };

    public static LatticeSegment Panel { get; } = new()
    {
        Legs = new AngleBar(100.Millimeters, 10.Millimeters),
        Braces = new AngleBar(60.Millimeters, 6.Millimeters),
        Material = StructuralSteel.S355,
    };

    public static MemberSegment Mast { get; } = new()
    {
        Section = new Tube(400.Millimeters, 10.Millimeters),
        Material = StructuralSteel.S355,
    };

    public static CoreSegment Core { get; } = new()
    {
        BendingX = Rigidity.FromKilonewtonSquareMeters(5e4),
        BendingY = Rigidity.FromKilonewtonSquareMeters(5e4),
        Torsion = Rigidity.FromKilonewtonSquareMeters(4e4),
        Axial = 2e9.Newtons,
        Mass = 100.KilogramsPerMeter,
    };

    public static Tower Trunk { get; } = new()
    {
        Levels =
        [
            new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(1.6.Meters) },
            new TowerLevel("mid", 3.Meters) { Plan = TowerPlan.Square(1.2.Meters) },
            new TowerLevel("top", 6.Meters),
        ],
        Segments = [Panel, Mast],
    };

    public static Skin Body { get; } = SkinOf(3, 0, 3, 6);

    public static EvenRing Ring(string level, double rise = 1) => new()
    {
        Level = level,
        Count = 6,
        Lay = 40.Degrees,
        Rise = rise.Meters,
        Length = 1.5.Meters,
        Standoff = Flat,
    };

    public static ExplicitRing Props { get; } = new()
    {
        Level = "base",
        Bars =
        [
            new StandoffBar { TowerEnd = Point3.FromMeters(0.8, 0, 1), SkinEnd = Point3.FromMeters(1.5, 0, 1), Standoff = Flat },
            new StandoffBar { TowerEnd = Point3.FromMeters(-0.8, 0, 1), SkinEnd = Point3.FromMeters(-1.5, 0, 1), Standoff = Flat },
        ],
    };

    public static Limb Arm { get; } = new()
    {
        Name = "arm",
        From = "mid",
        Heading = 0.Degrees,
        Inclination = 20.Degrees,
        Tower = new Tower
        {
            Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("hand", 4.Meters)],
            Segments = [Mast],
        },
        Skin = SkinOf(1, 2.5, 4.5),
        Standoffs = [Ring("hand", 0) with { Length = 0.3.Meters }],
    };

    public static WindAction Wind { get; } = new()
    {
        Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.II },
    };

    public static Situation Storm { get; } = new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Wind] };

    public static Situation Sway { get; } = new() { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), Wind] };

    public static SmallStatue Good { get; } = new(
        new Statue
        {
            Name = "small heron",
            Tower = Trunk,
            Skin = Body,
            Standoffs = [Ring("base"), Ring("mid")],
            Limbs = [Arm],
            Fittings = [new Fitting { Name = "lamp", On = "top", Mass = 50.Kilograms }],
            Points = [new NamedPoint("tip", "band 2"), new NamedPoint("hand", "arm/hand")],
        },
        new Criteria { Sway = [new SwayLimit("tip", 50.Millimeters)] },
        Storm, Sway);

    public CheckSheet Check() => Statue.Check(Criteria, Situations);

    /// <summary>With the metal to last a hundred years times a factor.</summary>
    public SmallStatue Durable(double f) => this with { Criteria = Criteria with { Durability = new DurabilityLimit { DesignLife = 100.Years365 * f } } };

    public SmallStatue With(Func<Statue, Statue> change) => this with { Statue = change(Statue) };

    private static Skin SkinOf(double width, params double[] elevations) => new()
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.5.Millimeters,
        Stations = elevations.Select(z => new SkinStation
        {
            Elevation = z.Meters,
            Outline = new EllipseOutline { WidthX = width.Meters, WidthY = width.Meters },
        }).ToValueList(),
    };
}
