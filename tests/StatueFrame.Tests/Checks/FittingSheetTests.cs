using StatueFrame.Analysis;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

/// <summary>What holds fittings, and what they do to the level they hang on.</summary>
public class FittingSheetTests
{
    private static readonly FittingFixing four = new() { Bolt = new Bolt { Diameter = 12.Millimeters, Grade = BoltGrade.Class88 }, Count = 4, Lever = 200.Millimeters, Reach = 300.Millimeters };

    private static readonly Fitting lamp = new() { Name = "lamp", On = "mid", Mass = 400.Kilograms, At = new Point3(0.Meters, 0.8.Meters, 3.Meters), Fixing = four, WindArea = 0.5.SquareMeters };

    private static CheckSheet Sheet(Fitting fitting, params ReadOnlySpan<Situation> situations)
    {
        SmallStatue whole = SmallWhole.Of();
        return (whole.Statue with { Fittings = [fitting] }).Check(whole.Criteria, situations.IsEmpty ? whole.Situations : situations);
    }

    private static Check Fixing(CheckSheet sheet) => Assert.Single(sheet.Checks, check => check.Id == "fittings.fixing");

    /// <summary>Weight alone: 1.35·400·g on four M12 8.8 with A_s 84.3 mm², half of which pull over 200 mm.</summary>
    [Fact]
    public void Bolts_under_weight_by_hand()
    {
        double V = 1.35 * 400 * 9.80665, T = 2 * V * 0.3 / (4 * 0.2), A = Math.PI / 4 * Math.Pow(12 - 0.9382 * 1.75, 2) * 1e-6;
        double tension = 0.9 * 800e6 * A / 1.25, shear = 0.6 * 800e6 * A / 1.25;
        Check check = Fixing(Sheet(lamp, new Situation { Name = "weight", Actions = [1.35 * new SelfWeight()] }));
        Assert.Equal(Math.Max(T / tension, V / 4 / shear + T / (1.4 * tension)), check.Utilization!.Value, 1e-9);
    }

    [Fact]
    public void More_mass_reach_wind_and_fewer_bolts_never_help()
    {
        double use = Fixing(Sheet(lamp)).Utilization!.Value;
        Assert.True(Fixing(Sheet(lamp with { Mass = 800.Kilograms })).Utilization > use);
        Assert.True(Fixing(Sheet(lamp with { Fixing = four with { Reach = 500.Millimeters } })).Utilization > use);
        Assert.True(Fixing(Sheet(lamp with { Fixing = four with { Lever = 100.Millimeters } })).Utilization > use);
        Assert.True(Fixing(Sheet(lamp with { Fixing = four with { Count = 2 } })).Utilization > use);
        Assert.True(Fixing(Sheet(lamp with { WindArea = 2.SquareMeters })).Utilization > use);
    }

    /// <summary>Wind on a fitting is in all that carries it: on the base it is q_p·C_f·A at its height, in every heading and gust factor.</summary>
    [Fact]
    public void Wind_on_a_fitting_goes_down_to_the_base()
    {
        SmallStatue whole = SmallWhole.Of();
        Situation storm = whole.Situations.First(situation => situation.Wind is not null);
        Response Of(Area? area, Situation situation) => StatueModel.Build(whole.Statue with { Fittings = [lamp with { WindArea = area }] }).Respond(situation);
        (Response without, Response with) = (Of(null, storm), Of(3.SquareMeters, storm));
        var wind = (WindAction)storm.Wind!.Action;
        double height = whole.Statue.BaseAboveGround.Meters + lamp.At!.Value.Z.Meters, force = storm.Wind.Factor * wind.GustFactorInUse * 3 * wind.Profile.PeakPressure(height.Meters).Pascals;
        foreach ((LoadCase a, LoadCase b) in without.Cases.Zip(with.Cases))
        {
            double angle = a.Heading!.Value.Radians;
            Assert.Equal(force * Math.Cos(angle), b.Base.ForceX.Newtons - a.Base.ForceX.Newtons, 1e-6 * force);
            Assert.Equal(force * Math.Sin(angle), b.Base.ForceY.Newtons - a.Base.ForceY.Newtons, 1e-6 * force);
            Assert.Equal(force * Math.Cos(angle) * lamp.At.Value.Z.Meters, b.Base.MomentY.NewtonMeters - a.Base.MomentY.NewtonMeters, 1e-5 * force);
        }
        // Where bands have gust factors of their own, what no skin covers gets the greatest of them.
        int bands = StatueModel.Build(whole.Statue).BandCount;
        Situation byBand = storm with { Actions = [.. storm.Actions.Select(action => action.Action is WindAction w ? action with { Action = w with { GustByBand = [.. Enumerable.Repeat(1.0, bands - 1), 2 * wind.GustFactorInUse] } } : action)] };
        Assert.Equal(2 * force, Of(3.SquareMeters, byBand).Cases[0].WindForce.Newtons - Of(null, byBand).Cases[0].WindForce.Newtons, 1e-6 * force);
    }

