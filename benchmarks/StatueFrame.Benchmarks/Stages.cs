using BenchmarkDotNet.Attributes;
using StatueFrame.Analysis;

namespace StatueFrame.Benchmarks;

/// <summary>The stages of a run of the statue with 40 levels and 640 bars, one by one.</summary>
[MemoryDiagnoser]
public class Stages
{
    private readonly Statue statue = SyntheticStatue.Of(40);
    private StatueModel model = null!;

    [GlobalSetup]
    public void Setup() => model = StatueModel.Build(statue);

    [Benchmark]
    public StatueModel Build() => StatueModel.Build(statue);

    [Benchmark]
    public ModalResponse TwelveModes() => model.Modes(12);

    [Benchmark]
    public Response SixteenHeadings() => model.Respond(SyntheticStatue.Situations[0]);

    [Benchmark]
    public BarResult? SixteenHeadingsWithBars() => model.Respond(SyntheticStatue.Situations[0]).WorstBar;

    [Benchmark]
    public double? SecondOrderAndBuckling() => model.Respond(SyntheticStatue.Situations[0]).Stability.BucklingFactor;
}
