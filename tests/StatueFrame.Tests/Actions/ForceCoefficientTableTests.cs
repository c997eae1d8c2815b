using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Tests.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Actions;

public class ForceCoefficientTableTests
{
    private static readonly ForceCoefficientTable tunnel = new()
    {
        Source = new Source("wind-tunnel test of an invented figure", "Table 3"),
        Rows = [Row(10, 1.2, 0.1), Row(100, 0.8, -0.3), Row(190, 1.4, 0), Row(280, 1.0, 0.5)],
    };

    private static ForceCoefficientRow Row(double degrees, double along, double? across = null) => new(degrees.Degrees, along, across);

    private static (double Along, double Across) At(ForceCoefficientTable table, double degrees) => table.At(degrees.Degrees);

    [Fact]
    public void Gives_its_rows_and_straight_lines_between_and_across_the_seam()
    {
        foreach (ForceCoefficientRow row in tunnel.Rows)
        {
            Assert.Equal(row.Along, At(tunnel, row.Heading.Degrees).Along, 1e-12);
            Assert.Equal(row.Across!.Value, At(tunnel, row.Heading.Degrees).Across, 1e-12);
        }
        Assert.Equal(1.0, At(tunnel, 55).Along, 1e-12);
        Assert.Equal(-0.1, At(tunnel, 55).Across, 1e-12);
        Assert.Equal(1.1, At(tunnel, 325).Along, 1e-12);
        Assert.Equal(0.3, At(tunnel, -35).Across, 1e-12);
        Assert.Equal(1.2 - 0.2 * 10 / 90, At(tunnel, 0).Along, 1e-12);
    }

    [Fact]
    public void Repeats_every_turn_stays_between_its_rows_and_has_no_jump() =>
        Gen.Double[-720, 720].Sample(heading =>
        {
            (double along, double across) = At(tunnel, heading);
            Assert.InRange(along, 0.8, 1.4);
            Assert.InRange(across, -0.3, 0.5);
            Assert.Equal(along, At(tunnel, heading + 360).Along, 1e-9);
            Assert.Equal(along, At(tunnel, heading + 1e-6).Along, 1e-7);
            Assert.Equal(across, At(tunnel, heading - 1e-6).Across, 1e-7);
        }, iter: 500);

    [Fact]
    public void Turning_the_table_turns_its_values() =>
        Gen.Select(Gen.Double[-100, 100], Gen.Double[0, 360]).Sample((turn, heading) =>
        {
            ForceCoefficientTable turned = tunnel with { Rows = tunnel.Rows.Select(r => r with { Heading = (r.Heading.Degrees + turn).Degrees }).ToValueList() };
            Assert.Equal(At(tunnel, heading).Along, At(turned, heading + turn).Along, 1e-9);
        }, iter: 200);

    [Fact]
    public void A_table_of_equal_values_is_one_coefficient()
    {
        WindAction table = Figures.Wind with
        {
            ForceCoefficient = null,
            HeadingCoefficients = tunnel with { Rows = [Row(0, 1.2), Row(120, 1.2), Row(200, 1.2)] },
        };
        Response one = Figures.At(Figures.Model, Figures.Wind, 1), many = Figures.At(Figures.Model, table, 1);
        foreach ((LoadCase a, LoadCase b) in one.Cases.Zip(many.Cases))
        {
            Assert.Equal(a.Of("tip").Sway.Meters, b.Of("tip").Sway.Meters, 1e-12);
            Assert.Equal(a.Base.Overturning.NewtonMeters, b.Base.Overturning.NewtonMeters, 1e-6);
        }
        Assert.Equal(one.WorstBar!.Stress.Pascals, many.WorstBar!.Stress.Pascals, 1e-3);
    }

    [Fact]
    public void Force_follows_the_heading_and_the_part_across_points_to_the_left()
    {
        WindAction wind = Figures.Wind with { ForceCoefficient = null, HeadingCoefficients = tunnel };
        Response plain = Figures.At(Figures.Model, Figures.Wind, 1), tested = Figures.At(Figures.Model, wind, 1);
        for (int i = 0; i < plain.Cases.Count; i++)
        {
            Angle heading = plain.Cases[i].Heading!.Value;
            (double along, double across) = tunnel.At(heading);
            double drag = plain.Cases[i].WindForce.Newtons / 1.2;
            (double x, double y) = (tested.Cases[i].Base.ForceX.Newtons, tested.Cases[i].Base.ForceY.Newtons);
            (double c, double s) = (Math.Cos(heading.Radians), Math.Sin(heading.Radians));
            Assert.Equal(along * drag, c * x + s * y, 1e-6 * drag);
            Assert.Equal(across * drag, -s * x + c * y, 1e-6 * drag);
        }
    }

