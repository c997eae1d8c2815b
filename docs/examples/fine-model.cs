#:project ../../src/StatueFrame/StatueFrame.csproj

// Run: dotnet run docs/examples/fine-model.cs
// The Saltmere Heron with its skin as a shell: does the model of rigid bands tell the truth, and how is the sheet stressed?
// All data are invented.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

StatueDocument heron = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json"));
Situation windy = heron.AllSituations().First(situation => situation.Name == "characteristic, wind leading");

// Both models from one description; a second, coarser mesh tells what the finer one may still lack.
FineComparison comparison = FineComparison.Of(heron.Statue, windy, new FineMesh { Size = 0.3.Meters });
Console.WriteLine(comparison);

// Modes of the whole figure and of single panels of sheet, and where elastic sheet would first buckle.
foreach (FineMode mode in comparison.Model.Modes(6))
    Console.WriteLine(FormattableString.Invariant($"mode {mode.Number}: {mode.Frequency.Hertz:0.00} Hz moves {100 * Math.Max(mode.ShareX, mode.ShareY):0} % of the mass"));
Console.WriteLine(FormattableString.Invariant($"weight alone would buckle it at {comparison.Model.Respond(new Situation { Name = "weight", Actions = [new SelfWeight()] }).Cases[0].BucklingFactors(1)[0]:0} times itself"));

// The same as one more source of every check on a sheet.
CheckSheet sheet = heron.Statue.Check(heron.Criteria with { Fine = new FineMesh { Size = 0.3.Meters } }, [.. heron.AllSituations().Where(situation => situation.Name.EndsWith("wind leading", StringComparison.Ordinal))]);
Console.WriteLine();
Console.WriteLine(sheet.VerdictText);
foreach (Check check in sheet.Checks.Where(check => check.Id == "sheet.shell-stress"))
    Console.WriteLine(check);
foreach (string warning in sheet.Warnings.Where(warning => warning.Contains("fine model", StringComparison.Ordinal)))
    Console.WriteLine(warning);
Console.WriteLine(CheckSheet.Caution);

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
