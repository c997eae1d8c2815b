using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class GaussRuleTests
{
    [Theory, InlineData(4), InlineData(8), InlineData(16)]
    public void Running_integrals_of_powers_are_exact(int count)
    {
        GaussRule rule = count switch { 4 => GaussRule.Four, 8 => GaussRule.Eight, _ => GaussRule.Sixteen };
        Assert.Equal(count, rule.Count);
        var integrals = new double[count];
        for (int power = 0; power < count; power++)
        {
            double[] values = [.. rule.Points.ToArray().Select(x => Math.Pow(x, power))];
            rule.Accumulate(values, integrals);
            for (int i = 0; i < count; i++)
                Assert.Equal(Math.Pow(rule.Points[i], power + 1) / (power + 1), integrals[i], 1e-14);
        }
    }
}