    [Fact]
    public void Limp_skin_hands_its_bar_the_part_across_as_well()
    {
        WindAction across = Figures.Wind with
        {
            ForceCoefficient = null,
            Headings = [0.Degrees],
            HeadingCoefficients = tunnel with { Rows = [Row(0, 0.05, 3), Row(180, 0.05, 3)] },
        };
        WindAction along = across with { HeadingCoefficients = tunnel with { Rows = [Row(0, 0.05, 0), Row(180, 0.05, 0)] } };
        double lifted = Limp(across), plain = Limp(along);
        Assert.True(lifted > 5 * plain, $"{lifted} and {plain}");

        static double Limp(WindAction wind)
        {
            LoadCase loadCase = Figures.At(Figures.Model, wind, 1).Cases[0];
            return Figures.Model.Rings.Max(r => r.Ring.Bars.Max(bar =>
            {
                Span<double> forces = stackalloc double[12];
                return loadCase.ForcesOf(r.Ring, bar, r.BandInStatue, SkinAssumption.LimpSkin, forces)
                    ? BarEnds.Of(forces).NormalStress(bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters) : 0;
            }));
        }
    }

    [Fact]
    public void A_skin_that_gives_its_own_coefficient_keeps_it()
    {
        Statue own = Figures.Leaning with { Skin = Figures.Leaning.Skin! with { ForceCoefficient = 1.2 } };
        Response tested = Figures.At(StatueModel.Build(own), Figures.Wind with { ForceCoefficient = null, HeadingCoefficients = tunnel }, 1);
        Assert.Equal(Figures.At(Figures.Model, Figures.Wind, 1).GreatestSway("tip").Sway.Meters, tested.GreatestSway("tip").Sway.Meters, 1e-12);
    }

    [Fact]
    public void Nothing_is_assumed_when_a_table_is_given()
    {
        Situation Of(WindAction wind) => new() { Name = "s", Actions = [wind] };
        bool Assumed(CheckSheet sheet) => sheet.Assumptions.Any(a => a.Subject.StartsWith("force coefficient", StringComparison.Ordinal));
        WindAction none = Figures.Wind with { ForceCoefficient = null };
        Assert.True(Assumed(Figures.Leaning.Check(new Criteria(), Of(none))));
        Assert.False(Assumed(Figures.Leaning.Check(new Criteria(), Of(none with { HeadingCoefficients = tunnel }))));
    }

    /// <summary>The same numbers by every road: for the figure, for its skin, for every band, on a fixed area and width.</summary>
    [Fact]
    public void A_table_is_the_same_wherever_it_is_given()
    {
        WindAction none = Figures.Wind with { ForceCoefficient = null, Headings = [55.Degrees] };
        ForceCoefficientTable all = tunnel with { Rows = [.. tunnel.Rows.Select((row, i) => row with { Up = 0.2 * i, Twist = 0.1 * i - 0.2 })] };
        Skin skin = Figures.Leaning.Skin! with { ForceCoefficient = null, BandForceCoefficients = [] };
        int bands = Figures.Model.BandCount;
        BandWindForce[] met = [.. Figures.At(Figures.Model, none with { HeadingCoefficients = all }, 1).Cases[0].BandWindForces()];
        Statue[] ways =
        [
            Figures.Leaning with { Skin = skin with { HeadingCoefficients = all } },
            Figures.Leaning with { Skin = skin with { ForceCoefficient = 3, BandHeadingCoefficients = [.. Enumerable.Range(1, bands).Select(i => new BandCoefficientTable(i, all))] } },
            Figures.Leaning with
            {
                Skin = skin with
                {
                    BandHeadingCoefficients = [.. Enumerable.Range(1, bands).Select(i => new BandCoefficientTable(i, OnTwice(all, met[i - 1].Area.SquareMeters, Width(i))))],
                },
            },
        ];
        Response first = Figures.At(Figures.Model, none with { HeadingCoefficients = all }, 1);
        foreach (Statue statue in ways)
        {
            Response other = Figures.At(StatueModel.Build(statue), none, 1);
            BaseReaction a = first.Cases[0].Base, b = other.Cases[0].Base;
            double size = a.Overturning.NewtonMeters;
            Assert.Equal(a.ForceX.Newtons, b.ForceX.Newtons, 1e-9 * size);
            Assert.Equal(a.ForceZ.Newtons, b.ForceZ.Newtons, 1e-9 * size);
            Assert.Equal(a.MomentX.NewtonMeters, b.MomentX.NewtonMeters, 1e-9 * size);
            Assert.Equal(a.MomentZ.NewtonMeters, b.MomentZ.NewtonMeters, 1e-9 * size);
        }

        double Width(int band) => Figures.Model.BandAt(band - 1).Body.Bands[Figures.Model.BandAt(band - 1).Band].MeetsWind(new Mechanics.Vector3D(Math.Cos(55.Degrees.Radians), Math.Sin(55.Degrees.Radians), 0), out double width) ? width : 0;

        static ForceCoefficientTable OnTwice(ForceCoefficientTable table, double area, double width) => table with
        {
            ReferenceArea = Area.FromSquareMeters(2 * area),
            ReferenceWidth = Length.FromMeters(2 * width),
            Rows = [.. table.Rows.Select(row => row with { Along = row.Along / 2, Across = row.Across / 2, Up = row.Up / 2, Twist = row.Twist / 4 })],
        };
    }

