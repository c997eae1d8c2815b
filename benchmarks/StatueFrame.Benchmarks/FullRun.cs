using BenchmarkDotNet.Attributes;

namespace StatueFrame.Benchmarks;

/// <summary>
/// One full run from the description to the check sheet: build the model with 16 bars a level, self-weight, 16 headings,
/// 12 modes, second-order effects, buckling and all checks. The growth over the number of levels should be about linear.
/// </summary>
[MemoryDiagnoser]
public class FullRun
{
    private Statue statue = null!;

    [Params(40, 80, 160, 320)]
    public int Levels { get; set; }

    [GlobalSetup]
    public void Setup() => statue = SyntheticStatue.Of(Levels);

    [Benchmark]
    public CheckSheet DescriptionToSheet() => statue.Check(SyntheticStatue.Criteria, SyntheticStatue.Situations);
}
