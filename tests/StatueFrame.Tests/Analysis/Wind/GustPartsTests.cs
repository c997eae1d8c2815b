using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Heron;
using UnitsNet;
using static StatueFrame.Tests.Analysis.Gusts.GustStatues;

namespace StatueFrame.Tests.Analysis.Gusts;

/// <summary>Gusts on all that catches wind: bands, bare tower, fittings, and with forces across the wind.</summary>
public class GustPartsTests
{
    private static readonly GustOptions alongOnly = new() { PointsAcross = 1, AcrossIntensity = 0, AerodynamicDamping = false };

    /// <summary>The steady analysis adds the mean wind up in its own way, level by level: a skin on the upper half alone, bare below, and a bare arm.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(202.5)]
    public void The_mean_is_that_of_the_steady_analysis(double heading)
    {
        Statue whole = Uniform(40, 3, 0.7, bands: 16, limbs: Arm("L12", 30) with { Skin = null, Standoffs = [] });
        Statue half = whole with
        {
            Skin = whole.Skin! with { Stations = [whole.Skin.Stations[0] with { Elevation = 20.Meters }, whole.Skin.Stations[1]], BandEdges = [.. whole.Skin.BandEdges!.Where(edge => edge.Meters > 19)] },
            Standoffs = [.. whole.Standoffs.Skip(8)],
            Fittings = [new Fitting { Name = "lamp", On = "L14", Mass = 40.Kilograms, WindArea = Area.FromSquareMeters(0.8) }],
        };
        StatueModel model = StatueModel.Build(half);
        WindAction wind = Action(Wind()) with { Headings = [heading.Degrees] };
        GustResponse gusts = GustResponse.Of(model, model.Modes(6), wind, heading.Degrees, DampingModel.OfRatio(0.01));
        WindAction steady = wind with { Profile = new MeanPressureWind(wind.Profile), GustEffectFactor = 1, LatticeRule = wind.LatticeRuleInUse };
        LoadCase mean = model.Respond(new Situation { Name = "mean", Actions = [steady] }).Cases[0];
        GustMovement tip = gusts.Of("tip");
        Assert.Contains(model.BareSlices, slice => slice.HasShape);
        Assert.Equal(mean.WindForce.Newtons, gusts.BaseShear.Mean.Newtons, 0.01 * mean.WindForce.Newtons);
        Assert.Equal(mean.Of("tip").Sway.Meters, double.Hypot(tip.Sway.Mean.Meters, tip.SwayAcross.Mean.Meters), 0.01 * mean.Of("tip").Sway.Meters);
    }

    /// <summary>A tower that stands bare meets the gusts that the same tower meets in a skin as wide.</summary>
    [Fact]
    public void A_bare_tower_is_shaken_as_one_in_a_skin()
    {
        Statue skinned = Uniform(40, 3, 0.7, mass: 4000, bands: 16), bare = skinned with { Skin = null, Standoffs = [], Points = [new NamedPoint("tip", "top")] };
        (double skin, double tower) = (Factor(skinned), Factor(bare));
        Assert.Equal(skin, tower, 0.02 * skin);

        static double Factor(Statue statue) => Blow(statue, Wind(), options: alongOnly).GustFactor;
    }

