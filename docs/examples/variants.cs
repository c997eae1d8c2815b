#:project ../../src/StatueFrame/StatueFrame.csproj

// Which change? Variants of the Saltmere Heron side by side: what governs each, which is the lightest that is good enough,
// and why two of them differ. One that cannot be built says so in its row. All data are invented.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Studies;
using UnitsNet;

StatueDocument document = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json"));
Statue heron = document.Statue;
// The Heron's own wind, with the gust factors that were found for it as drawn.
var wind = (WindAction)document.Actions!.Variable[0].Action;
Situation[] situations = [new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] }];
var criteria = new Criteria { BarStressFraction = 1 / 1.1, Damping = document.Criteria.Damping, Modes = 3 };

// A change is a function from statue to statue; a list, a grid and a random sample are made of such functions.
Variant[] variants =
[
    new("as drawn", s => s),
    .. Variant.Grid(
        Variant.List("bars mm", new[] { 16.0, 20 }, BodyBars),
        Variant.List("sheet mm", new[] { 2.0 }, (s, t) => s with { Skin = s.Skin! with { Thickness = t.Millimeters } })),
    .. Variant.Sample([Uncertain.Uniform("base GN·m/rad", 2, 10)], 1, (s, x) => s with { Tower = s.Tower with { Base = TowerBase.Rocking((1e9 * x[0]).NewtonMetersPerRadian) } }),
    new("sheet in meters", s => s with { Skin = s.Skin! with { Thickness = 2.4.Meters } }),
];
VariantStudy study = VariantStudy.Of(heron, variants, criteria, situations);
Console.WriteLine(study);

// The lightest in which bars and tower hold; whatever else fails stays on its sheet.
VariantRow? best = study.Best(r => r.Mass!.Value.Kilograms, r => r.UtilizationOf("bars") <= 1 && r.UtilizationOf("tower") <= 1);
Console.WriteLine($"lightest: {best?.ToString() ?? "none"}");
Console.WriteLine();
Console.WriteLine(study.Explain("as drawn", "bars mm 20, sheet mm 2"));

// The whole table, for a spreadsheet.
Console.WriteLine(study.ToCsv().Split("\r\n")[0]);

static Statue BodyBars(Statue statue, double t) => statue with
{
    Standoffs = [.. statue.Standoffs.Cast<EvenRing>().Select(ring => ring.Level.StartsWith('L') ? ring with { Standoff = ring.Standoff with { Section = new FlatBar(90.Millimeters, t.Millimeters) } } : ring)],
};

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
