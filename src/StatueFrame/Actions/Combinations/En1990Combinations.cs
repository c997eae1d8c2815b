using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Situations by EN 1990 from the actions there are: each variable action leads once, the others accompany it, and the
/// permanent ones come once as unfavorable and once as favorable. What the factors rest on stands in
/// <see cref="Situation.Factors"/> and so on the sheet.
/// </summary>
/// <remarks>
/// <para>Stateless; safe to use from many threads. Recommended values; a national annex may differ.</para>
/// <para>
/// Where the weight is favorable, actions that only press down are left out, for they hold too. Ice comes and goes:
/// combinations are made without it and with it, and with it the wind is multiplied by the class's factor k.
/// </para>
/// <para>Source: EN 1990:2002+A1:2005, 6.4.3.2, 6.5.3, A1.2 to A1.4; ice: EN 1993-3-1:2006, C.6, ISO 12494:2017, 9.2.</para>
/// </remarks>
public static class En1990Combinations
{
    /// <summary>All situations: strength by (6.10), loss of equilibrium, and the three of serviceability.</summary>
    /// <param name="permanent">Actions that stay: <c>[new SelfWeight()]</c>.</param>
    /// <param name="variable">Actions that come and go; at most one wind and one coat of ice.</param>
    /// <exception cref="ArgumentException">The actions cannot be combined.</exception>
    public static ValueList<Situation> All(IReadOnlyList<StatueAction> permanent, params ReadOnlySpan<VariableAction> variable) =>
    [
        .. Strength(permanent, En1990Rule.Single, En1990Factors.Recommended, variable),
        .. Equilibrium(permanent, En1990Factors.Recommended, variable),
        .. Service(permanent, variable),
    ];

    /// <summary>Strength of members and ground (STR and GEO, set B).</summary>
    /// <param name="permanent">Actions that stay.</param>
    /// <param name="rule">Expression (6.10), or (6.10a) and (6.10b).</param>
    /// <param name="factors">Partial factors.</param>
    /// <param name="variable">Actions that come and go.</param>
    /// <exception cref="ArgumentException">The actions cannot be combined.</exception>
    /// <exception cref="InvalidStatueException">A partial factor is out of range.</exception>
    public static ValueList<Situation> Strength(
        IReadOnlyList<StatueAction> permanent, En1990Rule rule, En1990Factors factors, params ReadOnlySpan<VariableAction> variable)
    {
        CombinationParts parts = Checked(permanent, factors, variable);
        double K = factors.ConsequenceFactor, unfavorable = K * factors.PermanentUnfavorable;
        (string Name, double Permanent, bool LeadingReduced)[] expressions = rule switch
        {
            En1990Rule.Single => [("6.10", unfavorable, false)],
            En1990Rule.Pair => [("6.10a", unfavorable, true), ("6.10b", factors.Reduction * unfavorable, false)],
            _ => throw new ArgumentOutOfRangeException(nameof(rule)),
        };
        var all = new List<Situation>();
        foreach ((string name, double heavy, bool reduced) in expressions)
        {
            Source source = Source.En1990($"6.4.3.2 ({name}), Table A1.2(B)");
            AddUltimate(all, parts, name, (heavy, factors.PermanentFavorable), K * factors.Variable, reduced, source);
        }
        return all.ToValueList();
    }

    /// <summary>Loss of equilibrium (EQU, set A): tipping or lifting off the base as a rigid body.</summary>
    /// <inheritdoc cref="Strength"/>
    public static ValueList<Situation> Equilibrium(
        IReadOnlyList<StatueAction> permanent, En1990Factors factors, params ReadOnlySpan<VariableAction> variable)
    {
        CombinationParts parts = Checked(permanent, factors, variable);
        double K = factors.ConsequenceFactor;
        var all = new List<Situation>();
        AddUltimate(all, parts, "EQU", (K * factors.PermanentDestabilizing, factors.PermanentStabilizing), K * factors.Variable, false, Source.En1990("6.4.3.2 (6.10), Table A1.2(A)"));
        return all.ToValueList();
    }

