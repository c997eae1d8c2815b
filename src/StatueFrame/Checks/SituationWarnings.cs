using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>What the situations leave out, and what those written by hand put together from rules that do not belong together.</summary>
/// <remarks>Stateless; safe to use from many threads. Of situations that the basis of design made only what none of them has is told.</remarks>
internal static class SituationWarnings
{
    /// <summary>Mean speed at 10 m below which a wind for strength is seldom meant, m/s. Common practice, no source.</summary>
    private const double Slow = 15;

    public static IEnumerable<string> Of(StatueModel model, Criteria criteria, IReadOnlyList<Situation> situations)
    {
        Situation[] byHand = [.. situations.Where(situation => situation.Factors.Count == 0)];
        foreach (Situation situation in byHand.Where(s => s.LimitState == LimitState.Strength))
        {
            foreach (string warning in OfStrength(criteria, situation))
                yield return $"{situation.Name}: {warning}";
        }
        if (!situations.Any(s => s.Wind is not null))
            yield return "Combinations not run: no situation has wind.";
        else if (!situations.Any(s => s.LimitState == LimitState.Strength && s.Wind is not null))
            yield return "Combinations not run: no situation of strength has wind.";
        if (situations.Any(HasHeat) && !situations.Any(s => HasHeat(s) && s.Wind is not null) && model.BarCount > 0)
            yield return "Combinations not run: wind and heat act in no situation together (EN 1990, 6.4.3.2, asks for one leading and the other accompanying).";
        if (!situations.Any(HasHeat) && model.BarCount > 0)
            yield return "Combinations not run: no situation has heat, which the standoffs are there for.";
        if (!situations.Any(s => s.LimitState == LimitState.Service))
            yield return "Combinations not run: no situation of service, so that sway, opening of the base and fatigue are not looked at.";

        static bool HasHeat(Situation situation) => situation.Actions.Any(a => a.Action is TemperatureAction);
    }

    private static IEnumerable<string> OfStrength(Criteria criteria, Situation situation)
    {
        if (situation.Actions.All(a => a.Action is not SelfWeight))
            yield return "the statue's own weight does not act.";
        bool factored = criteria.TowerCodeInUse is DesignCode.En1993 or DesignCode.AiscLrfd, allowable = criteria.TowerCodeInUse is DesignCode.AiscAsd or DesignCode.AllowableStress;
        if (situation.Wind is not { Action: WindAction { Profile: var profile } wind, Factor: var factor })
            yield break;
        if (wind.Headings.Count == 1)
            yield return "the wind blows one way only; a figure is seldom weakest there.";
        double mean = profile.MeanSpeedSi(10);
        if (mean < Slow)
            yield return Invariant($"the mean wind is {mean:0.#} m/s at 10 m, which is little for strength.");
        if (factored && situation.Actions.All(a => a.Factor == 1) && !profile.IsForStrength)
            yield return "all factors are 1, but the resistances have partial factors: actions of strength are raised (EN 1990, Table A1.2; ASCE 7, 2.3).";
        if (allowable && (situation.Actions.Any(a => a.Action is SelfWeight && a.Factor > 1) || (factor > 1 && !profile.IsForStrength)))
            yield return "allowable stress stands against factored actions: these rules do not belong together.";
        if (allowable && profile.IsForStrength && factor == 1)
            yield return "a wind for strength stands against allowable stress; ASCE 7, 2.4, takes 0.6 of it.";
        if (profile.IsForStrength && factor > 1)
            yield return Invariant($"the wind is one for strength already and counts {factor:0.##} times; ASCE 7, 2.3, takes it once.");
        bool european = criteria.TowerCodeInUse == DesignCode.En1993;
        if (european == profile.IsForStrength && criteria.TowerCodeInUse != DesignCode.AllowableStress)
            yield return european
                ? "resistances of the Eurocodes stand against wind of ASCE 7: safety is not that of either."
                : "resistances of AISC 360 stand against a wind that is not one of ASCE 7: safety is not that of either.";
    }
}
