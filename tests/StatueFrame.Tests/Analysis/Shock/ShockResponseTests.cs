using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Tests.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Shocks;

public class ShockResponseTests
{
    private static readonly DampingModel light = DampingModel.OfRatio(0.01), none = DampingModel.OfRatio(0);

    private static readonly ShockOptions brief = new() { Modes = 16, Step = 0.0004.Seconds, Length = 0.3.Seconds, KeepsHistory = true };

    private static PressurePulse Wave(double heading = 20) => new()
    {
        Name = "wave",
        Shape = new TrianglePulse(0.25),
        Peak = 2.Kilopascals,
        Duration = 0.02.Seconds,
        Heading = heading.Degrees,
        WaveSpeed = 200.MetersPerSecond,
    };

    private static Blow Tap(string on, double heading, double size = 100) =>
        new() { Name = "tap", On = on, Heading = heading.Degrees, Impulse = Impulse.FromNewtonSeconds(size) };

    private static Situation With(params FactoredAction[] actions) => new() { Name = "shock", Actions = [.. actions] };

    [Fact]
    public void Twice_the_shock_moves_twice_as_far()
    {
        ShockResponse one = ShockResponse.Of(Figures.Model, With(1.0 * Wave()), light, brief), two = ShockResponse.Of(Figures.Model, With(2.0 * Wave()), light, brief);
        Assert.Equal(2 * one.Of("tip").Sway.Value.Meters, two.Of("tip").Sway.Value.Meters, 1e-12);
        Assert.Equal(2 * one.WorstBar!.Stress.Value.Pascals, two.WorstBar!.Stress.Value.Pascals, 1e-3);
        Assert.Equal(2 * one.Overturning.Value.NewtonMeters, two.Overturning.Value.NewtonMeters, 1e-6);
        Assert.Equal(4 * one.Energy.Input.Value.Joules, two.Energy.Input.Value.Joules, 1e-9);
        Assert.Equal(one.BaseShear.Time, two.BaseShear.Time);
    }

    [Fact]
    public void Shocks_add_up_moment_by_moment()
    {
        ShockHistory wave = ShockResponse.Of(Figures.Model, With(Wave()), light, brief).History!, tap = ShockResponse.Of(Figures.Model, With(Tap("band 2", 70)), light, brief).History!;
        ShockHistory both = ShockResponse.Of(Figures.Model, With(Wave(), Tap("band 2", 70)), light, brief).History!;
        for (int i = 0; i < both.TimesInSeconds.Count; i += 7)
            Assert.Equal(wave.Of("tip", i).X + tap.Of("tip", i).X, both.Of("tip", i).X, 1e-14);
    }

    [Fact]
    public void Blow_at_one_place_moves_another_as_the_other_way_round()
    {
        Statue statue = Figures.Leaning with { Points = [new NamedPoint("a", "band 3"), new NamedPoint("b", "4 m")] };
        StatueModel model = StatueModel.Build(statue);
        ShockHistory there = model.Respond(Tap("band 3", 0), light, brief).History!, back = model.Respond(Tap("4 m", 90), light, brief).History!;
        double size = Enumerable.Range(0, there.TimesInSeconds.Count).Max(i => Math.Abs(there.Of("b", i).Y));
        Assert.True(size > 1e-8);
        for (int i = 0; i < there.TimesInSeconds.Count; i++)
            Assert.Equal(there.Of("b", i).Y, back.Of("a", i).X, 1e-9 * size);
    }

