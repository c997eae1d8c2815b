using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Analyses.Harmonic;

public class FrequencyResponseTests
{
    private const double K = 4e6, M = 25_000;

    private static readonly double natural = Math.Sqrt(K / M) / (2 * Math.PI);

    private static readonly Lazy<StatueModel> One = new(() => StatueModel.Build(Earthquake.ShearBuildings.Uniform(1, K, M)));

    private static readonly Lazy<StatueModel> Sample = new(() => StatueModel.Build(new SampleStatue().Statue));

    private static HarmonicMotion Force(double ratio, double zeta) =>
        FrequencyResponse.OfForce(One.Value, "top", Direction3.X, K.Newtons, zeta).At("top", Direction3.X, (ratio * natural).Hertz);

    private static double Transmitted(double ratio, double zeta) => FrequencyResponse.OfBaseMotion(One.Value, Direction3.X, 1.MetersPerSecondSquared, zeta)
        .At("top", Direction3.X, (ratio * natural).Hertz).Acceleration.MetersPerSecondSquared;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("magnification at resonance, ζ = 0.1", "Den Hartog, Mechanical Vibrations, 2.8: 1/2ζ", 5, "-", 1e-4, () => Force(1, 0.1).Displacement.Meters, ValueKind.IndependentComputation),
        new("magnification at r = 0.5, ζ = 0.1", "Den Hartog, Mechanical Vibrations, 2.8: 1/√((1 − r²)² + (2ζr)²)", 1.321637, "-", 1e-4, () => Force(0.5, 0.1).Displacement.Meters, ValueKind.IndependentComputation),
        new("phase at resonance", "Den Hartog, Mechanical Vibrations, 2.8: a quarter turn behind", -90, "°", 1e-3, () => Force(1, 0.1).Phase.Degrees, ValueKind.IndependentComputation),
        new("phase at r = 2, ζ = 0.1", "Den Hartog, Mechanical Vibrations, 2.8: tan φ = 2ζr/(1 − r²)", -172.4054, "°", 1e-4, () => Force(2, 0.1).Phase.Degrees, ValueKind.IndependentComputation),
        new("transmissibility at r = √2 for any damping, ζ = 0.05", "Den Hartog, Mechanical Vibrations, 2.12", 1, "-", 1e-3, () => Transmitted(Math.Sqrt(2), 0.05), ValueKind.FromMemory),
        new("transmissibility at r = 2, ζ = 0.2", "Den Hartog, Mechanical Vibrations, 2.12: √(1 + (2ζr)²)/√((1 − r²)² + (2ζr)²)", 0.412509, "-", 3e-3, () => Transmitted(2, 0.2), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_slow_force_gives_the_static_sway() => Gen.Double[0.01, 0.3].Sample(zeta =>
    {
        Situation pull = new() { Name = "pull", Actions = [new ImposedLoad { Name = "rope", On = "L3", AlongX = 1000.Newtons, AlongY = Force0, Down = Force0 }] };
        double still = Sample.Value.Respond(pull).Cases[0].Of("wing tip").X.Meters;
        HarmonicMotion slow = FrequencyResponse.OfForce(Sample.Value, "neck", Direction3.X, 1000.Newtons, zeta, Sample.Value.Modes(5)).At("wing tip", Direction3.X, 1e-4.Hertz);
        return Math.Abs(slow.Displacement.Meters - Math.Abs(still)) < 1e-6 * Math.Abs(still);
    }, iter: 5);

    [Fact]
    public void Force_and_point_can_be_exchanged() => Gen.Double[0.5, 30].Sample(f =>
    {
        ModalResponse modes = Sample.Value.Modes(20);
        Direction3 a = Direction3.Along(1, 2, -1), b = Direction3.Towards(200.Degrees);
        HarmonicMotion there = FrequencyResponse.OfForce(Sample.Value, "tip", a, 1.Newtons, 0.02, modes).At("wing tip", b, f.Hertz);
        HarmonicMotion back = FrequencyResponse.OfForce(Sample.Value, "wing tip", b, 1.Newtons, 0.02, modes).At("tip", a, f.Hertz);
        return Math.Abs(there.Displacement.Meters - back.Displacement.Meters) < 1e-9 * there.Displacement.Meters;
    }, iter: 20);

    [Fact]
    public void A_sweep_has_its_peak_at_a_mode_and_writes_csv()
    {
        FrequencyResponse response = FrequencyResponse.OfForce(One.Value, "top", Direction3.X, 1.Newtons, 0.02);
        IReadOnlyList<HarmonicMotion> sweep = response.Sweep("top", Direction3.X, 0.2.Hertz, 20.Hertz, 1001);
        Assert.Equal(natural, sweep.MaxBy(m => m.Displacement.Meters).Frequency.Hertz, 0.01 * natural);
        Assert.Equal(1002, FrequencyResponse.ToCsv(sweep).Trim().Split("\r\n").Length);
    }

    [Fact]
    public void A_crowd_in_step_shakes_as_much_as_its_harmonics_add_up_to()
    {
        Direction3 along = Direction3.X;
        RhythmicLoad sway = RhythmicLoad.BodySway with { Coefficients = [0.5, 0.1], Slowest = (0.9 * natural).Hertz, Fastest = (1.1 * natural).Hertz };
        var crowd = new RhythmicCrowd { Load = sway, Point = "top", People = 16, InStep = true };
        RhythmCurve curve = RhythmCurve.Of(One.Value, crowd, "top", along, 0.02);
        Assert.Equal(natural, curve.Worst.Rhythm.Hertz, 2e-3 * natural);
        double F = 16 * 700, first = 0.5 * F / M / (2 * 0.02), second = 0.1 * F / M * 4 / Math.Sqrt(9 + Math.Pow(2 * 0.02 * 2, 2));
        Assert.Equal(first + second, curve.Worst.Peak.MetersPerSecondSquared, 2e-3 * first);
        Assert.Equal(Math.Sqrt(0.5 * (first * first + second * second)), curve.Worst.Rms.MetersPerSecondSquared, 2e-3 * first);
        RhythmCurve loose = RhythmCurve.Of(One.Value, crowd with { InStep = false }, "top", along, 0.02);
        Assert.Equal(curve.Worst.Peak.MetersPerSecondSquared / 4, loose.Worst.Peak.MetersPerSecondSquared, 1e-9);
        Check check = curve.CheckAgainst(new AccelerationLimit("top", (first + 2 * second).MetersPerSecondSquared));
        Assert.Equal(Verdict.Pass, check.Verdict);
        Assert.Equal(Verdict.Fail, curve.CheckAgainst(new AccelerationLimit("top", first.MetersPerSecondSquared)).Verdict);
        Assert.Contains("rms", curve.ToCsv());
    }

    [Fact]
    public void Wrong_input_is_told()
    {
        Assert.Throws<ArgumentException>(() => FrequencyResponse.OfForce(One.Value, "nose", Direction3.X, 1.Newtons, 0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyResponse.OfForce(One.Value, "top", Direction3.X, 1.Newtons, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Force(0, 0.1));
        Assert.Throws<ArgumentException>(() => Direction3.Along(0, 0, 0));
        Assert.Throws<InvalidStatueException>(() => RhythmCurve.Of(One.Value, new RhythmicCrowd { Load = RhythmicLoad.Jumping, Point = "top", People = 0 }, "top", Direction3.Z, 0.02));
    }

    private static Force Force0 => UnitsNet.Force.Zero;
}
