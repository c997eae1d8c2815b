using StatueFrame.Analysis;
using StatueFrame.Tests.Analysis.Gusts;
using static StatueFrame.Tests.Actions.Wind.WindTesting;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Actions.Wind;

/// <summary>Headings with a wind of their own.</summary>
public class WindSectorTests
{
    private static readonly En1991Wind open = new() { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.I };
    private static readonly En1991Wind town = open with { Terrain = TerrainCategory.III, DirectionFactor = 0.85 };
    private static readonly StatueModel model = StatueModel.Build(GustStatues.Uniform(30, 3, 1, bands: 6));

    private static WindSector Sector(double from, double to, WindProfile? profile = null) => new() { From = from.Degrees, To = to.Degrees, Profile = profile ?? town };

    private static WindAction Action(params WindSector[] sectors) => GustStatues.Action(open) with { Sectors = [.. sectors] };

    [Theory]
    [InlineData(-30, 45)]
    [InlineData(330, 405)]
    public void Each_heading_has_the_wind_of_its_sector(double from, double to)
    {
        Response response = Respond(Action(Sector(from, to))), hard = Respond(GustStatues.Action(open)), mild = Respond(GustStatues.Action(town));
        foreach (LoadCase loadCase in response.Cases)
        {
            double heading = loadCase.Heading!.Value.Degrees;
            LoadCase as1 = (heading <= 45 || heading >= 330 ? mild : hard).Cases.Single(c => c.Heading.Equals(loadCase.Heading));
            Assert.Equal(as1.WindForce.Newtons, loadCase.WindForce.Newtons, 1e-9 * as1.WindForce.Newtons);
            Assert.Equal(as1.BandWindForces()[3].PeakPressure.Pascals, loadCase.BandWindForces()[3].PeakPressure.Pascals, 1e-9);
        }

        static Response Respond(WindAction wind) => model.Respond(new Situation { Name = "storm", Actions = [wind] });
    }

    [Fact]
    public void Gusts_are_those_of_the_sector()
    {
        ModalResponse modes = model.Modes(4);
        DampingModel damping = DampingModel.OfRatio(0.01);
        Assert.Equal(Gusts(GustStatues.Action(town), 0), Gusts(Action(Sector(-10, 10)), 0));
        Assert.Equal(Gusts(GustStatues.Action(open), 90), Gusts(Action(Sector(-10, 10)), 90));
        Assert.Equal(
            GustFactors.En1991(model, modes, GustStatues.Action(town), 0.Degrees, damping)!.AnnexB, GustFactors.En1991(model, modes, Action(Sector(-10, 10)), 0.Degrees, damping)!.AnnexB);

        (double, double) Gusts(WindAction wind, double heading)
        {
            GustResponse gusts = GustResponse.Of(model, modes, wind, heading.Degrees, damping);
            return (gusts.Overturning.Peak.NewtonMeters, gusts.Of("tip").Sway.Peak.Meters);
        }
    }

    /// <summary>A milder sector only ever helps, and what knows no heading stays as it is.</summary>
    [Fact]
    public void A_sector_makes_nothing_worse()
    {
        CheckSheet whole = SheetIn(GustStatues.Action(open)), with = SheetIn(Action(Sector(20, 200)));
        foreach (Check check in with.Checks)
        {
            if (check.Utilization is { } u && whole.Checks.FirstOrDefault(c => c.Id == check.Id && c.Where == check.Where)?.Utilization is { } before)
                Assert.True(u <= before * (1 + 1e-9), check.ToString());
        }
        Assert.Contains("1 sector milder", with.ToString(), StringComparison.Ordinal);

        static CheckSheet SheetIn(WindAction wind) => model.Statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * wind] });
    }

    [Fact]
    public void What_cannot_be_a_sector_is_a_problem()
    {
        AssertProblem("Sectors[1]", Sector(0, 90), Sector(90, 100));
        AssertProblem("Sectors[1]", Sector(300, 400), Sector(30, 50));
        AssertProblem("Sectors[0].To", Sector(90, 0));
        AssertProblem("Sectors[0].To", Sector(0, 360));
        AssertProblem("Sectors[0].Profile", Sector(0, 90, open with { Terrain = TerrainCategory.Zero }));
        AssertProblem("Sectors[0].Profile", Sector(0, 90, new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = Mps(20), Exposure = AsceExposure.C }));
        AssertProblem("Sectors[0].Profile.FundamentalVelocity", Sector(0, 90, town with { FundamentalVelocity = Mps(-1) }));

        static void AssertProblem(string path, params WindSector[] sectors)
        {
            var v = new Validator();
            Action(sectors).Validate(v);
            Assert.Equal(path, Assert.Single(v.Problems).Path);
        }
    }
}
