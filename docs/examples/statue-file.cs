#:project ../../src/StatueFrame.Reporting/StatueFrame.Reporting.csproj

// A statue kept as a file: the Saltmere Heron is read from saltmere-heron.json beside this script, checked, changed and
// written again; pictures and the calculation package are made of the same numbers. All data are invented.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Reporting;
using UnitsNet;

StatueDocument heron = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json"));
Statue statue = heron.Statue;
Console.WriteLine($"{statue.Name}: {statue.Tower.Levels.Count} levels, {statue.Skin!.BandCount} bands, skin {statue.Skin.Thickness} of {statue.Skin.Material.Name}");

// What is wrong with a file is told by line and path.
string spoiled = StatueFile.Write(heron).Replace("\"thickness\": \"2.4 mm\"", "\"thickness\": \"2.4 kg\"");
try
{
    StatueFile.Read(spoiled);
}
catch (StatueFileException e)
{
    Console.WriteLine(e.Message);
}

// A change is a new document; what was not changed comes back to the same bits.
StatueDocument thinner = heron with { Statue = statue with { Skin = statue.Skin with { Thickness = 2.2.Millimeters } }, Actions = heron.Actions! with { Seismic = [], Accidental = [] } };
Console.WriteLine($"comes back equal: {StatueFile.Read(StatueFile.Write(thinner)) == thinner}");

// The sheet, a picture and the calculation package of the changed Heron, without earthquake and pressure wave.
CheckSheet sheet = thinner.Check();
Console.WriteLine(sheet.VerdictText);
Picture elevation = StatueDrawings.Elevation(StatueModel.Build(thinner.Statue));
var package = new CalculationPackage
{
    Statue = thinner.Statue, Situations = thinner.AllSituations(), Criteria = thinner.Criteria, Sheet = sheet,
    Figures = [elevation.ToFigure()], Workings = WorkingExtent.WorstOfEachKind,
};
package.Save(Path.Combine(Path.GetTempPath(), "saltmere-heron.html"));
Console.WriteLine($"{elevation.Title}: drawn in the calculation package");

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
