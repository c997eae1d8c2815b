using CsCheck;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Uncertainty;

public class UncertaintyTests
{
    private const string Ishigami = "Ishigami and Homma (1990), a = 7, b = 0.1, as in Saltelli et al., Global Sensitivity Analysis";
    private static readonly Uncertain[] angles = [.. new[] { "x1", "x2", "x3" }.Select(n => Uncertain.Uniform(n, -Math.PI, Math.PI))];
    private static readonly Lazy<ValueList<SensitivityIndex>> indices = new(() => Sensitivity.Of(angles, x => Math.Sin(x[0]) + 7 * Math.Pow(Math.Sin(x[1]), 2) + 0.1 * Math.Pow(x[2], 4) * Math.Sin(x[0]), 200_000, 3));
    private static readonly Uncertain strength = Uncertain.Normal("R", 5, 0.8), load = Uncertain.Normal("S", 2, 0.6);

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("first index of x1", Ishigami, 0.3139, "-", 0.02, () => indices.Value[0].First),
        new("first index of x2", Ishigami, 0.4424, "-", 0.02, () => indices.Value[1].First),
        new("first index of x3, plus 1", Ishigami, 1, "-", 0.01, () => 1 + indices.Value[2].First),
        new("total index of x1", Ishigami, 0.5576, "-", 0.02, () => indices.Value[0].Total),
        new("total index of x2", Ishigami, 0.4424, "-", 0.02, () => indices.Value[1].Total),
        new("total index of x3", Ishigami, 0.2437, "-", 0.02, () => indices.Value[2].Total),
        new("β of R − S, both normal: 3/√(0.8² + 0.6²)", "Melchers, Structural Reliability, 1.4: closed form", 3, "-", 1e-7, () => Reliability.Form([strength, load], x => x[0] - x[1]).Beta, ValueKind.IndependentComputation),
        new("β of R/S, both lognormal", "Melchers, Structural Reliability, 1.4: closed form", LognormalBeta(), "-", 1e-6, () => Reliability.Form([Uncertain.Lognormal("R", 5, 0.8), Uncertain.Lognormal("S", 2, 0.6)], x => x[0] - x[1]).Beta, ValueKind.IndependentComputation),
        new("β of a hyperplane in five normals, 3.5 from the origin", "geometry of the index (Hasofer and Lind 1974)", 3.5, "-", 1e-7, HyperplaneBeta, ValueKind.IndependentComputation),
        new("β of x1³ + x2³ − 18, normals (10, 5) and (9.9, 5)", "least distance by a fine search along the limit", CubicBeta(), "-", 1e-6, () => Reliability.Form([Uncertain.Normal("x1", 10, 5), Uncertain.Normal("x2", 9.9, 5)], x => Math.Pow(x[0], 3) + Math.Pow(x[1], 3) - 18).Beta, ValueKind.IndependentComputation),
        new("98 % fractile of yearly gusts, Gumbel, mean 20, deviation 3: 20 + 2.592·3", "Gumbel's law, moments by hand", 27.777, "m/s", 1e-4, () => Uncertain.Gumbel("v", 20, 3).Quantile(0.98), ValueKind.IndependentComputation),
        new("sixth point of Halton's sequence in base 2", "Halton (1960): 6 = 110₂, mirrored 0.011₂", 0.375, "-", 1e-15, () => RandomStream.RadicalInverse(6, 2)),
        new("fifth point of Halton's sequence in base 3", "Halton (1960): 5 = 12₃, mirrored 0.21₃", 7.0 / 9, "-", 1e-14, () => RandomStream.RadicalInverse(5, 3)),
    ];

    [Fact]
    public void The_same_seed_gives_the_same_bits_on_any_number_of_threads()
    {
        SampleResult Run(int threads) => Sampling.Run(angles, x => x[0] * x[1] + x[2], 4000, 0.5, 42, SamplingRule.MonteCarlo, new StudyOptions { Threads = threads });
        Assert.Equal(Run(1).Values, Run(7).Values);
        Assert.Equal(Sensitivity.Of(angles, x => x[0] + x[1], 640, 5, new StudyOptions { Threads = 1 }), Sensitivity.Of(angles, x => x[0] + x[1], 640, 5, new StudyOptions { Threads = 5 }));
        Assert.NotEqual(Run(1).Values, Sampling.Run(angles, x => x[0] * x[1] + x[2], 4000, 0.5, 43).Values);
    }

    [Fact]
    public void Intervals_hold_the_truth_about_as_often_as_they_say()
    {
        foreach (SamplingRule rule in Enum.GetValues<SamplingRule>())
        {
            int mean = 0, over = 0;
            double truth = 1 - strength.Probability(6);
            for (ulong seed = 0; seed < 100; seed++)
            {
                SampleResult r = Sampling.Run([strength], x => x[0], 800, 6, seed, rule);
                mean += Math.Abs(r.Mean.Value - 5) <= r.Mean.Error ? 1 : 0;
                over += r.Exceedance.Low <= truth && truth <= r.Exceedance.High ? 1 : 0;
            }
            Assert.InRange(mean, 87, 100);
            Assert.InRange(over, 87, 100);
        }
    }

    [Fact]
    public void Intervals_of_quantiles_and_deviations_hold_as_often_as_they_say()
    {
        int quantile = 0, deviation = 0;
        for (ulong seed = 0; seed < 200; seed++)
        {
            SampleResult r = Sampling.Run([load], x => x[0], 500, 1, seed);
            (double value, double low, double high) = r.QuantileInterval(0.9);
            Assert.InRange(value, low, high);
            quantile += low <= load.Quantile(0.9) && load.Quantile(0.9) <= high ? 1 : 0;
            deviation += Math.Abs(r.StandardDeviation - 0.6) <= r.StandardDeviationError ? 1 : 0;
        }
        Assert.InRange(quantile, 180, 200);
        Assert.InRange(deviation, 178, 200);
        Assert.Equal(double.PositiveInfinity, Sampling.Run([load], x => x[0], 100).QuantileInterval(0.999).High);
    }

    [Theory]
    [InlineData(SamplingRule.MonteCarlo)]
    [InlineData(SamplingRule.LowDiscrepancy)]
    public void No_exceedance_does_not_prove_that_there_is_none(SamplingRule rule)
    {
        SampleResult r = Sampling.Run([load], x => x[0], 80, 1000, 1, rule);
        Assert.Equal(0, r.Exceedance.Value);
        Assert.InRange(r.Exceedance.High, 0.02, 0.06);
    }

    [Fact]
    public void Low_discrepancy_beats_random_numbers()
    {
        double Error(SamplingRule rule) => Enumerable.Range(1, 10).Average(seed => Math.Abs(Sampling.Run(angles, x => x[0] + x[1] * x[2], 4096, 0, (ulong)seed, rule).Mean.Value));
        Assert.True(Error(SamplingRule.LowDiscrepancy) < 0.5 * Error(SamplingRule.MonteCarlo));
    }

    [Fact]
    public void Quantiles_and_probabilities_are_inverse() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[1, 100], Gen.Double[0.02, 0.5]).Sample((p, mean, variation) =>
            new[] { Uncertain.Normal("", mean, variation * mean), Uncertain.Lognormal("", mean, variation * mean), Uncertain.Gumbel("", mean, variation * mean), Uncertain.Uniform("", mean, mean * (1 + variation)), Uncertain.Triangular("", mean, mean * (1 + variation / 3), mean * (1 + variation)) }
                .All(u => Math.Abs(u.Probability(u.Quantile(p)) - p) < 1e-6));

    [Fact]
    public void Moments_are_those_that_were_asked_for()
    {
        foreach (Uncertain u in new[] { Uncertain.Lognormal("", 5, 2), Uncertain.Gumbel("", 5, 2), Uncertain.Triangular("", 1, 2, 6), Uncertain.Uniform("", 1, 6) })
        {
            SampleResult r = Sampling.Run([u], x => x[0], 80_000, 0, 1, SamplingRule.LowDiscrepancy);
            Assert.Equal(u.Mean, r.Mean.Value, 0.01);
            Assert.Equal(u.StandardDeviation, r.StandardDeviation, 0.02);
        }
    }

    [Fact]
    public void Form_is_blind_to_the_scale_of_the_margin() =>
        Gen.Select(Gen.Double[0.01, 1000], Gen.Double[1, 4]).Sample((scale, power) =>
            Math.Abs(Reliability.Form([strength, load], x => scale * (Math.Pow(x[0], power) - Math.Pow(Math.Abs(x[1]), power) * Math.Sign(x[1]))).Beta - 3) < 1e-4);

    [Fact]
    public void Direction_cosines_are_a_unit_vector_and_name_what_matters()
    {
        ReliabilityResult r = Reliability.Form([strength, load], x => x[0] - x[1]);
        Assert.Equal(1, r.Direction.Sum(a => a * a), 1e-9);
        Assert.Equal(0.64, r.Direction[0] * r.Direction[0], 1e-6);
        Assert.Equal(r.DesignPoint[0], r.DesignPoint[1], 1e-6);
    }

    [Fact]
    public void A_number_that_is_not_finite_is_named()
    {
        Assert.Contains("not finite", Assert.Throws<ArithmeticException>(() => Sampling.Run([strength], x => double.NaN, 16)).Message);
        Assert.Throws<ArithmeticException>(() => Reliability.Form([strength], x => 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Normal("", 1, 0));
    }

    [Fact]
    public void A_study_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => Sampling.Run([strength], x => x[0], 1000, options: new StudyOptions { Cancellation = stop.Token }));
    }

    private static double CubicBeta()
    {
        double Distance(double x1)
        {
            double u1 = (x1 - 10) / 5, u2 = (Math.Cbrt(18 - x1 * x1 * x1) - 9.9) / 5;
            return Math.Sqrt(u1 * u1 + u2 * u2);
        }
        return Enumerable.Range(0, 1_000_000).Min(i => Distance(0.5 + 3e-6 * i));
    }

    private static double LognormalBeta()
    {
        double vR = 0.8 / 5, vS = 0.6 / 2, sR = Math.Log(1 + vR * vR), sS = Math.Log(1 + vS * vS);
        return (Math.Log(5) - sR / 2 - Math.Log(2) + sS / 2) / Math.Sqrt(sR + sS);
    }

    private static double HyperplaneBeta()
    {
        Uncertain[] five = [.. Enumerable.Range(0, 5).Select(i => Uncertain.Normal($"x{i}", 10 * i, 1 + i))];
        double norm = Math.Sqrt(1 + 4 + 9 + 16 + 25);
        return Reliability.Form(five, x => 3.5 * norm + Enumerable.Range(0, 5).Sum(i => (i + 1) * (x[i] - 10 * i) / (1 + i))).Beta;
    }
}
