
namespace StatueFrame.Benchmarks;

/// <summary>Random figures on a mast, each from its number alone, for what is learned of many.</summary>
internal static class RandomFigures
{
    /// <summary>A figure with what tells it from others.</summary>
    /// <param name="Statue">The description.</param>
    /// <param name="Joints">"described", "none" or "open": joints at every edge of bands, a skin said to have none, or nothing said.</param>
    /// <param name="Saddles">"held" or "sliding".</param>
    /// <param name="Armature">Whether bars stiffen the sheet between standoffs.</param>
    /// <param name="Uneven">Greatest over least thickness of the rings' bars.</param>
    /// <param name="Spacing">Distance of neighboring bars along the widest outline, m.</param>
    internal sealed record Figure(Statue Statue, string Joints, string Saddles, bool Armature, double Uneven, double Spacing);

    public static Figure Of(int number)
    {
        var random = new Random(number);
        double width = Between(0.8, 4.5), depth = width * Between(0.6, 1), height = width * Between(1.5, 4), taper = Between(0.4, 1);
        int bands = random.Next(3, 8), count = Math.Clamp((int)(Math.PI * width / Between(0.3, 1.1)), 6, 40);
        string joints = random.Next(3) switch { 0 => "described", 1 => "none", _ => "open" };
        bool slides = random.Next(3) == 0, armature = random.Next(2) == 0;
        double thick = Between(6, 14), uneven = random.Next(2) == 0 ? 1 : Between(1.3, 2.5), lay = random.Next(2) == 0 ? 0 : Between(10, 60);
        double length = Math.Min(0.6, 0.2 * width), sheet = Between(1, 3), mast = Between(0.12, 0.2) * width;
        double[] edges = [.. Enumerable.Range(0, bands + 1).Select(i => height * i / bands)];
        var steel = new Standoff
        {
            Section = new FlatBar(Between(36, 70).Millimeters, thick.Millimeters),
            Material = StainlessSteel.Grade316L,
            TowerFixity = EndFixity.Rigid,
            SkinFixity = random.Next(2) == 0 ? EndFixity.Rigid : EndFixity.Pinned,
            Slide = slides ? SaddleSlide.AlongSkin : SaddleSlide.None,
        };
        double[] levels = [0, .. Enumerable.Range(0, bands).Select(i => 0.5 * (edges[i] + edges[i + 1]))];
        Tower tower = Tower.Mast(_ => new Tube(mast.Meters, (0.05 * mast).Meters), StructuralSteel.S355, [.. levels.Select(z => z.Meters)]);
        var statue = new Statue
        {
            Name = $"figure {number}",
            Tower = tower,
            Skin = new Skin
            {
                Material = Copper.HalfHardR240,
                Thickness = sheet.Millimeters,
                ArmatureMass = 4.KilogramsPerSquareMeter,
                Stations = [SkinStation.Ellipse(0.Meters, width.Meters, depth.Meters), SkinStation.Ellipse(height.Meters, (taper * width).Meters, (taper * depth).Meters)],
                BandEdges = [.. edges.Select(z => z.Meters)],
                Joints = joints switch { "described" => [.. edges[1..^1].Select(z => new SkinJoint(z.Meters, 5.Millimeters))], "none" => [], _ => null },
                Armature = armature ? new Armature { Bar = new FlatBar(40.Millimeters, 8.Millimeters), Material = Copper.HalfHardR240, Spacing = 0.5.Meters, PanelLength = 0.5.Meters, Span = 0.6.Meters } : null,
            },
            Standoffs =
            [
                .. Enumerable.Range(1, bands).Select(i => (StandoffRing)new EvenRing
                {
                    Level = tower.Levels[i].Name,
                    Count = count,
                    Lay = lay.Degrees,
                    Length = length.Meters,
                    Standoff = steel with { Section = new FlatBar(steel.Section.Width, (thick * (uneven == 1 ? 1 : 1 + (uneven - 1) * random.NextDouble())).Millimeters) },
                }),
            ],
            Points = [new NamedPoint("top", $"band {bands}")],
        };
        return new Figure(statue, joints, slides ? "sliding" : "held", armature, uneven, Math.PI * width / count);

        double Between(double least, double most) => least + (most - least) * random.NextDouble();
    }

    /// <summary>A storm from eight sides with the figure's weight.</summary>
    public static Situation Storm { get; } = new()
    {
        Name = "storm",
        Actions =
        [
            new SelfWeight(),
            new WindAction
            {
                Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.II },
                ForceCoefficient = 1.2,
                GustEffectFactor = 1.3,
                Headings = Headings.Evenly(8),
            },
        ],
    };
}
