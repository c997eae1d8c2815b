using System.Diagnostics;
using System.Globalization;
using System.Text;
using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Benchmarks;

/// <summary>Measures all and writes docs/performance.md.</summary>
internal static class PerformancePage
{
    public static void Write(string path)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        string directory = Directory.CreateTempSubdirectory("matrices").FullName;
        var text = new StringBuilder();
        AddHead(text);
        AddStages(text);
        AddVariants(text);
        AddShock(text);
        AddSizes(text);
        List<LargeFrames.Row> rows = MeasureFrames(directory);
        AddFrames(text, rows, Reference(directory));
        Directory.Delete(directory, true);
        File.WriteAllText(path, text.ToString());
    }

    private static void AddHead(StringBuilder text)
    {
        string load = Try(() => File.ReadAllText("/proc/loadavg").Split(' ')[0]), processor = Try(() => File.ReadLines("/proc/cpuinfo").First(l => l.StartsWith("model name", StringComparison.Ordinal)).Split(": ")[1]);
        text.Append(Invariant($"""
            # Performance

            This page is written by one command, which takes some minutes:
            `dotnet run -c Release --project benchmarks/StatueFrame.Benchmarks -- page docs/performance.md`.
            The libraries it compares with come from Debian's packages: `benchmarks/install_references.sh`; without them their rows
            are left out. Times are the least of many warm runs on one thread, unless it says otherwise, and memory is what one run
            allocates. The machine may do other work at the same time: its load stands below, and a load above the number of cores
            makes all times too long, also those of the other libraries.

            - Date {DateTime.UtcNow:yyyy-MM-dd}; processor {processor}, {Environment.ProcessorCount} cores; load before the run {load}
            - {RuntimeInformationText()}, release build, default settings


            """));

        static string RuntimeInformationText() => $"{System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription} on {System.Runtime.InteropServices.RuntimeInformation.OSDescription}";
        static string Try(Func<string> read)
        {
            try
            {
                return read();
            }
            catch (Exception e) when (e is IOException or InvalidOperationException or UnauthorizedAccessException)
            {
                return "unknown";
            }
        }
    }

    private static void AddStages(StringBuilder text)
    {
        Statue statue = SyntheticStatue.Of(40);
        Situation storm = SyntheticStatue.Situations[0];
        StatueModel model = StatueModel.Build(statue);
        var dense = new DenseReference();
        dense.Setup();
        text.Append("""
            ## A full run

            The synthetic statue with 40 levels has 40 bands, 640 bars, 480 lattice members and 480 equations. A full run goes from the
            description to the check sheet: validation, model, self-weight, 16 wind headings, 12 modes, second order, buckling, gust
            factor, local pressure, all checks. The dense library is Math.NET Numerics on the finished matrices, as a short script
            would use it (`DenseReference`).

            | stage, 40 levels | time, ms | allocated, KB |
            |---|---:|---:|

            """);
        Row("validation", statue.FindProblems);
        Row("model: nodes, panels, bands, bars, matrices, factorization (validation included)", () => StatueModel.Build(statue));
        Row("12 lowest modes, with the proof that none was missed", () => model.Modes(12));
        Row("16 headings: loads and displacements", () => model.Respond(storm));
        Row("640 bars under 16 headings and two assumptions each (headings included)", () => model.Respond(storm).WorstBar);
        Row("second order and buckling of the governing heading (headings included)", () => model.Respond(storm).Stability);
        Row("**full run, to the check sheet**", () => statue.Check(SyntheticStatue.Criteria, SyntheticStatue.Situations));
        Row("dense library: one Cholesky solution with 17 load cases", dense.SelfWeightAndSixteenHeadings);
        Row("dense library: all modes", () => dense.LowestFrequency());
        text.Append('\n');

        void Row(string name, Func<object?> run)
        {
            (double time, double kilobytes) = Measure(run, 3);
            text.Append(Invariant($"| {name} | {1000 * time:0.##} | {kilobytes:0} |\n"));
        }
    }

    private static void AddVariants(StringBuilder text)
    {
        VariantRate.Result one = VariantRate.Measure(1, 4000), two = VariantRate.Measure(2, 8000);
        text.Append(Invariant($"""
            ## Variants

            `StatueReanalysis` on the same statue, with another flat in all 640 bars and another sheet in every variant. It finds masses,
            three frequencies, base reactions, sways, bars, second order, buckling, and the utilizations that its description lists; gust
            factor, vortices, comfort, base, fixings, sheets, seams, fatigue, heat, shock and earthquake are not part of it. Variants that
            change the geometry cost as much as building a model. The aim is 2 000 variants a second on two cores.

            | threads | variants | variants a second, by the clock | processor time a variant, ms | allocated a variant, KB | heap left over, KB |
            |---:|---:|---:|---:|---:|---:|
            {Line(one)}
            {Line(two)}

            By processor time, which other work on the machine lengthens less than the clock's, two cores of their own would do
            {2000 / two.ProcessorMilliseconds:0} variants a second; a variant on two threads costs {two.ProcessorMilliseconds / one.ProcessorMilliseconds:0.00} times the processor time of one on one thread. `-- million` runs a million variants.


            """));

        static string Line(VariantRate.Result r) => Invariant($"| {r.Threads} | {r.Count} | {r.PerSecond:0} | {r.ProcessorMilliseconds:0.00} | {r.Bytes / 1024:0.0} | {r.HeapGrowth / 1024.0:0} |");
    }

    private static void AddShock(StringBuilder text)
    {
        var shock = new ShockStepping();
        shock.Setup();
        (double alone, _) = Measure(() => shock.SteppingAlone(), 2);
        (double whole, _) = Measure(shock.WholeResponse, 4);
        text.Append(Invariant($"""
            ## Shock in time

            One second of the Saltmere Heron in 1000 steps. Stepping alone moves 64 modes exactly; the whole response adds the modes'
            solution, the model's tables, and at every step the peaks of points, base, energies, tower and every one of its bars.

            | what | time, ms | times faster than real time |
            |---|---:|---:|
            | 64 modes stepped alone | {1000 * alone:0.000} | {1 / alone:0} |
            | 40 modes, whole response | {1000 * whole:0.0} | {1 / whole:0} |


            """));
    }

    private static void AddSizes(StringBuilder text)
    {
        text.Append("""
            ## Growth

            | levels | bars | full run, ms | allocated, MB |
            |---:|---:|---:|---:|

            """);
        double first = 0, last = 0;
        foreach (int levels in (ReadOnlySpan<int>)[40, 80, 160, 320])
        {
            Statue statue = SyntheticStatue.Of(levels);
            (double time, double kilobytes) = Measure(() => statue.Check(SyntheticStatue.Criteria, SyntheticStatue.Situations), 4);
            (first, last) = (first == 0 ? time : first, time);
            text.Append(Invariant($"| {levels} | {16 * levels} | {1000 * time:0.#} | {kilobytes / 1024:0.#} |\n"));
        }
        text.Append(Invariant($"\nFrom 40 to 320 levels time grows with their power {Math.Log(last / first) / Math.Log(8):0.0}. A tower is a chain and factors without fill; gusts take every\nband with every other, in every heading.\n\n"));
    }

    private static List<LargeFrames.Row> MeasureFrames(string directory)
    {
        StatueModel model = StatueModel.Build(SyntheticStatue.Of(40));
        var rows = new List<LargeFrames.Row> { LargeFrames.Measure("statue-40", model.Frame, directory) };
        foreach (int freedoms in (ReadOnlySpan<int>)[1_000, 10_000, 100_000])
            rows.Add(LargeFrames.Measure($"tower-{freedoms}", LatticeTowerMesh.OfFreedoms(freedoms), directory));
        return rows;
    }

    private static void AddFrames(StringBuilder text, List<LargeFrames.Row> rows, List<string[]> reference)
    {
        string versions = reference.Find(r => r[2] == "versions")?[1] ?? "the other libraries were not there";
        text.Append($"""
            ## Large frames

            The statue's own matrices, and the mesh of a lattice tower with every member as an element of its own (`LatticeTowerMesh`: a
            square grid of legs, height about ten times the width, stiff joints). The same matrices go to CHOLMOD (supernodal; AMD
            or METIS; through its C interface) and to SciPy, with OpenBLAS on one thread ({versions}).
            SuperLU is left out of the largest: its ordering fills too much. StatueFrame's modes include the proof, by a second
            factorization, that none was missed, which the others do not give; its factor is that of K = L D Lᵀ.

            | matrix | equations | library | order, ms | factor, ms | solve, ms | 12 modes, ms | factor, MB | residual | lowest, Hz |
            |---|---:|---|---:|---:|---:|---:|---:|---:|---:|

            """);
        foreach (LargeFrames.Row row in rows)
        {
            text.Append(Invariant($"| {row.Name} | {row.Equations} | StatueFrame | {Ms(row.Order)} | {Ms(row.Factor)} | {Ms(row.Solve)} | {Ms(row.Modes)} | {row.FactorMegabytes:g3} | {row.Residual:e1} | {row.LowestHertz:g8} |\n"));
            if (Of(row.Name, "CHOLMOD", "factor") is { } factor)
                text.Append(Invariant($"| | | CHOLMOD, SciPy `eigsh` on it | {MsOf(row.Name, "CHOLMOD", "order")} | {Ms(Seconds(factor))} | {MsOf(row.Name, "CHOLMOD", "solve")} | {MsOf(row.Name, "SciPy eigsh on CHOLMOD", "12 modes")} | {factor[4]} | {Of(row.Name, "CHOLMOD", "solve")?[5]} | {Of(row.Name, "SciPy eigsh on CHOLMOD", "12 modes")?[5]} |\n"));
            if (Of(row.Name, "SciPy splu", "order and factor") is { } lu)
                text.Append(Invariant($"| | | SciPy `splu`, `eigsh` (with factor) | in factor | {Ms(Seconds(lu))} | {MsOf(row.Name, "SciPy splu", "solve")} | {MsOf(row.Name, "SciPy eigsh", "factor and 12 modes")} | {lu[4]} | {Of(row.Name, "SciPy splu", "solve")?[5]} | {Of(row.Name, "SciPy eigsh", "factor and 12 modes")?[5]} |\n"));
        }

        string[]? Of(string name, string library, string task) => reference.Find(r => r[0] == name && r[1] == library && r[2] == task);
        string MsOf(string name, string library, string task) => Of(name, library, task) is { } found ? Ms(Seconds(found)) : "–";
        static double Seconds(string[] row) => double.Parse(row[3], CultureInfo.InvariantCulture);
        static string Ms(double seconds) => seconds >= 1 ? Invariant($"{1000 * seconds:0}") : Invariant($"{1000 * seconds:0.###}");
    }

    /// <summary>The rows of sparse_reference.py; empty when it cannot run.</summary>
    private static List<string[]> Reference(string directory)
    {
        string script = Path.Combine("benchmarks", "sparse_reference.py"), result = Path.Combine(directory, "reference.csv");
        try
        {
            using Process python = Process.Start("/usr/bin/python3", [script, directory]);
            python.WaitForExit();
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return [];
        }
        return File.Exists(result) ? [.. File.ReadLines(result).Select(line => line.Split(','))] : [];
    }

    private static (double Seconds, double Kilobytes) Measure(Func<object?> run, double together)
    {
        double seconds = LargeFrames.Least(run, together);
        long before = GC.GetAllocatedBytesForCurrentThread();
        run();
        return (seconds, (GC.GetAllocatedBytesForCurrentThread() - before) / 1024.0);
    }
}
