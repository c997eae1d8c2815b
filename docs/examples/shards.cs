#:project ../../src/StatueFrame/StatueFrame.csproj

// Beyond one machine: samples of the Saltmere Heron's sway in four shards, each a process of its own, of which one is killed
// in the middle. A second run finishes the rest, and the merged result is the unsharded one bit by bit. In a batch engine
// every task runs "shards run FOLDER" with Shard.FromEnvironment; see docs/theory/studies.md. All data are invented.

using System.Diagnostics;
using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

const int Shards = 4;
Statue winged = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json")).Statue;
Statue heron = winged with { Limbs = [], Fittings = [.. winged.Fittings.Where(f => !f.On.StartsWith("wing/", StringComparison.Ordinal))], Points = [new NamedPoint("tip", "band 30")] };

// Label names the version of the function below: change it with the function.
var plan = new SamplingPlan(
    [Uncertain.Gumbel("wind, m/s", 24, 2.5), Uncertain.Normal("sheet, mm", 2.4, 0.08), Uncertain.Lognormal("base, GN·m/rad", 6, 2)],
    x => TipSway(x[0], x[1], x[2]), count: 48, threshold: 0.095, seed: 7, SamplingRule.LowDiscrepancy)
{
    Label = "tip sway, 1",
};

// A task: one shard, by the number that the batch engine gave it.
if (args is ["run", string into])
{
    Console.WriteLine(plan.RunShard(Shard.FromEnvironment(Shards), into, new StudyOptions { Threads = 1 }));
    return;
}

string folder = Path.Combine(Path.GetTempPath(), $"heron-shards-{Environment.ProcessId}");
Process[] tasks = [.. Enumerable.Range(0, Shards).Select(Start)];

// Once shard 2 has finished something, its process is killed.
var file = new FileInfo(Path.Combine(folder, new Shard(2, Shards).FileName));
for (; !tasks[2].HasExited && !(file.Exists && file.Length > 300); file.Refresh())
    Thread.Sleep(5);
tasks[2].Kill();
foreach (Process task in tasks)
    task.WaitForExit();
Console.WriteLine($"after the kill: complete {plan.Survey(folder, Shards).IsComplete}");

// What is missing is run again, as a batch engine does with a failed task.
Start(2).WaitForExit();
Console.WriteLine($"after the second run: complete {plan.Survey(folder, Shards).IsComplete}");
SampleResult merged = plan.Merge(folder, Shards), whole = plan.Run();
Console.WriteLine($"merged equals unsharded: {merged == whole}");
Console.WriteLine(FormattableString.Invariant($"sway of the tip: mean {1e3 * merged.Mean.Value:0} ± {1e3 * merged.Mean.Error:0} mm; above 95 mm in {100 * merged.Exceedance.Value:0} % of years ({100 * merged.Exceedance.Low:0} to {100 * merged.Exceedance.High:0})"));
Directory.Delete(folder, recursive: true);
Console.WriteLine(CheckSheet.Caution);

Process Start(int index)
{
    // What a task says of itself is left aside here: it depends on when the kill came.
    var start = new ProcessStartInfo(Environment.ProcessPath!) { ArgumentList = { "run", folder }, RedirectStandardOutput = true };
    if (Path.GetFileNameWithoutExtension(start.FileName) == "dotnet")
        start.ArgumentList.Insert(0, Environment.GetCommandLineArgs()[0]);
    start.Environment["JOB_COMPLETION_INDEX"] = $"{index}";
    return Process.Start(start)!;
}

double TipSway(double wind, double sheet, double rocking)
{
    Statue sample = heron with
    {
        Skin = heron.Skin! with { Thickness = sheet.Millimeters }, Tower = heron.Tower with { Base = TowerBase.Rocking((1e9 * rocking).NewtonMetersPerRadian) },
    };
    var blow = new WindAction { Profile = new En1991Wind { FundamentalVelocity = wind.MetersPerSecond, Terrain = TerrainCategory.Zero }, GustEffectFactor = 1.05, Headings = [0.Degrees] };
    return StatueModel.Build(sample).Respond(new Situation { Name = "gust", LimitState = LimitState.Service, Actions = [blow] }).GreatestSway("tip").Sway.Meters;
}

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
