using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using StatueFrame.Tests.Analyses;
using UnitsNet;

namespace StatueFrame.Tests.Studies.SiteRecords;

public class SiteRecordTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("logarithmic decrement, 20 cm to 2 cm in 100 cycles", "closed form ln(10)/100", Math.Log(10) / 100, "-", 1e-12, () => FreeDecay.Decrement(0.20, 0.02, 100), ValueKind.IndependentComputation),
        new("damping ratio of peaks 3 : 2 a cycle apart", "by hand: δ = ln 1.5, ζ = δ/√(4π² + δ²)", 0.06439783, "-", 1e-6, () => DampingModel.RatioOf(FreeDecay.Decrement(3, 2, 1)), ValueKind.IndependentComputation),
        new("frequency of a decay without noise", "damped cosine of 1.37 Hz, ζ 0.02", 1.37, "Hz", 1e-6, () => FreeDecay.Of(Records.Decay(50, 60, 0, 1, (1.37, 0.02, 1))).Frequency.Hertz, ValueKind.IndependentComputation),
        new("damping of a decay without noise", "damped cosine of 1.37 Hz, ζ 0.02", 0.02, "-", 1e-4, () => FreeDecay.Of(Records.Decay(50, 60, 0, 1, (1.37, 0.02, 1))).DampingRatio, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_decay_in_noise_is_found_within_its_error() =>
        Gen.Select(Gen.Double[0.5, 4], Gen.Double[0.004, 0.03], Gen.Double[0.001, 0.05], Gen.Int[1, 1_000_000]).Sample((f, zeta, noise, seed) =>
        {
            MeasuredMode mode = FreeDecay.Of(Records.Decay(40, 40, noise, seed, (f, zeta, 1)), f.Hertz);
            // Errors from n blocks have 2n − 4 degrees of freedom: by Student's distribution these many are missed once in 100 000 tries,
            // with 6 blocks, and with 4, which are warned of.
            double errors = mode.Warnings.Any(warning => warning.StartsWith("Few cycles", StringComparison.Ordinal)) ? 30 : 10;
            Assert.InRange(mode.Frequency.Hertz, f - errors * mode.FrequencyError.Hertz - 1e-6 * f, f + errors * mode.FrequencyError.Hertz + 1e-6 * f);
            Assert.InRange(mode.DampingRatio, zeta - errors * mode.DampingError - 1e-5, zeta + errors * mode.DampingError + 1e-5);
            Assert.True(mode.DampingError < 0.3 * zeta);
        }, iter: 40);

    [Fact]
    public void Stated_errors_of_decays_are_those_of_repeated_tests()
    {
        MeasuredMode[] all = [.. Enumerable.Range(1, 40).Select(seed => FreeDecay.Of(Records.Decay(40, 40, 0.03, seed, (1.3, 0.012, 1)), 1.3.Hertz))];
        double mean = all.Average(m => m.DampingRatio);
        double spread = Math.Sqrt(all.Average(m => Math.Pow(m.DampingRatio - mean, 2))), stated = Math.Sqrt(all.Average(m => m.DampingError * m.DampingError));
        Assert.InRange(stated / spread, 0.7, 1.4);
        Assert.Equal(0.012, mean, 4 * spread / Math.Sqrt(40));
    }

    [Fact]
    public void The_size_of_a_record_does_not_matter()
    {
        SiteRecord record = Records.Decay(40, 40, 0.01, 9, (1.7, 0.01, 1));
        MeasuredMode one = FreeDecay.Of(record), other = FreeDecay.Of(record with { Values = record.Values.Select(v => 1000 * v).ToValueList() });
        Assert.Equal(one.DampingRatio, other.DampingRatio, 1e-9);
        Assert.Equal(one.Frequency.Hertz, other.Frequency.Hertz, 1e-9);
    }

    [Fact]
    public void A_mode_is_found_beside_another()
    {
        SiteRecord record = Records.Decay(50, 60, 0.005, 4, (1.1, 0.01, 1), (3.4, 0.008, 0.6));
        MeasuredMode low = FreeDecay.Of(record, 1.1.Hertz), high = FreeDecay.Of(record, 3.4.Hertz);
        Assert.Equal(0.01, low.DampingRatio, 3e-4);
        Assert.Equal(0.008, high.DampingRatio, 3e-4);
        Assert.Equal(1.1, low.Frequency.Hertz, 1e-3);
        Assert.Equal(3.4, high.Frequency.Hertz, 1e-3);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public void Ambient_vibration_gives_frequency_and_damping_within_their_errors(int seed, bool springs)
    {
        SiteRecord record = Records.Ambient(12, 3600, seed, springs, (1.2, 0.015), (3.3, 0.01));
        foreach ((double f, double zeta) in new[] { (1.2, 0.015), (3.3, 0.01) })
        {
            foreach (MeasuredMode mode in new[] { HalfPowerBand.Of(record, f.Hertz), RandomDecrement.Of(record, f.Hertz) })
            {
                Assert.InRange(mode.Frequency.Hertz, f - 4 * mode.FrequencyError.Hertz, f + 4 * mode.FrequencyError.Hertz);
                Assert.InRange(mode.DampingRatio, zeta - 4 * mode.DampingError, zeta + 4 * mode.DampingError);
                Assert.True(mode.DampingError < 0.4 * zeta && mode.FrequencyError.Hertz < 0.01 * f, $"{mode}");
            }
        }
    }

    [Fact]
    public void The_spectrum_holds_the_variance_and_finds_the_peaks()
    {
        SiteRecord record = Records.Ambient(20, 2000, 5, false, (1.2, 0.02), (4.1, 0.02));
        WelchSpectrum spectrum = WelchSpectrum.Of(record, 50.Seconds);
        double mean = record.Values.Average(), variance = record.Values.Average(v => (v - mean) * (v - mean)), integral = 0;
        foreach (double density in spectrum.Density)
            integral += density * spectrum.Resolution.Hertz;
        Assert.Equal(variance, integral, 0.05 * variance);
        double[] peaks = [.. spectrum.Peaks(2).Select(p => p.Hertz).Order()];
        Assert.Equal(1.2, peaks[0], 0.05);
        Assert.Equal(4.1, peaks[1], 0.15);
    }

    [Fact]
    public void A_pure_tone_peaks_at_its_frequency() => Gen.Double[0.5, 7].Sample(f =>
    {
        SiteRecord record = Records.Of(20, Enumerable.Range(0, 4000).Select(i => Math.Sin(2 * Math.PI * f * i / 20)));
        return Math.Abs(WelchSpectrum.Of(record, 40.Seconds).Peaks(1)[0].Hertz - f) < 0.002;
    }, iter: 50);

    [Fact]
    public void Records_that_hold_no_answer_are_refused_with_the_reason()
    {
        SiteRecord good = Records.Decay(20, 40, 0.01, 1, (1.5, 0.01, 1));
        Assert.Contains("too slowly", Assert.Throws<SiteRecordException>(() => FreeDecay.Of(good, 9.Hertz)).Message);
        Assert.Contains("too short", Assert.Throws<SiteRecordException>(() => FreeDecay.Of(good, 0.2.Hertz)).Message);
        Assert.Contains("too short", Assert.Throws<SiteRecordException>(() => HalfPowerBand.Of(good, 1.5.Hertz)).Message);
        Assert.Contains("not finite", Assert.Throws<InvalidStatueException>(() => FreeDecay.Of(good with { Values = good.Values.With(7, double.NaN) })).Message);
        Assert.Contains("the same", Assert.Throws<InvalidStatueException>(() => FreeDecay.Of(Records.Of(20, new double[500]))).Message);
        Assert.Throws<InvalidStatueException>(() => FreeDecay.Of(Records.Of(20, [1, 2, 3])));
        Assert.Throws<SiteRecordException>(() => WelchSpectrum.Of(good, 100.Seconds));
        Assert.Throws<SiteRecordException>(() => FreeDecay.Of(Records.Of(20, Enumerable.Range(0, 800).Select(i => Math.Exp(0.02 * i) * Math.Sin(i))), 3.18.Hertz));
    }

    [Fact]
    public void Measured_modes_are_matched_each_with_one_of_the_model()
    {
        ModalResponse modes = StatueModel.Build(new SampleStatue().Statue).Modes(6);
        double f = modes.First.Frequency.Hertz;
        MeasuredMode measured = FreeDecay.Of(Records.Decay(20 * f, 60 / f, 0.01, 3, (0.97 * f, 0.01, 1)));
        ModeMatching matching = ModeMatching.Of(modes, [measured, measured with { Frequency = 50 * measured.Frequency }]);
        Assert.Equal(1, matching.Rows[0].Number);
        Assert.Equal(1 / 0.97 - 1, matching.Rows[0].Difference!.Value, 2e-3);
        Assert.Null(matching.Rows[1].Number);
        Assert.Contains("none near", matching.ToString());
        Assert.Equal(measured.DampingRatio, DampingModel.RatioOf(measured.AsDamping().StructuralDecrement), 1e-12);
    }
}
