using CsCheck;
using UnitsNet;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class En1991WindTests
{
    private static En1991Wind Wind(TerrainCategory terrain, double v = 26) => new() { FundamentalVelocity = Mps(v), Terrain = terrain };

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Exposure(TerrainCategory.Zero, "0", 2.60, 2.98, 3.39, 3.96, 4.42),
        .. Exposure(TerrainCategory.II, "II", 1.93, 2.35, 2.81, 3.47, 4.01),
        .. Exposure(TerrainCategory.IV, "IV", 1.18, 1.18, 1.64, 2.34, 2.94),
        // This example goes on with k_r rounded to 0.215, a fourth of a percent low.
        new("c_e at 8 m, terrain III", "Steel Buildings in Europe, Single-Storey Part 3, Appendix B, page 3-48", 1.56, "-", 0.0055,
            () => Wind(TerrainCategory.III).ExposureFactor(M(8))),
        new("q_p at 8 m, terrain III, v_b 26 m/s", "Steel Buildings in Europe, Single-Storey Part 3, Appendix B, page 3-48", 659, "Pa", 0.0055,
            () => Wind(TerrainCategory.III).PeakPressure(M(8)).Pascals),
        new("c_r at 8 m, terrain III", "Steel Buildings in Europe, Single-Storey Part 3, Appendix B, page 3-47", 0.706, "-", 0.0025,
            () => Wind(TerrainCategory.III).MeanSpeed(M(8)).MetersPerSecond / 26),
        new("L at 21 m, terrain III", "Steel Buildings in Europe, Multi-Storey Part 3, Appendix A, page 3-32", 75.9, "m", 0.05 / 75.9,
            () => Wind(TerrainCategory.III).TurbulenceLengthScale(M(21)).Meters),
    ];

    private static IEnumerable<PublishedValue> Exposure(TerrainCategory terrain, string name, params double[] expected)
    {
        double[] heights = [5, 10, 20, 50, 100];
        return heights.Zip(expected, (z, ce) => new PublishedValue(
            $"c_e at {z} m, terrain {name}", "formulas of EN 1991-1-4:2005, 4.3 to 4.5, by hand", ce, "-", 0.0055 / ce,
            () => Wind(terrain).ExposureFactor(M(z)), ValueKind.IndependentComputation));
    }

    [Theory]
    [InlineData(TerrainCategory.Zero)]
    [InlineData(TerrainCategory.I)]
    [InlineData(TerrainCategory.II)]
    [InlineData(TerrainCategory.III)]
    [InlineData(TerrainCategory.IV)]
    public void Is_sound_over_the_height(TerrainCategory terrain)
    {
        Assert.Empty(Problems(Wind(terrain)));
        AssertSoundOverHeight(Wind(terrain));
        AssertPressureGrowsWithSpeedSquared(v => Wind(terrain) with { FundamentalVelocity = v });
        AssertSameInAnyUnit(v => Wind(terrain) with { FundamentalVelocity = v });
    }

    [Fact]
    public void Rougher_terrain_is_never_windier() =>
        Gen.Select(Heights, Gen.Int[0, 3]).Sample((z, i) =>
            Wind((TerrainCategory)i).PeakPressureSi(z) >= Wind((TerrainCategory)(i + 1)).PeakPressureSi(z), iter: 200);

    [Fact]
    public void Mean_speed_at_10_m_over_terrain_II_is_about_the_basic_velocity() =>
        Assert.Equal(1.007, Wind(TerrainCategory.II, 1000).MeanSpeedSi(10) / 1000, 5e-4);

    [Fact]
    public void Orography_raises_the_mean_but_not_the_gusts_on_it() =>
        Gen.Select(Heights, Gen.Double[1, 1.6]).Sample((z, co) =>
        {
            En1991Wind flat = Wind(TerrainCategory.II), hill = flat with { OrographyFactor = co };
            Assert.Equal(co * flat.MeanSpeedSi(z), hill.MeanSpeedSi(z), 1e-9);
            Assert.Equal(flat.MeanSpeedSi(z) * flat.TurbulenceIntensitySi(z), hill.MeanSpeedSi(z) * hill.TurbulenceIntensitySi(z), 1e-9);
        }, iter: 100);

    [Fact]
    public void Factors_of_one_change_nothing()
    {
        En1991Wind flat = Wind(TerrainCategory.III);
        En1991Wind given = flat with { OrographyFactor = 1, DirectionFactor = 1, SeasonFactor = 1, TurbulenceFactor = 1, AirDensity = Density.FromKilogramsPerCubicMeter(1.25) };
        Assert.Equal(flat.PeakPressure(M(30)), given.PeakPressure(M(30)));
        Assert.Equal(6, flat.Assumptions.Count);
        Assert.Equal("surroundings", Assert.Single(given.Assumptions).Subject);
    }

    [Fact]
    public void Spectrum_holds_the_whole_variance()
    {
        // ∫ S_L dn/n over all frequencies is the variance over σ_v²: 1 by definition of the spectrum.
        double sum = 0;
        for (double log = -12; log < 14; log += 0.01)
            sum += 0.01 * En1991StructuralFactor.Spectrum(Math.Exp(log));
        Assert.Equal(1, sum, 0.01);
        Assert.Equal(0.0302, Wind(TerrainCategory.III).PowerSpectralDensity(M(21), Frequency.FromHertz(3.1)), 1e-4);
    }

    [Fact]
    public void Warns_above_200_m()
    {
        Assert.Empty(Wind(TerrainCategory.II).RangeWarnings(M(200)));
        Assert.StartsWith("EN 1991-1-4", Assert.Single(Wind(TerrainCategory.II).RangeWarnings(M(200.1))));
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        En1991Wind wind = Wind(TerrainCategory.II);
        AssertProblem(wind with { FundamentalVelocity = Mps(0) }, "FundamentalVelocity");
        AssertProblem(wind with { FundamentalVelocity = Speed.FromMetersPerSecond(260) }, "FundamentalVelocity");
        AssertProblem(wind with { Terrain = (TerrainCategory)9 }, "Terrain");
        AssertProblem(wind with { DirectionFactor = 0 }, "DirectionFactor");
        AssertProblem(wind with { SeasonFactor = double.NaN }, "SeasonFactor");
        AssertProblem(wind with { TurbulenceFactor = -1 }, "TurbulenceFactor");
        AssertProblem(wind with { OrographyFactor = 10 }, "OrographyFactor");
        AssertProblem(wind with { OrographyFactor = 1.1, Orography = OrographyTests.Hill }, "OrographyFactor");
        AssertProblem(wind with { Orography = OrographyTests.Hill with { Height = M(-3) } }, "Orography.Height");
    }
}
