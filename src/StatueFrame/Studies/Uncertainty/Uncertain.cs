using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace StatueFrame.Studies;

/// <summary>An uncertain input: a distribution of a plain number in SI units.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Inverse distributions are those of Math.NET Numerics, the Gumbel one our own.
/// </remarks>
public sealed class Uncertain
{
    private readonly Func<double, double, double> inverse;
    private readonly Func<double, double> cumulative;

    /// <summary>An input by its inverse distribution, of the probability and of 1 less it, so that both tails keep their digits.</summary>
    private Uncertain(string name, string law, double mean, double deviation, Func<double, double, double> inverse, Func<double, double> cumulative) =>
        (Name, Law, Mean, StandardDeviation, this.inverse, this.cumulative) = (name, law, mean, deviation, inverse, cumulative);

    /// <summary>What is uncertain.</summary>
    public string Name { get; }

    /// <summary>The law in words, as in "normal".</summary>
    public string Law { get; }

    /// <summary>Mean value.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation.</summary>
    public double StandardDeviation { get; }

    /// <summary>A normal distribution.</summary>
    /// <param name="name">What is uncertain.</param>
    /// <param name="mean">Mean.</param>
    /// <param name="deviation">Standard deviation, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of range.</exception>
    public static Uncertain Normal(string name, double mean, double deviation)
    {
        Require(double.IsFinite(mean), nameof(mean), mean);
        Require(deviation > 0 && double.IsFinite(deviation), nameof(deviation), deviation);
        var law = new Normal(mean, deviation);
        return new(name, "normal", mean, deviation, (p, q) => mean + deviation * Standard(p, q), law.CumulativeDistribution);
    }

    /// <summary>A lognormal distribution, by the mean and deviation of the number itself.</summary>
    /// <param name="name">What is uncertain.</param>
    /// <param name="mean">Mean, above zero.</param>
    /// <param name="deviation">Standard deviation, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of range.</exception>
    public static Uncertain Lognormal(string name, double mean, double deviation)
    {
        Require(mean > 0 && double.IsFinite(mean), nameof(mean), mean);
        Require(deviation > 0 && double.IsFinite(deviation), nameof(deviation), deviation);
        double s2 = Math.Log(1 + deviation / mean * (deviation / mean)), mu = Math.Log(mean) - s2 / 2;
        var law = new LogNormal(mu, Math.Sqrt(s2));
        return new(name, "lognormal", mean, deviation, (p, q) => Math.Exp(mu + Math.Sqrt(s2) * Standard(p, q)), law.CumulativeDistribution);
    }

    /// <summary>A uniform distribution.</summary>
    /// <param name="name">What is uncertain.</param>
    /// <param name="least">Least value.</param>
    /// <param name="greatest">Greatest value, more than the least.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of range.</exception>
    public static Uncertain Uniform(string name, double least, double greatest)
    {
        Require(double.IsFinite(least), nameof(least), least);
        Require(greatest > least && double.IsFinite(greatest), nameof(greatest), greatest);
        return new(name, "uniform", (least + greatest) / 2, (greatest - least) / Math.Sqrt(12), (p, q) => p < q ? least + p * (greatest - least) : greatest - q * (greatest - least), x => Math.Clamp((x - least) / (greatest - least), 0, 1));
    }

    /// <summary>A triangular distribution.</summary>
    /// <param name="name">What is uncertain.</param>
    /// <param name="least">Least value.</param>
    /// <param name="likeliest">Likeliest value, between the others.</param>
    /// <param name="greatest">Greatest value, more than the least.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of range.</exception>
    public static Uncertain Triangular(string name, double least, double likeliest, double greatest)
    {
        Require(double.IsFinite(least), nameof(least), least);
        Require(greatest > least && double.IsFinite(greatest), nameof(greatest), greatest);
        Require(likeliest >= least && likeliest <= greatest, nameof(likeliest), likeliest);
        var law = new Triangular(least, greatest, likeliest);
        double range = greatest - least, rise = (likeliest - least) / range;
        return new(
            name, "triangular", law.Mean, law.StdDev,
            (p, q) => p < rise ? least + Math.Sqrt(p * range * (likeliest - least)) : greatest - Math.Sqrt(q * range * (greatest - likeliest)), law.CumulativeDistribution);
    }

    /// <summary>Gumbel's distribution of greatest values, as of yearly gusts.</summary>
    /// <param name="name">What is uncertain.</param>
    /// <param name="mean">Mean.</param>
    /// <param name="deviation">Standard deviation, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of range.</exception>
    public static Uncertain Gumbel(string name, double mean, double deviation)
    {
        Require(double.IsFinite(mean), nameof(mean), mean);
        Require(deviation > 0 && double.IsFinite(deviation), nameof(deviation), deviation);
        double scale = deviation * Math.Sqrt(6) / Math.PI, mode = mean - Constants.EulerMascheroni * scale;
        return new(name, "Gumbel", mean, deviation, (p, q) => mode - scale * Math.Log(p < q ? -Math.Log(p) : -LogOfOneLess(q)), x => Math.Exp(-Math.Exp(-(x - mode) / scale)));
    }

    /// <summary>The value that is not exceeded with a probability.</summary>
    /// <param name="probability">Between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1.</exception>
    public double Quantile(double probability)
    {
        Require(probability is > 0 and < 1, nameof(probability), probability);
        return inverse(probability, 1 - probability);
    }

    /// <summary>The probability that a value is not exceeded.</summary>
    /// <param name="value">The value.</param>
    public double Probability(double value) => cumulative(value);

    /// <summary>The value as many standard deviations from the median as a normal variable, by equal probability.</summary>
    internal double AtNormal(double z) => inverse(Math.Max(1e-300, MathNet.Numerics.Distributions.Normal.CDF(0, 1, z)), Math.Max(1e-300, MathNet.Numerics.Distributions.Normal.CDF(0, 1, -z)));

    /// <summary>The standard normal variable of a probability, from the smaller of it and 1 less it.</summary>
    private static double Standard(double p, double q) =>
        p < q ? MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, p) : -MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, q);

    /// <summary>ln(1 − q) with all its digits for small q.</summary>
    private static double LogOfOneLess(double q) => q < 1e-5 ? -q - q * q / 2 - q * q * q / 3 : Math.Log(1 - q);

    /// <summary>The distribution in words.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Law}, mean {Mean:g4}, deviation {StandardDeviation:g4}");

    private static void Require(bool holds, string name, double value)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name, value, "The parameter is out of range.");
    }
}
