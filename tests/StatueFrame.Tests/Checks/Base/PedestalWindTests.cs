using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Analysis.Gusts;
using UnitsNet;

namespace StatueFrame.Tests.Checks;

/// <summary>Wind on the pedestal comes down under it, on what stands above the ground.</summary>
public class PedestalWindTests
{
    private static readonly PedestalCourse course = new() { Section = BlockSection.Rectangle(4.Meters, 6.Meters), Height = 3.Meters, Material = Concrete.OfStrength(30.Megapascals) };

    private static readonly Statue statue = GustStatues.Uniform(20, 2, 2, bands: 4) with
    {
        BaseAboveGround = 5.Meters,
        Pedestal = new Pedestal { Courses = [course, course] },
    };

    /// <summary>A wind of 1 kPa at all heights.</summary>
    private static readonly WindAction wind = new()
    {
        Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(10.Meters, 40.MetersPerSecond, 0.1)], AirDensity = Density.FromKilogramsPerCubicMeter(1.25) },
        GustEffectFactor = 1.2,
        Headings = [0.Degrees, 90.Degrees, 45.Degrees],
    };

    private static BaseState[] States(WindAction wind) =>
        BaseState.Of(SituationDemands.Of([StatueModel.Build(statue)], new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * (wind with { Eccentricity = 0 })] }, DampingModel.OfRatio(0.01)).OnBase());

    /// <summary>By hand: 1.5 · 1.2 · 1.3 · 1 kPa on 6 m (4 m) times 5 m above the ground, its middle 3.5 m above the underside.</summary>
    [Theory]
    [InlineData(0, 6.0)]
    [InlineData(90, 4.0)]
    [InlineData(45, 7.0710678)]
    public void Its_force_and_moment_are_those_found_by_hand(double heading, double width)
    {
        BaseState state = States(wind).First(s => s.Case.Heading!.Value.Degrees == heading);
        BaseLoad bare = state.Load.Below(6, 0), blown = PedestalWind.On(bare, statue, state, 2, 6);
        double force = 1.5 * 1.2 * 1.3 * 1000 * width * 5;
        Assert.Equal(force, (blown - bare).V, 1e-3 * force);
        Assert.Equal(3.5 * force, (blown - bare).M, 1e-3 * force);
        Assert.Equal(bare.N, blown.N);
        double angle = Math.Atan2(blown.Vy - bare.Vy, blown.Vx - bare.Vx) * 180 / Math.PI;
        Assert.Equal(heading, angle, 1e-6);
    }

    [Fact]
    public void Without_wind_there_is_none()
    {
        BaseState[] states = BaseState.Of(SituationDemands.Of([StatueModel.Build(statue)], new Situation { Name = "rest", Actions = [new SelfWeight()] }, DampingModel.OfRatio(0.01)).OnBase());
        Assert.All(states, state => Assert.Equal(state.Load, PedestalWind.On(state.Load, statue, state, 2, 6)));
        Assert.All(States(wind), state => Assert.Equal(state.Load, PedestalWind.On(state.Load, statue with { BaseAboveGround = Length.Zero }, state, 2, 6)));
    }

    [Fact]
    public void Rows_of_the_pedestal_say_so()
    {
        CheckSheet sheet = statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * wind] });
        Assert.Contains(sheet.Checks, c => c.Id == "pedestal.overturning" && c.AssumedInputs.Contains(PedestalWind.Basis.Short));
    }

    /// <summary>ASCE/SEI 7-22, 29.7: a slow wind is raised to 16 psf by whoever reads the sheet.</summary>
    [Fact]
    public void The_least_wind_of_ASCE_is_asked_for()
    {
        Check Least(double speed) => Assert.Single(statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), wind with { Profile = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = speed.MetersPerSecond, Exposure = AsceExposure.C } }] }).Checks, c => c.Id == "wind.minimum");
        Assert.Equal(Verdict.Fail, Least(20).Verdict);
        Assert.Equal(Verdict.Pass, Least(50).Verdict);
        Assert.InRange(Least(50).Demand!.Value, 0.99 * 770 * 2 * 20, 1.01 * 770 * 2 * 20);
        Assert.DoesNotContain(statue.Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), wind] }).Checks, c => c.Id == "wind.minimum");
    }
}
