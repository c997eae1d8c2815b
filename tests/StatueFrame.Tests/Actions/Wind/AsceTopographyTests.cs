using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class AsceTopographyTests
{
    /// <summary>H/L_h = 0.25: the slope of 40 m falls half its height over half its length.</summary>
    private static readonly Orography ridge = OrographyTests.Hill with { Height = M(40), UpwindLength = M(320), DownwindLength = M(320) };

    private static readonly Orography escarpment = ridge with { Kind = OrographyKind.CliffOrEscarpment, DownwindLength = null };

    private static Source Figure { get; } = new("ASCE/SEI 7-16", "Figure 26.8-1, multipliers for exposure C printed to two digits");

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("K₁ of a ridge, H/L_h = 0.25", 0.36, () => SpeedUp(ridge)),
        Row("K₁ of an escarpment, H/L_h = 0.25", 0.21, () => SpeedUp(escarpment)),
        Row("K₁ of a ridge, H/L_h = 0.50", 0.72, () => SpeedUp(ridge with { UpwindLength = M(160) })),
        Row("K₁ of an escarpment, H/L_h = 0.50", 0.43, () => SpeedUp(escarpment with { UpwindLength = M(160) })),
        Row("K₂ of an escarpment, x/L_h = 0.5 behind it", 0.88, () => SpeedUp(escarpment with { DistanceFromCrest = M(80) }) / SpeedUp(escarpment)),
        Row("K₂ of a ridge, x/L_h = 0.5", 0.67, () => SpeedUp(ridge with { DistanceFromCrest = M(80) }) / SpeedUp(ridge)),
        Row("K₂ of an escarpment, x/L_h = 0.5 before it", 0.67, () => SpeedUp(escarpment with { DistanceFromCrest = M(-80) }) / SpeedUp(escarpment)),
        Row("K₃ of a ridge, z/L_h = 0.5", 0.22, () => SpeedUp(ridge, 80) / SpeedUp(ridge)),
        Row("K₃ of an escarpment, z/L_h = 0.5", 0.29, () => SpeedUp(escarpment, 80) / SpeedUp(escarpment)),
    ];

    private static PublishedValue Row(string what, double value, Func<double> own) => new(what, Figure.ToString(), value, "-", 0.0051 / value, own, ValueKind.FromMemory);

    private static AsceWind Plain(AsceEdition edition, AsceExposure exposure) => new() { Edition = edition, Exposure = exposure, BasicSpeed = Mps(50) };

    private static double SpeedUp(Orography rise, double z = 0) => Math.Sqrt(AsceTopography.Factor(rise, AsceExposure.C, z)) - 1;

    [Fact]
    public void A_steep_slope_counts_as_twice_its_height()
    {
        Assert.Equal(SpeedUp(ridge with { UpwindLength = M(160) }), SpeedUp(ridge with { UpwindLength = M(40) }), 1e-12);
        Assert.Equal(SpeedUp(ridge with { UpwindLength = M(160) }, 30), SpeedUp(ridge with { UpwindLength = M(40) }, 30), 1e-12);
    }

    [Fact]
    public void No_rise_changes_nothing_and_a_rise_never_calms()
    {
        AsceWind plain = Plain(AsceEdition.Asce7_22, AsceExposure.C), low = plain with { Orography = ridge with { Height = M(1), UpwindLength = M(50_000) } };
        foreach (double z in (double[])[0, 10, 50, 300])
        {
            Assert.Equal(plain.PeakPressure(M(z)).Pascals, low.PeakPressure(M(z)).Pascals, 2e-4 * plain.PeakPressure(M(z)).Pascals);
            foreach (double x in (double[])[-400, -100, 0, 100, 400])
            {
                AsceWind hill = plain with { Orography = ridge with { DistanceFromCrest = M(x) } };
                Assert.True(hill.PeakPressure(M(z)) >= plain.PeakPressure(M(z)));
                Assert.True(hill.TopographicFactorAt(M(z)) >= 1);
            }
        }
    }

    [Fact]
    public void Mean_and_gust_are_sped_up_alike()
    {
        AsceWind plain = Plain(AsceEdition.Asce7_16, AsceExposure.D), hill = plain with { Orography = ridge };
        foreach (double z in (double[])[5, 20, 60])
        {
            double factor = Math.Sqrt(hill.TopographicFactorAt(M(z)));
            Assert.Equal(factor, hill.GustSpeed(M(z)) / plain.GustSpeed(M(z)), 1e-12);
            Assert.Equal(factor, hill.MeanSpeed(M(z)) / plain.MeanSpeed(M(z)), 1e-12);
        }
    }
}
