using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Works.Tests.Keeping;

public class StormReportTests
{
    private static StormRecord Storm(double k, double noise = 0, int seed = 1)
    {
        var random = new Random(seed);
        double toMean = Heron.Curve.DesignMeanSpeed / Heron.Curve.DesignGustSpeed, calm = Heron.Curve.At(Speed.Zero).At("tip").Gust.Meters;
        return new StormRecord
        {
            Name = "a storm",
            Point = "tip",
            Readings =
            [
                .. Enumerable.Range(0, 12).Select(i =>
                {
                    double gust = 15 + i;
                    double foreseen = Heron.Curve.At((gust * toMean).MetersPerSecond).At("tip").Gust.Meters - calm;
                    return new StormReading(gust.MetersPerSecond, Length.FromMeters(Math.Max(0, k * foreseen + noise * (random.NextDouble() - 0.5) * 2 * Math.Sqrt(3))), 1.Millimeters);
                }),
            ],
        };
    }

    [Theory]
    [InlineData(1.0, StormFinding.AsForeseen)]
    [InlineData(0.6, StormFinding.Less)]
    [InlineData(1.4, StormFinding.More)]
    public void The_ratio_of_the_storm_is_found(double k, StormFinding finding)
    {
        var report = StormReport.Of(Heron.Curve, Storm(k));
        Assert.Equal(k, report.SwayRatio, 1e-9);
        Assert.Equal(finding, report.Sway);
        Assert.Equal(finding == StormFinding.More, report.AsksForInspection);
    }

    [Fact]
    public void Noise_stays_within_the_error_that_is_told()
    {
        int within = Enumerable.Range(1, 100).Count(seed => StormReport.Of(Heron.Curve, Storm(1, 0.003, seed)) is { } r && Math.Abs(r.SwayRatio - 1) <= 2 * r.SwayRatioError);
        // 95 % of two hundred; the error is itself estimated from twelve readings.
        Assert.InRange(within, 85, 100);
    }

    [Fact]
    public void Readings_too_coarse_to_tell_say_so()
    {
        StormRecord coarse = Storm(1);
        coarse = coarse with { Readings = [.. coarse.Readings.Select(r => r with { SwayError = 300.Millimeters })] };
        Assert.Equal(StormFinding.NotKnown, StormReport.Of(Heron.Curve, coarse).Sway);
    }

    [Fact]
    public void A_drift_of_the_frequency_and_a_tilt_that_stays_ask_for_an_inspection()
    {
        SiteRecord before = Vibration(1.90, 0.01, 3), after = Vibration(1.70, 0.01, 4);
        MeasuredMode earlier = HalfPowerBand.Of(before, Frequency.FromHertz(1.9));
        var report = StormReport.Of(Heron.Curve, Storm(1) with { Accelerations = after }, Frequency.FromHertz(1.7), earlier);
        Assert.Equal(StormFinding.Less, report.Frequency);
        Assert.True(report.AsksForInspection);
        Assert.Contains("lower than before", report.ToString());
        // An unchanged statue is called changed in about one storm of twenty.
        int same = Enumerable.Range(10, 20).Count(seed => StormReport.Of(Heron.Curve, Storm(1) with { Accelerations = Vibration(1.90, 0.01, seed) }, Frequency.FromHertz(1.9), HalfPowerBand.Of(Vibration(1.90, 0.01, seed + 100), Frequency.FromHertz(1.9))).Frequency == StormFinding.AsForeseen);
        Assert.InRange(same, 15, 20);
        Assert.Equal(StormFinding.More, StormReport.Of(Heron.Curve, Storm(1) with { TiltLeft = 0.1.Degrees, TiltError = 0.02.Degrees }).Tilt);
        Assert.Equal(StormFinding.AsForeseen, StormReport.Of(Heron.Curve, Storm(1) with { TiltLeft = 0.03.Degrees, TiltError = 0.02.Degrees }).Tilt);
    }

    [Fact]
    public void A_storm_above_the_design_is_refused_with_what_to_do()
    {
        StormRecord storm = Storm(1);
        storm = storm with { Readings = [.. storm.Readings, new StormReading(90.MetersPerSecond, 1.Meters, 1.Millimeters)] };
        Assert.Contains("inspect", Assert.Throws<InvalidStatueException>(() => StormReport.Of(Heron.Curve, storm)).Message);
    }

    [Fact]
    public void Readings_come_from_a_table()
    {
        Assert.Equal(2, StormRecord.ParseReadings("time,gust_m_s,sway_mm,error_mm\n08:10,21.4,14,1\n08:20,23,17,1\n").Count);
        Assert.Equal(2, Assert.Throws<InvalidStatueException>(() => StormRecord.ParseReadings("gust_m_s,sway_mm,error_mm\nx,14,1\n21,y,1\n")).Problems.Count);
    }

    /// <summary>An oscillator shaken by noise.</summary>
    private static SiteRecord Vibration(double f, double zeta, int seed)
    {
        var random = new Random(seed);
        const double dt = 0.02;
        double w = 2 * Math.PI * f, x = 0, v = 0;
        var values = new double[60_000];
        for (int i = 0; i < values.Length; i++)
        {
            double a = -w * w * x - 2 * zeta * w * v + (random.NextDouble() - 0.5);
            v += a * dt;
            x += v * dt;
            values[i] = a;
        }
        return new SiteRecord { Name = "tip", SampleRate = Frequency.FromHertz(50), Values = [.. values] };
    }
}
