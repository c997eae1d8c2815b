using System.Diagnostics;
using StatueFrame.Studies;
using StatueFrame.Tests.Actions;

namespace StatueFrame.Tests.Studies.Shards;

public sealed class StudyPlanTests : IDisposable
{
    private static readonly Situation[] situations = [new() { Name = "weight", Actions = [1.35 * new SelfWeight()] }];

    private readonly string folder = Path.Combine(Path.GetTempPath(), $"shards-{Guid.NewGuid():N}");

    public void Dispose()
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private static VariantPlan Variants(string label = "") => new(
        Stages.Statue,
        [
            .. Variant.List("sheet", new[] { 1.5, 2.0, 2.5, 3.0 }, (s, t) => s with { Skin = s.Skin! with { Thickness = t.Millimeters } }),
            new Variant("absurd", s => s with { Skin = s.Skin! with { Thickness = 3.Meters } }),
            new Variant("broken", _ => throw new InvalidOperationException("no such\ndrawing\t\"X\"")),
        ],
        new Criteria { BarStressFraction = 1 / 1.1, Modes = 2 }, situations)
    { Label = label };

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(8)]
    public void Merged_variants_are_the_unsharded_ones_bit_by_bit(int count)
    {
        VariantStudy whole = Variants().Run();
        for (int i = count - 1; i >= 0; i--)
            Variants().RunShard(new Shard(i, count, 4), folder);
        VariantStudy merged = Variants().Merge(folder, count, 4);
        Assert.Equal(whole.Rows, merged.Rows);
        Assert.Equal(whole.ToCsv(), merged.ToCsv());
        Assert.Equal(whole["sheet 2"].Sheet, merged["sheet 2"].Sheet);
        Assert.Equal("no such\ndrawing\t\"X\"", merged["broken"].Error);
        Assert.Null(merged["absurd"].Sheet);
    }

    [Theory]
    [InlineData(SamplingRule.MonteCarlo)]
    [InlineData(SamplingRule.LowDiscrepancy)]
    public void Merged_samples_are_the_unsharded_ones_bit_by_bit(SamplingRule rule)
    {
        SamplingPlan plan = Samples(rule);
        for (int i = 0; i < 5; i++)
            Assert.Equal(0, plan.RunShard(new Shard(i, 5), folder, new StudyOptions { Threads = 1 + i }).Found);
        SampleResult whole = plan.Run(), merged = plan.Merge(folder, 5);
        Assert.Equal(whole.Values, merged.Values);
        Assert.Equal(whole, merged);
    }

    [Fact]
    public void What_is_missing_unfinished_duplicate_or_foreign_is_named()
    {
        SamplingPlan plan = Samples();
        for (int i = 0; i < 3; i++)
            plan.RunShard(new Shard(i, 4), folder);
        string one = Path.Combine(folder, new Shard(1, 4).FileName);
        File.Copy(one, Path.Combine(folder, "shard-copy.txt"));
        using (FileStream torn = File.OpenWrite(Path.Combine(folder, new Shard(2, 4).FileName)))
            torn.SetLength(torn.Length - 70);
        File.WriteAllText(Path.Combine(folder, "notes.txt"), "mine");
        Samples(SamplingRule.LowDiscrepancy).RunShard(new Shard(3, 4), Path.Combine(folder, "other"));
        File.Move(Path.Combine(folder, "other", new Shard(3, 4).FileName), Path.Combine(folder, "stray.txt"));
        ShardException e = Assert.Throws<ShardException>(() => plan.Merge(folder, 4));
        Assert.Equal([3], e.Survey!.Missing);
        Assert.Equal([(2, 2)], e.Survey.Unfinished);
        Assert.Contains("shard-copy.txt", Assert.Single(e.Survey.Duplicate));
        Assert.Equal(["notes.txt", "stray.txt"], e.Survey.Foreign.Select(f => f.File));
        foreach (string named in new[] { "missing: shard 3", "shard 2 lacks 2", "shard-copy.txt", "notes.txt", "stray.txt, its study has other inputs" })
            Assert.Contains(named, e.Message);
        Assert.All(plan.Survey(folder, 5).Foreign, f => Assert.NotEmpty(f.Reason));
        foreach (string stranger in new[] { "shard-copy.txt", "notes.txt", "stray.txt" })
            File.Delete(Path.Combine(folder, stranger));
        plan.RunShard(new Shard(2, 4), folder);
        plan.RunShard(new Shard(3, 4), folder);
        Assert.True(plan.Survey(folder, 4).IsComplete);
        Assert.Equal(plan.Run(), plan.Merge(folder, 4));
    }

    [Fact]
    public void Another_study_does_not_write_into_a_shard()
    {
        Variants().RunShard(new Shard(0, 2), folder);
        byte[] before = File.ReadAllBytes(Path.Combine(folder, new Shard(0, 2).FileName));
        Assert.Throws<ShardException>(() => Variants("second draft").RunShard(new Shard(0, 2), folder));
        Assert.Throws<ShardException>(() => Variants().RunShard(new Shard(0, 2, 7), folder));
        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder, new Shard(0, 2).FileName)));
    }

    [Fact]
    public void A_process_killed_in_its_shard_loses_nothing_that_it_finished()
    {
        var file = new FileInfo(Path.Combine(folder, new Shard(1, 2).FileName));
        using Process child = ShardChild.Start(folder, 1, 2);
        var waited = Stopwatch.StartNew();
        // Some dozen lines; the child locks the file, but its length can be seen.
        while (!(file.Exists && file.Length > 600) && !child.HasExited && waited.Elapsed < TimeSpan.FromSeconds(60))
        {
            Thread.Sleep(5);
            file.Refresh();
        }
        Assert.False(child.HasExited, "the child ended by itself");
        child.Kill();
        child.WaitForExit();
        int finished = ShardFile.Read(File.ReadAllBytes(file.FullName)).Records.Count;
        Assert.InRange(finished, 8, ShardChild.Plan(0).Items / 2 - 1);
        ShardReport rerun = ShardChild.Plan(0).RunShard(new Shard(1, 2), folder);
        Assert.Equal(finished, rerun.Found);
        ShardChild.Plan(0).RunShard(new Shard(0, 2), folder);
        Assert.Equal(ShardChild.Plan(0).Run(), ShardChild.Plan(0).Merge(folder, 2));
    }

    [Fact]
    public void Two_processes_do_not_run_one_shard_at_a_time()
    {
        Directory.CreateDirectory(folder);
        using var held = new FileStream(Path.Combine(folder, new Shard(0, 2).FileName), FileMode.Create, FileAccess.ReadWrite, FileShare.None);
        Assert.ThrowsAny<IOException>(() => Samples().RunShard(new Shard(0, 2), folder));
    }

    [Fact]
    public void A_shard_can_be_stopped_and_keeps_what_it_has()
    {
        using var stop = new CancellationTokenSource();
        int calls = 0;
        SamplingPlan Plan(bool stops) => new([Uncertain.Normal("x", 0, 1)], x =>
        {
            if (stops && Interlocked.Increment(ref calls) == 5)
                stop.Cancel();
            return x[0];
        }, 100);
        Assert.ThrowsAny<OperationCanceledException>(() => Plan(true).RunShard(new Shard(0, 1), folder, new StudyOptions { Threads = 1, Cancellation = stop.Token }));
        Assert.InRange(Plan(false).RunShard(new Shard(0, 1), folder).Found, 4, 6);
    }

    private static SamplingPlan Samples(SamplingRule rule = SamplingRule.MonteCarlo) =>
        new([Uncertain.Lognormal("a", 2, 0.3), Uncertain.Gumbel("b", 20, 3)], x => x[0] * Math.Sin(x[1]), 333, 1, 11, rule);
}
