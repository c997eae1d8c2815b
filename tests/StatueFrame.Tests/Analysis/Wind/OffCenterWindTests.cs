using StatueFrame.Analysis;
using StatueFrame.Tests.Analysis.Gusts;
using StatueFrame.Tests.Checks.Wind;
using UnitsNet;

namespace StatueFrame.Tests.Analysis.Winds;

/// <summary>Wind off the middle of the figure, which twists.</summary>
public class OffCenterWindTests
{
    private const double Width = 4;

    private static readonly StatueModel model = StatueModel.Build(GustStatues.Uniform(20, Width, 2, bands: 5));

    private static SituationDemands Demands(WindAction wind, LimitState limitState = LimitState.Strength) =>
        SituationDemands.Of([model], new Situation { Name = "storm", LimitState = limitState, Actions = [new SelfWeight(), 1.5 * wind] }, DampingModel.OfRatio(0.01));

    private static double Twist(SituationDemands demands) => demands.OnBase().Max(b => Math.Abs(b.Reaction.MomentZ.NewtonMeters));

    /// <summary>ASCE/SEI 7-22, Figure 27.3-8, case 2: three quarters of the force, 0.15 of the width off; a round statue has no twist else.</summary>
    [Fact]
    public void A_statue_that_is_alike_all_round_is_twisted_by_a_known_moment()
    {
        // The outline is a polygon, a little wider in some headings.
        WindAction wind = GustStatues.Action(GustStatues.Wind());
        double force = model.Respond(new Situation { Name = "storm", Actions = [1.5 * wind] }).WindForceGoverns.WindForce.Newtons;
        Assert.Equal(0.75 * 0.15 * Width * force, Twist(Demands(wind)), 1e-3 * force);
        Assert.Equal(0.75 * 0.3 * Width * force, Twist(Demands(wind with { Eccentricity = 0.3 })), 1e-3 * force);
        Assert.Equal(0, Twist(Demands(wind with { Eccentricity = 0 })), 1e-6 * force);
        Assert.Equal(0.75 * 0.15 * Width * force, Twist(Demands(wind, LimitState.Service)), 1e-3 * force);
    }

    /// <summary>
    /// The whole wind a quarter of the width off, EN 1991-1-4:2005, 7.4.3 (2) of signs, or a fifth, ASCE/SEI 7-22, Figure 29.3-1, case B; both
    /// from memory. It holds whichever way the leaf is turned, also between two of the headings in which wind is taken off the middle.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(22.5)]
    public void A_flat_figure_is_twisted_as_a_sign(double turned)
    {
        const double chord = 2;
        StatueModel leaf = StatueModel.Build(PlateChecksTests.LeafOnMast(turned: turned));
        AssertTwist(GustStatues.Wind(), 0.25);
        AssertTwist(new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 50.MetersPerSecond, Exposure = AsceExposure.C }, 0.2);

        void AssertTwist(WindProfile profile, double eccentricity)
        {
            WindAction wind = GustStatues.Action(profile);
            Situation storm = new() { Name = "storm", Actions = [1.5 * wind] };
            double force = leaf.Respond(storm).WindForceGoverns.WindForce.Newtons, twist = Twist(SituationDemands.Of([leaf], storm, DampingModel.OfRatio(0.01)));
            Assert.Equal(eccentricity * chord * force, twist, 1e-3 * twist);
            // What is told of a band gives its force, off the middle too.
            LoadCase aside = leaf.Respond(new Situation { Name = "storm", Actions = [0.75 * 1.5 * (wind with { Side = 1 })] }).WindForceGoverns;
            Assert.Equal(force, aside.WindForce.Newtons, 1e-6 * force);
            Assert.All(aside.BandWindForces(), b => Assert.Equal(b.Along.Newtons, b.LoadFactor * b.GustFactor * b.PeakPressure.Pascals * b.Coefficient * b.Area.SquareMeters, 1e-9 * force));
            // A number that is given holds for all bands, but a flat one still takes the whole wind.
            Situation less = new() { Name = "storm", Actions = [1.5 * (wind with { Eccentricity = 0.1 })] };
            Assert.Equal(0.1 * chord * force, Twist(SituationDemands.Of([leaf], less, DampingModel.OfRatio(0.01))), 1e-3 * twist);
        }
    }

    /// <summary>What stands bare is twisted by its own width, a lattice by that of its outline.</summary>
    [Fact]
    public void A_bare_tower_is_twisted_too()
    {
        StatueModel bare = StatueModel.Build(GustStatues.Uniform(20, Width, 2, bands: 5) with { Skin = null, Standoffs = [], Points = [] });
        Situation storm = new() { Name = "storm", Actions = [1.5 * GustStatues.Action(GustStatues.Wind())] };
        double force = bare.Respond(storm).WindForceGoverns.WindForce.Newtons;
        // The tower is half as wide as the skin was.
        Assert.Equal(0.75 * 0.15 * 0.5 * Width * force, Twist(SituationDemands.Of([bare], storm, DampingModel.OfRatio(0.01))), 2e-3 * force);
    }

    [Fact]
    public void It_twists_both_ways_and_never_presses_harder()
    {
        WindAction wind = GustStatues.Action(GustStatues.Wind());
        BaseForces[] all = [.. Demands(wind).OnBase()], middle = [.. Demands(wind with { Eccentricity = 0 }).OnBase()];
        Assert.Contains(all, b => b.Reaction.MomentZ.NewtonMeters > 1000);
        Assert.Contains(all, b => b.Reaction.MomentZ.NewtonMeters < -1000);
        Assert.Equal(middle.Max(b => b.Reaction.Overturning.NewtonMeters), all.Max(b => b.Reaction.Overturning.NewtonMeters), 1e-6);
        Assert.Contains(all, b => b.State.When.Contains("off its middle to the left", StringComparison.Ordinal));
    }

    [Fact]
    public void It_is_taken_from_eight_sides_at_most()
    {
        foreach (int count in new[] { 1, 4, 8, 16, 36 })
        {
            int twisted = Demands(GustStatues.Action(GustStatues.Wind()) with { Headings = Headings.Evenly(count) }).OnBase().Count(b => b.State.When.Contains("to the left", StringComparison.Ordinal));
            Assert.InRange(twisted, Math.Min(count, 4), 8);
        }
    }

    /// <summary>A wind along a limb has no width there to be off the middle of.</summary>
    [Fact]
    public void A_limb_that_points_into_the_wind_is_no_error()
    {
        StatueModel armed = StatueModel.Build(GustStatues.Uniform(20, Width, 2, bands: 5, limbs: GustStatues.Arm("L3", 0)));
        SituationDemands demands = SituationDemands.Of([armed], new Situation { Name = "storm", Actions = [new SelfWeight(), GustStatues.Action(GustStatues.Wind()) with { Headings = [0.Degrees, 180.Degrees, 90.Degrees] }] }, DampingModel.OfRatio(0.01));
        Assert.All(demands.OnBase(), b => Assert.True(double.IsFinite(b.Reaction.MomentZ.NewtonMeters)));
    }
}