    /// <summary>Serviceability: characteristic, frequent and quasi-permanent combinations, without partial factors.</summary>
    /// <inheritdoc cref="All"/>
    public static ValueList<Situation> Service(IReadOnlyList<StatueAction> permanent, params ReadOnlySpan<VariableAction> variable)
    {
        CombinationParts parts = Checked(permanent, En1990Factors.Recommended, variable);
        var all = new List<Situation>();
        foreach (VariableAction[] acting in parts.WithoutAndWithIce())
        {
            foreach (VariableAction leading in acting)
            {
                string title = Leading(leading, acting);
                Add($"characteristic, {title}", "6.5.3 (6.14b)", acting, a => a == leading ? 1 : a.PsiInUse.Combination);
                // Ice that does not count here leaves the situation that is there without it.
                if (acting.Any(a => a != leading && a.Kind == VariableKind.Ice && a.PsiInUse.QuasiPermanent == 0))
                    continue;
                Add($"frequent, {title}", "6.5.3 (6.15b)", acting, a => a == leading ? a.PsiInUse.Frequent : a.PsiInUse.QuasiPermanent);
            }
        }
        Add("quasi-permanent", "6.5.3 (6.16b)", parts.Variable, a => a.PsiInUse.QuasiPermanent);
        return all.ToValueList();

        void Add(string name, string clause, VariableAction[] acting, Func<VariableAction, double> psi) =>
            all.Add(Make(name, LimitState.Service, parts.Permanent, 1, acting, psi, Source.En1990(clause)));
    }

    private static void AddUltimate(
        List<Situation> all, CombinationParts parts, string name, (double Unfavorable, double Favorable) permanent, double gammaQ, bool leadingReduced, Source source)
    {
        all.Add(Make($"{name}, permanent alone", LimitState.Strength, parts.Permanent, permanent.Unfavorable, [], _ => 0, source));
        foreach (VariableAction[] acting in parts.WithoutAndWithIce())
        {
            foreach (VariableAction leading in acting)
            {
                string title = $"{name}, {Leading(leading, acting)}";
                double Factor(VariableAction a) => gammaQ * (a == leading && !leadingReduced ? 1 : a.PsiInUse.Combination);
                all.Add(Make($"{title}, weight unfavorable", LimitState.Strength, parts.Permanent, permanent.Unfavorable, acting, Factor, source));
                if (CombinationParts.OnlyPressesDown(leading))
                    continue;
                VariableAction[] tipping = [.. acting.Where(a => !CombinationParts.OnlyPressesDown(a))];
                if (acting.Any(a => a.Kind == VariableKind.Ice))
                    continue;
                all.Add(Make($"{title}, weight favorable", LimitState.Strength, parts.Permanent, permanent.Favorable, tipping, Factor, source));
            }
        }
    }

    private static string Leading(VariableAction leading, VariableAction[] acting) =>
        acting.Any(a => a.Kind == VariableKind.Ice) && leading.Kind != VariableKind.Ice
            ? $"{leading.Action.Title} leading, with ice"
            : $"{leading.Action.Title} leading";

    private static Situation Make(
        string name, LimitState limitState, IReadOnlyList<StatueAction> permanent, double gammaG,
        VariableAction[] acting, Func<VariableAction, double> factor, Source source)
    {
        IceAction? ice = acting.Where(a => factor(a) != 0).Select(a => a.Action).OfType<IceAction>().FirstOrDefault();
        var actions = new List<FactoredAction>(permanent.Select(p => gammaG * p));
        var notes = new List<string> { Invariant($"{gammaG:0.###} on permanent") };
        foreach (VariableAction a in acting)
        {
            double k = a.Action is WindAction && ice is not null ? ice.Class.WindFactor : 1, f = factor(a);
            if (f * k == 0)
                continue;
            actions.Add(f * k * a.Action);
            notes.Add(Invariant($"{f:0.###}{(k == 1 ? "" : Invariant($" × k {k:0.##}"))} on {a.Action.Title}"));
        }
        return new Situation
        {
            Name = name,
            LimitState = limitState,
            Actions = actions.ToValueList(),
            Factors = [new Assumption($"factors of \"{name}\"", string.Join(", ", notes), source), .. acting.Select(Psi)],
        };
    }

    private static Assumption Psi(VariableAction a) =>
        new($"ψ₀, ψ₁, ψ₂ of {a.Action.Title}", Invariant($"{a.PsiInUse.Combination:0.##}, {a.PsiInUse.Frequent:0.##}, {a.PsiInUse.QuasiPermanent:0.##}"), a.PsiInUse.Source);

    private static CombinationParts Checked(IReadOnlyList<StatueAction> permanent, En1990Factors factors, ReadOnlySpan<VariableAction> variable)
    {
        factors.Validate();
        var parts = new CombinationParts(permanent, variable);
        foreach (VariableAction a in parts.Variable)
        {
            PsiFactors psi = a.PsiInUse;
            if (!(psi.Combination is >= 0 and <= 1 && psi.Frequent is >= 0 and <= 1 && psi.QuasiPermanent is >= 0 and <= 1))
                throw new ArgumentException($"The ψ factors of {a.Action.Title} must be from 0 to 1.", nameof(variable));
        }
        if (parts.Wind?.Profile.IsForStrength == true)
            throw new ArgumentException("The map speeds of ASCE 7 are for strength design already; γ_Q and ψ would count twice. Use Asce7Combinations.", nameof(variable));
        return parts;
    }
}
