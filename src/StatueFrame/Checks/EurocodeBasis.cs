using StatueFrame.Checks;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>Design by the Eurocodes: combinations of EN 1990, K_FI of the consequence class, wind of a return period.</summary>
/// <remarks>
/// <para>Immutable and safe to share between threads. Recommended values where no annex is given.</para>
/// <para>
/// Ice comes and goes with the wind, which is then multiplied by its class's factor k. Accidental and seismic situations
/// have the variable actions at ψ₂. Permanent actions have one factor for the whole statue (single source). Sources: EN
/// 1990:2002+A1:2005, 6.4.3, 6.5.3, A1.2 to A1.4, Table B3; wind: EN 1991-1-4:2005+A1:2010, 4.2 (4.2); ice: EN
/// 1993-3-1:2006, C.6, ISO 12494:2017, 9.2.
/// </para>
/// </remarks>
public sealed record EurocodeBasis : DesignBasis
{
    /// <summary>The return period of characteristic winds on the maps, years.</summary>
    private const double MapYears = 50;

    /// <summary>Shape K and exponent n of the wind's distribution, EN 1991-1-4, 4.2, note 5.</summary>
    private const double Shape = 0.2, Exponent = 0.5;

    private static readonly Source windSource = Source.En1991_1_4("4.2 (4.2), K = 0.2, n = 0.5, from memory");

    /// <summary>The national annex; null takes the recommended values, listed as assumed.</summary>
    public NationalAnnex? Annex { get; init; }

    /// <summary>The consequence class; null takes CC2, which the sheet lists as assumed.</summary>
    public ConsequenceClass? Consequences { get; init; }

    /// <summary>Expression (6.10), or (6.10a) and (6.10b).</summary>
    public En1990Rule Rule { get; init; } = En1990Rule.Single;

    /// <summary>Partial factors on actions.</summary>
    public En1990Factors Factors { get; init; } = En1990Factors.Recommended;

    /// <summary>Return period of the design wind in years, 2 to 10,000; null takes that of the maps, 50. It reaches winds of EN 1991-1-4 by c_prob.</summary>
    public double? WindReturnPeriod { get; init; }