    [Fact]
    public void Base_takes_the_whole_impulse_in_the_end()
    {
        StatueModel model = Figures.Model;
        PressurePulse wave = Wave(0) with { WaveSpeed = null };
        ShockOptions long_ = new() { Modes = 16, Step = 0.0004.Seconds, Length = 4.Seconds, KeepsHistory = true };
        ShockResponse response = ShockResponse.Of(model, With(wave), DampingModel.OfRatio(0.3), long_);
        double area = 0, moment = 0;
        for (int i = 0; i < model.BandCount; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            WindExposure exposure = body.Bands[index].Exposure(Vector3D.UnitX);
            area += exposure.ProjectedArea;
            moment += exposure.ProjectedArea * exposure.PressureCenter.Z;
        }
        double impulse = 2000 * 0.02 * 0.5, shear = 0, turn = 0;
        for (int i = 0; i < response.History!.TimesInSeconds.Count; i++)
        {
            shear += response.History.BaseAt(i)[0] * 0.0004;
            turn += response.History.BaseAt(i)[4] * 0.0004;
        }
        Assert.Equal(impulse * area, shear, 1e-4 * impulse * area);
        Assert.Equal(impulse * moment, turn, 1e-4 * impulse * moment);
    }

    [Fact]
    public void Momentum_and_base_impulse_make_up_the_blow_at_every_time()
    {
        // Without the other modes the blow's own share in these modes is what counts.
        StatueModel model = Figures.Model;
        var all = new ShockOptions { Modes = 400, Length = 0.02.Seconds, KeepsHistory = true };
        ShockResponse response = ShockResponse.Of(model, With(Tap("band 3", 0)), none, all);
        Assert.True(response.Captured > 0.999);
        double step = response.Step.Seconds, passed = 0;
        ShockHistory history = response.History!;
        for (int i = 0; i + 1 < history.TimesInSeconds.Count; i++)
            passed += 0.5 * step * (history.BaseAt(i)[0] + history.BaseAt(i + 1)[0]);
        // The same blow by direct integration: its momentum at the same time, from all masses that move.
        var integration = new Mechanics.Vibration.DirectIntegration(model.Frame, 0, 0, 0.25 * step);
        double[] blow = new double[model.Frame.FreedomCount], velocity = new double[blow.Length], load = new double[blow.Length];
        Place band = model.PlaceOf("band 3");
        blow[6 * band.Node] = 100;
        var reduced = new double[model.Frame.EquationCount];
        model.Frame.Reduce(blow, reduced);
        new LdlFactorization(model.Frame.Symbolic, model.Frame.Mass).Solve(reduced);
        model.Frame.Expand(reduced, velocity);
        integration.Start([], velocity, load);
        for (int i = 0; i < 4 * (history.TimesInSeconds.Count - 1); i++)
            integration.Step(load);
        integration.CopyTo(velocity, Mechanics.Vibration.Motion.Velocity);
        double momentum = Enumerable.Range(0, velocity.Length).Sum(i => model.RigidInertia[0][i] * velocity[i]);
        Assert.Equal(100, passed + momentum, 1.0);
        Assert.True(Math.Abs(passed) > 5);
    }

    [Fact]
    public void Turned_statue_answers_a_turned_shock_alike()
    {
        StatueModel turned = StatueModel.Build(Figures.Turned(37));
        ShockResponse a = Figures.Model.Respond(Wave(), light, brief), b = turned.Respond(Wave(57), light, brief);
        Assert.Equal(a.Of("tip").Sway.Value.Meters, b.Of("tip").Sway.Value.Meters, 1e-9);
        Assert.Equal(a.BaseShear.Value.Newtons, b.BaseShear.Value.Newtons, 1e-6 * a.BaseShear.Value.Newtons);
        Assert.Equal(a.WorstBar!.Stress.Value.Pascals, b.WorstBar!.Stress.Value.Pascals, 1e-6 * a.WorstBar.Stress.Value.Pascals);
        Assert.Equal(a.Energy.BarStrain.Value.Joules, b.Energy.BarStrain.Value.Joules, 1e-6 * a.Energy.BarStrain.Value.Joules);
    }

    [Fact]
    public void Step_does_not_change_the_motion()
    {
        ShockHistory coarse = Figures.Model.Respond(Wave() with { WaveSpeed = null }, light, brief).History!;
        ShockHistory fine = Figures.Model.Respond(Wave() with { WaveSpeed = null }, light, brief with { Step = 0.00005.Seconds }).History!;
        double size = Enumerable.Range(0, coarse.TimesInSeconds.Count).Max(i => Math.Abs(coarse.Of("tip", i).X));
        for (int i = 0; i < coarse.TimesInSeconds.Count; i++)
            Assert.Equal(fine.Of("tip", 8 * i).X, coarse.Of("tip", i).X, 1e-6 * size);
    }

