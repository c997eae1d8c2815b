using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Earthquake;

public class BaseMotionResponseTests
{
    private static readonly StatueModel tower = StatueModel.Build(ShearBuildings.Uniform(1, 4e6, 25_000, across: 1));

    private static BaseMotionRecord Sine(double f, double peak = 1, double step = 0.005, int count = 4001) => new()
    {
        Name = "sine",
        Step = step.Seconds,
        X = Enumerable.Range(0, count).Select(i => peak * Math.Sin(2 * Math.PI * f * i * step)).ToValueList(),
    };

    [Fact]
    public void A_slow_motion_is_followed_and_a_steady_one_reaches_the_transmissibility()
    {
        double zeta = 0.05, f_n = Math.Sqrt(4e6 / 25_000) / (2 * Math.PI);
        foreach (double r in new[] { 0.5, 1.5, 2.5 })
        {
            BaseMotionMovement top = BaseMotionResponse.Of(tower, Sine(r * f_n), zeta).Of("top");
            double expected = Math.Sqrt((1 + 4 * zeta * zeta * r * r) / (Math.Pow(1 - r * r, 2) + 4 * zeta * zeta * r * r));
            double last = top.AccelerationX.Skip(top.AccelerationX.Count / 2).Max(Math.Abs);
            Assert.Equal(expected, last, 0.01 * expected);
        }
    }

    [Fact]
    public void One_mass_moves_as_the_exact_oscillator()
    {
        var random = new Random(7);
        double[] a = [.. Enumerable.Range(0, 400).Select(_ => random.NextDouble() - 0.5)];
        BaseMotionResponse response = BaseMotionResponse.Of(tower, new BaseMotionRecord { Name = "noise", Step = 0.01.Seconds, X = a.ToValueList() }, 0.03);
        double omega = 2 * Math.PI * tower.Modes(3).First.Frequency.Hertz;
        var oscillator = new PiecewiseLinearOscillator(omega, 0.03, 0.01);
        double u = 0, v = 0, peak = 0;
        int parts = (int)Math.Round(0.01 / response.Step.Seconds);
        BaseMotionMovement top = response.Of("top");
        for (int i = 1; i < a.Length; i++)
        {
            oscillator.Step(ref u, ref v, -a[i - 1], -a[i]);
            Assert.Equal(u, top.X[parts * i], 2e-6);
            peak = Math.Max(peak, Math.Abs(25_000 * omega * omega * u));
        }
        Assert.Equal(peak, response.BaseShear.Newtons, 0.02 * peak);
    }

    [Fact]
    public void A_sudden_steady_acceleration_doubles_and_then_settles_to_statics()
    {
        var steady = new BaseMotionRecord { Name = "step", Step = 0.01.Seconds, X = Enumerable.Repeat(1.0, 3000).ToValueList() };
        BaseMotionMovement top = BaseMotionResponse.Of(tower, steady, 0).Of("top");
        Assert.Equal(2 * 25_000 / 4e6, top.PeakSway.Meters, 1e-3 * 2 * 25_000 / 4e6);
        BaseMotionMovement damped = BaseMotionResponse.Of(tower, steady, 0.1).Of("top");
        Assert.Equal(-25_000 / 4e6, damped.X[^1], 1e-5);
        Assert.Equal(1, damped.AccelerationX[^1], 1e-3);
    }

    [Fact]
    public void Spectrum_and_record_agree_for_one_mass()
    {
        var random = new Random(3);
        var record = new BaseMotionRecord { Name = "noise", Step = 0.02.Seconds, X = Enumerable.Range(0, 1000).Select(_ => random.NextDouble() - 0.5).ToValueList() };
        double peak = BaseMotionResponse.Of(tower, record, 0.05).Of("top").X.Max(Math.Abs), omega = Math.Sqrt(4e6 / 25_000);
        var spectrum = new TableSpectrum { Origin = Source.User, Points = [new(Duration.Zero, (peak * omega * omega).MetersPerSecondSquared)] };
        EarthquakeResponse response = EarthquakeResponse.Of(tower, new EarthquakeAction { Horizontal = spectrum });
        Assert.Equal(peak, response.Of("top").X.Meters, 1e-4 * peak);
        // 100 % of one component with 30 % of the other is greatest between the two.
        Assert.Equal(Math.Sqrt(1.09) * peak, response.Of("top").Sway.Meters, 1e-4 * peak);
    }

    [Fact]
    public void Components_add_up()
    {
        StatueModel model = StatueModel.Build(new SampleStatue().Statue);
        ModalResponse modes = model.Modes(10);
        var random = new Random(11);
        ValueList<double> x = [.. Noise()], y = [.. Noise()], z = [.. Noise()];
        var record = new BaseMotionRecord { Name = "three", Step = 0.01.Seconds, X = x, Y = y, Z = z };
        double[] together = [.. BaseMotionResponse.Of(model, modes, record, 0.02).Of("wing tip").Y];
        double[][] single =
        [
            .. new[] { record with { Y = [], Z = [] }, record with { X = [], Z = [] }, record with { X = [], Y = [] } }
                .Select(r => BaseMotionResponse.Of(model, modes, r, 0.02).Of("wing tip").Y.ToArray()),
        ];
        for (int i = 0; i < together.Length; i++)
            Assert.Equal(together[i], single.Sum(s => s[i]), 1e-9);

        IEnumerable<double> Noise() => Enumerable.Range(0, 200).Select(_ => random.NextDouble() - 0.5);
    }

    [Fact]
    public void Stress_grows_with_the_scale()
    {
        StatueModel model = StatueModel.Build(new SampleStatue().Statue);
        BaseMotionResponse once = BaseMotionResponse.Of(model, model.Modes(8), Sine(3, 1, 0.01, 150), 0.03);
        BaseMotionResponse thrice = BaseMotionResponse.Of(model, model.Modes(8), Sine(3, 1, 0.01, 150) with { Scale = 3 }, 0.03);
        Assert.Equal(model.Rings.Count, once.Rings.Count);
        Assert.Equal(3 * once.Rings[0].Stress.Pascals, thrice.Rings[0].Stress.Pascals, 1e-6 * thrice.Rings[0].Stress.Pascals);
    }

    [Fact]
    public void Wrong_records_are_told()
    {
        Assert.Throws<InvalidStatueException>(() => BaseMotionResponse.Of(tower, Sine(1) with { X = [1, double.NaN] }, 0.05));
        Assert.Throws<InvalidStatueException>(() => BaseMotionResponse.Of(tower, Sine(1) with { X = [] }, 0.05));
        Assert.Throws<InvalidStatueException>(() => BaseMotionResponse.Of(tower, Sine(1) with { Step = Duration.Zero }, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => BaseMotionResponse.Of(tower, Sine(1), 0.7));
    }
}