    /// <summary>A shake adds at least what a rigid statue would: the ground's own acceleration in an earthquake.</summary>
    [Fact]
    public void An_earthquake_shakes_what_hangs_on_the_statue()
    {
        var rest = new Situation { Name = "rest", Actions = [new SelfWeight()] };
        SmallStatue whole = SmallWhole.Of();
        var quake = new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B, BehaviorFactor = 1 } };
        StatueModel model = StatueModel.Build(whole.Statue with { Fittings = [lamp] });
        (double across, _) = SituationDemands.Of([model], rest with { Actions = [new SelfWeight(), quake] }, DampingModel.OfRatio(0.02)).AccelerationsAt(model, 0, lamp.At!.Value.Meters);
        Assert.InRange(across, 2, 20);
    }

    /// <summary>
    /// The greatest acceleration of a fitting in a shock against second differences of the displacement of a point at its place.
    /// </summary>
    [Fact]
    public void A_shock_shakes_a_fitting_as_a_point_beside_it()
    {
        SmallStatue whole = SmallWhole.Of();
        Statue statue = whole.Statue with { Fittings = [lamp with { On = "top", At = null }], Points = [new NamedPoint("there", "top")] };
        StatueModel model = StatueModel.Build(statue);
        var bang = new Situation { Name = "bang", Actions = [new SelfWeight(), new PressurePulse { Name = "wave", Shape = new HalfSinePulse(), Peak = 2.Kilopascals, Duration = 0.06.Seconds }] };
        ShockResponse shock = ShockResponse.Of(model, bang, DampingModel.OfRatio(0.02), new ShockOptions { KeepsHistory = true });
        ShockHistory history = shock.History!;
        double h = shock.Step.Seconds, most = 0;
        for (int i = 2; i < history.TimesInSeconds.Count - 1; i++)
        {
            (double X, double Y, double Z) before = history.Of("there", i - 1), now = history.Of("there", i), after = history.Of("there", i + 1);
            most = Math.Max(most, double.Hypot(after.X - 2 * now.X + before.X, after.Y - 2 * now.Y + before.Y) / (h * h));
        }
        Assert.InRange(shock.Fittings![0].Across, 0.9 * most, 1.3 * most);
    }

    /// <summary>A pulse pushes what holds a fitting by its wind area, 2 kPa on 3 m², beside what shakes it; one on named bands spares it.</summary>
    [Fact]
    public void A_pulse_pushes_what_holds_a_fitting()
    {
        Assert.Equal("6 kN", Pushed([]));
        Assert.Equal("0 kN", Pushed(["band 1"]));

        static string Pushed(ValueList<string> bands)
        {
            var bang = new Situation { Name = "bang", Actions = [new SelfWeight(), new PressurePulse { Name = "wave", Shape = new HalfSinePulse(), Peak = 2.Kilopascals, Duration = 0.06.Seconds, Bands = bands }] };
            string line = Fixing(Sheet(lamp with { WindArea = 3.SquareMeters }, bang)).Working().ToText().Split('\n').Single(l => l.Contains("pressure pulses on it", StringComparison.Ordinal));
            return line.Split('=')[1].Split("wind")[0].Trim();
        }
    }

    [Fact]
    public void A_heavy_fitting_bends_the_horizontal_it_hangs_on()
    {
        double Bent(double kg)
        {
            SmallStatue whole = SmallWhole.Of();
            Statue statue = whole.Statue with
            {
                Fittings = [lamp with { Mass = kg.Kilograms }],
                Tower = whole.Statue.Tower with { Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Name == "mid" ? level with { Frame = new LevelFrame { Horizontals = new RectangularTube(120.Millimeters, 120.Millimeters, 8.Millimeters), PlanBracing = new AngleBar(60.Millimeters, 6.Millimeters), Material = StructuralSteel.S355 } } : level)] },
            };
            return statue.Check(whole.Criteria, whole.Situations).Checks.Where(check => check.Id == "levels.bending" && check.Where.StartsWith("mid", StringComparison.Ordinal)).Max(check => check.Utilization)!.Value;
        }
        Assert.True(Bent(4000) > Bent(400) + 0.05);
    }

    [Fact]
    public void A_fitting_is_open_until_its_fixing_is_described()
    {
        Assert.Contains(Sheet(lamp with { Fixing = null }).OpenLinks, link => link.Link == "fittings");
        Assert.DoesNotContain(Sheet(lamp).OpenLinks, link => link.Link == "fittings");
        Assert.Contains(Sheet(lamp with { On = "band 1", At = null }).OpenLinks, link => link.What.Contains("lamp does to band 1", StringComparison.Ordinal));
        SmallStatue whole = SmallWhole.Of();
        Assert.Equal("Fittings[0].Fixing.Count", Assert.Single((whole.Statue with { Fittings = [lamp with { Fixing = four with { Count = 1 } }] }).FindProblems()).Path);
    }
}
