using CsCheck;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Calibration;

public class ModelFitTests
{
    /// <summary>Two masses on springs to the ground and between them: two frequencies and a sway under a unit force.</summary>
    private static double[] TwoMasses(IReadOnlyList<double> p)
    {
        (double k_1, double k_2, double m) = (p[0], p[1], p[2]);
        double a = (k_1 + k_2) / m, b = k_2 / m, mean = (a + b) / 2, root = Math.Sqrt((a - b) * (a - b) / 4 + b * b);
        return [Math.Sqrt(mean - root) / (2 * Math.PI), Math.Sqrt(mean + root) / (2 * Math.PI), 1 / k_1 + 1 / k_2];
    }

    private static Adjustable[] Springs => [new("tower stiffness", 2e6, 1e5, 1e8), new("bar stiffness", 2e6, 1e5, 1e8), new("mass", 2000, 100, 1e5)];

    [Fact]
    public void A_model_that_can_meet_the_measurements_meets_them() =>
        Gen.Select(Gen.Double[0.3, 4], Gen.Double[0.3, 4], Gen.Double[0.5, 2]).Sample((a, b, c) =>
        {
            double[] truth = [2e6 * a, 2e6 * b, 2000 * c], values = TwoMasses(truth);
            Measured[] measured = [.. values.Select((v, i) => new Measured($"m{i}", v, 0.01 * v))];
            CalibrationResult fit = ModelFit.Of(Springs, measured, TwoMasses);
            // Two frequencies and one sway can be met in two ways, which meet where one of the singular values is zero.
            return fit.Converged && fit.ChiSquare < 1e-9;
        }, iter: 50);

    [Fact]
    public void Known_numbers_are_found_again()
    {
        double[] truth = [3e6, 1e6, 1500], values = TwoMasses(truth);
        CalibrationResult fit = ModelFit.Of([Springs[0] with { Start = 2.8e6 }, Springs[1] with { Start = 1.05e6 }, Springs[2]], [.. values.Select((v, i) => new Measured($"m{i}", v, 0.01 * v))], TwoMasses);
        Assert.All(fit.Values.Zip(truth), pair => Assert.Equal(1, pair.First.Value / pair.Second, 1e-6));
        Assert.Empty(fit.CannotTell);
        Assert.Equal(values[2], fit.Fitted[2], 1e-12);
    }

    [Fact]
    public void Intervals_hold_the_truth_about_as_often_as_they_say()
    {
        double[] truth = [3e6, 1e6, 1500];
        int held = 0;
        for (int trial = 0; trial < 200; trial++)
        {
            double[] values = TwoMasses(truth);
            Measured[] measured = [.. values.Select((v, i) => new Measured($"m{i}", v * (1 + 0.01 * Uncertain.Normal("", 0, 1).Quantile(RandomStream.Uniform(9, trial, i))), 0.01 * v))];
            CalibrationResult fit = ModelFit.Of([Springs[0] with { Start = 2.5e6 }, Springs[1] with { Start = 1.2e6 }, Springs[2]], measured, TwoMasses);
            held += fit.Values[1].Low <= truth[1] && truth[1] <= fit.Values[1].High ? 1 : 0;
        }
        Assert.InRange(held, 180, 199);
    }

    [Fact]
    public void What_frequencies_alone_cannot_tell_is_said()
    {
        double[] values = TwoMasses([3e6, 1e6, 1500]);
        Measured[] frequencies = [new("f1", values[0], 0.01 * values[0]), new("f2", values[1], 0.01 * values[1])];
        CalibrationResult fit = ModelFit.Of(Springs, frequencies, p => TwoMasses(p)[..2]);
        string cannot = Assert.Single(fit.CannotTell);
        Assert.Contains("tower stiffness", cannot);
        Assert.Contains("mass", cannot);
        Assert.True(fit.Values[2].High / fit.Values[2].Low > 100);
    }

    [Fact]
    public void A_bound_is_said_when_it_stops_the_search()
    {
        double[] values = TwoMasses([3e6, 1e6, 1500]);
        Adjustable[] bounded = [Springs[0], Springs[1] with { Start = 5e6, Least = 4e6 }, Springs[2]];
        CalibrationResult fit = ModelFit.Of(bounded, [.. values.Select((v, i) => new Measured($"m{i}", v, 0.01 * v))], TwoMasses);
        Assert.True(fit.Values[1].IsAtBound);
        Assert.True(fit.ChiSquare > 1);
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.Throws<ArgumentException>(() => ModelFit.Of([], [new("f", 1, 0.1)], _ => [1]));
        Assert.Throws<ArgumentException>(() => ModelFit.Of(Springs, [new("f", 1, 0)], _ => [1]));
        Assert.Throws<ArgumentException>(() => ModelFit.Of(Springs, [new("f", 1, 0.1)], _ => [1, 2]));
        Assert.Throws<ArithmeticException>(() => ModelFit.Of(Springs, [new("f", 1, 0.1)], _ => [double.NaN]));
    }
}
