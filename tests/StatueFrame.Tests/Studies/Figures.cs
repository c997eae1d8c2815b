using StatueFrame.Analysis;

namespace StatueFrame.Tests.Studies;

/// <summary>Small invented figures for the studies of wind.</summary>
internal static class Figures
{
    /// <summary>A slender 8 m figure on a mast, flat in plan, that leans forward under a lamp.</summary>
    public static Statue Leaning { get; } = Turned(0);

    public static StatueModel Model { get; } = StatueModel.Build(Leaning);

    public static WindAction Wind { get; } = new()
    {
        Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II },
        ForceCoefficient = 1.2,
        GustEffectFactor = 1.1,
    };

    public static Situation Storm { get; } = new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Wind] };

    /// <summary>The figure as a whole turned about z.</summary>
    public static Statue Turned(double degrees)
    {
        double angle = degrees * Math.PI / 180;
        return Make(
            degrees, z => new MemberSegment
            {
                Section = new Tube((0.32 - 0.02 * z).Meters, 10.Millimeters),
                TopSection = new Tube((0.28 - 0.02 * z).Meters, 10.Millimeters),
                Material = StructuralSteel.S355,
            },
            _ => null) with
        {
            Fittings =
            [
                new Fitting
                {
                    Name = "lamp", On = "6 m", Mass = 250.Kilograms,
                    At = new Point3((0.8 * Math.Cos(angle)).Meters, (0.8 * Math.Sin(angle)).Meters, 6.Meters),
                },
            ],
        };
    }

    /// <summary>The figure on a lattice tower with braces of slender flats.</summary>
    public static Statue OnTensionOnlyLattice { get; } = Make(
        0, _ => new LatticeSegment
        {
            Legs = new AngleBar(60.Millimeters, 6.Millimeters),
            Braces = new FlatBar(30.Millimeters, 5.Millimeters),
            Material = StructuralSteel.S355,
            Bracing = Bracing.TensionOnlyCross,
        },
        z => TowerPlan.Square((0.5 - 0.02 * z).Meters));

    public static Response At(StatueModel model, WindAction wind, double ratio) => model.Respond(new Situation
    {
        Name = "wind",
        Actions = [new SelfWeight(), wind with { Profile = wind.Profile.AtSpeed(ratio) }],
    });

    /// <summary>The fields of comma-separated values, line by line.</summary>
    public static string[][] Parse(string csv)
    {
        Assert.EndsWith("\r\n", csv);
        return [.. csv[..^2].Split("\r\n").Select(line => Fields(line).ToArray())];

        static IEnumerable<string> Fields(string line)
        {
            var field = new System.Text.StringBuilder();
            bool quoted = false;
            foreach (char c in line + ",")
            {
                if (c == '"')
                    quoted = !quoted;
                if (c != ',' || quoted)
                {
                    field.Append(c);
                    continue;
                }
                yield return field.ToString().Trim('"').Replace("\"\"", "\"");
                field.Clear();
            }
        }
    }

    private static Statue Make(double degrees, Func<double, TowerSegment> segment, Func<double, TowerPlan?> plan) => new()
    {
        Name = "Study for a heron",
        Tower = new Tower
        {
            Levels = [.. new[] { 0.0, 2, 4, 6 }.Select(z => new TowerLevel($"{z} m", z.Meters) { Plan = plan(z) })],
            Segments = [segment(0), segment(2), segment(4)],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [Station(0, 1.8, 1.2, 0, degrees), Station(4, 1.9, 1.0, 0, degrees), Station(8, 0.8, 0.5, 0.15, degrees)],
            BandEdges = [0.Meters, 3.Meters, 5.Meters, 8.Meters],
        },
        Standoffs =
        [
            .. new[] { 2, 4, 6 }.Select(z => new EvenRing
            {
                Level = $"{z} m", Count = 8, FirstAngle = (5 + degrees).Degrees, Lay = 30.Degrees, Length = 0.2.Meters,
                Standoff = new Standoff
                {
                    Section = new FlatBar(40.Millimeters, 12.Millimeters), Material = StainlessSteel.Grade316L,
                    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned,
                },
            }),
        ],
        Points = [new NamedPoint("tip", "band 3"), new NamedPoint("belt", "4 m")],
    };

    private static SkinStation Station(double z, double x, double y, double center, double degrees)
    {
        double angle = degrees * Math.PI / 180;
        return new SkinStation
        {
            Elevation = z.Meters,
            Outline = new EllipseOutline
            {
                WidthX = x.Meters,
                WidthY = y.Meters,
                Rotation = degrees.Degrees,
                CenterX = (center * Math.Cos(angle)).Meters,
                CenterY = (center * Math.Sin(angle)).Meters,
            },
        };
    }
}
