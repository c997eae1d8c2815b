using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Shards;

/// <summary>A process of this very program that runs a slow shard and nothing else.</summary>
internal static class ShardChild
{
    private const string Variable = "STATUEFRAME_TEST_SHARD";

    /// <summary>The plan that parent and child share; the child takes its time.</summary>
    public static SamplingPlan Plan(int milliseconds) => new([Uncertain.Normal("x", 5, 1), Uncertain.Gumbel("y", 2, 1)], x =>
    {
        if (milliseconds > 0)
            Thread.Sleep(milliseconds);
        return x[0] * x[1];
    }, 4000, threshold: 12, seed: 3);

    public static Process Start(string folder, int index, int count)
    {
        string program = Environment.ProcessPath!;
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        if (Path.GetFileNameWithoutExtension(program) == "dotnet")
            start.ArgumentList.Add(typeof(ShardChild).Assembly.Location);
        start.Environment[Variable] = string.Create(CultureInfo.InvariantCulture, $"{index}/{count}/{folder}");
        return Process.Start(start)!;
    }

    /// <summary>Runs before everything else of this program; does nothing unless it was started as a child.</summary>
    [ModuleInitializer]
    internal static void RunAsChild()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { Length: > 0 } task)
            return;
        string[] parts = task.Split('/', 3);
        Plan(20).RunShard(new Shard(int.Parse(parts[0], CultureInfo.InvariantCulture), int.Parse(parts[1], CultureInfo.InvariantCulture)), parts[2]);
        Environment.Exit(0);
    }
}
