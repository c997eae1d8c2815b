using CsCheck;
using UnitsNet;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class AsceWindTests
{
    private static AsceWind Wind(AsceEdition edition, AsceExposure exposure) => new()
    {
        Edition = edition,
        BasicSpeed = Speed.FromMilesPerHour(115),
        Exposure = exposure,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Kz(AsceEdition.Asce7_16, AsceExposure.C, ValueKind.Published, (15, 0.85), (30, 0.98), (60, 1.13), (100, 1.26), (200, 1.46)),
        .. Kz(AsceEdition.Asce7_16, AsceExposure.D, ValueKind.Published, (15, 1.03), (30, 1.16), (60, 1.31), (100, 1.43), (200, 1.61)),
        .. Kz(AsceEdition.Asce7_16, AsceExposure.B, ValueKind.FromMemory, (15, 0.57), (30, 0.70), (60, 0.85), (100, 0.99), (200, 1.20)),
        .. Kz(AsceEdition.Asce7_22, AsceExposure.B, ValueKind.FromMemory, (15, 0.57)),
        .. Kz(AsceEdition.Asce7_22, AsceExposure.C, ValueKind.FromMemory, (15, 0.85), (30, 0.98)),
        .. Kz(AsceEdition.Asce7_22, AsceExposure.D, ValueKind.FromMemory, (15, 1.03)),
        .. Ke((1000, 0.96), (2000, 0.93), (3000, 0.90), (6000, 0.80)),
        new("q at 33 ft, exposure C, 100 mph, K_d = 1", "ASCE/SEI 7-16, (26.10-1): 0.00256 V² with K_z = 1", 25.6, "psf", 0.003,
            () => (Wind(AsceEdition.Asce7_16, AsceExposure.C) with { BasicSpeed = Speed.FromMilesPerHour(100), DirectionalityFactor = 1 })
                .PeakPressure(Length.FromFeet(33)).PoundsForcePerSquareFoot),
    ];

    // The table is not quite its own formula (note 1), rounded: at 60 ft, exposure C, 1.137 stands as 1.13.
    private static IEnumerable<PublishedValue> Kz(AsceEdition edition, AsceExposure exposure, ValueKind kind, params (double Feet, double Kz)[] table) =>
        table.Select(t => new PublishedValue(
            $"K_z at {t.Feet} ft, exposure {exposure}", $"ASCE/SEI {(edition == AsceEdition.Asce7_16 ? "7-16" : "7-22")}, Table 26.10-1", t.Kz, "-",
            0.007 / t.Kz, () => Wind(edition, exposure).ExposureCoefficient(Length.FromFeet(t.Feet)), kind));

    private static IEnumerable<PublishedValue> Ke(params (double Feet, double Ke)[] table) =>
        table.Select(t => new PublishedValue(
            $"K_e at {t.Feet} ft", "ASCE/SEI 7-16, Table 26.9-1", t.Ke, "-", 0.0055 / t.Ke,
            () => (Wind(AsceEdition.Asce7_16, AsceExposure.C) with { GroundElevation = Length.FromFeet(t.Feet) }).ElevationFactor, ValueKind.FromMemory));

    public static TheoryData<AsceEdition, AsceExposure> All =>
        new MatrixTheoryData<AsceEdition, AsceExposure>(Enum.GetValues<AsceEdition>(), Enum.GetValues<AsceExposure>());

    [Theory, MemberData(nameof(All))]
    public void Is_sound_over_the_height(AsceEdition edition, AsceExposure exposure)
    {
        AsceWind wind = Wind(edition, exposure);
        Assert.Empty(Problems(wind));
        AssertSoundOverHeight(wind);
        AssertPressureGrowsWithSpeedSquared(v => wind with { BasicSpeed = v });
        AssertSameInAnyUnit(v => wind with { BasicSpeed = v });
    }

    [Theory, MemberData(nameof(All))]
    public void Gust_over_mean_agrees_with_the_turbulence(AsceEdition edition, AsceExposure exposure)
    {
        // Independent parts of the standard: the gust profile, and the hourly mean with its turbulence intensity.
        AsceWind wind = Wind(edition, exposure);
        double ratio = wind.GustSpeedSi(20) / wind.MeanSpeedSi(20);
        double peaks = (ratio - 1) / wind.TurbulenceIntensitySi(20);
        Assert.InRange(peaks, 2.2, 3.6);
    }

    [Theory]
    [InlineData(AsceEdition.Asce7_16)]
    [InlineData(AsceEdition.Asce7_22)]
    public void Gust_at_33_ft_over_open_country_is_the_basic_speed(AsceEdition edition) =>
        Assert.Equal(1, Wind(edition, AsceExposure.C).ExposureCoefficient(Length.FromFeet(33)), 0.0025);

    [Fact]
    public void Pressure_is_constant_above_the_gradient_height_and_the_user_is_warned()
    {
        AsceWind wind = Wind(AsceEdition.Asce7_16, AsceExposure.D);
        Assert.Equal(wind.PeakPressure(Length.FromFeet(700)), wind.PeakPressure(Length.FromFeet(900)));
        Assert.Empty(wind.RangeWarnings(M(213)));
        Assert.StartsWith("ASCE/SEI 7-16", Assert.Single(wind.RangeWarnings(M(214))));
    }

    [Fact]
    public void Pressure_carries_every_factor_once()
    {
        AsceWind plain = Wind(AsceEdition.Asce7_22, AsceExposure.C) with { DirectionalityFactor = 1 };
        AsceWind wind = plain with { DirectionalityFactor = 0.9, TopographicFactor = 1.3, GroundElevation = M(1500) };
        Assert.Equal(0.9 * 1.3 * Math.Exp(-0.000119 * 1500), wind.PeakPressure(M(20)) / plain.PeakPressure(M(20)), 1e-12);
    }

    [Fact]
    public void Lists_what_it_assumed_with_the_edition()
    {
        AsceWind wind = Wind(AsceEdition.Asce7_22, AsceExposure.C);
        Assert.Equal(4, wind.Assumptions.Count);
        Assert.All(wind.Assumptions, a => Assert.Equal("ASCE/SEI 7-22", a.Source.Document));
        Assert.Empty((wind with { DirectionalityFactor = 0.95, TopographicFactor = 1, AirDensity = Density.FromKilogramsPerCubicMeter(1.2) }).Assumptions);
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        AsceWind wind = Wind(AsceEdition.Asce7_16, AsceExposure.C);
        AssertProblem(wind with { BasicSpeed = Mps(-40) }, "BasicSpeed");
        AssertProblem(wind with { BasicSpeed = Mps(400) }, "BasicSpeed");
        AssertProblem(wind with { Edition = (AsceEdition)4 }, "Edition");
        AssertProblem(wind with { Exposure = (AsceExposure)4 }, "Exposure");
        AssertProblem(wind with { TopographicFactor = 0.5 }, "TopographicFactor");
        AssertProblem(wind with { TopographicFactor = 1.2, Orography = OrographyTests.Hill }, "Orography");
        AssertProblem(wind with { Orography = OrographyTests.Hill with { Height = M(-3) } }, "Orography.Height");
        AssertProblem(wind with { DirectionalityFactor = double.NaN }, "DirectionalityFactor");
        AssertProblem(wind with { GroundElevation = M(90_000) }, "GroundElevation");
        AssertProblem(wind with { GroundElevation = M(100), AirDensity = Density.FromKilogramsPerCubicMeter(1.2) }, "GroundElevation");
    }
}
