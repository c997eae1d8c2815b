using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Analyses;

/// <summary>Wind off the middle of the figure and with lift, in every state of weight and every limit state.</summary>
public class OtherWaysTests
{
    private static readonly SmallStatue armed = SmallWhole.Of().With(s => s with { Limbs = [SmallStatue.Arm with { Inclination = 45.Degrees }] });

    private static Situation Storm(double weight, double lift, double aside = 0) => new()
    {
        Name = "storm",
        Actions = [weight * new SelfWeight(), 1.5 * (SmallStatue.Wind with { LiftCoefficient = lift, Eccentricity = aside })],
    };

    private static Dictionary<string, Check> Worst(CheckSheet sheet) => sheet.Checks.Where(c => c.Utilization is not null)
        .GroupBy(c => $"{c.Id}, {c.Where.Split(',')[0]}").ToDictionary(g => g.Key, g => g.MaxBy(c => c.Utilization)!);

    /// <summary>Weight that holds a limb down against lift is not counted at more than it is.</summary>
    [Fact]
    public void A_raised_weight_helps_nothing_against_lift()
    {
        Dictionary<string, Check> raised = Worst(armed.Statue.Check(armed.Criteria, Storm(1.35, 2.5, 0.3))), own = Worst(armed.Statue.Check(armed.Criteria, Storm(1, 2.5, 0.3)));
        Assert.True(own.Count > 40);
        foreach ((string key, Check check) in own)
            Assert.True(raised[key].Utilization >= check.Utilization * (1 - 1e-9), $"{key}: {check.Utilization} at its own weight, {raised[key].Utilization} raised");
        Assert.Contains(raised.Values, c => c.Where.Contains("weights at their own value, lifting limbs", StringComparison.Ordinal));
    }

    [Fact]
    public void Wind_off_the_middle_and_lift_move_what_stands_on_soft_ground()
    {
        Situation Calm(double lift, double aside) => SmallStatue.Sway with { Actions = [new SelfWeight(), SmallStatue.Wind with { LiftCoefficient = lift, Eccentricity = aside }] };
        Check amid = Of(Calm(0, 0)), lifted = Of(Calm(2.5, 0));
        Assert.True(lifted.Demand > 1.001 * amid.Demand, $"{amid.Demand}, {lifted.Demand}");
        Assert.Contains("limbs", lifted.Where, StringComparison.Ordinal);

        Check Of(Situation situation) => Assert.Single(armed.Statue.Check(armed.Criteria, situation).Checks, c => c.Id == "foundation.sway" && c.Where.StartsWith("tip", StringComparison.Ordinal));
    }
}
