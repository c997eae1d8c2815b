using static System.FormattableString;

namespace StatueFrame;

/// <summary>Actions as combinations take them: winds, heats and coats of ice one of each at a time or none, all others together.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ActionsInTurn
{
    private readonly Dictionary<StatueAction, string> labels = new(ReferenceEqualityComparer.Instance);

    public ActionsInTurn(CharacteristicActions actions)
    {
        Actions = actions;
        foreach (IGrouping<string, StatueAction> same in actions.Variable.Select(a => a.Action).Concat(actions.Accidental).Concat(actions.Seismic).GroupBy(a => a.Title))
        {
            bool alone = same.Count() == 1;
            foreach ((int i, StatueAction action) in same.Index())
                labels[action] = alone ? same.Key : Invariant($"{same.Key} {i + 1}");
        }
    }

    public CharacteristicActions Actions { get; }

    public IEnumerable<VariableAction> Variable => Actions.Variable;

    /// <summary>The title of an action, numbered where several have the same.</summary>
    public string Label(StatueAction action) => labels.GetValueOrDefault(action, action.Title);

    /// <summary>Every choice of actions that may act together, the empty one of alternatives included.</summary>
    public IEnumerable<VariableAction[]> Choices()
    {
        VariableAction[] together = [.. Variable.Where(a => !IsAlternative(a.Kind))];
        foreach (VariableAction? wind in OneOrNone(VariableKind.Wind))
        {
            foreach (VariableAction? heat in OneOrNone(VariableKind.Temperature))
            {
                foreach (VariableAction? ice in OneOrNone(VariableKind.Ice))
                    yield return [.. new[] { wind, heat, ice }.OfType<VariableAction>(), .. together];
            }
        }
    }

    /// <summary>Every choice of actions that count as lasting, ψ₂ above zero: one of each kind of alternatives that has any.</summary>
    public IEnumerable<VariableAction[]> Lasting()
    {
        VariableAction[] together = [.. Variable.Where(a => !IsAlternative(a.Kind) && Lasts(a))];
        IEnumerable<VariableAction[]> choices = [together];
        foreach (VariableKind kind in Variable.Where(a => IsAlternative(a.Kind) && Lasts(a)).Select(a => a.Kind).Distinct())
            choices = choices.SelectMany(chosen => Variable.Where(a => a.Kind == kind && Lasts(a)).Select(a => chosen.Append(a).ToArray()));
        return choices;
    }

    /// <summary>Whether several of a kind of alternatives count as lasting.</summary>
    public bool HasChoice(VariableKind kind) => IsAlternative(kind) && Variable.Count(a => a.Kind == kind && Lasts(a)) > 1;

    private static bool Lasts(VariableAction variable) => variable.PsiInUse.QuasiPermanent > 0;

    /// <summary>A situation of these actions; those with a factor of zero are left out.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="limitState">Its limit state.</param>
    /// <param name="permanent">Factor on permanent actions.</param>
    /// <param name="acting">The others with their factors, and in words what these are made of.</param>
    /// <param name="source">The rule.</param>
    /// <param name="more">What the factors rest on besides.</param>
    public Situation Make(
        string name, LimitState limitState, double permanent, IEnumerable<(double Factor, StatueAction Action, string Words)> acting, Source source, params IEnumerable<Assumption> more)
    {
        (double Factor, StatueAction Action, string Words)[] all = [.. acting.Where(a => a.Factor != 0)];
        string[] notes = [Invariant($"{permanent:0.####} on permanent"), .. all.Select(a => $"{a.Words} on {Label(a.Action)}")];
        return new Situation
        {
            Name = name,
            LimitState = limitState,
            Actions = [.. Actions.Permanent.Select(p => permanent * p), .. all.Select(a => a.Factor * a.Action)],
            Factors = [new Assumption($"factors of \"{name}\"", string.Join(", ", notes), source), .. more],
        };
    }

    /// <summary>The same situation once, under its first name.</summary>
    public static ValueList<Situation> EachOnce(IEnumerable<Situation> situations) =>
        situations.DistinctBy(s => (s.LimitState, s.Actions)).ToValueList();

    /// <summary>Names put together, as in "summer, visitors".</summary>
    public string Names(IEnumerable<VariableAction> actions) => string.Join(", ", actions.Select(a => Label(a.Action)));

    private static bool IsAlternative(VariableKind kind) => kind is VariableKind.Wind or VariableKind.Temperature or VariableKind.Ice;

    private IEnumerable<VariableAction?> OneOrNone(VariableKind kind) => [null, .. Variable.Where(a => a.Kind == kind)];
}