    [Theory, InlineData(0.0), InlineData(0.02), InlineData(0.4)]
    public void Elastic_energies_balance(double damping)
    {
        foreach (ShockAction shock in (ShockAction[])[Wave(), Wave() with { Shape = new RectanglePulse() }, Wave() with { Shape = new DecayPulse(1) }, Tap("band 1", 200), new SuddenRelease { Name = "rope", On = "band 3", Pull = 1.Kilonewtons }])
            Assert.True(Figures.Model.Respond(shock, DampingModel.OfRatio(damping), brief with { Length = 0.1.Seconds }).Energy.BalanceError < 1e-6);
    }

    /// <summary>A damper takes energy out of the modes near its own frequency; far from all of them it changes nothing.</summary>
    [Fact]
    public void A_damper_takes_its_own_modes_alone()
    {
        ShockResponse Damped(DampingModel damping) => Figures.Model.Respond(Wave(), damping, brief with { Length = 0.4.Seconds });
        ShockResponse without = Damped(light), with = Damped(light with { Dampers = [new TunedDamper { Decrement = 0.3 }] });
        Assert.True(with.Energy.BalanceError < 1e-6);
        Assert.True(with.Energy.Damped > 1.02 * without.Energy.Damped);
        Assert.Equal(without.Energy, Damped(light with { Dampers = [new TunedDamper { Decrement = 0.3, Frequency = 0.05.Hertz }] }).Energy);
    }

    [Theory, InlineData(0.0, 0.1), InlineData(0.1, 0.1), InlineData(0.0, 0.2)]
    public void Yielding_energies_balance(double hardening, double strength)
    {
        ShockResponse response = Figures.Model.Respond(Wave(), light, brief with { Length = 0.06.Seconds, Yielding = new BarYielding { Hardening = hardening, StrengthFactor = strength } });
        Assert.Contains(response.Bars, bar => bar.HasYielded);
        Assert.True(response.Energy.Plastic.Joules > 0.01 * response.Energy.Input.Value.Joules);
        Assert.True(response.Energy.BalanceError < 1e-3);
    }

    [Fact]
    public void Bars_too_strong_to_yield_move_as_elastic_ones()
    {
        ShockOptions all = brief with { Modes = 30, Step = 0.00004.Seconds, Length = 0.05.Seconds };
        ShockResponse elastic = Figures.Model.Respond(Wave(), none, all), strong = Figures.Model.Respond(Wave(), none, all with { Yielding = new BarYielding { StrengthFactor = 3 } });
        Assert.DoesNotContain(strong.Bars, bar => bar.HasYielded);
        Assert.Equal(elastic.Of("tip").Sway.Value.Meters, strong.Of("tip").Sway.Value.Meters, 2e-4 * elastic.Of("tip").Sway.Value.Meters);
        Assert.Equal(elastic.WorstBar!.Stress.Value.Pascals, strong.WorstBar!.Stress.Value.Pascals, 5e-3 * elastic.WorstBar.Stress.Value.Pascals);
        Assert.Equal(elastic.Overturning.Value.NewtonMeters, strong.Overturning.Value.NewtonMeters, 5e-3 * elastic.Overturning.Value.NewtonMeters);
        Assert.Equal(elastic.Energy.BarStrain.Value.Joules, strong.Energy.BarStrain.Value.Joules, 5e-3 * elastic.Energy.BarStrain.Value.Joules);
    }

    [Fact]
    public void Yielding_bars_pass_on_less()
    {
        ShockResponse elastic = Figures.Model.Respond(Wave(), light, brief with { Length = 0.06.Seconds });
        ShockResponse weak = Figures.Model.Respond(Wave(), light, brief with { Length = 0.06.Seconds, Yielding = new BarYielding { StrengthFactor = 0.1 } });
        Assert.True(weak.WorstBar!.Stress.Value < 0.5 * elastic.WorstBar!.Stress.Value);
        Assert.True(weak.Overturning.Value < elastic.Overturning.Value);
    }

