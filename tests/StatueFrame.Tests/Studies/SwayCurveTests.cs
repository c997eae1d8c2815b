using System.Globalization;
using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Studies;

public class SwayCurveTests
{
    private static readonly SwayCurveOptions options = new()
    {
        AnemometerHeight = 10.Meters,
        Limits = new Criteria { Sway = [new SwayLimit("tip", 20.Millimeters)], BarStressFraction = 0.5 },
    };

    /// <summary>Below this part of the design speed the profile is refused in an analysis of its own.</summary>
    private const double LeastRatio = 5 / 25.0;

    private static readonly SwayCurve curve = SwayCurve.Of(Figures.Model, Figures.Wind, options);

    private static SwayCurve Of(SwayCurveOptions chosen) => SwayCurve.Of(Figures.Model, Figures.Wind, chosen);

    private static double YieldFraction(Response response) =>
        response.Bars.Max(b => b.Stress.Pascals / b.Standoff.Material.YieldStrength.Pascals);

    private static double Ratio(Speed? speed, SwayCurve of) => speed!.Value.MetersPerSecond / of.DesignMeanSpeed.MetersPerSecond;

    private static void AssertRelative(double expected, double actual, double tolerance = 1e-9) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), $"expected {expected:R}, found {actual:R}");

    [Fact]
    public void Every_line_is_what_an_analysis_at_that_speed_gives()
    {
        foreach (SwayCurveRow line in curve.Rows.Where(r => Ratio(r.MeanSpeed, curve) > LeastRatio))
        {
            Response response = Figures.At(Figures.Model, Figures.Wind, Ratio(line.MeanSpeed, curve));
            Movement tip = response.GreatestSway("tip");
            AssertRelative(tip.Sway.Meters, line.At("tip").Gust.Meters);
            AssertRelative(response.OverturningGoverns.Base.Overturning.NewtonMeters, line.Overturning.NewtonMeters);
            AssertRelative(response.WorstBar!.Stress.Pascals, line.WorstBar!.Stress.Pascals);
            AssertRelative(YieldFraction(response), line.WorstBar.YieldFraction);
            AssertRelative(tip.Heading!.Value.Degrees, line.At("tip").Heading!.Value.Degrees);
        }
    }

    /// <summary>The drag of a bare mast follows the Reynolds number, so nothing scales with the square of the speed.</summary>
    [Fact]
    public void Every_line_is_what_an_analysis_gives_with_bare_tower_too()
    {
        Statue clad = Figures.Leaning;
        StatueModel bare = StatueModel.Build(clad with
        {
            Skin = clad.Skin! with { Stations = [.. clad.Skin.Stations.Select((s, i) => i == 0 ? s with { Elevation = 1.Meters } : s)], BandEdges = [1.Meters, 3.Meters, 5.Meters, 8.Meters] },
        });
        SwayCurve of = SwayCurve.Of(bare, Figures.Wind, options);
        foreach (SwayCurveRow line in of.Rows.Where(r => Ratio(r.MeanSpeed, of) > LeastRatio))
            AssertRelative(Figures.At(bare, Figures.Wind, Ratio(line.MeanSpeed, of)).GreatestSway("tip").Sway.Meters, line.At("tip").Gust.Meters);
    }

    [Fact]
    public void Calm_is_the_statue_at_rest()
    {
        LoadCase rest = Figures.Model.Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] }).Cases[0];
        SwayCurveRow calm = curve.Rows[0];
        Assert.Equal(0, calm.MeanSpeed.MetersPerSecond);
        Assert.True(calm.At("tip").Gust.Millimeters > 0.5, $"{calm.At("tip").Gust}");
        AssertRelative(rest.Of("tip").Sway.Meters, calm.At("tip").Gust.Meters);
        AssertRelative(rest.Of("tip").Sway.Meters, calm.At("tip").Mean.Meters);
        AssertRelative(rest.Base.Overturning.NewtonMeters, calm.Overturning.NewtonMeters);
        Assert.Null(calm.At("tip").Heading);
        Assert.Null(calm.OverturningHeading);
        Assert.Null(calm.WorstBar!.Heading);
    }

    [Fact]
    public void Without_weight_all_grows_with_the_square_of_the_speed()
    {
        SwayCurve wind = Of(options with { Calm = [0 * new SelfWeight()] });
        SwayCurveRow design = wind.Rows[^1];
        Gen.Double[0.01, 1].Sample(ratio =>
        {
            SwayCurveRow row = wind.At(ratio * wind.DesignMeanSpeed);
            double square = ratio * ratio;
            AssertRelative(square * design.At("tip").Mean.Meters, row.At("tip").Mean.Meters);
            AssertRelative(square * design.At("tip").Gust.Meters, row.At("tip").Gust.Meters);
            AssertRelative(square * design.Overturning.NewtonMeters, row.Overturning.NewtonMeters);
            AssertRelative(square * design.WorstBar!.Stress.Pascals, row.WorstBar!.Stress.Pascals);
            AssertRelative(ratio * wind.DesignGustSpeed.MetersPerSecond, row.GustSpeed.MetersPerSecond);
        }, iter: 10);
    }

    [Fact]
    public void Gust_over_mean_is_the_gust_factor_of_the_profile_times_that_of_the_action()
    {
        var uniform = new PowerLawWind
        {
            SpeedIs = WindSpeedBasis.MeanSpeed,
            ReferenceSpeed = 30.MetersPerSecond,
            ReferenceHeight = 10.Meters,
            Exponent = 0,
            TurbulenceIntensityAtReference = 0.2,
            PeakFactor = 3,
        };
        SwayCurve wind = SwayCurve.Of(Figures.Model, Figures.Wind with { Profile = uniform }, options with { Calm = [0 * new SelfWeight()] });
        AssertRelative(1.1 * (1 + 2 * 3 * 0.2), wind.Rows[^1].At("tip").Gust / wind.Rows[^1].At("tip").Mean);
        AssertRelative(30, wind.DesignMeanSpeed.MetersPerSecond);
        AssertRelative(30 * Math.Sqrt(2.2), wind.DesignGustSpeed.MetersPerSecond);
    }

    [Fact]
    public void An_analysis_at_the_speed_of_a_limit_meets_the_limit()
    {
        Assert.All(curve.Limits, l => Assert.Equal(LimitReach.Reached, l.Reach));
        Response atSway = Figures.At(Figures.Model, Figures.Wind, Ratio(curve.Limits[0].MeanSpeed, curve));
        AssertRelative(0.020, atSway.GreatestSway("tip").Sway.Meters);
        AssertRelative(curve.Limits[0].Heading!.Value.Degrees, atSway.GreatestSway("tip").Heading!.Value.Degrees);
        Response atStress = Figures.At(Figures.Model, Figures.Wind, Ratio(curve.Limits[1].MeanSpeed, curve));
        AssertRelative(0.5, YieldFraction(atStress));
        AssertRelative(curve.Limits[0].MeanSpeed!.Value / curve.Limits[0].GustSpeed!.Value, curve.DesignMeanSpeed / curve.DesignGustSpeed);
    }

    [Fact]
    public void Any_limit_between_calm_and_design_is_met_where_the_curve_meets_it() =>
        Gen.Double[0.02, 0.98].Sample(part =>
        {
            Length calm = curve.Rows[0].At("tip").Gust, design = curve.Rows[^1].At("tip").Gust, limit = calm + part * (design - calm);
            SwayCurve limited = Of(options with { Limits = new Criteria { Sway = [new SwayLimit("tip", limit)] } });
            AssertRelative(limit.Meters, limited.At(limited.Limits[0].MeanSpeed!.Value).At("tip").Gust.Meters);
        }, iter: 5);

    [Fact]
    public void A_limit_that_is_not_met_says_so()
    {
        Length calm = curve.Rows[0].At("tip").Gust, design = curve.Rows[^1].At("tip").Gust;
        SwayCurve limited = Of(options with
        {
            Limits = new Criteria { Sway = [new SwayLimit("tip", 0.9 * calm), new SwayLimit("tip", 1.001 * design)] },
            AccelerationLimits = [new AccelerationLimit("tip", Acceleration.FromMetersPerSecondSquared(0.1))],
        });
        Assert.Equal(
            [LimitReach.ExceededInCalm, LimitReach.NotReached, LimitReach.Reached, LimitReach.NotKnown], limited.Limits.Select(l => l.Reach));
        Assert.All(limited.Limits.Where(l => l.Reach != LimitReach.Reached), l => Assert.Null(l.MeanSpeed));
        string print = limited.Print();
        Assert.Contains("EXCEEDED IN CALM", print);
        Assert.Contains("not reached up to the design speed", print);
        Assert.Contains("NOT KNOWN", print);
        Assert.Contains("allowable stress", print);
    }

    [Fact]
    public void Stronger_wind_never_lessens_what_is_worst_of_all_round() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((a, b) =>
        {
            SwayCurveRow low = curve.At(Math.Min(a, b) * curve.DesignMeanSpeed), high = curve.At(Math.Max(a, b) * curve.DesignMeanSpeed);
            Assert.True(low.At("tip").Gust.Meters <= high.At("tip").Gust.Meters * (1 + 1e-12));
            Assert.True(low.At("tip").Mean.Meters <= high.At("tip").Mean.Meters * (1 + 1e-12));
            Assert.True(low.Overturning.NewtonMeters <= high.Overturning.NewtonMeters * (1 + 1e-12));
            Assert.True(low.WorstBar!.Stress.Pascals <= high.WorstBar!.Stress.Pascals * (1 + 1e-12));
            Assert.True(high.At("tip").Mean <= high.At("tip").Gust);
        }, iter: 30);

    [Fact]
    public void A_chosen_heading_is_the_only_one_looked_at()
    {
        SwayCurve one = Of(options with { Heading = 90.Degrees });
        LoadCase loadCase = Figures.Model.Respond(new Situation
        {
            Name = "wind",
            Actions = [new SelfWeight(), Figures.Wind with { Headings = [90.Degrees] }],
        }).Cases[0];
        AssertRelative(loadCase.Of("tip").Sway.Meters, one.Rows[^1].At("tip").Gust.Meters);
        Assert.Equal(90, one.Rows[^1].At("tip").Heading!.Value.Degrees, 1e-12);
        Assert.Contains("wind towards 90°", one.Print());
    }

    [Fact]
    public void Tension_only_bracing_is_solved_anew_at_each_speed()
    {
        StatueModel model = StatueModel.Build(Figures.OnTensionOnlyLattice);
        WindAction wind = Figures.Wind with { Headings = [0.Degrees, 45.Degrees] };
        SwayCurve lattice = SwayCurve.Of(model, wind, options with
        {
            MeanSpeeds = [0.MetersPerSecond, 10.MetersPerSecond, 20.MetersPerSecond],
            Limits = new Criteria { Sway = [new SwayLimit("tip", 1.5.Millimeters)] },
        });
        foreach (SwayCurveRow row in lattice.Rows.Skip(1))
        {
            Response response = Figures.At(model, wind, Ratio(row.MeanSpeed, lattice));
            AssertRelative(response.GreatestSway("tip").Sway.Meters, row.At("tip").Gust.Meters);
            AssertRelative(response.WorstBar!.Stress.Pascals, row.WorstBar!.Stress.Pascals);
        }
        Assert.Equal(LimitReach.Reached, lattice.Limits[0].Reach);
        AssertRelative(0.0015, Figures.At(model, wind, Ratio(lattice.Limits[0].MeanSpeed, lattice)).GreatestSway("tip").Sway.Meters);
    }

    /// <summary>Accelerations that grow with the cube of the speed, and a gust factor.</summary>
    private sealed class Vibration(double gustFactor, double peakAt25) : ISwayDynamics
    {
        public string Title => "a made-up method";

        public SwayDynamics At(WindAction wind, Angle heading)
        {
            var v = new Validator();
            wind.Validate(v);
            Assert.Empty(v.Problems);
            double r = ((En1991Wind)wind.Profile).FundamentalVelocity.MetersPerSecond / 25;
            double peak = peakAt25 * r * r * r * (1 + 0.2 * Math.Cos(heading.Radians));
            return new SwayDynamics
            {
                GustFactor = gustFactor,
                Points = [new("tip", Acceleration.FromMetersPerSecondSquared(peak / 3.5), Acceleration.FromMetersPerSecondSquared(peak))],
            };
        }
    }

    [Fact]
    public void Dynamics_bring_their_gust_factor_and_accelerations()
    {
        SwayCurve dynamic = Of(options with
        {
            Dynamics = new Vibration(1.4, 0.5),
            AccelerationLimits = [new AccelerationLimit("tip", Acceleration.FromMetersPerSecondSquared(0.3)), new AccelerationLimit("belt", Acceleration.FromMetersPerSecondSquared(0.3))],
        });
        SwayCurve factored = SwayCurve.Of(Figures.Model, Figures.Wind with { GustEffectFactor = 1.4 }, options);
        foreach ((SwayCurveRow a, SwayCurveRow b) in dynamic.Rows.Zip(factored.Rows))
        {
            AssertRelative(b.At("tip").Gust.Meters, a.At("tip").Gust.Meters);
            AssertRelative(b.At("tip").Mean.Meters, a.At("tip").Mean.Meters);
            AssertRelative(b.WorstBar!.Stress.Pascals, a.WorstBar!.Stress.Pascals);
        }
        AssertRelative(0.6, dynamic.Rows[^1].At("tip").Acceleration!.Peak.MetersPerSecondSquared);
        Assert.Equal(0, dynamic.Rows[0].At("tip").Acceleration!.Peak.MetersPerSecondSquared);
        Assert.Null(dynamic.Rows[^1].At("belt").Acceleration);
        AssertRelative(Math.Cbrt(0.5), Ratio(dynamic.Limits[2].MeanSpeed, dynamic));
        Assert.Equal(0, dynamic.Limits[2].Heading!.Value.Degrees);
        Assert.Equal(LimitReach.NotKnown, dynamic.Limits[3].Reach);
        Assert.Contains("a made-up method", dynamic.Print());
    }

    [Fact]
    public void Dynamics_that_cannot_be_are_refused()
    {
        Assert.Throws<InvalidOperationException>(() => Of(options with { Dynamics = new Vibration(-1, 0.5) }));
        Assert.Throws<InvalidOperationException>(() => Of(options with { Dynamics = new Vibration(1, -0.5) }));
    }

    [Fact]
    public void A_curve_prints_well() => SnapshotText.Match(curve.Print());

    [Fact]
    public void A_curve_prints_in_customary_units() => SnapshotText.Match(Of(options with
    {
        AnemometerHeight = 33.Feet,
        MeanSpeeds = [.. Enumerable.Range(0, 6).Select(i => (10 * i).MilesPerHour)],
        Dynamics = new Vibration(1.2, 0.5),
    }).Print(DisplayUnits.UsCustomary));

    [Fact]
    public void Every_line_fits_and_the_caution_is_printed()
    {
        Statue many = Figures.Leaning with { Points = [.. Enumerable.Range(1, 7).Select(i => new NamedPoint($"point with a long name {i}", "band 3"))] };
        string print = SwayCurve.Of(StatueModel.Build(many), Figures.Wind, new SwayCurveOptions { AnemometerHeight = 10.Meters }).Print();
        Assert.All(print.Split('\n'), line => Assert.True(line.Length <= 110, line));
        Assert.Contains("licensed engineer", print);
        Assert.Contains("no limit was given", print);
    }

    [Fact]
    public void Comma_separated_values_read_back_as_the_lines()
    {
        string[][] csv = Figures.Parse(curve.ToCsv());
        Assert.Equal(curve.Rows.Count + 1, csv.Length);
        Assert.All(csv, line => Assert.Equal(csv[0].Length, line.Length));
        int gust = Array.IndexOf(csv[0], "sway at tip, gust [mm]"), speed = Array.IndexOf(csv[0], "wind, mean [m/s]");
        for (int i = 0; i < curve.Rows.Count; i++)
        {
            AssertRelative(curve.Rows[i].At("tip").Gust.Millimeters, double.Parse(csv[i + 1][gust], CultureInfo.InvariantCulture));
            AssertRelative(curve.Rows[i].MeanSpeed.MetersPerSecond, double.Parse(csv[i + 1][speed], CultureInfo.InvariantCulture));
        }
        Assert.StartsWith("band ", csv[^1][^1]);
        string[][] us = Figures.Parse(curve.ToCsv(DisplayUnits.UsCustomary));
        AssertRelative(curve.Rows[^1].At("tip").Gust.Inches, double.Parse(us[^1][gust], CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Warns_of_what_an_American_design_speed_contains()
    {
        var profile = new AsceWind
        {
            Edition = AsceEdition.Asce7_22,
            Exposure = AsceExposure.C,
            BasicSpeed = 50.MetersPerSecond,
            DirectionalityFactor = 0.9,
        };
        SwayCurve american = SwayCurve.Of(Figures.Model, Figures.Wind with { Profile = profile, GustEffectFactor = null }, options);
        Assert.Contains(american.Warnings, w => w.Contains("directionality factor 0.90", StringComparison.Ordinal));
        Assert.Contains(american.Assumptions, a => a.Subject == "gust factor");
    }

    [Fact]
    public void Warns_of_a_stress_limit_that_is_for_factored_actions()
    {
        bool Warns(double? fraction) => Of(options with { MeanSpeeds = [0.MetersPerSecond], Limits = new Criteria { BarStressFraction = fraction } })
            .Warnings.Any(w => w.Contains("without load factors", StringComparison.Ordinal));
        Assert.True(Warns(1 / 1.1));
        Assert.False(Warns(0.6));
        Assert.False(Warns(null));
    }

    [Fact]
    public void Bad_inputs_are_all_listed()
    {
        InvalidStatueException e = Assert.Throws<InvalidStatueException>(() => SwayCurve.Of(
            Figures.Model, Figures.Wind with { GustEffectFactor = 50 }, new SwayCurveOptions
            {
                AnemometerHeight = 10_000.Meters,
                Heading = 7000.Degrees,
                MeanSpeeds = [(-1).MetersPerSecond, 3.MetersPerSecond, 3.MetersPerSecond],
                Limits = new Criteria { Sway = [new SwayLimit("tap", 1.Millimeters)] },
                AccelerationLimits = [new AccelerationLimit("tap", Acceleration.FromMetersPerSecondSquared(-1))],
                Calm = [Figures.Wind],
            }));
        Assert.Equal(
            [
                "Wind.GustEffectFactor", "Options.AnemometerHeight", "Options.Heading", "Options.Limits.Sway[0].Point",
                "Options.AccelerationLimits[0].Limit", "Options.AccelerationLimits[0].Point", "Options.Calm", "Options.MeanSpeeds[0]", "Options.MeanSpeeds[2]",
            ], e.Problems.Select(p => p.Path));
        Assert.Throws<InvalidStatueException>(() => Of(options with { MeanSpeeds = [90.MetersPerSecond] }));
        Assert.Throws<InvalidStatueException>(() => Of(options with { MeanSpeeds = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At(90.MetersPerSecond));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.At((-1).MetersPerSecond));
        Assert.Throws<ArgumentException>(() => curve.Rows[0].At("tap"));
    }
}
