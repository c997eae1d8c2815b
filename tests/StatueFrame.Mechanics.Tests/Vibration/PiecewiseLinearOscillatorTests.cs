using CsCheck;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class PiecewiseLinearOscillatorTests
{
    private const string Chopra = "Chopra, Dynamics of Structures, shock spectra", Biggs = "Biggs, Introduction to Structural Dynamics";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Pulses("Rectangular", Chopra, _ => 1, (0.1, 0.618), (0.25, 1.414), (0.5, 2.000), (2, 2.000)),
        .. Pulses("Falling triangular", Biggs, s => 1 - s, (0.1, 0.311), (0.5, 1.196), (1, 1.550), (2, 1.763)),
        .. Pulses("Half sine", Chopra, s => Math.Sin(Math.PI * s), (0.25, 0.943), (0.5, 1.571), (1, 1.732)),
    ];

    private static IEnumerable<PublishedValue> Pulses(
        string shape, string source, Func<double, double> pulse, params (double Ratio, double Factor)[] values) =>
        values.Select(v => new PublishedValue($"{shape} pulse, peak dynamic factor at t_d/T = {v.Ratio}", source, v.Factor, "-",
            0.0006 / v.Factor, () => PeakFactor(pulse, v.Ratio), ValueKind.FromMemory));

    /// <summary>The peak of u / u_static for an undamped oscillator of period 1, during the pulse and after it.</summary>
    private static double PeakFactor(Func<double, double> pulse, double duration)
    {
        const int steps = 2000;
        double omega = 2 * Math.PI, h = duration / steps, u = 0, v = 0, peak = 0;
        var oscillator = new PiecewiseLinearOscillator(omega, 0, h);
        for (int i = 0; i < steps; i++)
        {
            oscillator.Step(ref u, ref v, omega * omega * pulse((double)i / steps), omega * omega * pulse((i + 1.0) / steps));
            peak = Math.Max(peak, Math.Abs(u));
        }
        return Math.Max(peak, Math.Sqrt(u * u + v * v / (omega * omega)));
    }

    [Fact]
    public void Step_is_exact_for_a_quadratic_that_needs_a_linear_force() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 0.99], Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((omega, damping, a, b) =>
        {
            const double h = 0.01;
            double Force(double t) => 2 * damping * omega * b + omega * omega * (a + b * t);
            var oscillator = new PiecewiseLinearOscillator(omega, damping, h);
            double u = a, v = b;
            for (int i = 0; i < 100; i++)
                oscillator.Step(ref u, ref v, Force(i * h), Force((i + 1) * h));
            return Math.Abs(u - (a + b)) < 1e-10 && Math.Abs(v - b) < 1e-10 * Math.Max(1, omega);
        });

    [Fact]
    public void One_step_equals_a_thousand_small_ones() =>
        Gen.Select(Gen.Double[0, 50], Gen.Double[0, 0.99], Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((omega, damping, before, after) =>
        {
            const double h = 0.1;
            const int parts = 1000;
            var coarse = new PiecewiseLinearOscillator(omega, damping, h);
            var fine = new PiecewiseLinearOscillator(omega, damping, h / parts);
            double u = 0.3, v = -2, x = u, y = v;
            coarse.Step(ref u, ref v, before, after);
            for (int i = 0; i < parts; i++)
                fine.Step(ref x, ref y, before + (after - before) * i / parts, before + (after - before) * (i + 1) / parts);
            return Math.Abs(u - x) < 1e-11 && Math.Abs(v - y) < 1e-10;
        });

    [Fact]
    public void Series_and_closed_form_meet()
    {
        foreach (double damping in (double[])[0, 0.02, 0.5, 0.98])
        {
            var series = new PiecewiseLinearOscillator(0.5 - 1e-14, damping, 1);
            var closed = new PiecewiseLinearOscillator(0.5 + 1e-14, damping, 1);
            double u = 1, v = -0.5, x = u, y = v;
            series.Step(ref u, ref v, 0.7, -1.3);
            closed.Step(ref x, ref y, 0.7, -1.3);
            Assert.Equal(u, x, 1e-13);
            Assert.Equal(v, y, 1e-13);
        }
    }

    [Fact]
    public void Free_mass_is_driven_by_force_alone()
    {
        var mass = new PiecewiseLinearOscillator(0, 0, 2);
        double u = 1, v = 3;
        mass.Step(ref u, ref v, 6, 12);
        Assert.Equal(1 + 3 * 2 + 6 * 4 / 2.0 + 6 * 4 / 6.0, u, 1e-12);
        Assert.Equal(3 + 9 * 2, v, 1e-12);
    }

    [Fact]
    public void Energy_of_an_undamped_oscillator_stays()
    {
        var oscillator = new PiecewiseLinearOscillator(30, 0, 0.01);
        double u = 1, v = 0;
        for (int i = 0; i < 100_000; i++)
            oscillator.Step(ref u, ref v, 0, 0);
        Assert.Equal(1, u * u + v * v / 900, 1e-9);
    }

    [Theory, InlineData(-1, 0, 1), InlineData(1, 1, 1), InlineData(1, -0.1, 1), InlineData(1, 0, 0), InlineData(double.NaN, 0, 1), InlineData(1, double.NaN, 1)]
    public void Values_out_of_range_are_refused(double omega, double damping, double step) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PiecewiseLinearOscillator(omega, damping, step));
}
