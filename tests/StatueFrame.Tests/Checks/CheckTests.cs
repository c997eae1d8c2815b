using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks;

public class CheckTests
{
    private static readonly CheckSubject subject = new("bars.bending", "bending of a standoff", "band 3, bar 2", "storm");

    private static Check Of(double demand, double capacity, params string[] assumed) =>
        Check.Of(subject, Dimension.Stress, Source.CommonPractice, w => (w.Given(demand, Dimension.Stress), w.Given(capacity, Dimension.Stress)), assumed);

    [Theory]
    [InlineData(0.0, 235e6, Verdict.Pass, 0.0)]
    [InlineData(100e6, 200e6, Verdict.Pass, 0.5)]
    [InlineData(200e6, 200e6, Verdict.Pass, 1.0)]
    [InlineData(200.001e6, 200e6, Verdict.Fail, 1.000005)]
    [InlineData(0.0, 0.0, Verdict.Pass, 0.0)]
    [InlineData(1.0, 0.0, Verdict.Fail, double.PositiveInfinity)]
    [InlineData(1.0, -1.0, Verdict.Fail, double.PositiveInfinity)]
    [InlineData(0.0, -1.0, Verdict.Fail, double.PositiveInfinity)]
    public void The_verdict_follows_from_the_numbers(double demand, double capacity, Verdict verdict, double utilization)
    {
        Check check = Of(demand, capacity);
        Assert.Equal(verdict, check.Verdict);
        Assert.Equal(utilization, check.Utilization);
        Assert.Equal(capacity < 0 || (capacity == 0 && demand > 0), check.Reason.Length > 0);
    }

    [Theory]
    [InlineData(double.NaN, 1.0, "the demand is not a number")]
    [InlineData(1.0, double.NaN, "the capacity is not a number")]
    [InlineData(double.NaN, double.NaN, "the demand is not a number")]
    [InlineData(double.PositiveInfinity, 1.0, "the demand is infinite")]
    [InlineData(double.NegativeInfinity, 1.0, "the demand is infinite")]
    [InlineData(1.0, double.PositiveInfinity, "the capacity is infinite")]
    [InlineData(-1.0, 1.0, "the demand is negative, where a magnitude is meant")]
    public void Numbers_that_mean_nothing_never_pass(double demand, double capacity, string reason)
    {
        Check check = Of(demand, capacity);
        Assert.Equal(Verdict.NotChecked, check.Verdict);
        Assert.Equal(reason, check.Reason);
        Assert.Null(check.Utilization);
        Assert.True(check.Demand is null || double.IsFinite(check.Demand.Value));
        Assert.True(check.Capacity is null || double.IsFinite(check.Capacity.Value));
        Assert.EndsWith(reason + "\n", check.Working().ToText());
    }

    [Fact]
    public void A_pass_with_assumed_inputs_says_so()
    {
        Check check = Of(100e6, 200e6, "friction at the saddle 0.2").Assuming("pinned base");
        Assert.Equal("pass (assumed: friction at the saddle 0.2; pinned base)", check.VerdictText);
        Assert.Equal("FAIL (assumed: pinned base)", Of(300e6, 200e6, "pinned base").VerdictText);
        Assert.Equal("bars.bending, band 3, bar 2, storm: 0.50 pass", Of(100e6, 200e6).ToString());
    }

    [Fact]
    public void A_failure_just_above_one_does_not_read_as_one() =>
        Assert.Equal("bars.bending, band 3, bar 2, storm: >1.00 FAIL", Of(200.001e6, 200e6).ToString());

    [Fact]
    public void What_is_not_checked_needs_a_reason()
    {
        Assert.Equal("not checked: no anchors", Check.NotChecked(subject, "no anchors", Source.CommonPractice).VerdictText);
        Assert.Throws<ArgumentException>(() => Check.NotChecked(subject, " ", Source.CommonPractice));
    }

    [Fact]
    public void The_calculation_runs_once_and_again_for_its_working()
    {
        int silent = 0, heard = 0;
        Check check = Check.Of(subject, Dimension.Stress, Source.CommonPractice, w =>
        {
            _ = w is null ? silent++ : heard++;
            double M = w.Given("M", 40, Dimension.Moment), W = w.Given("W", 640e-9, Dimension.SectionModulus);
            return (w.Let("sigma", M / W, Dimension.Stress), w.Given("f_y", 235e6, Dimension.Stress));
        });
        Assert.Equal((1, 0), (silent, heard));
        Assert.Contains("= demand / capacity", check.Working().ToText());
        Assert.Contains("0.04 kN·m / 0.64 cm³", check.Working().ToText());
        Assert.Equal((1, 2), (silent, heard));
    }

    [Fact]
    public void Checks_that_say_the_same_are_equal()
    {
        Assert.Equal(Of(1, 2, "x"), Of(1, 2, "x"));
        Assert.NotEqual(Of(1, 2), Of(1, 2, "x"));
        Assert.Equal("bars", Of(1, 2).Family);
    }
}
