using StatueFrame.Checks;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Design by ASCE/SEI 7 and AISC 360: strength or allowable stress, winds for strength from the map of the risk category, and
/// winds of a shorter return period for service.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Ice with its own wind (2.3.3) is not covered and refused. Sources: ASCE/SEI
/// 7-22, 2.3.1, 2.3.4, 2.3.6, 2.4.1, 2.4.4, 2.4.5, 2.5.2, from memory; winds of other return periods: Peterka and Shahid 1998.
/// </remarks>
public sealed record AsceBasis : DesignBasis
{
    /// <summary>Factors on dead load D, people L, snow S, wind W, heat T, earthquake E and shocks A.</summary>
    private readonly record struct Factors(double D, double L = 0, double S = 0, double W = 0, double T = 0, double E = 0, double A = 0);

    /// <summary>Factors, their clause, and the actions of which one must be there, or another combination holds more.</summary>
    private sealed record Combination(Factors Factors, string Clause, string Needs = "");

    private static readonly Combination[] strength =
    [
        new(new(1.4), "2.3.1"), new(new(1.2, L: 1.6, S: 0.5), "2.3.1", "L"), new(new(1.2, L: 1, S: 1.6), "2.3.1", "S"), new(new(1.2, S: 1.6, W: 0.5), "2.3.1", "S"),
        new(new(1.2, L: 1, S: 0.5, W: 1), "2.3.1"), new(new(0.9, W: 1), "2.3.1"),
        new(new(1.2, L: 0.5, T: 1.2), "2.3.4"), new(new(1.2, L: 1.6, T: 1), "2.3.4", "L"), new(new(1.2, L: 1, S: 0.5, W: 1, T: 1), "2.3.4"), new(new(0.9, W: 1, T: 1), "2.3.4"),
        new(new(1.2, L: 1, S: 0.2, E: 1), "2.3.6"), new(new(0.9, E: 1), "2.3.6"), new(new(1.2, L: 0.5, S: 0.2, A: 1), "2.5.2"), new(new(0.9, A: 1), "2.5.2"),
    ];

    private static readonly Combination[] allowable =
    [
        new(new(1), "2.4.1"), new(new(1, L: 1), "2.4.1", "L"), new(new(1, S: 1), "2.4.1", "S"), new(new(1, L: 0.75, S: 0.75), "2.4.1", "LS"), new(new(1, W: 0.6), "2.4.1"),
        new(new(1, L: 0.75, S: 0.75, W: 0.45), "2.4.1", "LS"), new(new(0.6, W: 0.6), "2.4.1"),
        new(new(1, T: 1), "2.4.4"), new(new(1, L: 0.75, T: 0.75), "2.4.4", "L"), new(new(1, W: 0.6, T: 1), "2.4.4"), new(new(0.6, W: 0.6, T: 1), "2.4.4"),
        new(new(1, E: 0.7), "2.4.5"), new(new(1, L: 0.75, S: 0.75, E: 0.525), "2.4.5", "LS"), new(new(0.6, E: 0.7), "2.4.5"),
        new(new(1, L: 0.5, S: 0.2, A: 1), "2.5.2"), new(new(0.9, A: 1), "2.5.2"),
    ];

    private static readonly Func<double, Combination[]> inService = wind =>
        [new(new(1, L: 0.5), ""), new(new(1, L: 0.5, W: wind), ""), new(new(1, L: 0.5, T: 1), ""), new(new(1, L: 0.5, W: wind, T: 1), "")];

    private static readonly Source service = new("ASCE/SEI 7-22", "Appendix CC, from memory");

    private static readonly Source otherPeriods = new("Peterka and Shahid 1998, J. Struct. Eng. 124(2), 207–214", "V_T/V_50 = 0.36 + 0.1 ln 12T, from memory");

    /// <summary>Strength or allowable stress.</summary>
    public AsceMethod Method { get; init; } = AsceMethod.Strength;

    /// <summary>The risk category, whose map the wind's speed must come from; null takes II, which the sheet lists as assumed.</summary>
    public RiskCategory? Category { get; init; }