    /// <summary>Execution class of the steel; null takes EXC3, that of structures that fatigue, listed as assumed.</summary>
    public ExecutionClass? Execution { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant(
        $"{Codes}, consequence class {ClassInUse} (K_FI {ConsequenceFactor:0.0}), wind of {WindReturnPeriod ?? MapYears:0.#} years, {Execution ?? ExecutionClass.EXC3}");

    /// <summary>K_FI on unfavorable actions of strength: 0.9, 1.0 or 1.1. EN 1990, Table B3.</summary>
    public double ConsequenceFactor => ClassInUse switch { ConsequenceClass.CC1 => 0.9, ConsequenceClass.CC3 => 1.1, _ => 1.0 };

    /// <summary>
    /// c_prob = ((1 − K ln(−ln(1 − p))) / (1 − K ln(−ln 0.98)))ⁿ with p = 1 over the return period: the speed of the design
    /// wind over that of the map.
    /// </summary>
    public double ProbabilityFactor
    {
        get
        {
            double years = WindReturnPeriod ?? MapYears;
            return years == MapYears ? 1 : Math.Pow((1 - Shape * Gumbel(years)) / (1 - Shape * Gumbel(MapYears)), Exponent);

            static double Gumbel(double years) => Math.Log(-Math.Log(1 - 1 / years));
        }
    }

    internal override string Codes => $"Eurocodes, {(Annex is null ? "recommended values" : Annex.Name)}";

    internal override DesignCode Resistance => DesignCode.En1993;

    internal override NationalAnnex? AnnexInUse => Annex;

    private ConsequenceClass ClassInUse => Consequences ?? ConsequenceClass.CC2;

    internal override IEnumerable<Assumption> Assumptions()
    {
        if (Execution is null)
            yield return new Assumption("execution class", "EXC3: steel that fatigues", new Source("EN 1993-1-1:2005+A1:2014", "Table C.1, from memory"));
    }

    internal override IEnumerable<Assumption> AssumptionsIn(Situation situation)
    {
        // Accidental and seismic situations have no γ that K_FI multiplies.
        if (Consequences is null && situation.LimitState == LimitState.Strength && !situation.HasShock && situation.Earthquake is null)
            yield return new Assumption("consequence class", "CC2, K_FI 1.0", Source.En1990("Tables B1 and B3, from memory"));
        if (situation.Wind is null)
            yield break;
        if (WindReturnPeriod is null)
            yield return new Assumption("return period of the wind", "50 years, that of the maps", Source.En1991_1_4("4.2"));
        else if (WindReturnPeriod != MapYears)
            yield return new Assumption("shape of the wind's distribution", "K = 0.2, n = 0.5", windSource);
    }

    internal override void Validate(Validator v)
    {
        Annex?.Validate(v.At(nameof(Annex)));
        if (Consequences is { } consequences)
            v.Defined(consequences, nameof(Consequences));
        v.Defined(Rule);
        v.Required(Factors)?.Validate(v.At(nameof(Factors)));
        if (WindReturnPeriod is { } years)
            v.InRange(years, 2, 10_000, "50 is that of the maps; 100 or more where much hangs on the figure.", nameof(WindReturnPeriod));
        if (Execution is { } execution)
            v.Defined(execution, nameof(Execution));
    }

    private protected override (string Problem, string Hint)? Refuses(VariableAction variable) => variable.Action switch
    {
        WindAction { Profile.IsForStrength: true } => ("is a wind of ASCE 7, which is for strength design already: γ_Q and ψ would count twice", "Take AsceBasis, or a wind of EN 1991-1-4."),
        WindAction { Profile: not En1991Wind } when WindReturnPeriod is not (null or MapYears) => ("has no return period that could be changed: it is no wind of EN 1991-1-4", "Leave out WindReturnPeriod and give the wind that is meant."),
        _ => null,
    };

    private protected override ValueList<Situation> Combined(ActionsInTurn actions) => ActionsInTurn.EachOnce(
    [
        .. Ultimate(actions), .. Service(actions),
        .. actions.Actions.Accidental.SelectMany(shock => Rare(actions, "accidental", shock, "6.4.3.3 (6.11b)")),
        .. actions.Actions.Seismic.SelectMany(earthquake => Rare(actions, "seismic", earthquake, "6.4.3.4 (6.12b)")),
    ]);

    private IEnumerable<Situation> Ultimate(ActionsInTurn actions)
    {
        double unfavorable = ConsequenceFactor * Factors.PermanentUnfavorable, gammaQ = ConsequenceFactor * Factors.Variable;
        (string Name, double Permanent, bool LeadingReduced)[] expressions = Rule == En1990Rule.Single
            ? [("6.10", unfavorable, false)]
            : [("6.10a", unfavorable, true), ("6.10b", Factors.Reduction * unfavorable, false)];
        foreach ((string name, double heavy, bool reduced) in expressions)
        {
            Source source = Source.En1990($"6.4.3.2 ({name}), Table A1.2(B)");
            yield return actions.Make($"{name}, permanent alone", LimitState.Strength, heavy, [], source);
            foreach (VariableAction[] acting in actions.Choices())
            {
                foreach (VariableAction leading in acting)
                {
                    yield return With(name, heavy, leading, acting, source);
                    // Where weight helps, what only presses down helps too, and is left out.
                    VariableAction[] tipping = [.. acting.Where(a => !a.OnlyPressesDown)];
                    if (!leading.OnlyPressesDown && tipping.Length < acting.Length)
                        yield return With(name, 1, leading, tipping, source, ", weight favorable");
                }
            }

            Situation With(string name, double permanent, VariableAction leading, VariableAction[] acting, Source source, string note = "") => Make(
                actions, $"{name}, {Leading(actions, leading, acting)}{note}", LimitState.Strength, permanent, acting,
                a => gammaQ * (a == leading && !reduced ? 1 : a.PsiInUse.Combination), source);
        }
    }

    private IEnumerable<Situation> Service(ActionsInTurn actions)
    {
        foreach (VariableAction[] acting in actions.Choices())
        {
            foreach (VariableAction leading in acting)
            {
                string title = Leading(actions, leading, acting);
                yield return Make(actions, $"characteristic, {title}", LimitState.Service, 1, acting, a => a == leading ? 1 : a.PsiInUse.Combination, Source.En1990("6.5.3 (6.14b)"));
            }
        }
        foreach (VariableAction[] acting in actions.Choices())
        {
            foreach (VariableAction leading in acting)
            {
                // What does not count beside the leading action is not named with it.
                VariableAction[] counting = [.. acting.Where(a => a == leading || a.PsiInUse.QuasiPermanent > 0)];
                yield return Make(actions, $"frequent, {Leading(actions, leading, counting)}", LimitState.Service, 1, counting, a => a == leading ? a.PsiInUse.Frequent : a.PsiInUse.QuasiPermanent, Source.En1990("6.5.3 (6.15b)"));
            }
        }
        foreach (VariableAction[] lasting in actions.Lasting())
            yield return Make(actions, $"quasi-permanent{With(actions, lasting)}", LimitState.Service, 1, lasting, a => a.PsiInUse.QuasiPermanent, Source.En1990("6.5.3 (6.16b)"));
    }

    private IEnumerable<Situation> Rare(ActionsInTurn actions, string name, StatueAction rare, string clause)
    {
        foreach (VariableAction[] lasting in actions.Lasting())
        {
            // The library lets no wind blow while a shock is stepped through.
            VariableAction[] acting = [.. lasting.Where(a => rare is not ShockAction || a.Action is not WindAction)];
            Assumption[] more = rare is ShockAction
                ? [new Assumption("variable actions beside a shock", acting.Length < lasting.Length ? "at ψ₂, and no wind" : "at ψ₂, none leads at ψ₁", Source.En1990("A1.3.2, Table A1.3, from memory"))]
                : [];
            yield return actions.Make(
                $"{name}, {actions.Label(rare)}{With(actions, lasting)}", LimitState.Strength, 1,
                [(1, rare, "1"), .. acting.Select(a => Part(a, a.PsiInUse.QuasiPermanent, null))], Source.En1990(clause), [.. acting.Select(a => Psi(actions, a)), .. more]);
        }
    }

    /// <summary>The alternatives that were chosen, where there was a choice.</summary>
    private static string With(ActionsInTurn actions, VariableAction[] lasting) =>
        actions.Names(lasting.Where(a => actions.HasChoice(a.Kind))) is { Length: > 0 } names ? $" with {names}" : "";

    private Situation Make(
        ActionsInTurn actions, string name, LimitState limitState, double permanent, VariableAction[] acting, Func<VariableAction, double> factor, Source source)
    {
        IceAction? ice = acting.Where(a => factor(a) != 0).Select(a => a.Action).OfType<IceAction>().FirstOrDefault();
        return actions.Make(name, limitState, permanent, acting.Select(a => Part(a, factor(a), ice)), source, [.. acting.Select(a => Psi(actions, a))]);
    }

    private (double Factor, StatueAction Action, string Words) Part(VariableAction a, double factor, IceAction? ice)
    {
        if (a.Action is not WindAction)
            return (factor, a.Action, Invariant($"{factor:0.####}"));
        double k = ice?.Class.WindFactor ?? 1, c = ProbabilityFactor, all = factor * k * c * c;
        return (all, a.Action, Invariant($"{factor:0.####}{(k == 1 ? "" : Invariant($" × k {k:0.##}"))}{(c == 1 ? "" : Invariant($" × c_prob² {c * c:0.###}"))}"));
    }

    private static string Leading(ActionsInTurn actions, VariableAction leading, VariableAction[] acting) =>
        $"{actions.Label(leading.Action)} leading{(acting.Length > 1 ? $" with {actions.Names(acting.Where(a => a != leading))}" : "")}";

    private static Assumption Psi(ActionsInTurn actions, VariableAction a) =>
        new($"ψ₀, ψ₁, ψ₂ of {actions.Label(a.Action)}", Invariant($"{a.PsiInUse.Combination:0.##}, {a.PsiInUse.Frequent:0.##}, {a.PsiInUse.QuasiPermanent:0.##}"), a.PsiInUse.Source);
}
