using CsCheck;
using UnitsNet;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class Asce7GustFactorTests
{
    private static AsceWind Wind { get; } = new() { Edition = AsceEdition.Asce7_16, BasicSpeed = Mps(40.5), Exposure = AsceExposure.B };

    private static Asce7GustFactor Sample { get; } =
        Asce7GustFactor.Flexible(Wind, M(183), M(30.5), M(30.5), Frequency.FromHertz(0.2), 0.01);

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("V_z, m/s", 33.18, 0.005, g => g.MeanSpeed.MetersPerSecond),
        Row("L_z, m", 216.8, 0.05, g => g.LengthScale.Meters),
        Row("N_1", 1.307, 0.0005, g => g.ReducedFrequency),
        Row("R_n", 0.114, 0.0005, g => g.SpectrumFactor),
        Row("R_h", 0.178, 0.0005, g => g.HeightFactor),
        Row("R", 0.908, 0.002, g => g.ResonantResponse),
        Row("g_R", 3.787, 0.0005, g => g.ResonantPeakFactor),
        Row("Q", 0.785, 0.0005, g => g.BackgroundResponse),
        Row("G_f", 1.06, 0.005, g => g.Factor),
    ];

    private static PublishedValue Row(string name, double expected, double halfDigit, Func<Asce7GustFactor, double> part) =>
        new($"{name}, tall flexible building", "ASCE/SEI 7-16, 26.11.5 and C26.11 sample", expected, "-", halfDigit / expected, () => part(Sample));

    private static Gen<(double h, double B, double L, double n, double beta)> Structures { get; } =
        Gen.Select(Gen.Double[5, 150], Gen.Double[0.5, 40], Gen.Double[0.5, 40], Gen.Double[0.1, 5], Gen.Double[0.003, 0.1]);

    private static readonly Gen<AsceWind> Winds = Gen.Select(Gen.Int[0, 1], Gen.Int[0, 2], Gen.Double[20, 80])
        .Select((e, x, v) => Wind with { Edition = (AsceEdition)e, Exposure = (AsceExposure)x, BasicSpeed = Mps(v) });

    [Fact]
    public void Flexible_factor_without_resonance_is_the_rigid_one() =>
        Gen.Select(Winds, Structures).Sample((wind, s) =>
        {
            double rigid = Asce7GustFactor.Rigid(wind, s.h, s.B).Factor;
            double flexible = Asce7GustFactor.Flexible(wind, s.h, s.B, s.L, s.n, s.beta).Factor;
            double damped = Asce7GustFactor.Flexible(wind, s.h, s.B, s.L, s.n, 1e12).Factor;
            return flexible > rigid && Math.Abs(damped - rigid) < 1e-9 && rigid is > 0.5 and < 0.925;
        }, iter: 300);

    [Fact]
    public void Wider_or_better_damped_structures_never_get_more() =>
        Gen.Select(Winds, Structures, Gen.Double[1, 3]).Sample((wind, s, k) =>
        {
            double factor = Asce7GustFactor.Flexible(wind, s.h, s.B, s.L, s.n, s.beta).Factor;
            return Asce7GustFactor.Flexible(wind, s.h, k * s.B, s.L, s.n, s.beta).Factor <= factor
                && Asce7GustFactor.Flexible(wind, s.h, s.B, k * s.L, s.n, s.beta).Factor <= factor
                && Asce7GustFactor.Flexible(wind, s.h, s.B, s.L, s.n, k * s.beta).Factor <= factor;
        }, iter: 300);

    [Fact]
    public void Admittance_is_one_at_a_point_falls_steadily_and_is_smooth_at_its_switch()
    {
        Assert.Equal(1, GustInput.Admittance(0));
        Assert.Equal(GustInput.Admittance(0.000999999), GustInput.Admittance(0.001000001), 1e-8);
        Gen.Select(Gen.Double[0, 50], Gen.Double[0.01, 10]).Sample((eta, step) => GustInput.Admittance(eta + step) < GustInput.Admittance(eta), iter: 300);
    }

    [Fact]
    public void Admittance_is_the_double_integral_it_stands_for()
    {
        // (1/L²) ∫∫ exp(−2η|u−v|/L) du dv over the length: 1/η − (1 − e^(−2η))/(2η²).
        const int n = 800;
        const double eta = 1.7;
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
                sum += Math.Exp(-2 * eta * Math.Abs(i - j) / n);
        }
        Assert.Equal(sum / (n * n), GustInput.Admittance(eta), 1e-5);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Frequency n1 = Frequency.FromHertz(0.5);
        Assert.Throws<ArgumentOutOfRangeException>("height", () => Asce7GustFactor.Rigid(Wind, M(0), M(10)));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => Asce7GustFactor.Rigid(Wind, M(10), M(1e5)));
        Assert.Throws<ArgumentOutOfRangeException>("depth", () => Asce7GustFactor.Flexible(Wind, M(10), M(10), M(-1), n1, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>("frequency", () => Asce7GustFactor.Flexible(Wind, M(10), M(10), M(1), Frequency.Zero, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>("dampingRatio", () => Asce7GustFactor.Flexible(Wind, M(10), M(10), M(1), n1, 0));
        Assert.Throws<InvalidStatueException>(() => Asce7GustFactor.Rigid(Wind with { BasicSpeed = Mps(0) }, M(10), M(10)));
    }
}
