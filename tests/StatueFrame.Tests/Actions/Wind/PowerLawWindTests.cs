using CsCheck;
using UnitsNet;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class PowerLawWindTests
{
    private static PowerLawWind Gust { get; } = new()
    {
        SpeedIs = WindSpeedBasis.GustSpeed,
        ReferenceSpeed = Mps(45),
        ReferenceHeight = M(10),
        Exponent = 0.11,
    };

    private static PowerLawWind Mean { get; } = new()
    {
        SpeedIs = WindSpeedBasis.MeanSpeed,
        ReferenceSpeed = Mps(28),
        ReferenceHeight = M(10),
        Exponent = 0.16,
        TurbulenceIntensityAtReference = 0.19,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("stagnation pressure of a gust of 40 m/s", "Bernoulli's equation, ½ρv² with ρ = 1.25 kg/m³", 1000, "Pa", 1e-12,
            () => (Gust with { ReferenceSpeed = Mps(40) }).PeakPressure(M(10)).Pascals, ValueKind.IndependentComputation),
    ];

    public static TheoryData<PowerLawWind> Both => [Gust, Mean];

    [Theory, MemberData(nameof(Both))]
    public void Is_sound_over_the_height(PowerLawWind wind)
    {
        Assert.Empty(Problems(wind));
        AssertSoundOverHeight(wind);
        AssertPressureGrowsWithSpeedSquared(v => wind with { ReferenceSpeed = v });
        AssertSameInAnyUnit(v => wind with { ReferenceSpeed = v });
    }

    [Fact]
    public void Gust_law_reproduces_its_reference_and_its_exponent() =>
        Gen.Select(Gen.Double[2, 200], Gen.Double[0, 0.4]).Sample((z, exponent) =>
        {
            PowerLawWind wind = Gust with { Exponent = exponent };
            Assert.Equal(45, wind.GustSpeedSi(10), 1e-9);
            Assert.Equal(45 * Math.Pow(z / 10, exponent), wind.GustSpeedSi(z), 1e-9);
        }, iter: 100);

    [Fact]
    public void Mean_law_reproduces_its_reference_and_adds_the_gusts()
    {
        Assert.Equal(28, Mean.MeanSpeed(M(10)).MetersPerSecond, 1e-12);
        Assert.Equal(0.19, Mean.TurbulenceIntensity(M(10)), 1e-12);
        Assert.Equal((1 + 7 * 0.19) * 0.5 * 1.25 * 28 * 28, Mean.PeakPressure(M(10)).Pascals, 1e-9);
        Assert.Equal((1 + 6 * 0.19) * 0.5 * 1.25 * 28 * 28, (Mean with { PeakFactor = 3 }).PeakPressure(M(10)).Pascals, 1e-9);
    }

    [Fact]
    public void The_two_bases_agree_where_they_meet()
    {
        PowerLawWind gust = Gust with { ReferenceSpeed = Mean.GustSpeed(M(10)), TurbulenceIntensityAtReference = 0.19 };
        Assert.Equal(28, gust.MeanSpeed(M(10)).MetersPerSecond, 1e-9);
        Assert.Equal(0.19, gust.TurbulenceIntensity(M(10)), 1e-9);
    }

    [Fact]
    public void Lists_what_it_assumed_and_only_that()
    {
        PowerLawWind full = Gust with
        {
            AirDensity = Density.FromKilogramsPerCubicMeter(1.2),
            PeakFactor = 3.5,
            RoughnessLength = M(0.05),
            TurbulenceIntensityAtReference = 0.18,
            MinimumHeight = M(2),
        };
        Assert.Equal("length scale of turbulence", Assert.Single(full.Assumptions).Subject);
        Assert.Equal(6, Gust.Assumptions.Count);
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        AssertProblem(Gust with { ReferenceSpeed = Mps(-1) }, "ReferenceSpeed");
        AssertProblem(Gust with { ReferenceSpeed = Mps(4500) }, "ReferenceSpeed");
        AssertProblem(Gust with { ReferenceHeight = M(10_000) }, "ReferenceHeight");
        AssertProblem(Gust with { ReferenceHeight = M(1), RoughnessLength = M(0.5) }, "ReferenceHeight");
        AssertProblem(Gust with { Exponent = 1.1 }, "Exponent");
        AssertProblem(Gust with { Exponent = double.NaN }, "Exponent");
        AssertProblem(Gust with { RoughnessLength = M(50), TurbulenceIntensityAtReference = 0.18 }, "RoughnessLength");
        AssertProblem(Gust with { MinimumHeight = M(0) }, "MinimumHeight");
        AssertProblem(Gust with { PeakFactor = 35 }, "PeakFactor");
        AssertProblem(Gust with { AirDensity = Density.FromKilogramsPerCubicMeter(1250) }, "AirDensity");
        AssertProblem(Gust with { SpeedIs = (WindSpeedBasis)7 }, "SpeedIs");
        AssertProblem(Mean with { TurbulenceIntensityAtReference = null }, "TurbulenceIntensityAtReference");
        AssertProblem(Mean with { TurbulenceIntensityAtReference = 19 }, "TurbulenceIntensityAtReference");
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(2001)]
    public void Refuses_heights_that_cannot_be(double z) => Assert.Throws<ArgumentOutOfRangeException>(() => Gust.MeanSpeed(M(z)));

    [Fact]
    public void Warns_above_its_range()
    {
        Assert.Empty(Gust.RangeWarnings(M(300)));
        Assert.Single(Gust.RangeWarnings(M(301)));
    }
}
