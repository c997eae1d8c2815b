using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>What acts on the base in one state.</summary>
/// <param name="Case">The load case of what acts steadily.</param>
/// <param name="Load">In the plane of the tower's base.</param>
/// <param name="WeightFactor">The factor on weights below it.</param>
/// <param name="Where">The heading or the time, in words.</param>
internal readonly record struct BaseState(LoadCase Case, BaseLoad Load, double WeightFactor, string Where)
{
    /// <summary>Every load case, direction or time.</summary>
    public static BaseState[] Of(IEnumerable<BaseForces> forces) =>
        [.. forces.Select(f => new BaseState(f.Case, BaseLoad.Of(f.Reaction), f.Case.WeightFactor, f.When))];
}