    [Fact]
    public void Slow_pulse_acts_like_a_steady_load()
    {
        PressurePulse slow = Wave(0) with { Duration = 20.Seconds, WaveSpeed = null, Shape = new TrianglePulse(0.5) };
        var options = new ShockOptions { Modes = 12, Step = 0.0025.Seconds, Length = 20.Seconds };
        ShockResponse response = Figures.Model.Respond(slow, DampingModel.OfRatio(0.05), options);
        var wind = new WindAction
        {
            Profile = new TableWind { SpeedIs = WindSpeedBasis.GustSpeed, Rows = [new WindTableRow(10.Meters, 40.MetersPerSecond, null)] },
            Headings = [0.Degrees],
            ForceCoefficient = 1,
            GustEffectFactor = 1,
        };
        Response steady = Figures.Model.Respond(new Situation { Name = "wind", Actions = [wind] });
        double ratio = 2000 / wind.Profile.PeakPressureSi(5);
        Assert.Equal(ratio * steady.GreatestSway("tip").Sway.Meters, response.Of("tip").Sway.Value.Meters, 0.01 * response.Of("tip").Sway.Value.Meters);
        Assert.Equal(ratio * steady.Cases[0].Base.Shear.Newtons, response.BaseShear.Value.Newtons, 0.01 * response.BaseShear.Value.Newtons);
    }

    [Fact]
    public void Release_starts_from_the_pulled_shape_and_swings_back()
    {
        var release = new SuddenRelease { Name = "rope", On = "band 3", Pull = 2.Kilonewtons, Heading = 30.Degrees };
        ShockResponse response = Figures.Model.Respond(release, light, brief with { Length = 1.Seconds });
        Response pulled = Figures.Model.Respond(new Situation { Name = "pull", Actions = [new ImposedLoad { Name = "rope", On = "band 3", AlongX = (2 * Math.Cos(Math.PI / 6)).Kilonewtons, AlongY = 1.Kilonewtons }] });
        Movement still = pulled.Cases[0].Of("tip");
        Assert.Equal(still.X.Meters, response.History!.Of("tip", 0).X, 1e-3 * still.X.Meters);
        Assert.Contains(Enumerable.Range(0, response.History.TimesInSeconds.Count), i => response.History.Of("tip", i).X < -0.8 * still.X.Meters);
    }

    [Fact]
    public void Strike_meets_the_band_as_one_body()
    {
        var strike = new Strike { Name = "boat", On = "band 2", Mass = 50.Kilograms, Speed = 2.MetersPerSecond, Restitution = 0.4 };
        StrikeImpulse impulse = Assert.Single(Figures.Model.Respond(strike, light, brief).Strikes);
        Place place = Figures.Model.PlaceOf("band 2");
        double mass = Figures.Model.Frame.Mass[Figures.Model.Frame.EquationOf(6 * place.Node), Figures.Model.Frame.EquationOf(6 * place.Node)];
        Assert.InRange(impulse.StruckMass.Kilograms, 0.8 * mass, mass * 1.0001);
        Assert.Equal(Strike.ImpulseOf(50, 2, 0.4, impulse.StruckMass.Kilograms), impulse.Impulse.NewtonSeconds, 1e-9);
        // A point off the center turns the band: it sets less mass against the blow.
        Strike aside = strike with { At = Point3.FromMeters(0, 0.5, place.Center.Z) };
        Assert.True(Figures.Model.Respond(aside, light, brief).Strikes[0].StruckMass < impulse.StruckMass);
    }

