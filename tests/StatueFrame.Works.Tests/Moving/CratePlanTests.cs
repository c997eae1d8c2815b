using UnitsNet;

namespace StatueFrame.Works.Tests.Moving;

public class CratePlanTests
{
    private static readonly CrateLimits Limits = new() { Length = 2.6.Meters, Width = 1.7.Meters, Height = 1.2.Meters, GreatestMass = 600.Kilograms };

    private static readonly CratePlan Plan = CratePlan.Of(Heron.Sheets, Limits);

    [Fact]
    public void Every_sheet_travels_once_within_the_limits()
    {
        Assert.Equal([.. Heron.Sheets.Sheets.Select(s => s.Number)], Plan.Crates.SelectMany(c => c.Sheets).Order());
        Assert.All(Plan.Crates, c => Assert.True(c.Mass <= Limits.GreatestMass && c.Height <= Limits.Height));
        Assert.All(Plan.Crates, c => Assert.InRange(c.Center.Z.Meters, 0, Limits.Height.Meters));
        Assert.All(Plan.Crates, c => Assert.InRange(Math.Abs(c.Center.Y.Meters), 0, Limits.Width.Meters / 2));
        Assert.True(Plan.Crates.Count >= Plan.LeastCrates);
    }

    [Fact]
    public void Nested_sheets_fill_crates_to_half_of_what_they_bear_and_more() =>
        Assert.True(Plan.Crates.Average(c => c.Mass.Kilograms) > 250, Plan.ToString());

    [Fact]
    public void Crates_that_bear_less_are_more() =>
        Assert.True(CratePlan.Of(Heron.Sheets, Limits with { GreatestMass = 60.Kilograms }).Crates.Count >= Heron.Sheets.Mass.Kilograms / 60);

    [Fact]
    public void Like_sheets_lie_as_near_as_padding_lets_them()
    {
        var same = new NestedSheet(Heron.Sheets.Sheets[0], 2.6, 1.6);
        Assert.Equal(0, same.Above(same), 1e-9);
        // A flatter one on a deeper one lies on its rim or its middle.
        var deep = new NestedSheet(Heron.Sheets.Sheets[^1], 2.6, 1.6);
        Assert.InRange(same.Above(deep), 0, deep.Depth);
        Assert.InRange(deep.Above(same), 0, same.Depth);
    }

    [Fact]
    public void What_does_not_fit_is_named_all_at_once()
    {
        InvalidStatueException error = Assert.Throws<InvalidStatueException>(() => CratePlan.Of(Heron.Sheets, Limits with { GreatestMass = 10.Kilograms }));
        Assert.True(error.Problems.Count > 20);
        Assert.Contains("does not fit", error.Problems[0].Message);
    }
}
