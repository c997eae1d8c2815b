using CsCheck;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class WindAtSpeedTests
{
    public static TheoryData<WindProfile> Profiles =>
    [
        new En1991Wind { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.II },
        new AsceWind { Edition = AsceEdition.Asce7_22, Exposure = AsceExposure.C, BasicSpeed = Mps(50), TopographicFactor = 1.2 },
        new PowerLawWind { SpeedIs = WindSpeedBasis.GustSpeed, ReferenceSpeed = Mps(45), ReferenceHeight = M(10), Exponent = 0.11 },
        new LogLawWind { SpeedIs = WindSpeedBasis.GustSpeed, ReferenceSpeed = Mps(40), ReferenceHeight = M(10), RoughnessLength = M(0.05) },
        new TableWind { SpeedIs = WindSpeedBasis.MeanSpeed, Rows = [new(M(5), Mps(20), 0.2), new(M(50), Mps(30), 0.15)] },
        new MeanPressureWind(new En1991Wind { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.II }),
    ];

    [Theory, MemberData(nameof(Profiles))]
    public void All_speeds_scale_and_turbulence_stays(WindProfile wind) =>
        Gen.Select(Heights, Gen.Double[0.05, 2]).Sample((z, k) =>
        {
            WindProfile scaled = wind.AtSpeed(k);
            Same(k * wind.MeanSpeedSi(z), scaled.MeanSpeedSi(z));
            Same(k * wind.GustSpeedSi(z), scaled.GustSpeedSi(z));
            Same(k * k * wind.PeakPressureSi(z), scaled.PeakPressureSi(z));
            Same(wind.TurbulenceIntensitySi(z), scaled.TurbulenceIntensitySi(z));
            Same(wind.TurbulenceLengthScaleSi(z), scaled.TurbulenceLengthScaleSi(z));

            static void Same(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 * Math.Abs(expected));
        }, iter: 100);

    [Fact]
    public void Mean_wind_has_the_pressure_of_the_mean_speed()
    {
        var wind = new En1991Wind { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.II };
        double v = wind.MeanSpeedSi(12);
        Assert.Equal(0.5 * 1.25 * v * v, new MeanPressureWind(wind).PeakPressureSi(12), 1e-9);
    }
}
