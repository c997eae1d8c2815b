using StatueFrame.Checks;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks;

/// <summary>What situations written by hand leave out is told.</summary>
public class SituationWarningsTests
{
    private static readonly SmallStatue good = SmallStatue.Good;

    private static readonly TemperatureAction heat = new() { SkinChange = TemperatureDelta.FromKelvins(20) };

    private static readonly WindAction wind = SmallStatue.Wind, american = SmallStatue.Wind with { Profile = new AsceWind { Edition = AsceEdition.Asce7_16, BasicSpeed = 50.MetersPerSecond, Exposure = AsceExposure.C } };

    private static Situation Of(params FactoredAction[] actions) => new() { Name = "storm", Actions = [.. actions] };

    private static string[] Warnings(Criteria criteria, params Situation[] situations) => [.. good.Statue.Check(criteria, situations).Warnings];

    private static string[] Warnings(params Situation[] situations) => Warnings(good.Criteria, situations);

    private static readonly Situation whole = Of(1.35 * new SelfWeight(), 1.5 * wind, 0.9 * heat), service = Of(new SelfWeight(), wind) with { Name = "sway", LimitState = LimitState.Service };

    [Fact]
    public void Nothing_is_told_of_what_is_whole() =>
        Assert.DoesNotContain(Warnings(whole, service), warning => warning.StartsWith("Combinations not run", StringComparison.Ordinal) || (warning.StartsWith("storm: ", StringComparison.Ordinal) && !warning.Contains("deflects", StringComparison.Ordinal)));

    [Fact]
    public void What_was_not_run_is_told()
    {
        Told("no situation has wind", Of(1.35 * new SelfWeight()), service with { Actions = [new SelfWeight()] });
        Told("no situation of strength has wind", Of(1.35 * new SelfWeight()), service);
        Told("wind and heat act in no situation together", Of(1.35 * new SelfWeight(), 1.5 * wind), Of(1.35 * new SelfWeight(), 1.5 * heat) with { Name = "summer" });
        Told("no situation has heat", Of(1.35 * new SelfWeight(), 1.5 * wind));
        Told("no situation of service", whole);

        static void Told(string what, params Situation[] situations) => Assert.Contains(Warnings(situations), warning => warning.StartsWith("Combinations not run", StringComparison.Ordinal) && warning.Contains(what, StringComparison.Ordinal));
    }

    [Fact]
    public void Factors_and_rules_that_do_not_belong_together_are_told()
    {
        Told("own weight does not act", good.Criteria, Of(1.5 * wind));
        Told("blows one way only", good.Criteria, Of(1.35 * new SelfWeight(), 1.5 * (wind with { Headings = [0.Degrees] })));
        Told("little for strength", good.Criteria, Of(1.35 * new SelfWeight(), 1.5 * (wind with { Profile = new En1991Wind { FundamentalVelocity = 10.MetersPerSecond, Terrain = TerrainCategory.II } })));
        Told("all factors are 1", good.Criteria, Of(new SelfWeight(), wind));
        Told("allowable stress stands against factored actions", good.Criteria with { TowerCode = DesignCode.AiscAsd }, Of(1.2 * new SelfWeight(), american));
        Told("takes 0.6 of it", good.Criteria with { TowerCode = DesignCode.AiscAsd }, Of(new SelfWeight(), american));
        Told("ASCE 7, 2.3, takes it once", good.Criteria with { TowerCode = DesignCode.AiscLrfd }, Of(1.2 * new SelfWeight(), 1.6 * american));
        Told("against wind of ASCE 7", good.Criteria, Of(1.2 * new SelfWeight(), american));
        Told("not one of ASCE 7", good.Criteria with { TowerCode = DesignCode.AiscLrfd }, Of(1.2 * new SelfWeight(), 1.6 * wind));

        static void Told(string what, Criteria criteria, Situation situation) =>
            Assert.Contains(Warnings(criteria, situation), warning => warning.StartsWith("storm: ", StringComparison.Ordinal) && warning.Contains(what, StringComparison.Ordinal));
    }

    /// <summary>Combinations made by the rules are whole, of what was given: only an action that nobody thought of is missed.</summary>
    [Fact]
    public void Combinations_of_the_rules_lack_only_what_does_not_act()
    {
        WindAction wind = SmallStatue.Wind;
        string[] without = Warnings(good.Criteria, [.. new EurocodeBasis().Combine(new CharacteristicActions { Variable = [wind] })]);
        Assert.Equal(["Combinations not run: no situation has heat, which the standoffs are there for."], without.Where(warning => warning.Contains("not run", StringComparison.Ordinal)));
        var summer = new TemperatureAction { Name = "summer", SkinChange = TemperatureDelta.FromKelvins(20) };
        Assert.DoesNotContain(Warnings(good.Criteria, [.. new EurocodeBasis().Combine(new CharacteristicActions { Variable = [wind, summer] })]), warning => warning.Contains("not run", StringComparison.Ordinal));
    }
}
