using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;
using static StatueFrame.Tests.Analysis.Gusts.GustStatues;

namespace StatueFrame.Tests.Analysis.Gusts;

/// <summary>Gust factors band by band, which hold the peaks of every part.</summary>
public class GustByBandTests
{
    private static readonly Statue statue = Uniform(40, 4, 0.8, bands: 10, limbs: Arm("L7", 30));

    private static readonly StatueModel model = StatueModel.Build(statue);

    private static readonly DampingModel damping = DampingModel.OfRatio(0.012);

    private static readonly WindAction fitted = GustFactors.ByBand(model, Action(Wind()), damping);

    private static IEnumerable<(GustDemand Demand, double InUse)> Demands(WindAction wind) => GustDemand.Of(model, model.Modes(12), wind, damping, []);

    [Fact]
    public void They_hold_every_effect_and_no_more_than_need_be()
    {
        (GustDemand Demand, double InUse)[] all = [.. Demands(fitted)];
        Assert.All(all, found => Assert.True(found.Demand.Peak <= (1 + 1e-9) * found.InUse, $"{found.Demand.Where}, {found.Demand.What}"));
        Assert.Contains(all, found => found.Demand.Peak > 0.97 * found.InUse);
        Assert.Contains(all, found => found.Demand.Group == "arm");
        // One factor for all, found from overturning, does not.
        GustResponse gusts = GustResponse.Of(model, model.Modes(12), Action(Wind()), 0.Degrees, damping);
        Assert.Contains(Demands(Action(Wind()) with { GustEffectFactor = gusts.StructuralFactor }), found => found.Demand.Group == "trunk" && found.Demand.Peak > 1.1 * found.InUse);
    }

    [Fact]
    public void They_grow_towards_the_top()
    {
        double[] trunk = [.. fitted.GustByBand.Take(10)];
        Assert.True(trunk[^1] > 1.1 * trunk[3]);
        Assert.Equal(model.BandCount, fitted.GustByBand.Count);
    }

    /// <summary>Steady analysis with them reaches the peaks of random vibration: the same number by both roads.</summary>
    [Fact]
    public void Steady_analysis_reaches_the_peaks()
    {
        Response response = model.Respond(new Situation { Name = "gusts", Actions = [fitted] });
        foreach ((GustDemand demand, double inUse) in Demands(fitted).Where(found => found.Demand is { Group: "trunk", What: "bending" }))
        {
            string[] at = demand.Where.Split(", ");
            double steady = response.Cases.Max(c => c.Segments().Where(s => s.Segment == at[0]).Max(s => Bending(at[1] == "top" ? s.Top : s.Bottom)));
            Assert.Equal(inUse, steady, 0.02 * steady);
            Assert.True(steady >= 0.999 * demand.Peak);
        }

        static double Bending(SectionForce force) => double.Hypot(force.MomentX.NewtonMeters, force.MomentY.NewtonMeters);
    }

    /// <summary>Without turbulence there are no gusts, and what is left is the mean wind that the profile's pressure is of.</summary>
    [Fact]
    public void A_wind_without_gusts_needs_no_factor()
    {
        var even = new TableWind { SpeedIs = WindSpeedBasis.MeanSpeed, Rows = [new WindTableRow(10.Meters, 30.MetersPerSecond) { TurbulenceIntensity = 0.01 }] };
        WindAction calm = GustFactors.ByBand(model, Action(even), damping);
        Assert.All(calm.GustByBand, factor => Assert.Equal(1.02, factor, 0.08));
    }

    [Fact]
    public void Factors_of_another_statue_are_refused()
    {
        InvalidStatueException e = Assert.Throws<InvalidStatueException>(() => statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), fitted with { GustByBand = [1, 1.2] }] }));
        Assert.Contains("has 2 factors, and the statue 12 bands", e.Message);
        Assert.Throws<InvalidStatueException>(() => statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), fitted with { GustByBand = [.. fitted.GustByBand.Select(_ => 9.0)] }] }));
    }

    [Fact]
    public void The_sheet_holds_the_factors_in_use_against_the_peaks()
    {
        Verdict[] With(WindAction wind) => [.. statue.Check(new Criteria { Damping = damping }, new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * wind] })
            .Checks.Where(c => c.Id == "wind.gust-effects").Select(c => c.Verdict)];
        Assert.All(With(fitted), verdict => Assert.Equal(Verdict.Pass, verdict));
        Assert.Contains(Verdict.Fail, With(Action(Wind()) with { GustEffectFactor = 1 }));
    }
}
