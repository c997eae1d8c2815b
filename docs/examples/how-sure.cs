#:project ../../src/StatueFrame/StatueFrame.csproj

// How sure is it? A mast of the Saltmere Heron's harbor under uncertain wind, wall thickness and strength: sampling,
// first-order reliability, and which input matters. Then the Heron itself: how likely its tip sways too far, with wind, sheet,
// base, the fixity of its bars and the loss of section uncertain. All data are invented for this example.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

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
Console.WriteLine(FormattableString.Invariant($"utilization: mean {sample.Mean.Value:0.000} ± {sample.Mean.Error:0.0000}, deviation {sample.StandardDeviation:0.000} ± {sample.StandardDeviationError:0.000}"));
(double value, double low, double high) = sample.QuantileInterval(0.98);
Console.WriteLine(FormattableString.Invariant($"98 % below {value:0.000} ({low:0.000} to {high:0.000})"));
Console.WriteLine(FormattableString.Invariant($"above 0.25 in {100 * sample.Exceedance.Value:0.00} % of years ({100 * sample.Exceedance.Low:0.00} to {100 * sample.Exceedance.High:0.00})"));

ReliabilityResult form = Reliability.Form(inputs, x => 1 - Utilization(x));
Console.WriteLine(FormattableString.Invariant($"first-order reliability: β = {form.Beta:0.000}, likeliest failure at a gust of {form.DesignPoint[0]:0.0} m/s"));

foreach (SensitivityIndex index in Sensitivity.Of(inputs, Utilization, 16_000, seed: 7))
    Console.WriteLine(FormattableString.Invariant($"{index.Input,-22} alone {index.First:0.00} ± {index.FirstError:0.00}, in all {index.Total:0.00} ± {index.TotalError:0.00}"));

// The Heron: every evaluation changes the description, builds the model and blows on it.
Statue whole = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json")).Statue;
Statue heron = whole with { Limbs = [], Fittings = [.. whole.Fittings.Where(f => !f.On.StartsWith("wing/", StringComparison.Ordinal))], Points = [new NamedPoint("tip", "band 30")] };
Uncertain[] ofHeron =
[
    Uncertain.Gumbel("gust speed, m/s", 24, 2.5),
    Uncertain.Normal("sheet thickness, mm", 2.4, 0.08),
    Uncertain.Lognormal("base stiffness, GN·m/rad", 6, 2),
    Uncertain.Lognormal("fixity of bars, kN·m/rad", 60, 20),
    Uncertain.Uniform("years of corrosion", 1, 60),
];
ReliabilityResult sway = Reliability.Form(ofHeron, x => 1 - TipSway(x) / 0.15);
Console.WriteLine(FormattableString.Invariant($"the Heron's tip beyond 150 mm: β = {sway.Beta:0.00}, probability a year {sway.FailureProbability:0.0e0}, {sway.Evaluations} models"));
for (int i = 0; i < ofHeron.Length; i++)
    Console.WriteLine(FormattableString.Invariant($"{ofHeron[i].Name,-26} {100 * sway.Direction[i] * sway.Direction[i],3:0} % of it, likeliest {sway.DesignPoint[i]:0.00}"));
Console.WriteLine(CheckSheet.Caution);

double TipSway(IReadOnlyList<double> x)
{
    Statue sample = heron with
    {
        Skin = heron.Skin! with { Thickness = x[1].Millimeters },
        Tower = heron.Tower with { Base = TowerBase.Rocking((1e9 * x[2]).NewtonMetersPerRadian) },
        Standoffs = [.. heron.Standoffs.Cast<EvenRing>().Select(ring => ring with { Standoff = ring.Standoff with { SkinFixity = EndFixity.Spring((1e3 * x[3]).NewtonMetersPerRadian) } })],
    };
    var blow = new WindAction { Profile = new En1991Wind { FundamentalVelocity = x[0].MetersPerSecond, Terrain = TerrainCategory.Zero }, GustEffectFactor = 1.05, Headings = [0.Degrees] };
    return StatueModel.Build(sample.Corroded(x[4].Years365)).Respond(new Situation { Name = "gust", LimitState = LimitState.Service, Actions = [blow] }).GreatestSway("tip").Sway.Meters;
}

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