    [Fact]
    public void Stress_and_forces_of_a_bar_belong_together()
    {
        foreach (BarYielding? yielding in (BarYielding?[])[null, new BarYielding { StrengthFactor = 0.3 }])
        {
            foreach (ShockBar bar in Figures.Model.Respond(Wave(), light, brief with { Length = 0.06.Seconds, Yielding = yielding }).Bars)
            {
                (double b, double t) = (bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
                double Stress(Torque weak, Torque strong) => Math.Abs(bar.Forces.Axial.Newtons) / (b * t) + 6 * Math.Abs(weak.NewtonMeters) / (b * t * t) + 6 * Math.Abs(strong.NewtonMeters) / (t * b * b);
                double worse = Math.Max(Stress(bar.Forces.WeakMomentAtTower, bar.Forces.StrongMomentAtTower), Stress(bar.Forces.WeakMomentAtSkin, bar.Forces.StrongMomentAtSkin));
                Assert.Equal(worse, bar.Stress.Value.Pascals, 1e-9 * worse);
            }
        }
    }

    [Fact]
    public void Bars_start_from_their_stress_at_rest()
    {
        StatueModel model = Figures.Model;
        var situation = new Situation { Name = "rest", Actions = [new SelfWeight()] };
        LoadCase rest = model.Respond(situation).Cases[0];
        ShockResponse response = ShockResponse.Of(model, With(new SelfWeight(), 1e-6 * Tap("band 3", 0)), light, brief);
        int index = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                double[] forces = new double[12];
                rest.ForcesOf(ring, bar, band, SkinAssumption.RigidRing, forces);
                double stress = BarEnds.Of(forces).NormalStress(bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
                Assert.Equal(stress, response.Bars[index++].Stress.Value.Pascals, 100.0);
            }
        }
        Assert.Equal(-rest.Base.ForceZ.Newtons, response.LeastDown.Value.Newtons, 1.0);
    }

    [Fact]
    public void Wave_that_travels_reaches_the_far_side_later()
    {
        Statue two = new SampleStatue().Statue;
        StatueModel model = StatueModel.Build(two);
        ShockLoads slow = ShockLoads.Of(model, With(Wave(90) with { WaveSpeed = 10.MetersPerSecond })), at_once = ShockLoads.Of(model, With(Wave(90) with { WaveSpeed = null }));
        Assert.Single(at_once.Patterns);
        Assert.True(slow.Patterns.Count > 1 && slow.Patterns[0].Start == 0 && slow.Patterns[^1].Start > 0.01);
        Vector3D sum = slow.Patterns.Aggregate(Vector3D.Zero, (total, p) => total + p.Resultant.Force);
        Assert.Equal(at_once.Patterns[0].Resultant.Force.Y, sum.Y, 1e-6 * sum.Y);
    }

    /// <summary>A board on the tower and a bare arm are pushed as the skin is; where bands are named, they alone are.</summary>
    [Fact]
    public void Fittings_and_bare_tower_are_pushed_too()
    {
        Statue skin = Analysis.Gusts.GustStatues.Uniform(20, 3, 1, bands: 4);
        Statue more = skin with
        {
            Fittings = [new Fitting { Name = "board", On = "L2", Mass = 50.Kilograms, WindArea = Area.FromSquareMeters(4), At = new Point3(1.Meters, 0.Meters, 7.Meters) }],
            Limbs = [Analysis.Gusts.GustStatues.Arm("L4", 90) with { Skin = null, Standoffs = [] }],
        };
        PressurePulse wave = Wave(0) with { Bands = [], WaveSpeed = null };
        StatueModel model = StatueModel.Build(more);
        Resultant plain = Pushed(StatueModel.Build(skin), wave), all = Pushed(model, wave), named = Pushed(model, wave with { Bands = ["band 1", "band 2", "band 3", "band 4"] });
        Assert.Equal(plain.Force.X, named.Force.X, 1e-9 * plain.Force.X);
        double board = wave.Peak.Pascals * 4, arm = all.Force.X - plain.Force.X - board;
        // The arm, half a meter thick, stands 4.5 m out of the skin; round, it has a drag coefficient between 0.5 and 1.2.
        Assert.InRange(arm / (wave.Peak.Pascals * 0.5 * 4.5), 0.5, 1.2);
        // The board 1 m off the axis ahead turns nothing about the vertical, the arm 6 m to the left turns the base to the right.
        Assert.True(all.Moment.Z < plain.Moment.Z - arm);

        static Resultant Pushed(StatueModel model, PressurePulse pulse) => ShockLoads.Of(model, With(pulse)).Patterns.Select(p => p.Resultant).Aggregate((a, b) => a + b);
    }

