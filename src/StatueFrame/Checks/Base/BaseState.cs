using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>What acts on the base in one load case, with weights as the situation factors them, or with at most their own value where they help.</summary>
/// <param name="Case">The load case of what acts steadily.</param>
/// <param name="Load">In the plane of the tower's base.</param>
/// <param name="WeightFactor">The factor on weights below it.</param>
/// <param name="Where">The heading or the time, in words.</param>
internal readonly record struct BaseState(LoadCase Case, BaseLoad Load, double WeightFactor, string Where)
{
    /// <summary>Every load case, direction or time, and again with weights at their own value where the situation raises them.</summary>
    public static BaseState[] Of(StatueModel model, PartDemands demands)
    {
        double weight = model.Masses.TotalKilograms * SelfWeight.Gravity;
        Mechanics.Vector3D arm = model.Masses.CenterMeters - model.BaseCenter, force = new(0, 0, -weight);
        BaseLoad rest = BaseLoad.Of(force, arm.Cross(force));
        var states = new List<BaseState>();
        foreach ((BaseReaction reaction, LoadCase loadCase, string when) in demands.OnBase())
        {
            BaseLoad load = BaseLoad.Of(reaction);
            states.Add(new BaseState(loadCase, load, loadCase.WeightFactor, when));
            if (loadCase.WeightFactor > 1)
                states.Add(new BaseState(loadCase, load - (loadCase.WeightFactor - 1) * rest, 1, when));
        }
        return [.. states];
    }

    /// <summary>The check with the greatest utilization; the first of equals. One that was not done counts only when none was.</summary>
    public static Check Worst(IReadOnlyList<Check> checks) => checks.FirstGreatest(check => check.Utilization ?? -1);
}
