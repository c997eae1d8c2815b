using UnitsNet;

namespace StatueFrame.Tests.Actions.Combinations;

public class CombinationTests
{
    private static readonly StatueAction[] weight = [new SelfWeight()];
    private static readonly WindAction wind = Stages.Wind(0, 90);
    private static readonly ImposedLoad visitors = new() { Name = "visitors", On = "L3", Down = 20.Kilonewtons };
    private static readonly IceAction ice = new() { Class = IceClass.Glaze(3) };
    private static readonly WindAction asceWind = wind with { Profile = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = 50.MetersPerSecond, Exposure = AsceExposure.C } };

    private static double Factor(ValueList<Situation> set, string name, StatueAction action)
    {
        Situation situation = set.Single(s => s.Name == name);
        return situation.Actions.Where(a => a.Action.Equals(action)).Sum(a => a.Factor);
    }

    private static double Strength(string name, StatueAction action) =>
        Factor(En1990Combinations.Strength(weight, En1990Rule.Pair, En1990Factors.Recommended, wind, visitors, ice), name, action);

    private static double All(string name, StatueAction action) => Factor(En1990Combinations.All(weight, wind, visitors), name, action);

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("weight, unfavorable", "6.10, Table A1.2(B)", 1.35, () => All("6.10, wind leading, weight unfavorable", weight[0])),
        Row("weight, favorable", "6.10, Table A1.2(B)", 1.0, () => All("6.10, wind leading, weight favorable", weight[0])),
        Row("leading wind", "6.10, Table A1.2(B)", 1.5, () => All("6.10, wind leading, weight favorable", wind), ValueKind.FromMemory),
        Row("accompanying wind, 1.5 ψ₀", "6.10, Tables A1.1, A1.2(B)", 0.9, () => All("6.10, visitors leading, weight unfavorable", wind), ValueKind.FromMemory),
        Row("accompanying visitors, 1.5 ψ₀", "6.10, Tables A1.1, A1.2(B)", 1.05, () => All("6.10, wind leading, weight unfavorable", visitors), ValueKind.FromMemory),
        Row("leading wind in (6.10a), 1.5 ψ₀", "6.10a", 0.9, () => Strength("6.10a, wind leading, weight unfavorable", wind), ValueKind.FromMemory),
        Row("weight in (6.10b), ξ 1.35", "6.10b", 1.1475, () => Strength("6.10b, wind leading, weight unfavorable", weight[0]), ValueKind.FromMemory),
        Row("weight that tips", "Table A1.2(A)", 1.1, () => All("EQU, wind leading, weight unfavorable", weight[0])),
        Row("weight that holds", "Table A1.2(A)", 0.9, () => All("EQU, wind leading, weight favorable", weight[0])),
        Row("wind, frequent", "Table A1.1", 0.2, () => All("frequent, wind leading", wind), ValueKind.FromMemory),
        Row("visitors, quasi-permanent", "Table A1.1", 0.6, () => All("quasi-permanent", visitors), ValueKind.FromMemory),
        Row("wind with ice G3, 1.5 × 0.5", "6.10 with k of ISO 12494, 9.2", 0.75, () => Strength("6.10b, wind leading, with ice, weight unfavorable", wind), ValueKind.FromMemory),
        new("1.2D + 1.0W + L: weight", "ASCE/SEI 7-22, 2.3.1", 1.2, "-", 1e-12, () => Factor(Asce7Combinations.Strength(weight, asceWind, visitors), "strength design 1.2D + 1.0W + L", weight[0]), ValueKind.FromMemory),
        new("0.6D + 0.6W: wind", "ASCE/SEI 7-22, 2.4.1", 0.6, "-", 1e-12, () => Factor(Asce7Combinations.Allowable(weight, asceWind), "allowable stress 0.6D + 0.6W", asceWind), ValueKind.FromMemory),
        new("D + 0.75L + 0.75(0.6W): wind", "ASCE/SEI 7-22, 2.4.1", 0.45, "-", 1e-12, () => Factor(Asce7Combinations.Allowable(weight, asceWind, visitors), "allowable stress D + 0.75L + 0.75(0.6W)", asceWind), ValueKind.FromMemory),
    ];

    private static PublishedValue Row(string feature, string place, double expected, Func<double> compute, ValueKind kind = ValueKind.Published) =>
        new($"factor on {feature}", $"EN 1990:2002+A1:2005, {place}", expected, "-", 1e-12, compute, kind);

    [Fact]
    public void Names_are_unique_and_every_situation_says_what_it_rests_on()
    {
        ValueList<Situation>[] sets =
        [
            En1990Combinations.All(weight, wind, visitors, ice),
            En1990Combinations.Strength(weight, En1990Rule.Pair, En1990Factors.Recommended, wind, visitors, ice),
            Asce7Combinations.Strength(weight, asceWind, visitors),
            Asce7Combinations.Allowable(weight, asceWind),
        ];
        foreach (ValueList<Situation> set in sets)
        {
            Assert.Equal(set.Count, set.Select(s => s.Name).Distinct().Count());
            Assert.All(set, s => Assert.NotEmpty(s.Factors));
            Assert.All(set, s => Assert.DoesNotContain(s.Actions, a => a.Factor == 0));
        }
    }

    [Fact]
    public void With_wind_alone_there_are_few()
    {
        Assert.Equal(
            ["6.10, permanent alone", "6.10, wind leading, weight unfavorable", "6.10, wind leading, weight favorable"],
            En1990Combinations.Strength(weight, En1990Rule.Single, En1990Factors.Recommended, wind).Select(s => s.Name));
        Assert.Equal(["characteristic, wind leading", "frequent, wind leading", "quasi-permanent"], En1990Combinations.Service(weight, wind).Select(s => s.Name));
        Assert.Equal(["strength design 1.4D", "strength design 1.2D + 1.0W + L", "strength design 0.9D + 1.0W"], Asce7Combinations.Strength(weight, asceWind).Select(s => s.Name));
    }

    [Fact]
    public void What_holds_the_statue_is_left_out_where_its_weight_is_favorable()
    {
        Assert.Equal(0, All("6.10, wind leading, weight favorable", visitors));
        ImposedLoad pull = visitors with { Name = "pull", AlongX = 5.Kilonewtons };
        Assert.Equal(1.05, Factor(En1990Combinations.All(weight, wind, pull), "6.10, wind leading, weight favorable", pull), 1e-12);
    }

    [Fact]
    public void Wind_is_lessened_by_ice_only_where_ice_counts()
    {
        VariableAction strong = new(wind, VariableKind.Wind) { Psi = new PsiFactors(0.6, 0.2, 0.1, Source.User) };
        ValueList<Situation> set = En1990Combinations.Service(weight, strong, visitors, ice);
        Assert.Equal(0.1, Factor(set, "quasi-permanent", wind), 1e-12);
        Assert.All(set.Where(s => s.Name.Contains("with ice", StringComparison.Ordinal)), s => Assert.Contains(s.Actions, a => a.Action is IceAction));
        Assert.Equal(0.5, Factor(set, "characteristic, wind leading, with ice", wind), 1e-12);
    }

    [Fact]
    public void The_consequence_factor_raises_only_what_is_unfavorable()
    {
        ValueList<Situation> set = En1990Combinations.Strength(weight, En1990Rule.Single, En1990Factors.Recommended with { ConsequenceFactor = 1.1 }, wind);
        Assert.Equal(1.1 * 1.5, Factor(set, "6.10, wind leading, weight favorable", wind), 1e-12);
        Assert.Equal(1, Factor(set, "6.10, wind leading, weight favorable", weight[0]), 1e-12);
    }

    [Fact]
    public void They_can_be_checked()
    {
        Situation[] all = [.. En1990Combinations.All(weight, wind, visitors)];
        CheckSheet sheet = Stages.Bare.Check(new Criteria(), all);
        Assert.Contains(sheet.Assumptions, a => a.Subject.Contains("6.10, wind leading, weight favorable", StringComparison.Ordinal));
        Assert.Contains(sheet.Assumptions, a => a.Subject == "ψ₀, ψ₁, ψ₂ of wind");
    }

    [Fact]
    public void What_cannot_be_combined_is_refused()
    {
        Assert.Throws<ArgumentException>(() => En1990Combinations.All([], wind));
        Assert.Throws<ArgumentException>(() => En1990Combinations.All([wind]));
        Assert.Throws<ArgumentException>(() => En1990Combinations.All(weight, wind, Stages.Wind(45)));
        Assert.Throws<ArgumentException>(() => En1990Combinations.All(weight, asceWind));
        Assert.Throws<ArgumentException>(() => Asce7Combinations.Strength(weight, wind));
        Assert.Throws<ArgumentException>(() => Asce7Combinations.Strength(weight, ice));
        Assert.Throws<ArgumentException>(() => En1990Combinations.All(weight, new VariableAction(wind, VariableKind.People)));
        Assert.Throws<ArgumentException>(() => En1990Combinations.All(weight, new VariableAction(wind, VariableKind.Wind) { Psi = new PsiFactors(2, 0, 0, Source.User) }));
        Assert.Throws<InvalidStatueException>(() => En1990Combinations.Strength(weight, En1990Rule.Single, new En1990Factors { Variable = double.NaN }, wind));
        Assert.Throws<ArgumentOutOfRangeException>(() => En1990Combinations.Strength(weight, (En1990Rule)7, En1990Factors.Recommended, wind));
    }
}
