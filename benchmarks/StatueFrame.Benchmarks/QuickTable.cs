using System.Diagnostics;
using StatueFrame.Analysis;

namespace StatueFrame.Benchmarks;

/// <summary>
/// The least time of many warm runs and the memory allocated, by stage and by size: a first look in half a minute, for
/// machines that other work makes too noisy for means.
/// </summary>
internal static class QuickTable
{
    public static void Print()
    {
        Statue statue = SyntheticStatue.Of(40);
        Situation storm = SyntheticStatue.Situations[0];
        StatueModel model = StatueModel.Build(statue);
        var dense = new DenseReference();
        dense.Setup();
        Measure("full run, 40 levels", 400, () => statue.Check(SyntheticStatue.Criteria, SyntheticStatue.Situations));
        Measure("  validate", 400, statue.FindProblems);
        Measure("  build, with validation", 400, () => StatueModel.Build(statue));
        Measure("  12 modes", 400, () => model.Modes(12));
        Measure("  16 headings", 400, () => model.Respond(storm));
        Measure("  16 headings, 640 bars", 400, () => model.Respond(storm).WorstBar);
        Measure("  16 headings, stability", 400, () => model.Respond(storm).Stability);
        var shock = new ShockStepping();
        shock.Setup();
        Measure("shock, 1 s, 64 modes alone", 400, () => shock.SteppingAlone());
        Measure("shock, 1 s, with all bars", 50, shock.WholeResponse);
        Measure("shock, 0.1 s, yielding", 5, shock.YieldingTenthOfASecond);
        foreach (int levels in (ReadOnlySpan<int>)[80, 160, 320])
        {
            Statue larger = SyntheticStatue.Of(levels);
            Measure($"full run, {levels} levels", 8000 / levels, () => larger.Check(SyntheticStatue.Criteria, SyntheticStatue.Situations));
        }
        Measure("dense solution, 40 levels", 10, dense.SelfWeightAndSixteenHeadings);
        Measure("dense modes, 40 levels", 3, () => dense.LowestFrequency());
    }

    private static void Measure(string name, int runs, Func<object?> run)
    {
        double least = double.PositiveInfinity;
        long allocated = 0;
        for (int i = 0; i < runs; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread(), start = Stopwatch.GetTimestamp();
            run();
            least = Math.Min(least, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Console.WriteLine($"{name,-28}{least,10:f2} ms{allocated / 1024.0,10:f0} KB");
    }
}