    /// <summary>Return period of the wind in service in years, 2 to 300; null takes 10, listed as assumed.</summary>
    public double? ServiceReturnPeriod { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant(
        $"{Codes}, risk category {CategoryInUse} (wind of {MapYears:0} years), service wind of {ServiceYears:0.#} years");

    /// <summary>The pressure of the wind in service over that of the map: ((0.36 + 0.1 ln 12T) of the one over the other)², T in years.</summary>
    public double ServiceFactor => Math.Pow(ByGust(ServiceYears) / ByGust(MapYears), 2);

    internal override string Codes => $"ASCE/SEI 7 and AISC 360, {(Method == AsceMethod.Strength ? "strength design" : "allowable stress")}";

    internal override DesignCode Resistance => Method == AsceMethod.Strength ? DesignCode.AiscLrfd : DesignCode.AiscAsd;

    private RiskCategory CategoryInUse => Category ?? RiskCategory.II;

    private double ServiceYears => ServiceReturnPeriod ?? 10;

    private double MapYears => CategoryInUse switch { RiskCategory.I => 300, RiskCategory.III => 1700, RiskCategory.IV => 3000, _ => 700 };

    internal override IEnumerable<Assumption> AssumptionsIn(Situation situation)
    {
        if (situation.Wind is null)
            yield break;
        if (Category is null)
            yield return new Assumption("risk category", "II, whose map the wind's speed is of", Source.Asce7_22("Table 1.5-1, from memory"));
        if (situation.LimitState != LimitState.Service)
            yield break;
        if (ServiceReturnPeriod is null)
            yield return new Assumption("return period of the wind in service", "10 years", service);
        yield return new Assumption("wind of other return periods", Invariant($"{ServiceFactor:0.000} of the map's pressure in service, away from hurricanes"), otherPeriods);
    }

    internal override void Validate(Validator v)
    {
        v.Defined(Method);
        if (Category is { } category)
            v.Defined(category, nameof(Category));
        if (ServiceReturnPeriod is { } years)
            v.InRange(years, 2, 300, "10 is usual for sway, 50 or more where it matters much.", nameof(ServiceReturnPeriod));
    }

    private static double ByGust(double years) => 0.36 + 0.1 * Math.Log(12 * years);

    private protected override (string Problem, string Hint)? Refuses(VariableAction variable) => variable switch
    {
        { Kind: VariableKind.Ice } => ("is ice, whose own wind ASCE 7 has on maps of its own", "Write its situations by hand."),
        { Action: WindAction { Profile.IsCharacteristic: true } } => ("is a characteristic wind of EN 1991-1-4; the factor 1.0 of ASCE 7 needs a wind for strength design", "Take EurocodeBasis, or an AsceWind."),
        _ => null,
    };

    private protected override ValueList<Situation> Combined(ActionsInTurn actions)
    {
        bool isStrength = Method == AsceMethod.Strength;
        var all = new List<Situation>();
        AddAll(isStrength ? strength : allowable, isStrength ? "strength design" : "allowable stress", LimitState.Strength);
        AddAll(inService(ServiceFactor), "service", LimitState.Service);
        return ActionsInTurn.EachOnce(all);

        void AddAll(Combination[] combinations, string method, LimitState limitState)
        {
            foreach (Combination combination in combinations)
            {
                Factors f = combination.Factors;
                StatueAction?[] rare = f.E > 0 ? [.. actions.Actions.Seismic] : f.A > 0 ? [.. actions.Actions.Accidental] : [null];
                foreach (VariableAction[] acting in actions.Choices())
                {
                    foreach (StatueAction? one in rare)
                    {
                        if (Make(method, limitState, combination, acting, one) is { } situation)
                            all.Add(situation);
                    }
                }
            }
        }

        Situation? Make(string method, LimitState limitState, Combination combination, VariableAction[] acting, StatueAction? rare)
        {
            Factors f = combination.Factors;
            // A choice counts where it holds just the winds and heats that the combination has.
            if (acting.Any(a => a.Kind == VariableKind.Wind) != f.W > 0 || acting.Any(a => a.Kind == VariableKind.Temperature) != f.T > 0)
                return null;
            if (combination.Needs.Length > 0 && !acting.Any(a => combination.Needs.Contains(a.Kind == VariableKind.People ? 'L' : a.Kind == VariableKind.Snow ? 'S' : ' ', StringComparison.Ordinal)))
                return null;
            var terms = new List<(double Factor, StatueAction Action, string Words)>();
            var name = new List<string> { Term(f.D, "D") };
            if (rare is not null)
                Add(f.E + f.A, rare, $"{(rare is ShockAction ? "A" : "E")}{Which(rare)}");
            foreach (VariableAction a in acting)
            {
                (double factor, string letter) = a.Kind switch
                {
                    VariableKind.Wind => (f.W, "W"),
                    VariableKind.People => (f.L, "L"),
                    VariableKind.Snow => (f.S, "S"),
                    _ => (f.T, "T"),
                };
                if (factor > 0)
                    Add(factor, a.Action, letter + Which(a.Action));
            }
            IEnumerable<Assumption> more = acting.Any(a => a.Action is WindAction { Profile: not AsceWind })
                ? [new Assumption("wind of the user's own", "taken as a wind for strength design, as the maps of ASCE 7", Source.User)] : [];
            return actions.Make($"{method} {string.Join(" + ", name.Distinct())}", limitState, f.D, terms, limitState == LimitState.Service ? service : Source.Asce7_22($"{combination.Clause}, from memory"), more);

            void Add(double factor, StatueAction action, string letter)
            {
                terms.Add((factor, action, Invariant($"{factor:0.###}")));
                name.Add(Term(factor, letter));
            }

            // Of several of a kind each says which; people act together and share a letter.
            string Which(StatueAction action) => action is not ImposedLoad && actions.Label(action) != action.Title || action is TemperatureAction && actions.Variable.Count(a => a.Kind == VariableKind.Temperature) > 1
                || action is ShockAction && actions.Actions.Accidental.Count > 1 ? $" ({actions.Label(action)})" : "";
        }

        static string Term(double factor, string letter) => factor == 1 ? letter : Invariant($"{factor:0.###}{letter}");
    }
}
