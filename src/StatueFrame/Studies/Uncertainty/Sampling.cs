namespace StatueFrame.Studies;

/// <summary>Samples a number that depends on uncertain inputs.</summary>
/// <remarks>Stateless; safe to use from many threads. The same seed gives the same bits on any number of threads.</remarks>
public static class Sampling
{
    private const double Confidence = 1.959963984540054;
    private const int Parts = 8;

    /// <summary>Runs the samples; <see cref="SamplingPlan"/> describes a study that is run in shards.</summary>
    /// <param name="inputs">The uncertain inputs, 1 to 64.</param>
    /// <param name="number">The number, as a pure function of the inputs in their order.</param>
    /// <param name="count">Number of samples, 16 to 10 million; low-discrepancy samples are split into eight parts.</param>
    /// <param name="threshold">The threshold whose exceedance is counted; 1 for utilizations.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="rule">How samples are drawn.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range.</exception>
    /// <exception cref="ArithmeticException">The number is not finite at some sample, which is named.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static SampleResult Run(
        IReadOnlyList<Uncertain> inputs, Func<IReadOnlyList<double>, double> number, int count, double threshold = 1, ulong seed = 1,
        SamplingRule rule = SamplingRule.MonteCarlo, StudyOptions? options = null) =>
        new SamplingPlan(inputs, number, count, threshold, seed, rule).Run(options);

    /// <summary>One sample: the number at a point that is a pure function of seed and index.</summary>
    internal static double Sample(IReadOnlyList<Uncertain> inputs, Func<IReadOnlyList<double>, double> number, int count, ulong seed, SamplingRule rule, int i)
    {
        int each = count / Parts, part = Math.Min(i / each, Parts - 1);
        var x = new double[inputs.Count];
        for (int d = 0; d < x.Length; d++)
            x[d] = inputs[d].Quantile(rule == SamplingRule.MonteCarlo ? RandomStream.Uniform(seed, i, d) : RandomStream.Halton(seed + 7919UL * (ulong)part, i - part * each, d));
        return Finite(number(x), x);
    }

    internal static void CheckInputs(IReadOnlyList<Uncertain> inputs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.Count, 1, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(inputs.Count, 64, nameof(inputs));
    }

    internal static double Finite(double value, double[] x) => double.IsFinite(value)
        ? value
        : throw new ArithmeticException(FormattableString.Invariant($"The number is not finite at ({string.Join(", ", x.Select(v => v.ToString("g6", System.Globalization.CultureInfo.InvariantCulture)))})."));

    internal static SampleResult Summary(double[] values, double threshold, SamplingRule rule)
    {
        int n = values.Length, over = values.Count(v => v > threshold);
        double mean = Mean(values), deviation = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (n - 1)), p = (double)over / n;
        double z2 = Confidence * Confidence, middle = (p + z2 / (2 * n)) / (1 + z2 / n), half = Confidence / (1 + z2 / n) * Math.Sqrt(p * (1 - p) / n + z2 / (4.0 * n * n));
        (double low, double high) = (Math.Max(0, middle - half), Math.Min(1, middle + half));
        if (rule == SamplingRule.MonteCarlo)
            return Result(Confidence * deviation / Math.Sqrt(n), low, high);
        // The parts are independent: their scatter is the error, by Student's t with seven degrees of freedom. Parts that all
        // count the same tell no scatter; then the interval of random numbers holds.
        const double Student = 2.364624251;
        double[][] parts = [.. Enumerable.Range(0, Parts).Select(k => values[(k * (n / Parts))..(k == Parts - 1 ? n : (k + 1) * (n / Parts))])];
        double meanError = Student * Scatter([.. parts.Select(Mean)]), overError = Student * Scatter([.. parts.Select(part => part.Count(v => v > threshold) / (double)part.Length)]);
        return overError > 0 ? Result(meanError, Math.Max(0, p - overError), Math.Min(1, p + overError)) : Result(meanError, low, high);

        SampleResult Result(double error, double low, double high) => new()
        {
            Count = n,
            Mean = (mean, error),
            StandardDeviation = deviation,
            StandardDeviationError = DeviationError(values, mean, deviation),
            Exceedance = (p, low, high),
            Values = ValueList.Create<double>(values),
        };
    }

    /// <summary>Half the interval of a standard deviation, from the fourth moment: s·√((κ − 1)/4n).</summary>
    private static double DeviationError(double[] values, double mean, double deviation)
    {
        if (deviation == 0)
            return 0;
        double kurtosis = values.Sum(v => Math.Pow((v - mean) / deviation, 4)) / values.Length;
        return Confidence * deviation * Math.Sqrt(Math.Max(0, kurtosis - 1) / (4.0 * values.Length));
    }

    private static double Scatter(double[] parts)
    {
        double mean = Mean(parts);
        return Math.Sqrt(parts.Sum(v => (v - mean) * (v - mean)) / (parts.Length - 1) / parts.Length);
    }

    private static double Mean(double[] values) => values.Sum() / values.Length;
}
