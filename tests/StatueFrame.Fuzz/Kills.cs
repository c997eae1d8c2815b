using System.Diagnostics;
using StatueFrame.Studies;

namespace StatueFrame.Fuzz;

/// <summary>Processes that run a shard and are killed at random moments, now and then two at one shard: what is finished stays, and the study comes out bit by bit.</summary>
internal static class Kills
{
    private const int Shards = 3, Milliseconds = 4;

    private static readonly StudyOptions one = new() { Threads = 1 };

    private static SamplingPlan Plan(int pause) => new([Uncertain.Normal("x", 0, 1), Uncertain.Gumbel("y", 24, 2.5)], x =>
    {
        Thread.Sleep(pause);
        return x[0] * x[1];
    }, count: 150)
    {
        Label = "kills",
    };

    /// <summary>One task.</summary>
    public static void RunChild(string folder, int shard)
    {
        try
        {
            Plan(Milliseconds).RunShard(new Shard(shard, Shards), folder, one);
        }
        catch (IOException)
        {
            // Another process has the shard.
        }
    }

    /// <summary>Kills so many tasks, and returns what went wrong.</summary>
    public static List<string> Run(int count, int seed)
    {
        var random = new Random(seed);
        SamplingPlan plan = Plan(0);
        SampleResult whole = plan.Run(one);
        var finds = new List<string>();
        string folder = "";
        int done = 0, merged = 0;
        for (int i = 0; i < count && finds.Count < 20; i++)
        {
            if (folder.Length == 0)
                (folder, done) = (Directory.CreateTempSubdirectory("statueframe-kills-").FullName, 0);
            int shard = random.Next(Shards);
            Process[] tasks = [.. Enumerable.Range(0, random.Next(8) == 0 ? 2 : 1).Select(_ => Start(folder, shard))];
            Thread.Sleep(random.Next(40, 400));
            foreach (Process task in tasks)
            {
                task.Kill();
                task.WaitForExit();
                task.Dispose();
            }
            try
            {
                ShardSurvey survey = plan.Survey(folder, Shards);
                if (survey.Done < done || survey.Foreign.Count > 0 || survey.Duplicate.Count > 0)
                    finds.Add($"kill {i}: {survey.Done} pieces after {done}, {survey.Foreign.Count} files that do not belong, {survey.Duplicate.Count} twice");
                done = survey.Done;
                if (!survey.IsComplete)
                    continue;
                if (plan.Merge(folder, Shards) != whole)
                    finds.Add($"kill {i}: shards merge to another study");
                merged++;
            }
            catch (Exception e)
            {
                finds.Add($"kill {i}: {e}");
            }
            Directory.Delete(folder, recursive: true);
            folder = "";
        }
        if (folder.Length > 0)
            Directory.Delete(folder, recursive: true);
        Console.WriteLine($"{count} tasks killed, {merged} studies merged, {finds.Count} finds (seed {seed})");
        return finds;
    }

    private static Process Start(string folder, int shard)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { ArgumentList = { "child", folder, $"{shard}" } };
        if (Path.GetFileNameWithoutExtension(start.FileName) == "dotnet")
            start.ArgumentList.Insert(0, Environment.GetCommandLineArgs()[0]);
        return Process.Start(start)!;
    }
}
