using System.Globalization;
using System.Text.RegularExpressions;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Analyses;

/// <summary>Tables for a spreadsheet hold the numbers of the response, with their units.</summary>
public class ResponseCsvTests
{
    private static readonly StatueModel model = StatueModel.Build(new SampleStatue().Statue);

    private static readonly Response response = model.Respond(new Situation
    {
        Name = "storm",
        Actions = [new SelfWeight(), new WindAction { Profile = new En1991Wind { FundamentalVelocity = 25.MetersPerSecond, Terrain = TerrainCategory.II }, Headings = [0.Degrees, 90.Degrees] }],
    });

    private static string[][] Rows(string csv) => [.. csv.TrimEnd().Split("\r\n").Select(line => Regex.Split(line, ",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)"))];

    [Fact]
    public void Reactions_are_those_of_the_load_cases()
    {
        string[][] rows = Rows(response.ReactionsToCsv());
        Assert.Equal(["heading [°]", "force x [kN]"], rows[0][..2]);
        Assert.Equal(response.Cases.Count + 1, rows.Length);
        foreach ((string[] row, LoadCase loadCase) in rows.Skip(1).Zip(response.Cases))
        {
            Assert.Equal(loadCase.Base.ForceZ.Kilonewtons, double.Parse(row[3], CultureInfo.InvariantCulture), 1e-9);
            Assert.Equal(loadCase.Base.MomentY.KilonewtonMeters, double.Parse(row[5], CultureInfo.InvariantCulture), 1e-9);
        }
        Assert.Equal("force x [kip]", Rows(response.ReactionsToCsv(DisplayUnits.UsCustomary))[0][1]);
    }

    [Fact]
    public void Wind_is_told_with_what_it_is_the_product_of()
    {
        string[][] rows = Rows(response.WindToCsv());
        Assert.Equal(response.Cases.Count * response.Cases[0].BandWindForces().Count + 1, rows.Length);
        foreach (string[] row in rows.Skip(1))
        {
            // The reference height of the pressure stands between gust factor and pressure.
            double[] v = [.. row[3..10].Where((_, i) => i != 2).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
            Assert.Equal(v[5], v[0] * v[1] * v[2] * v[3] * v[4], 1e-9);
        }
        Assert.Equal("force along [kN]", rows[0][9]);
    }

    [Fact]
    public void Bars_and_members_are_all_there()
    {
        string[][] bars = Rows(response.BarsToCsv()), members = Rows(response.MembersToCsv());
        Assert.Equal(model.BarCount + 1, bars.Length);
        Assert.All(bars, row => Assert.Equal(bars[0].Length, row.Length));
        Assert.Equal(response.Bars[0].Stress.Megapascals, double.Parse(bars[1][4], CultureInfo.InvariantCulture), 1e-9);
        Assert.Equal(response.Cases.Sum(c => c.LatticeMembers().Count) + 1, members.Length);
        Assert.DoesNotContain("NaN", response.BarsToCsv());
    }
}
