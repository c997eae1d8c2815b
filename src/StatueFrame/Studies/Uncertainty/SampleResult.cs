namespace StatueFrame.Studies;

/// <summary>What samples of uncertain inputs say of one number.</summary>
/// <remarks>Immutable and safe to share between threads. Intervals hold with 95 % confidence.</remarks>
public sealed record SampleResult
{
    internal SampleResult()
    {
    }

    /// <summary>Number of samples.</summary>
    public required int Count { get; init; }

    /// <summary>Mean, with half the width of its interval.</summary>
    public required (double Value, double Error) Mean { get; init; }

    /// <summary>Standard deviation.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>Half the width of the standard deviation's interval, as of independent samples.</summary>
    public required double StandardDeviationError { get; init; }

    /// <summary>Probability that the number exceeds the threshold, with its interval (Wilson's for Monte Carlo, and where the parts of low-discrepancy samples do not differ).</summary>
    public required (double Value, double Low, double High) Exceedance { get; init; }

    /// <summary>The samples in their order.</summary>
    public required ValueList<double> Values { get; init; }

    /// <summary>The value that a part of the samples does not exceed, linear between samples.</summary>
    /// <param name="part">From 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part is out of range.</exception>
    public double Quantile(double part)
    {
        if (!(part is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(part), part, "It must be from 0 to 1.");
        double[] sorted = [.. Values.Order()];
        double at = part * (sorted.Length - 1);
        int low = (int)Math.Floor(at), high = Math.Min(low + 1, sorted.Length - 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }

    /// <summary>
    /// The same with its interval, from the ranks that a count of independent samples can have: it holds for every distribution,
    /// and is wider than need be for low-discrepancy samples. An end is infinite when there are too few samples to bound it.
    /// </summary>
    /// <param name="part">Between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part is out of range.</exception>
    public (double Value, double Low, double High) QuantileInterval(double part)
    {
        const double Confidence = 1.959963984540054;
        double value = Quantile(part);
        double[] sorted = [.. Values.Order()];
        int n = sorted.Length;
        double half = Confidence * Math.Sqrt(n * part * (1 - part));
        int low = (int)Math.Floor(n * part - half) - 1, high = (int)Math.Ceiling(n * part + half);
        return (value, low < 0 ? double.NegativeInfinity : sorted[low], high >= n ? double.PositiveInfinity : sorted[high]);
    }
}
