#:project ../../src/StatueFrame.Reporting/StatueFrame.Reporting.csproj

// The calculation package of the Saltmere Heron: one HTML file to print, a 3-D scene and the pictures, written to a folder
// (named after --, else "saltmere-heron" among the temporary files). All data are invented.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Reporting;
using StatueFrame.Studies;
using UnitsNet;

StatueDocument heron = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json"));
string folder = Directory.CreateDirectory(args.Length > 0 ? args[0] : Path.Combine(Path.GetTempPath(), "saltmere-heron")).FullName;

// The numbers: one model, the sheet of all situations, and the response to the one to be drawn.
StatueModel model = StatueModel.Build(heron.Statue);
CheckSheet sheet = heron.Check();
ValueList<Situation> situations = heron.AllSituations();
Situation storm = situations.Single(s => s.Name == "6.10, wind leading"), service = situations.Single(s => s.Name == "characteristic, wind leading");
LoadCase worst = model.Respond(storm).OverturningGoverns;
WindAction wind = service.Actions.Select(a => a.Action).OfType<WindAction>().Single();
ModalResponse modes = model.Modes(3);
SwayCurve curve = SwayCurve.Of(model, wind, new SwayCurveOptions { AnemometerHeight = 10.Meters, Limits = heron.Criteria });

(string Name, PackageSection Section, Picture Picture)[] pictures =
[
    ("wind-profile", PackageSection.Wind, ResultPictures.WindProfile(model, wind.Profile)),
    ("wind-force-by-band", PackageSection.Wind, ResultPictures.BandForces(worst)),
    ("deflected-shape", PackageSection.Results, StatueDrawings.Deflected(model, worst)),
    ("mode-1", PackageSection.Results, StatueDrawings.Mode(model, modes, 1)),
    ("mode-2", PackageSection.Results, StatueDrawings.Mode(model, modes, 2)),
    ("sway-curve", PackageSection.Results, ResultPictures.Sway(curve)),
    ("sway-rose", PackageSection.Results, ResultPictures.Rose(HeadingStudy.Of(model, service).SwayAt("tip"))),
    ("bar-utilization", PackageSection.Checks, ResultPictures.BarUtilization(model, sheet)),
    ("families", PackageSection.Checks, ResultPictures.Families(sheet)),
];
foreach ((string name, _, Picture picture) in pictures)
{
    picture.Save(Path.Combine(folder, $"{name}.svg"));
    picture.Save(Path.Combine(folder, $"{name}.png"));
    Console.WriteLine($"{name,-24} {picture.Title}");
}

// Drawings to scale that carry the names of the sheet.
(string Name, Drawing Drawing)[] drawings =
[
    ("elevation", MarkedDrawings.Elevation(model)), ("elevation-from-the-side", MarkedDrawings.Elevation(model, 0.Degrees)),
    ("ring-of-band-12", MarkedDrawings.Ring(model, "band 12")), ("ring-in-the-wing", MarkedDrawings.Ring(model, "wing/band 2")), ("base", MarkedDrawings.Base(heron.Statue)),
];
foreach ((string name, Drawing drawing) in drawings)
{
    drawing.Save(Path.Combine(folder, $"{name}.svg"));
    drawing.Save(Path.Combine(folder, $"{name}.dxf"));
    Console.WriteLine($"{name,-24} {drawing.Title}, 1:{drawing.Scale}");
}

// The scene, for any viewer of glTF: at rest in gray, moved beside it.
StatueScene.Of(model).With(worst, 20).Save(Path.Combine(folder, "saltmere-heron.glb"));

// The package. It is printed from a browser; every check stands in its tables, the worst of each kind with its working.
var package = new CalculationPackage
{
    Statue = heron.Statue,
    Situations = situations,
    Criteria = heron.Criteria,
    Sheet = sheet,
    Revision = "A",
    Reference = "Saltmere harbor, invented",
    Basis = ["Eurocodes with recommended values; no national annex.", "Drawings of the Saltmere Heron, invented."],
    Figures = [.. drawings.Select(d => d.Drawing.ToFigure()), .. pictures.Select(p => p.Picture.ToFigure(p.Section))],
};
package.Save(Path.Combine(folder, "saltmere-heron.html"));

Console.WriteLine($"saltmere-heron.glb       the statue at rest, and moved 20 times by the wind of {storm.Name}");
Console.WriteLine($"saltmere-heron.html      {sheet.VerdictText}");

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
