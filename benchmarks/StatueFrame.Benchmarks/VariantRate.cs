using System.Diagnostics;
using StatueFrame.Studies;

namespace StatueFrame.Benchmarks;

/// <summary>How many variants of the statue with 40 levels a reanalysis works out: flats of all standoffs and sheet vary.</summary>
internal static class VariantRate
{
    /// <summary>What a run took: variants a second by the clock, processor time a variant, memory a variant, and the heap that was left.</summary>
    internal sealed record Result(int Threads, int Count, double PerSecond, double ProcessorMilliseconds, double Bytes, long HeapGrowth);

    /// <summary>Runs a number of variants on some threads, each with a reanalysis of its own.</summary>
    public static Result Measure(int threads, int count)
    {
        Statue statue = SyntheticStatue.Of(40);
        var first = StatueReanalysis.Of(statue, SyntheticStatue.Criteria, SyntheticStatue.Situations);
        StatueReanalysis[] each = [.. Enumerable.Range(0, threads).Select(_ => first.Copy())];
        Run(each, statue, Math.Min(count, 400));
        long heap = GC.GetTotalMemory(true), bytes = GC.GetTotalAllocatedBytes(true), start = Stopwatch.GetTimestamp();
        TimeSpan processor = Process.GetCurrentProcess().TotalProcessorTime;
        Run(each, statue, count);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        double busy = (Process.GetCurrentProcess().TotalProcessorTime - processor).TotalMilliseconds;
        double allocated = GC.GetTotalAllocatedBytes(true) - bytes;
        var result = new Result(threads, count, count / seconds, busy / count, allocated / count, GC.GetTotalMemory(true) - heap);
        GC.KeepAlive(each);
        return result;
    }

    private static void Run(StatueReanalysis[] each, Statue statue, int count)
    {
        var workers = new Thread[each.Length];
        for (int t = 0; t < workers.Length; t++)
        {
            int own = t;
            workers[t] = new Thread(() =>
            {
                for (int i = own; i < count; i += each.Length)
                    each[own].Analyze(Variant(statue, i));
            });
            workers[t].Start();
        }
        foreach (Thread worker in workers)
            worker.Join();
    }

    private static Statue Variant(Statue statue, int i)
    {
        var standoff = ((EvenRing)statue.Standoffs[0]).Standoff with { Section = new FlatBar(60.Millimeters, (6 + 0.01 * (i % 1009)).Millimeters) };
        return statue with
        {
            Standoffs = statue.Standoffs.Select(r => (StandoffRing)((EvenRing)r with { Standoff = standoff })).ToValueList(),
            Skin = statue.Skin! with { Thickness = (1.5 + 0.003 * (i % 503)).Millimeters },
        };
    }
}
