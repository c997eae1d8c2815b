using System.Globalization;
using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Studies;

public class HeadingStudyTests
{
    private static readonly HeadingStudy study = HeadingStudy.Of(Figures.Model, Figures.Storm);

    private static Situation With(ValueList<Angle> headings) =>
        Figures.Storm with { Actions = [1.35 * new SelfWeight(), 1.5 * (Figures.Wind with { Headings = headings })] };

    [Fact]
    public void Roses_hold_what_the_load_cases_of_the_situation_say()
    {
        Response response = Figures.Model.Respond(Figures.Storm);
        foreach (LoadCase loadCase in response.Cases)
        {
            AssertSame(loadCase.Of("tip").Sway.Meters, study.SwayAt("tip"));
            AssertSame(Math.Abs(loadCase.Of("belt").Twist.Radians), study.TwistAt("belt"));
            AssertSame(loadCase.WindForce.Newtons, study["wind force"]);
            AssertSame(loadCase.Base.Shear.Newtons, study["base shear"]);
            AssertSame(loadCase.Base.Overturning.NewtonMeters, study["base overturning moment"]);
            AssertSame(Math.Abs(loadCase.Base.MomentZ.NewtonMeters), study["base twisting moment"]);

            void AssertSame(double expected, HeadingSeries series)
            {
                double actual = series.Rose.Single(p => Math.Abs(p.Heading.Degrees - loadCase.Heading!.Value.Degrees) < 1e-9).Value;
                Assert.Equal(expected, actual, 1e-9 * series.Worst.Value);
            }
        }
        Assert.Equal(response.GreatestSway("tip").Sway.Meters, study.SwayAt("tip").WorstGiven.Value, 1e-12);
        Assert.Equal(response.WorstBar!.Stress.Pascals, study["greatest bar stress"].WorstGiven.Value, 1e-3);
        Assert.Equal(response.WorstBar!.Stress.Pascals, study.Series.Where(s => s.Name.StartsWith("bar stress of", StringComparison.Ordinal)).Max(s => s.WorstGiven.Value), 1e-3);
        Assert.Equal(6, study.Series.Count(s => s.Name.StartsWith("bar stress of", StringComparison.Ordinal)));
    }

    [Fact]
    public void Refined_worst_is_never_below_the_coarse_one_and_nothing_found_by_brute_force_is_above_it()
    {
        Situation four = With([20.Degrees, 110.Degrees, 200.Degrees, 290.Degrees]);
        HeadingStudy refined = HeadingStudy.Of(Figures.Model, four);
        HeadingStudy brute = HeadingStudy.Of(Figures.Model, With(Headings.Evenly(360)), grid: 0);
        foreach (HeadingSeries series in refined.Series)
        {
            Assert.True(series.Worst.Value >= series.WorstGiven.Value, series.Name);
            Assert.True(series.Worst.Value >= series.Rose.Max(p => p.Value) * (1 - 1e-9), series.Name);
            // The 96-sided outline of an ellipse makes steps of some 10⁻⁵ in a rose, which a parabola does not see.
            Assert.True(series.Worst.Value >= brute[series.Name].Worst.Value * (1 - 1e-4), series.ToString());
        }
        Assert.True(refined["greatest bar stress"].Missed > 0.01);
        Assert.Equal(4, refined.GivenHeadings.Count);
    }

    [Fact]
    public void The_worst_value_is_that_of_an_analysis_at_its_heading()
    {
        foreach (HeadingSeries series in study.Series)
        {
            HeadingSeries alone = HeadingStudy.Of(Figures.Model, With([series.Worst.Heading]), grid: 0)[series.Name];
            Assert.Equal(series.Worst.Value, alone.Worst.Value, 1e-9 * series.Worst.Value + 1e-15);
        }
    }

    [Fact]
    public void Turning_the_statue_turns_the_roses() =>
        Gen.Int[1, 15].Sample(step =>
        {
            HeadingStudy turned = HeadingStudy.Of(StatueModel.Build(Figures.Turned(22.5 * step)), Figures.Storm, grid: 0);
            foreach (string name in new[] { "sway at tip", "twist at tip", "base shear", "base overturning moment", "greatest bar stress" })
            {
                for (int i = 0; i < 16; i++)
                {
                    double expected = study[name].Rose.Single(p => Math.Abs(p.Heading.Degrees - 22.5 * i) < 1e-9).Value;
                    Assert.Equal(expected, turned[name].Rose[(i + step) % 16].Value, 1e-9 * study[name].Worst.Value);
                }
            }
        }, iter: 3);

