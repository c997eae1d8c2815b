using BenchmarkDotNet.Running;
using StatueFrame.Benchmarks;

if (args is ["quick"])
    QuickTable.Print();
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
