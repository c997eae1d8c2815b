#:project ../../src/StatueFrame/StatueFrame.csproj

// Out of the merchant's list: the lightest legs, braces and body bars of the Saltmere Heron that hold a storm, of sizes that
// are in stock, with a certificate of what was proven. All data are invented.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

Statue whole = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json")).Statue;
Statue heron = whole with { Limbs = [], Fittings = [.. whole.Fittings.Where(f => !f.On.StartsWith("wing/", StringComparison.Ordinal))], Points = [] };
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero }, GustEffectFactor = 1.05, Headings = [45.Degrees],
};
var storm = new Situation { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * wind] };
var criteria = new Criteria { BarStressFraction = 1 / 1.1, Modes = 1 };

AngleBar[] legs = [new(120.Millimeters, 12.Millimeters), new(150.Millimeters, 14.Millimeters), new(150.Millimeters, 15.Millimeters), new(160.Millimeters, 16.Millimeters)];
double[] flats = [12, 15, 18, 20, 25];

// Heavier legs are never weaker under wind; of bars that is not said, since thicker ones draw force from their neighbors.
StockResult result = StockSearch.Of(
    heron,
    [
        StockInput.Of("legs", legs, (s, leg) => s with { Tower = s.Tower with { Segments = [.. s.Tower.Segments.Select(g => g is LatticeSegment l ? l with { Legs = leg } : g)] } }, strengthens: true),
        StockInput.Of("body bars, mm thick", flats, (s, t) => s with
        {
            Standoffs = [.. s.Standoffs.Cast<EvenRing>().Select(r => r.Level.StartsWith('L') ? r with { Standoff = r.Standoff with { Section = new FlatBar(90.Millimeters, t.Millimeters) } } : r)],
        }),
    ],
    criteria, [storm],
    accept: sheet => sheet.Checks.Where(c => c.Id is "bars.bending" or "tower.compression" or "tower.tension").All(c => c.Verdict == Verdict.Pass),
    audits: 2);
Console.Write(result);
if (result.Objective is { } mass)
    Console.WriteLine(FormattableString.Invariant($"{mass:0} kg; governs {result.Sheet!.GoverningOf("tower")!.Subject} at {result.Sheet.GoverningOf("tower")!.UtilizationText}"));
Console.WriteLine(CheckSheet.Caution);

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
