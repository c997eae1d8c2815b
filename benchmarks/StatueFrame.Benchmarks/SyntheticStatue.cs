namespace StatueFrame.Benchmarks;

/// <summary>A statue of any size: lattice tower, a band of skin and a ring of sixteen bars at every level.</summary>
internal static class SyntheticStatue
{
    private const double Step = 1;

    public static Statue Of(int levels)
    {
        double Width(int i) => 4 - 2.5 * i / levels;
        return new Statue
        {
            Name = $"{levels} levels",
            Tower = new Tower
            {
                Levels = [.. Enumerable.Range(0, levels + 1).Select(i => new TowerLevel($"L{i}", (Step * i).Meters) { Plan = TowerPlan.Square(Width(i).Meters) })],
                Segments = [.. Enumerable.Repeat<TowerSegment>(new LatticeSegment
                {
                    Legs = new AngleBar(150.Millimeters, 150.Millimeters, 15.Millimeters),
                    Braces = new AngleBar(80.Millimeters, 80.Millimeters, 8.Millimeters),
                    Material = StructuralSteel.S355,
                }, levels)],
            },
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = 2.4.Millimeters,
                ArmatureMass = 8.KilogramsPerSquareMeter,
                Stations = [.. Enumerable.Range(0, levels + 1).Select(i => new SkinStation
                {
                    Elevation = (Step * i).Meters,
                    Outline = new EllipseOutline { WidthX = (Width(i) + 2.4).Meters, WidthY = (Width(i) + 2.0).Meters },
                })],
            },
            Standoffs = [.. Enumerable.Range(1, levels).Select(i => new EvenRing
            {
                Level = $"L{i}", Band = i, Rise = -0.5.Meters, Count = 16, Lay = 45.Degrees, Length = 0.9.Meters,
                Standoff = new Standoff
                {
                    Section = new FlatBar(60.Millimeters, 8.Millimeters), Material = StainlessSteel.Grade316L,
                    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid,
                },
            })],
            Points = [new NamedPoint("tip", $"L{levels}")],
        };
    }

    public static Situation[] Situations { get; } =
    [
        new Situation
        {
            Name = "storm",
            Actions =
            [
                1.35 * new SelfWeight(),
                1.5 * new WindAction { Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.II } },
            ],
        },
    ];

    public static Criteria Criteria { get; } = new() { Modes = 12 };
}
