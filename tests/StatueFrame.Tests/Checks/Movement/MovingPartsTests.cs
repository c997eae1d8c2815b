using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

/// <summary>That what moves, points and skin ends of bars, is looked at in all that moves it.</summary>
public class MovingPartsTests
{
    /// <summary>With an arm so slender that it moves more than what it grows from.</summary>
    private static readonly SmallStatue armed = (SmallStatue.Good with { Criteria = new Criteria { Sway = [new SwayLimit("tip", 50.Millimeters), new SwayLimit("hand", 50.Millimeters)] } })
        .With(s => s with { Limbs = [SmallStatue.Arm with { Tower = SmallStatue.Arm.Tower with { Segments = [SmallStatue.Mast with { Section = new Tube(150.Millimeters, 6.Millimeters) }] } }] });

    private static SmallStatue Blown(double lift, double aside) => armed with
    {
        Situations = [SmallStatue.Sway with { Actions = [new SelfWeight(), SmallStatue.Wind with { LiftCoefficient = lift, Eccentricity = aside }] }],
    };

    private static Check Of(CheckSheet sheet, string point) => Assert.Single(sheet.Checks, check => check.Id == "sway.limit" && check.Where == point);

    [Fact]
    public void Limbs_sway_by_lift_up_and_down()
    {
        SmallStatue still = Blown(0, 0);
        Response response = StatueModel.Build(still.Statue).Respond(still.Situations[0]), weight = StatueModel.Build(still.Statue).Respond(new Situation { Name = "weight", Actions = [new SelfWeight()] });
        double sag = weight.Cases[0].Of("hand").Z.Meters;
        double expected = response.Cases.Max(c => double.Hypot(c.Of("hand").Sway.Meters, c.Of("hand").Z.Meters - sag));
        Assert.Equal(expected, Of(still.Check(), "hand").Demand!.Value, 1e-9 * expected);
        // Of points of the trunk only the plan counts.
        Assert.Equal(response.GreatestSway("tip").Sway.Meters, Of(still.Check(), "tip").Demand!.Value, 1e-9);

        Check lifted = Of(Blown(0.8, 0).Check(), "hand");
        Assert.True(lifted.Demand > 1.02 * expected, $"{lifted.Demand} after {expected}");
        Assert.Contains("limbs", lifted.Working().ToText(), StringComparison.Ordinal);
        Assert.True(Of(Blown(1.6, 0).Check(), "hand").Demand > lifted.Demand);
    }

    [Fact]
    public void Wind_off_the_middle_twists_what_is_far_from_the_axis()
    {
        // So soft against twist that three quarters of the wind aside swing the hand further than all of it amid.
        SmallStatue soft = Blown(0, 0.4).With(s => s with { Tower = s.Tower with { Segments = [SmallStatue.Panel with { Braces = new AngleBar(20.Millimeters, 3.Millimeters) }, SmallStatue.Mast] } });
        SmallStatue amid = soft with { Situations = Blown(0, 0).Situations };
        Assert.True(Of(soft.Check(), "hand").Demand > Of(amid.Check(), "hand").Demand);
    }

