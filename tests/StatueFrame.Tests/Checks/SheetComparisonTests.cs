using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks;

public class SheetComparisonTests
{
    private static CheckSheet Of(params Check[] checks) => new() { Title = "Heron", Checks = checks.ToValueList() };

    private static Check Bar(double demand, params string[] assumed) => CheckSheetTests.Stress("bars.bending", "", demand, assumed);

    private static Check Leg(double demand) => CheckSheetTests.Stress("tower.legs", "", demand);

    [Fact]
    public void A_sheet_does_not_differ_from_itself()
    {
        SheetComparison comparison = CheckSheetTests.Heron.CompareWith(CheckSheetTests.Heron, 0);
        Assert.True(comparison.IsEmpty);
        Assert.Equal("", comparison.ToText());
    }

    [Fact]
    public void A_difference_within_the_tolerance_does_not_count()
    {
        Assert.True(Of(Bar(100.4)).CompareWith(Of(Bar(100)), 0.005).IsEmpty);
        Assert.Equal("bars.bending, storm  0.5 → 0.502", Of(Bar(100.4)).CompareWith(Of(Bar(100)), 0.001).Changes.Single().ToString());
    }

    [Fact]
    public void A_check_that_takes_over_says_so()
    {
        SheetComparison comparison = Of(Bar(142), Leg(130)).CompareWith(Of(Bar(124), Leg(130)));
        Assert.Equal("bars.bending, storm  0.62 → 0.71, now governs\n", comparison.ToText());
    }

    [Fact]
    public void A_check_that_takes_over_unchanged_says_so_too()
    {
        SheetComparison comparison = Of(Bar(124), Leg(100)).CompareWith(Of(Bar(124), Leg(130)));
        Assert.Equal(["bars.bending, storm  0.62, now governs", "tower.legs, storm  0.65 → 0.50"], comparison.Changes.Select(c => c.ToString()));
    }

    [Fact]
    public void A_check_can_take_over_its_family_alone()
    {
        Check shear(double demand) => CheckSheetTests.Stress("bars.shear", "", demand);
        SheetComparison comparison = Of(Bar(100), shear(110), Leg(190)).CompareWith(Of(Bar(100), shear(80), Leg(190)));
        Assert.Equal("0.40 → 0.55, now governs bars", comparison.Changes.Single().ToText());
    }

    [Fact]
    public void Equal_bars_of_a_ring_do_not_take_over_from_each_other()
    {
        static CheckSheet ring(double one, double two) => Of(CheckSheetTests.Stress("bars.bending", "bar 1", one), CheckSheetTests.Stress("bars.bending", "bar 2", two));
        Assert.True(ring(100, 100.001).CompareWith(ring(100.001, 100)).IsEmpty);
    }

    [Fact]
    public void Another_verdict_comes_first()
    {
        SheetComparison comparison = Of(Bar(50), Leg(206)).CompareWith(Of(Bar(150), Leg(196)));
        Assert.Equal(SheetChangeKind.Verdict, comparison.Changes[0].Kind);
        Assert.Equal("0.98 → 1.03, was pass, now FAIL", comparison.Changes[0].ToText());
    }

    [Fact]
    public void Assumed_inputs_that_come_or_go_are_a_difference()
    {
        SheetComparison comparison = Of(Bar(100, "pinned base")).CompareWith(Of(Bar(100)));
        Assert.Equal("0.50, was pass, now pass (assumed: pinned base)", comparison.Changes.Single().ToText());
    }

    [Fact]
    public void Checks_that_appear_or_disappear_are_listed()
    {
        SheetComparison comparison = Of(Bar(100), Bar(60)).CompareWith(Of(Bar(100), Leg(120)));
        Assert.Equal(["tower.legs, storm  0.60, gone, was pass", "bars.bending, storm  0.30, new, pass", "bars.bending, storm  0.50, now governs"],
            comparison.Changes.Select(c => c.ToString()));
    }

    [Fact]
    public void Losing_the_capacity_is_a_difference()
    {
        static Check with(double capacity) => Check.Of(new("a.b", "t"), Dimension.Force, Source.User, _ => (2, capacity));
        Assert.Equal("2.00 → ∞, was FAIL, now FAIL: there is no capacity", Of(with(0)).CompareWith(Of(with(1))).Changes.Single().ToText());
    }

    [Fact]
    public void Demand_and_capacity_that_change_together_are_a_difference()
    {
        static Check with(double f) => Check.Of(new("a.b", "t"), Dimension.Force, Source.User, _ => (f, 2 * f));
        Assert.Equal("0.50, demand or capacity changed", Of(with(2)).CompareWith(Of(with(1))).Changes.Single().ToText());
    }

    [Fact]
    public void Results_and_statements_are_compared()
    {
        CheckSheet before = CheckSheetTests.Heron, after = before with
        {
            Results = [new("masses", "skin", 13_000, Dimension.Mass), .. before.Results.Skip(2), new("sways", "wing", 0.1, Dimension.Length)],
            Assumptions = [before.Assumptions[0]],
            Warnings = [.. before.Warnings, "A new one."],
        };
        SnapshotText.Match(after.CompareWith(before).ToText());
    }

    [Fact]
    public void A_result_that_is_noise_beside_its_kind_is_no_difference()
    {
        CheckSheet before = CheckSheetTests.Heron;
        CheckSheet after = before with { Results = before.Results.With(3, before.Results[3] with { Value = -8e-17 }) };
        Assert.True(after.CompareWith(before, 0).IsEmpty);
    }

    [Fact]
    public void Many_lines_of_a_kind_are_counted()
    {
        CheckSheet many(double demand) => Of([.. Enumerable.Range(0, 50).Select(i => CheckSheetTests.Stress("bars.bending", $"bar {i:00}", demand + i))]);
        SheetComparison comparison = many(110).CompareWith(many(100));
        Assert.Equal(50, comparison.Changes.Count);
        Assert.EndsWith("and 45 more like these\n", comparison.ToText(most: 5));
    }

    [Fact]
    public void A_tolerance_must_be_a_number() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Of().CompareWith(Of(), double.NaN));
}
