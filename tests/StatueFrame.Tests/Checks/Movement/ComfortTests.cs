using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

public class ComfortTests
{
    private static double Yearly(double f, ComfortUse use) => ComfortCurves.YearlyPeak(Frequency.FromHertz(f), use).MetersPerSecondSquared;

    private static double Storm(double f) => ComfortCurves.FiveYearRms(Frequency.FromHertz(f)).MetersPerSecondSquared;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("3.5 times the five-year rms curve at 0.2 Hz", "P. Irwin, Motion Criteria in High Rise Buildings, technotes 2c, second hand: acceptable five-year peak, period 5 s", 18, "milli-g", 0.5 / 18,
            () => 3.5 * Storm(0.2) / SelfWeight.Gravity * 1000),
        new("3.5 times the five-year rms curve at 0.125 Hz", "P. Irwin, Motion Criteria in High Rise Buildings, technotes 2c, second hand: acceptable five-year peak, period 8 s", 22, "milli-g", 0.5 / 22,
            () => 3.5 * Storm(0.125) / SelfWeight.Gravity * 1000),
        new("five-year rms at 1 Hz", "ISO 6897:1984, curve 1", 0.026, "m/s²", 1e-9, () => Storm(1), ValueKind.FromMemory),
        new("yearly peak, residences, 1 Hz", "ISO 10137:2007, Figure D.1", 0.04, "m/s²", 1e-9, () => Yearly(1, ComfortUse.Residence), ValueKind.FromMemory),
        new("yearly peak, offices, 2 Hz", "ISO 10137:2007, Figure D.1", 0.06, "m/s²", 1e-9, () => Yearly(2, ComfortUse.Office), ValueKind.FromMemory),
        new("yearly peak, residences, 5 Hz", "ISO 10137:2007, Figure D.1", 0.10, "m/s²", 1e-9, () => Yearly(5, ComfortUse.Residence), ValueKind.FromMemory),
        new("yearly peak, residences, 0.06 Hz", "ISO 10137:2007, Figure D.1", 0.14, "m/s²", 0.04, () => Yearly(0.06, ComfortUse.Residence), ValueKind.FromMemory),
    ];

    [Fact]
    public void Curves_run_without_steps_and_homes_ask_for_two_thirds() =>
        Gen.Double[0.061, 4.99].Sample(f =>
            Math.Abs(Yearly(1.0001 * f, ComfortUse.Office) / Yearly(f, ComfortUse.Office) - 1) < 1e-3
            && Math.Abs(Yearly(f, ComfortUse.Residence) / Yearly(f, ComfortUse.Office) - 2.0 / 3) < 1e-12);

    [Fact]
    public void Faster_sway_below_1_Hz_is_tolerated_less() =>
        Gen.Select(Gen.Double[0.07, 0.9], Gen.Double[1.01, 1.1]).Sample((f, k) =>
            Storm(k * f) < Storm(f) && Yearly(k * f, ComfortUse.Office) < Yearly(f, ComfortUse.Office));

    [Fact]
    public void A_platform_passes_below_the_curve_and_fails_above()
    {
        Check calm = ComfortChecks.Sway("gallery", Acceleration.FromMetersPerSecondSquared(0.05), Frequency.FromHertz(1.5), ComfortUse.Office, "wind of a year");
        Assert.Equal(Verdict.Pass, calm.Verdict);
        Assert.Equal(0.05 / 0.06, calm.Utilization!.Value, 1e-9);
        Assert.Equal(Verdict.Fail, ComfortChecks.Sway("gallery", Acceleration.FromMetersPerSecondSquared(0.05), Frequency.FromHertz(1.5), ComfortUse.Residence).Verdict);
        Assert.Equal(Verdict.Fail, ComfortChecks.StormSway("gallery", Acceleration.FromMetersPerSecondSquared(0.06), Frequency.FromHertz(0.2)).Verdict);
        Assert.Contains("ISO 10137", calm.Working().ToText());
        Assert.Contains("a_limit", ComfortChecks.StormSway("gallery", Acceleration.Zero, Frequency.FromHertz(0.2)).Working().ToText());
    }

    [Fact]
    public void Outside_the_curves_nothing_is_checked()
    {
        Assert.Equal(Verdict.NotChecked, ComfortChecks.Sway("gallery", Acceleration.Zero, Frequency.FromHertz(7), ComfortUse.Office).Verdict);
        Assert.Equal(Verdict.NotChecked, ComfortChecks.StormSway("gallery", Acceleration.Zero, Frequency.FromHertz(1.2)).Verdict);
        Assert.Equal(Verdict.NotChecked, ComfortChecks.Sway("gallery", Acceleration.FromMetersPerSecondSquared(-1), Frequency.FromHertz(1), ComfortUse.Office).Verdict);
        Assert.Throws<ArgumentOutOfRangeException>(() => ComfortCurves.YearlyPeak(Frequency.FromHertz(6), ComfortUse.Office));
        Assert.Throws<ArgumentOutOfRangeException>(() => ComfortCurves.FiveYearRms(Frequency.FromHertz(0)));
    }
}