    /// <summary>Up and twist come down at the base, with the sign they are given with, and in the mean of gusts too.</summary>
    [Fact]
    public void Lift_and_twist_come_down_at_the_base()
    {
        WindAction none = Figures.Wind with { ForceCoefficient = null, Headings = [0.Degrees], HeadingCoefficients = tunnel with { Rows = [Row(0, 1), Row(180, 1)] } };
        WindAction six = none with { HeadingCoefficients = tunnel with { Rows = [new(0.Degrees, 1, null, 0.5, 0.3), new(180.Degrees, 1, null, 0.5, 0.3)] } };
        LoadCase plain = Figures.At(Figures.Model, none, 1).Cases[0], whole = Figures.At(Figures.Model, six, 1).Cases[0];
        double drag = plain.BandWindForces().Sum(band => band.Along.Newtons), twist = 0;
        foreach ((BandWindForce band, int i) in plain.BandWindForces().Select((band, i) => (band, i)))
            twist += 0.3 * band.Along.Newtons * Figures.Model.BandAt(i).Body.Bands[Figures.Model.BandAt(i).Band].ProjectedWidth(Mechanics.Vector3D.UnitX);
        Assert.Equal(0.5 * drag, whole.Base.ForceZ.Newtons - plain.Base.ForceZ.Newtons, 1e-6 * drag);
        Assert.Equal(twist, whole.Base.MomentZ.NewtonMeters - plain.Base.MomentZ.NewtonMeters, 1e-6 * drag);

        GustResponse before = Gusts(none), after = Gusts(six);
        Assert.Equal(twist / drag, (after.BaseTwist.Mean.NewtonMeters - before.BaseTwist.Mean.NewtonMeters) / before.BaseShear.Mean.Newtons, 0.02 * twist / drag);

        static GustResponse Gusts(WindAction wind) => GustResponse.Of(Figures.Model, Figures.Model.Modes(6), wind, 0.Degrees, DampingModel.OfRatio(0.01));
    }

    /// <summary>A force against the wind, in the lee of another part, is no error.</summary>
    [Fact]
    public void A_band_may_be_drawn_against_the_wind()
    {
        WindAction wind = Figures.Wind with { ForceCoefficient = null, HeadingCoefficients = tunnel with { Rows = [Row(0, -0.3), Row(90, 0.5), Row(180, -0.3)] } };
        CheckSheet sheet = Figures.Leaning.Check(new Criteria(), new Situation { Name = "s", Actions = [new SelfWeight(), wind] });
        Assert.All(sheet.Checks, check => Assert.False(check.Demand is { } demand && !double.IsFinite(demand), check.ToString()));
        Assert.True(Figures.At(Figures.Model, wind, 1).Cases[0].BandWindForces()[0].Along.Newtons < 0);
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        AssertProblem(tunnel with { Rows = [Row(0, 1)] }, "Rows");
        AssertProblem(tunnel with { Rows = [Row(0, 1), Row(0, 1.1)] }, "Rows[1].Heading");
        AssertProblem(tunnel with { Rows = [Row(0, 1), Row(180, 1.1), Row(360, 1)] }, "Rows[2].Heading");
        AssertProblem(tunnel with { Rows = [Row(0, 12), Row(90, 1)] }, "Rows[0].Along");
        AssertProblem(tunnel with { Rows = [Row(0, 0), Row(90, -1)] }, "Rows");
        AssertProblem(tunnel with { Rows = [Row(0, double.NaN), Row(90, 1)] }, "Rows[0].Along");
        AssertProblem(tunnel with { Rows = [Row(0, 1, 0), Row(90, 1)] }, "Rows[1].Across");
        AssertProblem(tunnel with { Rows = [Row(0, 1, 0), Row(90, 1, 7)] }, "Rows[1].Across");
        AssertProblem(tunnel with { Rows = [Row(0, 1), new(90.Degrees, 1, null, 0.1)] }, "Rows[1].Up");
        AssertProblem(tunnel with { Rows = [Row(0, 1) with { Twist = 9 }, Row(90, 1) with { Twist = 0 }] }, "Rows[0].Twist");
        AssertProblem(tunnel with { ReferenceArea = Area.Zero }, "ReferenceArea");
        AssertProblem(tunnel with { ReferenceWidth = Length.FromMeters(-1) }, "ReferenceWidth");
        AssertProblem(tunnel with { Source = new Source("") }, "Source");

        var v = new Validator();
        (Figures.Wind with { HeadingCoefficients = tunnel }).Validate(v);
        Assert.Equal("HeadingCoefficients", Assert.Single(v.Problems).Path);

        static void AssertProblem(ForceCoefficientTable table, string path)
        {
            var v = new Validator();
            table.Validate(v);
            Assert.Equal(path, Assert.Single(v.Problems).Path);
            Assert.Throws<InvalidStatueException>(() => table.At(0.Degrees));
        }
    }
}
