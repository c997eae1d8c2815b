using CsCheck;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class TableWindTests
{
    private static TableWind Gust { get; } = new()
    {
        SpeedIs = WindSpeedBasis.GustSpeed,
        Rows = [new(M(5), Mps(38)), new(M(10), Mps(42)), new(M(30), Mps(50))],
    };

    private static TableWind Mean { get; } = new()
    {
        SpeedIs = WindSpeedBasis.MeanSpeed,
        Rows = [new(M(5), Mps(22), 0.24), new(M(10), Mps(26), 0.20), new(M(30), Mps(32), 0.16)],
    };

    [Theory]
    [InlineData(0, 38)]
    [InlineData(5, 38)]
    [InlineData(7.5, 40)]
    [InlineData(10, 42)]
    [InlineData(20, 46)]
    [InlineData(30, 50)]
    [InlineData(90, 50)]
    public void Interpolates_and_holds_the_ends(double z, double expected) =>
        Assert.Equal(expected, Gust.GustSpeed(M(z)).MetersPerSecond, 1e-12);

    [Fact]
    public void Mean_table_adds_the_gusts_at_each_height()
    {
        Assert.Equal(24, Mean.MeanSpeed(M(7.5)).MetersPerSecond, 1e-12);
        Assert.Equal((1 + 7 * 0.22) * 0.5 * 1.25 * 24 * 24, Mean.PeakPressure(M(7.5)).Pascals, 1e-9);
        AssertSoundOverHeight(Mean);
    }

    [Fact]
    public void Between_two_rows_lies_between_their_speeds() =>
        Gen.Select(Gen.Double[1, 50], Gen.Double[0.1, 50], Gen.Double[20, 30], Gen.Double[30, 60], Gen.Double[0, 1]).Sample((z, dz, v0, v1, t) =>
        {
            TableWind wind = Gust with { Rows = [new(M(z), Mps(v0)), new(M(z + dz), Mps(v1))] };
            double v = wind.GustSpeedSi(z + t * dz);
            return v >= v0 - 1e-9 && v <= v1 + 1e-9;
        }, iter: 200);

    [Fact]
    public void One_row_is_the_same_wind_at_all_heights()
    {
        TableWind wind = Gust with { Rows = [new(M(10), Mps(40))] };
        Assert.Equal(1000, wind.PeakPressure(M(0)).Pascals, 1e-9);
        Assert.Equal(1000, wind.PeakPressure(M(100)).Pascals, 1e-9);
    }

    [Fact]
    public void Tables_with_equal_rows_are_equal() =>
        Assert.Equal(Gust, Gust with { Rows = [.. Gust.Rows] });

    [Fact]
    public void Warns_above_the_table_and_states_what_holds_below()
    {
        Assert.Empty(Gust.RangeWarnings(M(30)));
        Assert.Contains("30 m", Assert.Single(Gust.RangeWarnings(M(31))));
        Assert.Contains(Gust.Assumptions, a => a.Subject == "wind below the table");
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        AssertProblem(Gust with { Rows = [] }, "Rows");
        AssertProblem(Gust with { Rows = Gust.Rows.With(1, new(M(10), Mps(420))) }, "Rows[1].Speed");
        AssertProblem(Gust with { Rows = Gust.Rows.With(0, new(M(-5), Mps(38))) }, "Rows[0].Height");
        AssertProblem(Gust with { Rows = Gust.Rows.With(2, new(M(10), Mps(50))) }, "Rows[2].Height");
        AssertProblem(Mean with { Rows = Mean.Rows.With(2, new(M(30), Mps(32))) }, "Rows[2].TurbulenceIntensity");
        AssertProblem(Mean with { Rows = Mean.Rows.With(2, new(M(30), Mps(32), 16)) }, "Rows[2].TurbulenceIntensity");
        AssertProblem(Gust with { RoughnessLength = M(0) }, "RoughnessLength");
    }
}
