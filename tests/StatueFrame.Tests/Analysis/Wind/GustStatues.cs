using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Analysis.Gusts;

/// <summary>Round towers with a skin on stiff standoffs, to be blown at.</summary>
internal static class GustStatues
{
    /// <summary>A uniform cantilever in a skin of the same width all the way up.</summary>
    /// <param name="height">Height, m.</param>
    /// <param name="width">Width of the round skin, m.</param>
    /// <param name="frequency">About the frequency of its lowest sway, Hz.</param>
    /// <param name="mass">Mass of the tower, kg/m; skin and standoffs come on top.</param>
    /// <param name="bands">Number of bands.</param>
    /// <param name="limbs">What branches off it.</param>
    public static Statue Uniform(double height, double width, double frequency, double mass = 2000, int bands = 16, params Limb[] limbs)
    {
        double step = height / bands, total = mass + 0.3 * 9.0 * Math.PI * width;
        double EI = total * Math.Pow(height, 4) * Math.Pow(2 * Math.PI * frequency / 3.516, 2);
        TowerLevel[] levels = [Level("base", 0, width), .. Enumerable.Range(0, bands).Select(i => Level($"L{i + 1}", (i + 0.5) * step, width)), Level("top", height, width)];
        return new Statue
        {
            Name = "round tower",
            Tower = new Tower { Levels = [.. levels], Segments = [.. Enumerable.Repeat<TowerSegment>(Core(EI, mass), bands + 1)] },
            Skin = Sheet(width, 0, height, bands),
            Standoffs = [.. Enumerable.Range(1, bands).Select(i => Ring($"L{i}"))],
            Limbs = [.. limbs],
            Points = [new NamedPoint("tip", "top"), new NamedPoint("middle", $"L{Math.Max(1, bands / 2)}")],
        };
    }

    /// <summary>A stiff round arm held out level.</summary>
    public static Limb Arm(string from, double heading, double length = 6, double width = 1) => new()
    {
        Name = "arm",
        From = from,
        Heading = heading.Degrees,
        Inclination = 0.Degrees,
        Tower = new Tower
        {
            Levels = [Level("root", 0, width), Level("A1", 0.5 * length, width), Level("A2", length, width)],
            Segments = [Core(5e9, 100), Core(5e9, 100)],
        },
        Skin = Sheet(width, 0.25 * length, 1.25 * length, 2),
        Standoffs = [Ring("A1"), Ring("A2")],
    };

    public static En1991Wind Wind(double speed = 26, TerrainCategory terrain = TerrainCategory.II) =>
        new() { FundamentalVelocity = speed.MetersPerSecond, Terrain = terrain };

    public static WindAction Action(WindProfile profile) => new() { Profile = profile, ForceCoefficient = 1 };

    public static GustResponse Blow(
        Statue statue, WindProfile profile, double heading = 0, double logDecrement = 0.05, GustOptions? options = null, int modes = 6)
    {
        StatueModel model = StatueModel.Build(statue);
        return GustResponse.Of(model, model.Modes(modes), Action(profile), heading.Degrees, new DampingModel { StructuralDecrement = logDecrement }, options);
    }

    private static TowerLevel Level(string name, double z, double width) => new(name, z.Meters) { Plan = new RoundPlan((0.5 * width).Meters) };

    private static CoreSegment Core(double EI, double mass) => new()
    {
        BendingX = Rigidity.FromNewtonSquareMeters(EI),
        BendingY = Rigidity.FromNewtonSquareMeters(EI),
        Torsion = Rigidity.FromNewtonSquareMeters(EI),
        Axial = 1e11.Newtons,
        Mass = LinearDensity.FromKilogramsPerMeter(mass),
    };

    private static Skin Sheet(double width, double from, double to, int bands) => new()
    {
        Material = Copper.HalfHardR240,
        Thickness = 0.3.Millimeters,
        Stations = [Station(from, width), Station(to, width)],
        BandEdges = [.. Enumerable.Range(0, bands + 1).Select(i => (from + (to - from) * i / bands).Meters)],
        ClosedTop = false,
    };

    private static SkinStation Station(double z, double width) => new()
    {
        Elevation = z.Meters,
        Outline = new EllipseOutline { WidthX = width.Meters, WidthY = width.Meters },
    };

    private static EvenRing Ring(string level) => new()
    {
        Level = level,
        Count = 12,
        Length = 0.24.Meters,
        Standoff = new Standoff
        {
            Section = new FlatBar(200.Millimeters, 30.Millimeters),
            Material = StructuralSteel.S355,
            TowerFixity = EndFixity.Rigid,
            SkinFixity = EndFixity.Rigid,
        },
    };
}
