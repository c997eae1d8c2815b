#:project ../../src/StatueFrame/StatueFrame.csproj

// How sure is it? A mast of the Saltmere Heron's harbor under uncertain wind, sheet thickness and strength: sampling,
// first-order reliability, and which input matters. All data are invented for this example.

using StatueFrame;
using StatueFrame.Studies;

Uncertain[] inputs =
[
    Uncertain.Gumbel("gust speed, m/s", 31, 3.5),
    Uncertain.Lognormal("force coefficient", 1.3, 0.13),
    Uncertain.Normal("tube wall, mm", 10, 0.4),
    Uncertain.Lognormal("yield strength, MPa", 390, 25),
];

// The utilization of the tube's base under the gust's moment.
double Utilization(IReadOnlyList<double> x)
{
    double q = 0.5 * 1.25 * x[0] * x[0], M = q * x[1] * 9.0 * 5.5, d = 0.32, t = 1e-3 * x[2];
    double W = Math.PI / 32 * (Math.Pow(d, 4) - Math.Pow(d - 2 * t, 4)) / d;
    return M / W / (1e6 * x[3]);
}

SampleResult sample = Sampling.Run(inputs, Utilization, 20_000, threshold: 0.25, seed: 7, SamplingRule.LowDiscrepancy);
Console.WriteLine(FormattableString.Invariant($"utilization: mean {sample.Mean.Value:0.000} ± {sample.Mean.Error:0.0000}, deviation {sample.StandardDeviation:0.000}, 98 % below {sample.Quantile(0.98):0.000}"));
Console.WriteLine(FormattableString.Invariant($"above 0.25 in {100 * sample.Exceedance.Value:0.00} % of years ({100 * sample.Exceedance.Low:0.00} to {100 * sample.Exceedance.High:0.00})"));

ReliabilityResult form = Reliability.Form(inputs, x => 1 - Utilization(x));
Console.WriteLine(FormattableString.Invariant($"first-order reliability: β = {form.Beta:0.000}, likeliest failure at a gust of {form.DesignPoint[0]:0.0} m/s"));

foreach (SensitivityIndex index in Sensitivity.Of(inputs, Utilization, 16_000, seed: 7))
    Console.WriteLine(FormattableString.Invariant($"{index.Input,-22} alone {index.First:0.00} ± {index.FirstError:0.00}, in all {index.Total:0.00} ± {index.TotalError:0.00}"));
Console.WriteLine(CheckSheet.Caution);
