using BenchmarkDotNet.Running;
using StatueFrame.Benchmarks;

switch (args)
{
    case ["quick"]:
        QuickTable.Print();
        break;
    case ["large", ..]:
        foreach (int freedoms in (ReadOnlySpan<int>)[1_000, 10_000, 100_000])
            Console.WriteLine(LargeFrames.Measure($"tower-{freedoms}", LatticeTowerMesh.OfFreedoms(freedoms), args.ElementAtOrDefault(1)));
        break;
    case ["page", var page]:
        PerformancePage.Write(page);
        break;
    case ["fine", var page]:
        FinePage.Write(page);
        break;
    case ["million"]:
        Console.WriteLine(VariantRate.Measure(2, 1_000_000));
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