    /// <summary>A tower without a skin is looked at as any other.</summary>
    [Fact]
    public void A_bare_tower_has_its_gusts_on_the_sheet()
    {
        Statue bare = Uniform(40, 3, 0.7, mass: 4000, bands: 16) with { Skin = null, Standoffs = [] };
        Assert.Equal(Verdict.Fail, Bending(0.7));
        Assert.Equal(Verdict.Pass, Bending(3));

        Verdict Bending(double factor) => bare.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), Action(Wind()) with { GustEffectFactor = factor }] })
            .Checks.Single(check => check.Id == "wind.gust-effects" && check.Where.EndsWith("bending", StringComparison.Ordinal)).Verdict;
    }

    /// <summary>Cuts and lattice members: their mean is that of the steady analysis, and what the base cut swings by is what comes down at the base.</summary>
    [Fact]
    public void Cuts_and_members_have_the_means_of_the_steady_analysis()
    {
        StatueDocument heron = SaltmereHeron.Document;
        StatueModel model = StatueModel.Build(heron.Statue);
        WindAction wind = heron.AllSituations().Select(s => s.Wind?.Action).OfType<WindAction>().First() with { Headings = [90.Degrees] };
        GustResponse gusts = GustResponse.Of(model, model.Modes(12), wind, 90.Degrees, heron.Criteria.Damping);
        WindAction steady = wind with { Profile = new MeanPressureWind(wind.Profile), GustByBand = [], GustEffectFactor = 1, LatticeRule = wind.LatticeRuleInUse };
        LoadCase mean = model.Respond(new Situation { Name = "mean", Actions = [steady] }).Cases[0];
        MemberForce[] members = [.. mean.LatticeMembers()];
        GustMemberForce[] shaken = [.. gusts.LatticeMembers()];
        Assert.Equal(members.Select(m => (m.Segment, m.Member)), shaken.Select(m => (m.Segment, m.Member)));
        double most = members.Max(m => Math.Abs(m.Axial.Newtons));
        Assert.All(members.Zip(shaken), pair => Assert.Equal(pair.First.Axial.Newtons, pair.Second.Axial.Mean.Newtons, 2e-3 * most));
        GustSegmentForces foot = gusts.Segments()[0];
        SegmentForces still = mean.Segments()[0];
        double overturning = gusts.Overturning.Mean.NewtonMeters;
        Assert.Equal(still.Bottom.MomentX.NewtonMeters, foot.Bottom.MomentX.Mean.NewtonMeters, 2e-3 * overturning);
        Assert.Equal(still.Bottom.Torsion.NewtonMeters, foot.Bottom.Torsion.Mean.NewtonMeters, 2e-3 * overturning);
        Assert.Equal(gusts.Overturning.Deviation.NewtonMeters, foot.Bottom.MomentX.Deviation.NewtonMeters, 0.01 * gusts.Overturning.Deviation.NewtonMeters);
        Assert.Equal(gusts.BaseTwist.Deviation.NewtonMeters, foot.Bottom.Torsion.Deviation.NewtonMeters, 0.01 * gusts.BaseTwist.Deviation.NewtonMeters);
    }

    /// <summary>Factors are found for a bare tower too: the one of all that stands; wind off its middle is enough for twist.</summary>
    [Fact]
    public void Factors_of_a_bare_tower_are_enough()
    {
        Statue bare = Uniform(40, 3, 0.7, mass: 4000, bands: 16) with { Skin = null, Standoffs = [] };
        WindAction wind = GustFactors.ByBand(StatueModel.Build(bare), Action(Wind()));
        Assert.Empty(wind.GustByBand);
        StatueFrame.Checks.Check[] effects = [.. bare.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), wind] }).Checks.Where(check => check.Id == "wind.gust-effects")];
        Assert.NotEmpty(effects);
        Assert.All(effects, check => Assert.Equal(Verdict.Pass, check.Verdict));
        Assert.Contains(effects, check => check.Where.EndsWith("twist", StringComparison.Ordinal));
        Assert.InRange(effects.Max(check => check.Utilization)!.Value, 0.9, 1);
    }

    /// <summary>With half of the drag across, gusts along the wind push both ways alike: the two sways are as the two forces.</summary>
    [Fact]
    public void Forces_across_the_wind_swing_with_the_gusts()
    {
        StatueModel model = StatueModel.Build(Uniform(40, 3, 0.7, bands: 8));
        WindAction wind = Action(Wind()) with
        {
            ForceCoefficient = null,
            HeadingCoefficients = new ForceCoefficientTable { Rows = [new(0.Degrees, 1, 0.5), new(180.Degrees, 1, 0.5)], Source = Source.Assumed("test") },
        };
        GustMovement tip = GustResponse.Of(model, model.Modes(6), wind, 0.Degrees, DampingModel.OfRatio(0.01), alongOnly).Of("tip");
        Assert.Equal(0.5 * tip.Sway.Mean.Meters, tip.SwayAcross.Mean.Meters, 1e-9);
        Assert.Equal(0.5 * tip.Sway.Deviation.Meters, tip.SwayAcross.Deviation.Meters, 0.01 * tip.Sway.Deviation.Meters);
    }
}
