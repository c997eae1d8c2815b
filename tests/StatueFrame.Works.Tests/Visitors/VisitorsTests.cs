using UnitsNet;

namespace StatueFrame.Works.Tests.Visitors;

public class VisitorsTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("helical stair of 3 turns, 0.3 m to 2.1 m: area of its treads", "closed form n π/4 (D² − d²)", 3 * Math.PI / 4 * (2.1 * 2.1 - 0.09), "m²", 1e-12, () => Stair.Area.SquareMeters, ValueKind.IndependentComputation),
    ];

    private static VisitorArea Stair => VisitorArea.HelicalStair("stair", ["L1", "L3", "L5"], 0.3.Meters, 2.1.Meters, 3);

    [Fact]
    public void A_full_stair_puts_its_load_on_its_levels_in_equal_parts()
    {
        ValueList<ImposedLoad> loads = Stair.ToLoads();
        Assert.Equal(3, loads.Count);
        Assert.Equal(5000 * Stair.Area.SquareMeters, loads.Sum(l => l.Down.Newtons), 1e-6);
        Assert.Equal((int)(Stair.Area.SquareMeters / 0.5), Stair.Occupancy);
        Assert.Equal(Stair.Occupancy, Stair.ToCrowd(RhythmicLoad.Walking, "tip").People);
        Assert.Throws<InvalidStatueException>(() => VisitorArea.Gallery("", "L1", Area.FromSquareMeters(-1)));
    }

    [Fact]
    public void A_place_closes_at_the_margin_of_the_speed_that_moves_it_too_far()
    {
        var rule = new ClosingRule("wing", "wing tip", 40.Millimeters) { GreatestGust = null };
        ClosingTable table = ClosingTable.Of(Heron.Curve, rule, rule with { Sway = 20.Millimeters }, rule with { GreatestGust = 5.MetersPerSecond });
        Assert.True(table.Lines[1].Gust < table.Lines[0].Gust);
        Assert.All(table.Lines, l => Assert.True(l.SwayThen <= l.Rule.Sway));
        Assert.Equal(5, table.Lines[2].Gust.MetersPerSecond, 1e-9);
        Assert.Equal("people in the wind", table.Lines[2].Because);
        // The sway at the unreduced speed is the limit itself.
        ClosingTable whole = ClosingTable.Of(Heron.Curve, rule with { Margin = 1 });
        if (whole.Lines[0].Because.StartsWith("sway", StringComparison.Ordinal))
            Assert.Equal(40, whole.Lines[0].SwayThen.Millimeters, 0.01);
        Assert.Equal("sway at wing tip", whole.Lines[0].Because);
        Assert.Contains("wing", table.ToString());
    }

    [Fact]
    public void A_sway_that_calm_exceeds_cannot_open_a_place() =>
        Assert.Throws<InvalidStatueException>(() => ClosingTable.Of(Heron.Curve, new ClosingRule("wing", "wing tip", 0.2.Millimeters), new ClosingRule("tip", "tpi", 1.Meters)));
}
