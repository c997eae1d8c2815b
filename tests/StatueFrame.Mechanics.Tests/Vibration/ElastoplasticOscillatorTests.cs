using CsCheck;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class ElastoplasticOscillatorTests
{
    private const double TwoPi = 2 * Math.PI;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Ductility under a steady load put on at once, 0.8 of the yield force", "energy: F u = R (u − u_y/2), as in Biggs, Introduction to Structural Dynamics, 2.6", 2.5, "-", 1e-9, () => Steady(0.8), ValueKind.IndependentComputation),
        new("Ductility under a steady load put on at once, 0.9 of the yield force", "energy: F u = R (u − u_y/2), as in Biggs, Introduction to Structural Dynamics, 2.6", 5, "-", 1e-9, () => Steady(0.9), ValueKind.IndependentComputation),
        new("Ductility under an impulse of 3 times that of first yield", "energy: J²/2m = R (u − u_y/2)", 5, "-", 1e-9, () => Impulsive(3), ValueKind.IndependentComputation),
    ];

    private static double Steady(double overYield)
    {
        var oscillator = new ElastoplasticOscillator(TwoPi, 0, TwoPi * TwoPi);
        for (int i = 0; i < 40; i++)
            oscillator.Advance(overYield * TwoPi * TwoPi, overYield * TwoPi * TwoPi, 0.1);
        return oscillator.Ductility;
    }

    private static double Impulsive(double overYield)
    {
        var oscillator = new ElastoplasticOscillator(TwoPi, 0, TwoPi * TwoPi);
        oscillator.Strike(overYield * TwoPi);
        for (int i = 0; i < 40; i++)
            oscillator.Advance(0, 0, 0.1);
        return oscillator.Ductility;
    }

    [Fact]
    public void Strong_spring_moves_as_the_linear_oscillator() =>
        Gen.Select(Gen.Double[0.1, 200], Gen.Double[0, 0.9], Gen.Double[0.001, 1]).Sample((omega, damping, h) =>
        {
            var linear = new PiecewiseLinearOscillator(omega, damping, h);
            var spring = new ElastoplasticOscillator(omega, damping);
            double u = 0, v = 0, size = 0;
            for (int i = 0; i < 12; i++)
            {
                double before = Math.Sin(2.0 * i), after = Math.Cos(1.3 * i);
                linear.Step(ref u, ref v, before, after);
                spring.Advance(before, after, h);
                size = Math.Max(size, Math.Abs(u));
            }
            return Math.Abs(spring.Displacement - u) < 1e-9 * size && spring.Peak >= size * (1 - 1e-9);
        });

    [Fact]
    public void Energy_is_kept_by_mass_spring_and_heat() =>
        Gen.Select(Gen.Double[0.1, 3], Gen.Double[0, 0.8], Gen.Double[1, 20]).Sample((strength, hardening, speed) =>
        {
            const double omega = 5;
            var oscillator = new ElastoplasticOscillator(omega, 0, strength * omega * omega, hardening);
            oscillator.Strike(speed * omega);
            double start = 0.5 * oscillator.Velocity * oscillator.Velocity;
            for (int i = 0; i < 200; i++)
                oscillator.Advance(0, 0, 0.05);
            // The spring's force is that of an elastic part α and of a part 1 − α that is stretched by its own force over ω².
            double ofSoft = 0.5 * hardening * omega * omega * oscillator.Displacement * oscillator.Displacement;
            double stretch = (oscillator.SpringForce - hardening * omega * omega * oscillator.Displacement) / ((1 - hardening) * omega * omega);
            double kept = 0.5 * oscillator.Velocity * oscillator.Velocity + ofSoft + 0.5 * (1 - hardening) * omega * omega * stretch * stretch;
            return Math.Abs(kept + oscillator.PlasticWork - start) < 1e-9 * start;
        });

    [Fact]
    public void Steps_may_be_of_any_length() =>
        Gen.Select(Gen.Double[0.2, 2], Gen.Double[0, 0.3], Gen.Int[2, 9]).Sample((strength, damping, parts) =>
        {
            var coarse = new ElastoplasticOscillator(7, damping, strength * 49, 0.05);
            var fine = new ElastoplasticOscillator(7, damping, strength * 49, 0.05);
            for (int i = 0; i < 30; i++)
            {
                double before = 60 * Math.Sin(i), after = 60 * Math.Sin(i + 1.0);
                coarse.Advance(before, after, 0.11);
                for (int k = 0; k < parts; k++)
                    fine.Advance(before + (after - before) * k / parts, before + (after - before) * (k + 1) / parts, 0.11 / parts);
            }
            return Math.Abs(coarse.Displacement - fine.Displacement) < 1e-8 * Math.Max(1, coarse.Peak);
        });

    [Theory, InlineData(0, 0, 1, 0), InlineData(1, -1, 1, 0), InlineData(1, 0, 0, 0), InlineData(1, 0, 1, 1), InlineData(double.NaN, 0, 1, 0)]
    public void Values_out_of_range_are_refused(double omega, double damping, double limit, double hardening) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ElastoplasticOscillator(omega, damping, limit, hardening));
}
