#:project ../../src/StatueFrame/StatueFrame.csproj

// Frequency and damping of the Saltmere Heron's chick from two records at its tip: a pull that is let go, and an hour of wind.
// Both records are made up here, with a fixed seed, from 1.32 Hz at 0.9 % and 1.71 Hz at 1.1 % of critical damping.

using StatueFrame;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

var random = new Random(1);
const double rate = 25;

// A rope at the tip is cut: both modes ring, and the sensor adds some noise.
double[] release = [.. Enumerable.Range(0, (int)(90 * rate)).Select(i => Ring(i / rate, 1.32, 0.009) + 0.01 * Noise())];
var pull = new SiteRecord { Name = "tip along x, rope cut", SampleRate = rate.Hertz, Values = [.. release] };
MeasuredMode decay = FreeDecay.Of(pull);
Console.WriteLine(decay);

// An hour of wind, as noise through two oscillators.
double[] hour = new double[(int)(3600 * rate)];
foreach ((double f, double zeta) in new[] { (1.32, 0.009), (1.71, 0.011) })
{
    double w = 2 * Math.PI * f, h = 1 / rate, u = 0, v = 0;
    for (int i = 0; i < hour.Length; i++)
    {
        // A decay over one step, and a kick.
        double d = w * Math.Sqrt(1 - zeta * zeta), e = Math.Exp(-zeta * w * h), c = Math.Cos(d * h), s = Math.Sin(d * h);
        (u, v) = (e * (u * (c + zeta * w / d * s) + v * s / d), e * (v * (c - zeta * w / d * s) - u * w * w / d * s) + Noise());
        hour[i] += -2 * zeta * w * v - w * w * u;
    }
}
var wind = new SiteRecord { Name = "tip, an hour of wind", SampleRate = rate.Hertz, Values = [.. hour] };
WelchSpectrum spectrum = WelchSpectrum.Of(wind, 200.Seconds);
var measured = new List<MeasuredMode> { decay };
foreach (Frequency peak in spectrum.Peaks(2).OrderBy(f => f.Hertz))
{
    MeasuredMode band = HalfPowerBand.Of(wind, peak);
    Console.WriteLine($"peak at {peak.Hertz:0.000} Hz: {band}");
    Console.WriteLine($"                   {RandomDecrement.Of(wind, peak)}");
    if (Math.Abs(peak.Hertz / decay.Frequency.Hertz - 1) > 0.05)
        measured.Add(band);
}
Console.WriteLine();

// Beside the model: a slender mast with the mass of its skin.
StatueModel model = StatueModel.Build(new Statue
{
    Name = "Saltmere Heron, chick",
    Tower = new Tower
    {
        Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("breast", 5.Meters), new TowerLevel("head", 9.Meters)],
        Segments = [Core(), Core()],
    },
    Fittings = [new Fitting { Name = "body", On = "breast", Mass = 900.Kilograms }, new Fitting { Name = "head", On = "head", Mass = 350.Kilograms }],
});
Console.WriteLine(ModeMatching.Of(model.Modes(4), measured));
Console.WriteLine($"For the description: DampingModel of the decrement {decay.AsDamping().StructuralDecrement:0.000}.");

CoreSegment Core() => new()
{
    BendingX = Rigidity.FromNewtonSquareMeters(9.0e6), BendingY = Rigidity.FromNewtonSquareMeters(15.5e6),
    Torsion = Rigidity.FromNewtonSquareMeters(8e6), Axial = 2e9.Newtons, Mass = 60.KilogramsPerMeter,
};

double Ring(double t, double f, double zeta) =>
    Math.Exp(-zeta * 2 * Math.PI * f * t) * Math.Cos(2 * Math.PI * f * Math.Sqrt(1 - zeta * zeta) * t);

double Noise() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
