using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>Samples of a number that depends on uncertain inputs, to be run here or in shards.</summary>
/// <remarks>Immutable and safe to share between threads when the function is.</remarks>
public sealed class SamplingPlan : StudyPlan<SampleResult>
{
    private readonly Func<IReadOnlyList<double>, double> number;

    /// <summary>Describes a study.</summary>
    /// <param name="inputs">The uncertain inputs, 1 to 64.</param>
    /// <param name="number">The number, as a pure function of the inputs in their order.</param>
    /// <param name="count">Number of samples, 16 to 10 million; low-discrepancy samples are split into eight parts.</param>
    /// <param name="threshold">The threshold whose exceedance is counted; 1 for utilizations.</param>
    /// <param name="seed">The seed of the samples, not that of the shards.</param>
    /// <param name="rule">How samples are drawn.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range.</exception>
    public SamplingPlan(
        IReadOnlyList<Uncertain> inputs, Func<IReadOnlyList<double>, double> number, int count, double threshold = 1, ulong seed = 1, SamplingRule rule = SamplingRule.MonteCarlo)
    {
        ArgumentNullException.ThrowIfNull(number);
        Sampling.CheckInputs(inputs);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 16);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, 10_000_000);
        (Inputs, this.number, Items, Threshold, Seed, Rule) = (inputs.ToValueList(), number, count, threshold, seed, rule);
    }

    /// <summary>The uncertain inputs.</summary>
    public ValueList<Uncertain> Inputs { get; }

    /// <inheritdoc/>
    public override int Items { get; }

    /// <summary>The threshold whose exceedance is counted.</summary>
    public double Threshold { get; }

    /// <summary>The seed of the samples.</summary>
    public ulong Seed { get; }

    /// <summary>How samples are drawn.</summary>
    public SamplingRule Rule { get; }

    private protected override string Kind => "samples";

    /// <summary>Runs all samples in this process.</summary>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArithmeticException">The number is not finite at some sample, which is named.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public override SampleResult Run(StudyOptions? options = null)
    {
        var values = new double[Items];
        (options ?? new StudyOptions()).For(Items, i => values[i] = Sample(i));
        return Sampling.Summary(values, Threshold, Rule);
    }

    internal override string Record(int item) => BitConverter.DoubleToUInt64Bits(Sample(item)).ToString("X16", CultureInfo.InvariantCulture);

    private protected override SampleResult FromRecords(string[] records) => Sampling.Summary(
        Array.ConvertAll(records, r => BitConverter.UInt64BitsToDouble(ulong.Parse(r, NumberStyles.HexNumber, CultureInfo.InvariantCulture))), Threshold, Rule);

    /// <summary>The threshold is left out: it is only counted when the shards are merged.</summary>
    private protected override IEnumerable<string> Identity() =>
    [
        Seed.ToString(CultureInfo.InvariantCulture), Rule.ToString(),
        .. Inputs.Select(u => string.Create(CultureInfo.InvariantCulture, $"{u.Name}, {u.Law}, {u.Mean:R}, {u.StandardDeviation:R}, {u.Quantile(0.25):R}")),
    ];

    private double Sample(int item) => Sampling.Sample(Inputs, number, Items, Seed, Rule, item);
}
