using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Actions;

/// <summary>A small invented statue with a lattice tower, a tube on top, four bands and one limb, whole or in stages.</summary>
internal static class Stages
{
    public static readonly WindProfile Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero };

    public static readonly LatticeSegment Panel = new()
    {
        Legs = new AngleBar(120.Millimeters, 12.Millimeters),
        Braces = new AngleBar(75.Millimeters, 8.Millimeters),
        Material = StructuralSteel.S355,
    };

    public static readonly Tower Tower = new()
    {
        Levels =
        [
            .. Enumerable.Range(0, 4).Select(i => new TowerLevel($"L{i}", (2.0 * i).Meters) { Plan = TowerPlan.Square(2.Meters) }),
            new TowerLevel("top", 8.Meters),
        ],
        Segments = [Panel, Panel, Panel, new MemberSegment { Section = new Tube(400.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }],
    };

    public static readonly Skin Skin = new()
    {
        Material = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        Stations = [Station(0, 4, 4), Station(5, 3.6, 3), Station(8, 2, 2)],
        BandEdges = [0.Meters, 2.Meters, 4.Meters, 6.Meters, 8.Meters],
    };

    private static readonly Standoff flat = new()
    {
        Section = new FlatBar(60.Millimeters, 8.Millimeters),
        Material = StainlessSteel.Grade316L,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Rigid,
    };

    public static readonly Statue Statue = new()
    {
        Name = "Saltmere chick",
        Tower = Tower,
        Skin = Skin,
        Standoffs =
        [
            .. Enumerable.Range(0, 4).Select(i => new EvenRing { Level = $"L{i}", Rise = 0.6.Meters, Count = 8, Lay = 30.Degrees, Length = 0.9.Meters, Standoff = flat }),
        ],
        Points = [new NamedPoint("tip", "band 4"), new NamedPoint("shoulder", "L3")],
        Fittings = [new Fitting { Name = "lamp", On = "band 3", Mass = 10.Kilograms }],
        Limbs =
        [
            new Limb
            {
                Name = "wing", From = "L3", Heading = 90.Degrees, Inclination = 0.Degrees,
                Tower = new Tower
                {
                    Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("end", 4.Meters)],
                    Segments = [new MemberSegment { Section = new Tube(200.Millimeters, 8.Millimeters), Material = StructuralSteel.S355 }],
                },
            },
        ],
    };

    public static WindAction Wind(params double[] headings) => new()
    {
        Profile = Profile,
        GustEffectFactor = 1,
        ForceCoefficient = 1.4,
        Headings = headings.Select(h => Angle.FromDegrees(h)).ToValueList(),
    };

    /// <summary>The tower by itself, without a limb.</summary>
    public static Statue Bare => Statue.CladUpTo(0.Meters) with { Limbs = [] };

    public static LoadCase Blow(Statue statue, StatueAction action, params StatueAction[] more) =>
        StatueModel.Build(statue).Respond(new Situation { Name = "test", Actions = [1 * action, .. more.Select(m => 1 * m)] }).Cases[0];

    private static SkinStation Station(double z, double x, double y) =>
        new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = x.Meters, WidthY = y.Meters } };
}
