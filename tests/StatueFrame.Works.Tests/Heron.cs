using StatueFrame.Analysis;
using StatueFrame.Shape;
using StatueFrame.Studies;

namespace StatueFrame.Works.Tests;

/// <summary>The Saltmere Heron from its file, and small statues beside it.</summary>
internal static class Heron
{
    public static SheetCutting Cutting { get; } = new()
    {
        Metal = Copper.HalfHardR240,
        Thickness = 2.4.Millimeters,
        GreatestLength = 2.4.Meters,
        GreatestWidth = 1.2.Meters,
        GreatestMass = 60.Kilograms,
    };

    private static readonly Lazy<StatueDocument> file = new(() => StatueFile.Load(Path.Combine(Repository.Root, "docs", "examples", "saltmere-heron.json")));
    private static readonly Lazy<StatueModel> model = new(() => StatueModel.Build(Statue));
    private static readonly Lazy<CheckSheet> sheet = new(() => Document.Check());
    private static readonly Lazy<SheetPlan> sheets = new(() => SheetPlan.Of(SkinSurface.Of(Statue.Skin!, 0.25.Meters), Cutting));
    private static readonly Lazy<SwayCurve> curve = new(() => SwayCurve.Of(Model, Wind, new SwayCurveOptions { AnemometerHeight = 12.Meters }));

    public static StatueDocument Document => file.Value;

    public static Statue Statue => Document.Statue;

    public static StatueModel Model => model.Value;

    public static CheckSheet Sheet => sheet.Value;

    public static SheetPlan Sheets => sheets.Value;

    public static SwayCurve Curve => curve.Value;

    public static WindAction Wind => (WindAction)Document.Actions!.Variable.First(v => v.Action is WindAction).Action;

    /// <summary>A tube of one wall in pieces of one length, spliced by nothing.</summary>
    public static Statue Tube(int segments, double length, double wall = 0.01) => new()
    {
        Name = "tube",
        Tower = new Tower
        {
            Levels = [.. Enumerable.Range(0, segments + 1).Select(i => new TowerLevel($"T{i}", (i * length).Meters))],
            Segments = [.. Enumerable.Range(0, segments).Select(_ => new MemberSegment { Section = new Tube(0.4.Meters, wall.Meters), Material = StructuralSteel.S355 })],
        },
    };
}
