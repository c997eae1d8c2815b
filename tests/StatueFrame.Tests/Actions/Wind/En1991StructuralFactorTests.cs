using CsCheck;
using UnitsNet;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class En1991StructuralFactorTests
{
    private static En1991Wind Wind { get; } = new() { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.III };

    private static readonly Frequency n1 = Frequency.FromHertz(3.1);

    private static En1991StructuralFactor Example { get; } = En1991StructuralFactor.AnnexB(Wind, M(35), M(10), M(21), n1, 0.0503);

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("v_m(z_s), m/s", 23.8, 0.06, e => e.MeanSpeed.MetersPerSecond),
        Row("L(z_s), m", 75.9, 0.05, e => e.LengthScale.Meters),
        Row("f_L", 9.89, 0.025, e => e.NonDimensionalFrequency),
        Row("S_L", 0.0302, 0.0001, e => e.SpectralDensity),
        Row("R_h", 0.0465, 0.0002, e => e.HeightAdmittance!.Value),
        Row("R_b", 0.153, 0.0005, e => e.WidthAdmittance!.Value),
        Row("R²", 0.0211, 0.0001, e => e.ResonanceFactor),
        new("δ_a, wind on the gable of a building, h 35 m, b 10 m", Guide, 0.0003, "-", 0.05 / 0.3,
            () => En1991StructuralFactor.AerodynamicDecrement(Wind, 0.9, M(10), M(21), n1, LinearDensity.FromKilogramsPerMeter(150e3))),
        new("c_s c_d, wind on the gable of a building, h 35 m, b 10 m", "formulas of EN 1991-1-4:2005, 6.3.1 and B.2, by hand from the parts above", CscdByHand(), "-", 2e-3,
            () => Example.Factor, ValueKind.IndependentComputation),
        .. TableC1(),
    ];

    private const string Guide = "Steel Buildings in Europe, Multi-Storey Part 3: Actions, Appendix A, page 3-32";

    private static PublishedValue Row(string name, double expected, double halfDigit, Func<En1991StructuralFactor, double> part) =>
        new($"{name}, wind on the gable of a building, h 35 m, b 10 m", Guide, expected, "-", halfDigit / expected, () => part(Example));

    // From the rounded parts of the published example on.
    private static double CscdByHand()
    {
        double B2 = 1 / (1 + 0.9 * Math.Pow((35 + 10) / 75.9, 0.63)), R2 = 0.0211;
        double nu = 3.1 * Math.Sqrt(R2 / (B2 + R2)), root = Math.Sqrt(2 * Math.Log(nu * 600)), kp = root + 0.6 / root;
        double Iv = 1 / Math.Log(21 / 0.3);
        return (1 + 2 * kp * Iv * Math.Sqrt(B2 + R2)) / (1 + 7 * Iv);
    }

    private static IEnumerable<PublishedValue> TableC1()
    {
        (string Shape, double Zeta, double K)[] shapes = [("uniform", 0, 1), ("linear", 1, 1.5), ("parabolic", 2, 5.0 / 3)];
        return shapes.Select(s => new PublishedValue(
            $"K_z of a {s.Shape} mode", "EN 1991-1-4:2005, Table C.1", s.K, "-", 1e-12,
            () => En1991StructuralFactor.AnnexC(Wind, M(35), M(10), M(21), n1, 0.05, s.Zeta).ModeFactor, ValueKind.FromMemory));
    }

    private static Gen<(En1991Wind wind, double h, double b, double n, double delta)> Cases { get; } =
        Gen.Select(Gen.Int[0, 4], Gen.Double[20, 40], Gen.Double[15, 150], Gen.Double[0.5, 40], Gen.Double[0.3, 5]).Select(Gen.Double[0.01, 0.3])
            .Select((c, delta) => (Wind with { Terrain = (TerrainCategory)c.Item1, FundamentalVelocity = Mps(c.Item2) }, c.Item3, c.Item4, c.Item5, delta));

    private static En1991StructuralFactor B(En1991Wind wind, double h, double b, double n, double delta, double zeta = 1) =>
        En1991StructuralFactor.AnnexB(wind, h, b, 0.6 * h, n, delta, zeta);

    private static En1991StructuralFactor C(En1991Wind wind, double h, double b, double n, double delta, double zeta = 1) =>
        En1991StructuralFactor.AnnexC(wind, h, b, 0.6 * h, n, delta, zeta);

    [Fact]
    public void Size_and_dynamic_factor_make_the_structural_factor() =>
        Cases.Sample(c =>
        {
            foreach (En1991StructuralFactor f in (En1991StructuralFactor[])[B(c.wind, c.h, c.b, c.n, c.delta), C(c.wind, c.h, c.b, c.n, c.delta)])
            {
                Assert.Equal(f.SizeFactor * f.DynamicFactor, f.Factor, 1e-12);
                Assert.InRange(f.SizeFactor, 0.4, 1);
                Assert.InRange(f.BackgroundFactor, 0, 1);
                Assert.True(f.PeakFactor >= 3);
            }
        }, iter: 200);

    [Fact]
    public void Wider_or_better_damped_structures_never_resonate_more() =>
        Gen.Select(Cases, Gen.Double[1, 3]).Sample((c, k) =>
        {
            En1991StructuralFactor f = B(c.wind, c.h, c.b, c.n, c.delta);
            return B(c.wind, c.h, k * c.b, c.n, c.delta).ResonanceFactor <= f.ResonanceFactor
                && B(c.wind, c.h, k * c.b, c.n, c.delta).BackgroundFactor <= f.BackgroundFactor
                && B(c.wind, c.h, c.b, c.n, k * c.delta).Factor <= f.Factor * (1 + 1e-12);
        }, iter: 200);

    [Fact]
    public void The_two_procedures_agree_about_the_whole() =>
        Cases.Sample(c => Assert.InRange(C(c.wind, c.h, c.b, c.n, c.delta).Factor / B(c.wind, c.h, c.b, c.n, c.delta).Factor, 0.8, 1.25), iter: 200);

    [Fact]
    public void Mode_factor_is_near_the_closed_form_for_a_straight_mode()
    {
        // Note to (B.11), c_o = 1: ((2ζ+1){(ζ+1)[ln(z_s/z₀)+0.5]−1}) / ((ζ+1)² ln(z_s/z₀)), which is 1.5 at ζ = 1.
        foreach (TerrainCategory terrain in (TerrainCategory[])[TerrainCategory.Zero, TerrainCategory.II])
            Assert.Equal(1.5, B(Wind with { Terrain = terrain }, 60, 5, 1, 0.05).ModeFactor, 0.03);
    }

    [Fact]
    public void Profile_of_constant_wind_gives_the_mode_factor_of_the_mode_alone() =>
        Gen.Double[0, 4].Sample(zeta =>
        {
            var wind = new TableWind { SpeedIs = WindSpeedBasis.MeanSpeed, Rows = [new(M(10), Mps(25), 0.15)] };
            double k = En1991StructuralFactor.AnnexB(wind, 30, 5, 18, 1, 0.05, zeta).ModeFactor;
            Assert.Equal((2 * zeta + 1) / (zeta + 1), k, 0.005);
        }, iter: 50);

    [Fact]
    public void Peak_acceleration_is_the_deviation_times_the_peak_factor_at_the_natural_frequency()
    {
        LinearDensity mass = LinearDensity.FromKilogramsPerMeter(1000);
        double deviation = Example.AccelerationDeviation(1.3, M(10), mass).MetersPerSecondSquared;
        double root = Math.Sqrt(2 * Math.Log(600 * 3.1));
        Assert.Equal((root + 0.6 / root) * deviation, Example.PeakAcceleration(1.3, M(10), mass).MetersPerSecondSquared, 1e-12);
        double v = Example.MeanSpeed.MetersPerSecond;
        Assert.Equal(1.3 * 1.25 * 10 * Example.TurbulenceIntensity * v * v * Math.Sqrt(Example.ResonanceFactor) * Example.ModeFactor / 1000, deviation, 1e-12);
        Assert.Equal(0.5 * deviation, Example.AccelerationDeviation(1.3, M(10), mass, 0.5).MetersPerSecondSquared, 1e-12);
    }

    [Fact]
    public void Refuses_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>("height", () => En1991StructuralFactor.AnnexB(Wind, M(0), M(1), M(6), n1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => En1991StructuralFactor.AnnexB(Wind, M(10), M(1e5), M(6), n1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>("referenceHeight", () => En1991StructuralFactor.AnnexC(Wind, M(10), M(1), M(-6), n1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>("frequency", () => En1991StructuralFactor.AnnexC(Wind, M(10), M(1), M(6), Frequency.Zero, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>("logDecrement", () => En1991StructuralFactor.AnnexB(Wind, M(10), M(1), M(6), n1, 0));
        Assert.Throws<ArgumentOutOfRangeException>("modeExponent", () => En1991StructuralFactor.AnnexB(Wind, M(10), M(1), M(6), n1, 0.05, double.NaN));
        Assert.Throws<InvalidStatueException>(() => En1991StructuralFactor.AnnexB(Wind with { FundamentalVelocity = Mps(0) }, M(10), M(1), M(6), n1, 0.05));
    }
}
