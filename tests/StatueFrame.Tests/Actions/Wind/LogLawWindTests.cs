using CsCheck;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class LogLawWindTests
{
    private static LogLawWind Mean { get; } = new()
    {
        SpeedIs = WindSpeedBasis.MeanSpeed,
        ReferenceSpeed = Mps(26),
        ReferenceHeight = M(10),
        RoughnessLength = M(0.05),
    };

    private static LogLawWind Gust { get; } = Mean with { SpeedIs = WindSpeedBasis.GustSpeed, ReferenceSpeed = Mps(42), DisplacementHeight = M(1) };

    private static double ExposureII(double z) => Mean.PeakPressureSi(z) / (0.5 * 1.25 * Math.Pow(26 / (0.19 * Math.Log(200)), 2));

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("c_e of a logarithmic law that is terrain II, 20 m", "formulas of EN 1991-1-4:2005, 4.3 to 4.5, by hand", 2.81, "-", 0.005 / 2.81, () => ExposureII(20), ValueKind.IndependentComputation),
        new("c_e of a logarithmic law that is terrain II, 50 m", "formulas of EN 1991-1-4:2005, 4.3 to 4.5, by hand", 3.47, "-", 0.005 / 3.47, () => ExposureII(50), ValueKind.IndependentComputation),
    ];

    public static TheoryData<LogLawWind> Both => [Mean, Gust];

    [Theory, MemberData(nameof(Both))]
    public void Is_sound_over_the_height(LogLawWind wind)
    {
        Assert.Empty(Problems(wind));
        AssertSoundOverHeight(wind);
        AssertPressureGrowsWithSpeedSquared(v => wind with { ReferenceSpeed = v });
        AssertSameInAnyUnit(v => wind with { ReferenceSpeed = v });
    }

    [Fact]
    public void Reproduces_its_reference()
    {
        Assert.Equal(26, Mean.MeanSpeed(M(10)).MetersPerSecond, 1e-12);
        Assert.Equal(42, Gust.GustSpeed(M(10)).MetersPerSecond, 1e-12);
        Assert.Equal(1 / Math.Log(9 / 0.05), Gust.TurbulenceIntensity(M(10)), 1e-12);
    }

    [Fact]
    public void Equals_EN_1991_1_4_when_given_the_same_wind() =>
        Gen.Select(Heights, Gen.Int[0, 4]).Sample((z, i) =>
        {
            var en = new En1991Wind { FundamentalVelocity = Mps(27), Terrain = (TerrainCategory)i };
            (double z0, double zMin) = En1991Wind.Roughness(en.Terrain);
            LogLawWind log = Mean with { ReferenceSpeed = en.MeanSpeed(M(40)), ReferenceHeight = M(40), RoughnessLength = M(z0), MinimumHeight = M(zMin) };
            Assert.Equal(en.PeakPressureSi(z), log.PeakPressureSi(z), 1e-9 * en.PeakPressureSi(z));
        }, iter: 100);

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        AssertProblem(Mean with { ReferenceSpeed = Mps(0) }, "ReferenceSpeed");
        AssertProblem(Mean with { ReferenceHeight = M(-10) }, "ReferenceHeight");
        AssertProblem(Mean with { ReferenceHeight = M(10), DisplacementHeight = M(9.9) }, "ReferenceHeight");
        AssertProblem(Mean with { RoughnessLength = M(50) }, "RoughnessLength");
        AssertProblem(Mean with { DisplacementHeight = M(-1) }, "DisplacementHeight");
        AssertProblem(Mean with { MinimumHeight = M(0.1) }, "MinimumHeight");
        AssertProblem(Mean with { MinimumHeight = M(500) }, "MinimumHeight");
    }

    [Fact]
    public void Warns_above_its_range() => Assert.Single(Mean.RangeWarnings(M(201)));
}
