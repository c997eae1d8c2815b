#:project ../../src/StatueFrame.Works/StatueFrame.Works.csproj

// The workshop and the road: the Heron's part list, the blanks of its hammered sheets, crates, pieces of the tower on a truck and on
// the hook, and the straps that hold them. All data are invented.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Reporting;
using StatueFrame.Shape;
using StatueFrame.Works;
using UnitsNet;

Statue heron = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json")).Statue;
string folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "saltmere-works")).FullName;

// 1. Sheets of the trunk, from the described skin: no scan is needed.
var cutting = new SheetCutting
{
    Metal = Copper.HalfHardR240, Thickness = 2.4.Millimeters, GreatestLength = 2.4.Meters, GreatestWidth = 1.2.Meters, GreatestMass = 60.Kilograms,
};
SheetPlan sheets = SheetPlan.Of(SkinSurface.Of(heron.Skin!, 0.2.Meters), cutting);
SheetWorkshop shop = SheetWorkshop.Of(sheets, cutting, heron.Skin!.SheetSeam!);
var limits = new HammeringLimits { Elongation = 0.35 };
Console.WriteLine($"{sheets.Sheets.Count} SHEETS OF THE TRUNK, {shop.Seams.Count} seams between two of them, {shop.Seams.Sum(s => s.Rivets)} rivets");
Console.WriteLine("The five that need the most hammering:");
foreach (Hammering h in shop.Hammered(limits).Take(5))
    Console.WriteLine($"  sheet {h.Sheet}: {h.Verdict}, {h.Reason}");
File.WriteAllText(Path.Combine(folder, "blanks.csv"), shop.ToCsv(limits));
shop.Template(40).Save(Path.Combine(folder, "sheet-40.dxf"));
shop.Form(40, 250.Millimeters).Save(Path.Combine(folder, "sheet-40-form.svg"));
Console.WriteLine($"Template: {shop.Template(40).Title}");

// 2. The part list, with the sheets in it, and drawings that carry its names.
PartList parts = PartList.Of(heron, [new BodySheets("trunk", sheets)]);
Console.WriteLine($"\n{parts}");
File.WriteAllText(Path.Combine(folder, "parts.csv"), parts.ToCsv());
File.WriteAllText(Path.Combine(folder, "parts.html"), parts.ToHtml());
IReadOnlyList<Drawing> drawings = MarkedDrawings.All(StatueModel.Build(heron));
drawings[0].Save(Path.Combine(folder, "elevation.svg"));
drawings[2].Save(Path.Combine(folder, "ring.dxf"));
Console.WriteLine($"{drawings.Count} drawings, the first \"{drawings[0].Title}\" at 1:{drawings[0].Scale}");

// 3. Crates: sheets of like curvature nest.
CratePlan crates = CratePlan.Of(sheets, new CrateLimits { Length = 2.6.Meters, Width = 1.7.Meters, Height = 1.2.Meters, GreatestMass = 600.Kilograms });
Console.WriteLine($"\nCRATES  {crates}");

// 4. Tower and wing in pieces: what the truck takes, and whether they hold on the hook.
PiecePlan pieces = PiecePlan.Of(heron, new PieceLimits { Length = 8.Meters, Width = 7.Meters, GreatestMass = 12.Tonnes });
Console.WriteLine($"\nPIECES\n{pieces}");
foreach (TowerPiece piece in pieces.Pieces)
    Console.WriteLine(PieceLift.Of(piece, new LiftOptions { Crane = HoistingClass.HC2, HoistingSpeed = 0.2.MetersPerSecond }));

// 5. Straps: the heaviest crate by road and by sea.
Crate heavy = crates.Crates.MaxBy(c => c.Mass)!;
var lashed = new LashedLoad
{
    Name = $"crate {heavy.Number}", Mass = heavy.Mass + 180.Kilograms, Length = 2.7.Meters, Width = 1.8.Meters, CenterHeight = 0.15.Meters + heavy.Center.Z,
    Straps = 3, StrapTension = Force.FromKilonewtons(4), StrapAngle = 75.Degrees, Friction = 0.3,
};
Console.WriteLine("\nLASHING");
foreach (Journey journey in (Journey[])[Journey.Road, Journey.SeaB])
{
    foreach (StatueFrame.Checks.Check check in Lashing.Checks(lashed, journey))
        Console.WriteLine($"  {check}");
}
Console.WriteLine($"\n{Lashing.Checks(lashed, Journey.Road)[0].Working()}");

static string Here([System.Runtime.CompilerServices.CallerFilePath] string script = "") => Path.GetDirectoryName(script)!;