    [Fact]
    public void Limbs_move_up_and_down_in_earthquakes_and_shocks()
    {
        var quake = new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = Acceleration.FromMetersPerSecondSquared(1), Ground = GroundType.C, BehaviorFactor = 1 } };
        var pulse = new PressurePulse { Name = "pulse", Shape = new TrianglePulse(), Peak = 2.Kilopascals, Duration = Duration.FromMilliseconds(20) };
        var shaken = new Situation { Name = "shaken", LimitState = LimitState.Service, Actions = [new SelfWeight(), quake] };
        var struck = new Situation { Name = "struck", LimitState = LimitState.Service, Actions = [new SelfWeight(), pulse] };
        CheckSheet sheet = armed.Statue.Check(armed.Criteria, shaken, struck);
        StatueModel model = StatueModel.Build(armed.Statue);
        EarthquakeMovement hand = EarthquakeResponse.Of(model, quake).Of("hand");
        double rest = model.Respond(shaken).GreatestSway("hand").Sway.Meters;
        Assert.Equal(rest + double.Hypot(hand.Sway.Meters, hand.Z.Meters), Assert.Single(sheet.Checks, check => check.Id == "earthquake.sway" && check.Where == "hand").Demand!.Value, 1e-9);
        ShockResponse shock = ShockResponse.Of(model, struck);
        Assert.Equal(shock.Of("hand").Travel.Value.Meters, Assert.Single(sheet.Checks, check => check.Id == "shock.sway" && check.Where == "hand").Demand!.Value, 1e-3 * shock.Of("hand").Travel.Value.Meters);
        Assert.Equal(shock.Of("tip").Sway.Value.Meters, Assert.Single(sheet.Checks, check => check.Id == "shock.sway" && check.Where == "tip").Demand!.Value, 1e-3 * shock.Of("tip").Sway.Value.Meters);
    }

    [Fact]
    public void Skin_ends_come_nearer_to_the_tower_by_what_shakes_too()
    {
        var quake = new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = Acceleration.FromMetersPerSecondSquared(3), Ground = GroundType.C, BehaviorFactor = 1 } };
        var pulse = new PressurePulse { Name = "pulse", Shape = new TrianglePulse(), Peak = 2.Kilopascals, Duration = Duration.FromMilliseconds(20) };
        var rest = new Situation { Name = "rest", Actions = [new SelfWeight()] };
        var struck = new Situation { Name = "struck", Actions = [new SelfWeight(), pulse] };
        var shaken = new Situation { Name = "shaken", Actions = [new SelfWeight(), quake] };
        SmallStatue near = SmallStatue.Good.With(s => s with { Standoffs = [.. s.Standoffs.Select(r => ((EvenRing)r) with { Standoff = SmallStatue.Flat with { Clearance = 60.Millimeters } })] });
        CheckSheet sheet = near.Statue.Check(new Criteria(), rest, shaken, struck);
        foreach (Check still in sheet.Checks.Where(check => check.Id == "bars.clearance" && check.Situation == "rest" && check.Demand is not null))
        {
            foreach ((string situation, string what) in new[] { ("shaken", "earthquake"), ("struck", "shock") })
            {
                Check moved = Assert.Single(sheet.Checks, check => check.Id == still.Id && check.Situation == situation && check.Where.Split(',')[0] == still.Where.Split(',')[0]);
                Assert.True(moved.Demand > still.Demand);
                Assert.Contains(what, moved.Working().ToText(), StringComparison.Ordinal);
            }
        }
        Assert.Contains(sheet.Checks, check => check.Id == "bars.clearance" && check.Demand is not null);
    }

    /// <summary>
    /// A step of pressure moves a mass on a spring twice as far as it would steadily (Biggs, Introduction to Structural Dynamics, 2.3): here
    /// a thin bar with its strip of limp skin.
    /// </summary>
    [Fact]
    public void A_strip_of_skin_comes_nearer_in_a_shock_by_itself()
    {
        var step = new PressurePulse { Name = "step", Shape = new TrianglePulse(), Peak = 1.Kilopascals, Duration = Duration.FromSeconds(200), Heading = 0.Degrees };
        SmallStatue thin = SmallStatue.Good.With(s => s with { Limbs = [], Points = [], Standoffs = [.. s.Standoffs.Select(r => ((EvenRing)r) with { Standoff = SmallStatue.Flat with { Clearance = 500.Millimeters } })] });
        StatueModel model = StatueModel.Build(thin.Statue);
        var situation = new Situation { Name = "struck", Actions = [new SelfWeight(), step] };
        SituationDemands demands = SituationDemands.Of([model], situation, DampingModel.OfRatio(0.01)), rest = SituationDemands.Of([model], new Situation { Name = "rest", Actions = [new SelfWeight()] }, DampingModel.OfRatio(0.01));
        double[] forces = new double[12], tip = new double[6];
        int governed = 0;
        for (int ring = 0; ring < model.Rings.Count; ring++)
        {
            (RingElement element, int number) = model.Rings[ring];
            (BodyModel body, int index) = model.BandAt(number);
            foreach (BarModel bar in element.Bars)
            {
                double width = body.Bands[index].ProjectedWidth(bar.Strip, step.Direction);
                Assert.True(bar.Bar.Cantilever(1000 * width * bar.Share.Height * step.Direction, forces, tip));
                double steady = Math.Abs(bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward).Dot(new Vector3D(tip[0], tip[1], tip[2])));
                double before = Most(rest, ring, bar), moved = Most(demands, ring, bar) - before, band = demands.Shock!.Bars.Single(b => b.Where == bar.Where).Movement.Value.Meters;
                Assert.True(Math.Abs(Math.Max(band, 2 * steady) - moved) < 0.005 * moved, $"{bar.Where}: {moved}, band {band}, alone {2 * steady}");
                governed += 2 * steady > band ? 1 : 0;
            }
        }
        Assert.True(governed > 3);

        static double Most(SituationDemands of, int ring, BarModel bar)
        {
            double most = 0;
            of.Approaches(ring, (other, towards, _) => most = other == bar ? Math.Max(most, towards) : most);
            return most;
        }
    }

    /// <summary>In one mode: what the band does against its level at the skin end, or more under limp skin.</summary>
    [Fact]
    public void The_peak_in_a_mode_is_the_motion_of_the_band_at_the_skin_end()
    {
        const double amplitude = 0.02;
        StatueModel model = StatueModel.Build(SmallStatue.Good.Statue);
        ModalResponse modes = model.Modes(4);
        for (int k = 0; k < 4; k++)
        {
            var peaks = new DynamicPeaks(model, new ModeShape(model, modes.Set, k), CovariancePeaks.OfAmplitude(amplitude));
            foreach ((RingElement ring, int band) in model.Rings)
            {
                (BodyModel body, int index) = model.BandAt(band);
                Place level = body.Levels[body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..])];
                double[] found = peaks.Bars.Approaches(ring, band);
                foreach (BarModel bar in ring.Bars)
                {
                    Vector3D at = bar.Bar.Place.SkinEnd;
                    Vector3D relative = model.Motion(modes.Set.Shape(k), body.BandPlaces[index], at).Displacement - model.Motion(modes.Set.Shape(k), level, at).Displacement;
                    double asRing = Math.Abs(amplitude * relative.Dot(bar.Bar.Place.Outward));
                    Assert.True(found[bar.Index] >= asRing * (1 - 1e-9), $"{found[bar.Index]} below {asRing}");
                }
            }
        }
    }
}
