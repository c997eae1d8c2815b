using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Sheets;

/// <summary>The span that an armature is given against the standoffs that are there.</summary>
public class ArmatureSpanTests
{
    private static Check Worst(int count, Length span, Func<Statue, Statue>? change = null)
    {
        SmallStatue whole = SmallWhole.Of(count: count);
        Statue statue = whole.Statue with { Skin = whole.Statue.Skin! with { Armature = whole.Statue.Skin!.Armature! with { Span = span } } };
        return (change ?? (s => s))(statue).Check(whole.Criteria, whole.Situations).Checks.Where(check => check.Id == "armature.span").MaxBy(check => check.Utilization)!;
    }

    /// <summary>Bars evenly round a circle of 3 m: neighbors are 3 sin(π/n) apart.</summary>
    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    [InlineData(20)]
    public void Neighbors_round_a_circle_are_a_chord_apart(int count) =>
        Assert.Equal(Math.Min(3 * Math.Sin(Math.PI / count), 3), Worst(count, 1.Meters).Demand!.Value, 1e-2);

    [Fact]
    public void A_span_less_than_the_standoffs_are_apart_fails()
    {
        Assert.Equal(Verdict.Fail, Worst(6, 0.5.Meters).Verdict);
        Assert.Equal(Verdict.Pass, Worst(20, 0.5.Meters).Verdict);
    }

    [Fact]
    public void A_standoff_that_is_missing_lengthens_the_span()
    {
        Statue Without(Statue statue) => statue with { Standoffs = [.. statue.Standoffs.Select(ring => ring with { Missing = [3] })] };
        Assert.True(Worst(20, 1.Meters, Without).Demand > 1.8 * Worst(20, 1.Meters).Demand);
    }
}
