namespace StatueFrame.Reporting.Tests;

/// <summary>A small statue of the project's own scenario. All data are invented.</summary>
internal static class Study
{
    private static readonly double[] levels = [0, 1, 3, 5, 7];

    public static Statue Heron(string name = "Study for a heron") => new()
    {
        Name = name,
        Tower = new Tower
        {
            Levels = [.. levels.Select(z => new TowerLevel(FormattableString.Invariant($"{z} m"), z.Meters))],
            Segments =
            [
                .. levels.SkipLast(1).Zip(levels.Skip(1), (z, top) => new MemberSegment
                {
                    Section = Mast(z), TopSection = Mast(top), Material = StructuralSteel.S355,
                }),
            ],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [Station(0, 1.6, 1.4), Station(4, 1.8, 1.2), Station(8, 0.5, 0.4)],
            BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters, 8.Meters],
        },
        Standoffs =
        [
            .. levels.Skip(1).Select(z => new EvenRing
            {
                Level = FormattableString.Invariant($"{z} m"), Count = 16, Lay = 30.Degrees, Length = 0.25.Meters,
                Standoff = new Standoff
                {
                    Section = new FlatBar(40.Millimeters, 12.Millimeters), Material = StainlessSteel.Grade316L,
                    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
                },
            }),
        ],
        Points = [new NamedPoint("tip", "band 4")],
    };

    public static Criteria Criteria { get; } = new() { Sway = [new SwayLimit("tip", 40.Millimeters)], BarStressFraction = 1 / 1.1, Modes = 3 };

    public static Situation[] Situations { get; } =
    [
        new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Wind] },
        new() { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), Wind] },
    ];

    public static CalculationPackage Package(string name = "Study for a heron") => CalculationPackage.Of(Heron(name), Criteria, Situations);

    private static WindAction Wind => new()
    {
        Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
        ForceCoefficient = 1.2,
        GustEffectFactor = 1.4,
    };

    private static Tube Mast(double z) => new((0.32 - 0.02 * z).Meters, 10.Millimeters);

    private static SkinStation Station(double z, double x, double y) => new()
    {
        Elevation = z.Meters,
        Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters },
    };
}
