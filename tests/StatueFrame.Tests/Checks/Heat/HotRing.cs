using StatueFrame.Analysis;

namespace StatueFrame.Tests.Checks.Heat;

/// <summary>A round band of copper on radial bars of a very stiff core: small enough to be worked out by hand.</summary>
internal static class HotRing
{
    public const double Radius = 1.5, Length = 0.6, Width = 0.06, Thickness = 0.008;

    public const double Copper = 9.8e-6 * 1.8, Steel = 12e-6;

    public static Standoff Flat { get; } = new()
    {
        Section = new FlatBar(Width.Meters, Thickness.Meters),
        Material = StructuralSteel.S355,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Rigid,
    };

    public static double Axial => StructuralSteel.S355.YoungsModulus.Pascals * Width * Thickness / Length;

    public static Statue Of(int bars, int bands = 1, Standoff? flat = null, SeamStiffness? seams = null, double firstAngle = 0) => new()
    {
        Name = "hot ring",
        Tower = new Tower
        {
            Levels = [new TowerLevel("base", 0.Meters), .. Enumerable.Range(0, bands).Select(i => new TowerLevel($"L{i + 1}", (1.0 + 2 * i).Meters))],
            Segments = [.. Enumerable.Range(0, bands).Select(_ => new CoreSegment
            {
                BendingX = Rigidity.FromKilonewtonSquareMeters(1e12),
                BendingY = Rigidity.FromKilonewtonSquareMeters(1e12),
                Torsion = Rigidity.FromKilonewtonSquareMeters(1e12),
                Axial = 1e15.Newtons,
                Mass = 100.KilogramsPerMeter,
            })],
        },
        Skin = new Skin
        {
            Material = StatueFrame.Copper.HalfHardR240,
            Thickness = 2.5.Millimeters,
            ClosedTop = false,
            Stations = [.. Enumerable.Range(0, bands + 1).Select(i => new SkinStation
            {
                Elevation = (2.0 * i).Meters,
                Outline = new EllipseOutline { WidthX = (2 * Radius).Meters, WidthY = (2 * Radius).Meters },
            })],
        },
        Standoffs = [.. Enumerable.Range(0, bands).Select(i => new ExplicitRing
        {
            Level = $"L{i + 1}",
            Bars = [.. Enumerable.Range(0, bars).Select(k => Bar(2 * Math.PI * k / bars + firstAngle, 1.0 + 2 * i, flat ?? Flat))],
        })],
        Seams = seams,
        Points = [new NamedPoint("ring", "band 1"), new NamedPoint("top", $"L{bands}")],
    };

    public static LoadCase Under(Statue statue, FactoredAction heat) => Respond(statue, heat).Cases[0];

    public static Response Respond(Statue statue, FactoredAction heat) =>
        StatueModel.Build(statue).Respond(new Situation { Name = "heat", Actions = [heat] });

    private static StandoffBar Bar(double angle, double z, Standoff flat)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new StandoffBar
        {
            TowerEnd = Point3.FromMeters((Radius - Length) * cos, (Radius - Length) * sin, z),
            SkinEnd = Point3.FromMeters(Radius * cos, Radius * sin, z),
            Standoff = flat,
        };
    }
}