    [Fact]
    public void Nothing_is_looked_at_in_a_sector_that_is_left_out()
    {
        HeadingStudy sector = HeadingStudy.Of(Figures.Model, With([350.Degrees, 0.Degrees, 30.Degrees, (-40).Degrees]));
        Assert.All(sector.GridHeadings, h => Assert.True(h.Degrees is <= 30 or >= 320, $"{h}"));
        Assert.Equal(15, sector.GridHeadings.Count);
        Assert.All(sector.Series, s => Assert.True(s.Worst.Heading.Degrees is <= 30 or >= 320, s.ToString()));
        HeadingStudy one = HeadingStudy.Of(Figures.Model, With([77.Degrees]));
        Assert.Equal(77, Assert.Single(one.GridHeadings).Degrees, 1e-12);
    }

    [Fact]
    public void Rows_of_tabulated_coefficients_are_looked_at()
    {
        var peak = new ForceCoefficientTable
        {
            Source = new Source("wind-tunnel test of an invented figure"),
            Rows = [new(0.Degrees, 0.8), new(46.Degrees, 0.8), new(47.Degrees, 2), new(48.Degrees, 0.8)],
        };
        Situation tested = Figures.Storm with { Actions = [1.5 * (Figures.Wind with { ForceCoefficient = null, HeadingCoefficients = peak })] };
        Assert.Equal(47, HeadingStudy.Of(Figures.Model, tested)["wind force"].Worst.Heading.Degrees, 1e-9);
    }

    [Fact]
    public void What_symmetry_makes_zero_is_zero()
    {
        Skin skin = Figures.Leaning.Skin!;
        Statue upright = Figures.Leaning with
        {
            Skin = skin with { Stations = [.. skin.Stations.Take(2)], BandEdges = null },
            Standoffs = [.. Figures.Leaning.Standoffs.Take(1)],
            Points = [new NamedPoint("belt", "4 m")],
        };
        HeadingStudy straight = HeadingStudy.Of(StatueModel.Build(upright), Figures.Storm);
        foreach (HeadingSeries series in new[] { straight.TwistAt("belt"), straight["base twisting moment"] })
        {
            Assert.All(series.Rose, p => Assert.Equal(0, p.Value));
            Assert.Equal(0, series.Missed);
            Assert.Equal(0, series.Worst.Heading.Degrees);
        }
    }

    [Fact]
    public void Lattice_members_are_followed_with_both_signs()
    {
        StatueModel model = StatueModel.Build(Figures.OnTensionOnlyLattice);
        HeadingStudy lattice = HeadingStudy.Of(model, Figures.Storm, grid: 0);
        Response response = model.Respond(Figures.Storm);
        double[] axial = [.. response.Cases.SelectMany(c => c.LatticeMembers()).Select(m => m.Axial.Newtons)];
        Assert.Equal(axial.Max(), lattice["greatest tension in a lattice member"].Worst.Value, 1e-6 * axial.Max());
        Assert.Equal(-axial.Min(), lattice["greatest compression in a lattice member"].Worst.Value, -1e-6 * axial.Min());
        Assert.DoesNotContain(study.Series, s => s.Name.Contains("lattice", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(DisplayUnits.Metric)]
    [InlineData(DisplayUnits.UsCustomary)]
    public void Every_line_fits_and_the_caution_is_printed(DisplayUnits units)
    {
        string print = study.Print(units, allRings: true);
        Assert.All(print.Split('\n'), line => Assert.True(line.Length <= 110, line));
        Assert.Contains("licensed engineer", print);
    }

    [Fact]
    public void A_study_prints_well() => SnapshotText.Match(study.Print());

    [Fact]
    public void Comma_separated_values_read_back_as_the_roses()
    {
        string[][] csv = Figures.Parse(study.ToCsv());
        Assert.Equal(study.Series.Count + 1, csv[0].Length);
        Assert.Equal(study.GridHeadings.Count + 1, csv.Length);
        Assert.Equal("sway at tip [mm]", csv[0][1]);
        Assert.Contains(csv[0], head => head == "bar stress of band 1 on 2 m, limp skin [MPa]");
        for (int row = 0; row < study.GridHeadings.Count; row++)
        {
            Assert.Equal(study.GridHeadings[row].Degrees, double.Parse(csv[row + 1][0], CultureInfo.InvariantCulture));
            Assert.Equal(1000 * study.SwayAt("tip").Rose[row].Value, double.Parse(csv[row + 1][1], CultureInfo.InvariantCulture), 1e-9);
        }
    }

    [Fact]
    public void Bad_inputs_are_refused()
    {
        Assert.Equal("Situation.Actions", Assert.Single(Assert.Throws<InvalidStatueException>(() =>
            HeadingStudy.Of(Figures.Model, new Situation { Name = "rest", Actions = [new SelfWeight()] })).Problems).Path);
        Assert.Throws<InvalidStatueException>(() => HeadingStudy.Of(Figures.Model, With([])));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeadingStudy.Of(Figures.Model, Figures.Storm, grid: 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeadingStudy.Of(Figures.Model, Figures.Storm, grid: 721));
        Assert.Contains("sway at tip", Assert.Throws<ArgumentException>(() => study.SwayAt("tap")).Message);
    }
}
