using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Wind;

/// <summary>What all wind profiles are asked for.</summary>
internal static class WindTesting
{
    public static Gen<double> Heights { get; } = Gen.Double[0, 200];

    public static Length M(double meters) => Length.FromMeters(meters);

    public static Speed Mps(double metersPerSecond) => Speed.FromMetersPerSecond(metersPerSecond);

    public static Problem[] Problems(WindProfile wind)
    {
        var v = new Validator();
        wind.Validate(v);
        return [.. v.Problems];
    }

    public static void AssertProblem(WindProfile wind, string path)
    {
        Problem problem = Assert.Single(Problems(wind));
        Assert.Equal(path, problem.Path);
        Assert.Throws<InvalidStatueException>(() => wind.PeakPressure(M(10)));
    }

    /// <summary>Pressure and mean speed never fall with height, turbulence never grows, and the mean is below the gust.</summary>
    public static void AssertSoundOverHeight(WindProfile wind) =>
        Gen.Select(Heights, Heights).Sample((a, b) =>
        {
            double low = Math.Min(a, b), high = Math.Max(a, b), slack = 1 + 1e-12;
            return wind.PeakPressureSi(low) <= wind.PeakPressureSi(high) * slack
                && wind.MeanSpeedSi(low) <= wind.MeanSpeedSi(high) * slack
                && wind.TurbulenceIntensitySi(high) <= wind.TurbulenceIntensitySi(low) * slack
                && wind.MeanSpeedSi(low) < wind.GustSpeedSi(low)
                && wind.TurbulenceLengthScaleSi(low) > 0;
        }, iter: 300);

    public static void AssertPressureGrowsWithSpeedSquared(Func<Speed, WindProfile> at) =>
        Gen.Select(Heights, Gen.Double[10, 30], Gen.Double[1, 2]).Sample((z, v, k) =>
        {
            double expected = k * k * at(Mps(v)).PeakPressureSi(z);
            return Math.Abs(at(Mps(k * v)).PeakPressureSi(z) - expected) <= 1e-12 * expected;
        }, iter: 200);

    public static void AssertSameInAnyUnit(Func<Speed, WindProfile> at) =>
        Gen.Select(Gen.Double[15, 40], Heights).Sample((v, z) =>
        {
            Pressure metric = at(Mps(v)).PeakPressure(M(z));
            Pressure customary = at(Mps(v).ToUnit(UnitsNet.Units.SpeedUnit.MilePerHour)).PeakPressure(M(z).ToUnit(UnitsNet.Units.LengthUnit.Foot));
            return Math.Abs(metric.Pascals - customary.Pascals) <= 1e-9 * metric.Pascals;
        }, iter: 200);
}