    [Fact]
    public void Modes_are_chosen_by_what_the_shock_sets_moving()
    {
        ShockResponse slow = Figures.Model.Respond(Wave() with { Duration = 1.Seconds }, light), fast = Figures.Model.Respond(Wave() with { Duration = 0.01.Seconds }, light);
        Assert.True(slow.ModeCount < fast.ModeCount);
        Assert.True(slow.Captured >= 0.995 && fast.Captured >= 0.995);
    }

    [Fact]
    public void Lifting_is_reached_where_the_resultant_leaves_the_base()
    {
        ShockResponse response = Figures.Model.Respond(Wave(0), light, brief);
        ShockOverturning narrow = response.OverturningOn(1.Meters)!, wide = response.OverturningOn(2.Meters)!, held = response.OverturningOn(1.Meters, 50.Kilonewtons)!;
        Assert.Equal(narrow.Ratio, 2 * wide.Ratio, 1e-9);
        Assert.True(held.Ratio < narrow.Ratio);
        Assert.Equal(narrow.Moment.NewtonMeters / narrow.Resistance.NewtonMeters, narrow.Ratio, 1e-12);
        Assert.Null(response.OverturningOn());
        Assert.Throws<ArgumentOutOfRangeException>(() => response.OverturningOn(0.Meters));
        Assert.Throws<ArgumentOutOfRangeException>(() => response.OverturningOn(1.Meters, (-1).Newtons));
    }

    [Fact]
    public void Square_base_reaches_farther_to_its_corners()
    {
        StatueModel model = StatueModel.Build(Figures.OnTensionOnlyLattice);
        double straight = model.Respond(Wave(0), light, brief).OverturningOn()!.Resistance.NewtonMeters, diagonal = model.Respond(Wave(45), light, brief).OverturningOn()!.Resistance.NewtonMeters;
        Assert.True(diagonal > 1.2 * straight);
    }

    [Fact]
    public void Steps_that_are_too_long_are_refused_with_what_to_take()
    {
        var e = Assert.Throws<InvalidStatueException>(() => Figures.Model.Respond(Wave(), light, new ShockOptions { Modes = 16, Step = 0.01.Seconds }));
        Assert.Equal(2, e.Problems.Count);
        Assert.All(e.Problems, p => Assert.Contains("Take at most", p.Hint));
        Assert.Throws<InvalidStatueException>(() => Figures.Model.Respond(Wave(), light, new ShockOptions { Length = 1e5.Seconds }));
    }

    [Fact]
    public void What_cannot_be_is_refused_with_hints()
    {
        AssertProblems(With(new SelfWeight()), "Situation.Actions");
        AssertProblems(With(Wave(), Figures.Wind), "Situation.Actions");
        AssertProblems(With(Tap("band 9", 0)), "Situation.Actions[0].Action.On");
        AssertProblems(With(Wave() with { Bands = ["4 m"] }), "Situation.Actions[0].Action.Bands[0]");
        AssertProblems(With(Wave() with { Peak = (-1).Pascals, Duration = 0.Seconds }), "Situation.Actions[0].Action.Peak", "Situation.Actions[0].Action.Duration");
        AssertProblems(With(new Strike { Name = "x", On = "band 1", Mass = 1.Kilograms, Speed = 1.MetersPerSecond, Restitution = 2 }), "Situation.Actions[0].Action.Restitution");

        static void AssertProblems(Situation situation, params string[] paths)
        {
            var e = Assert.Throws<InvalidStatueException>(() => ShockResponse.Of(Figures.Model, situation, light));
            Assert.Equal(paths, e.Problems.Select(p => p.Path));
            Assert.All(e.Problems, p => Assert.NotEmpty(p.Hint));
        }
    }
}
