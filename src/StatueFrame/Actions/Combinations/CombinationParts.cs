namespace StatueFrame;

/// <summary>The permanent and the variable actions of a set of combinations, looked through for what cannot be combined.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class CombinationParts
{
    public CombinationParts(IReadOnlyList<StatueAction> permanent, ReadOnlySpan<VariableAction> variable)
    {
        if (permanent.Count == 0)
            throw new ArgumentException("There must be a permanent action: [new SelfWeight()].", nameof(permanent));
        VariableAction[] all = variable.ToArray();
        if (permanent.Any(p => p is WindAction or IceAction))
            throw new ArgumentException("Wind and ice are variable actions.", nameof(permanent));
        if (all.Count(a => a.Action is WindAction) > 1 || all.Count(a => a.Action is IceAction) > 1)
            throw new ArgumentException("Give one wind and one coat of ice at a time; combine each in a set of its own.", nameof(variable));
        if (all.FirstOrDefault(a => a.Action is WindAction != (a.Kind == VariableKind.Wind) || a.Action is IceAction != (a.Kind == VariableKind.Ice)) is { } odd)
            throw new ArgumentException($"{odd.Action.Title} is not of the kind {odd.Kind}.", nameof(variable));
        (Permanent, Variable) = (permanent, all);
    }

    public IReadOnlyList<StatueAction> Permanent { get; }

    public VariableAction[] Variable { get; }

    public WindAction? Wind => Variable.Select(a => a.Action).OfType<WindAction>().FirstOrDefault();

    /// <summary>The variable actions without ice and, where there is ice, once more with it.</summary>
    public IEnumerable<VariableAction[]> WithoutAndWithIce()
    {
        yield return [.. Variable.Where(a => a.Kind != VariableKind.Ice)];
        if (Variable.Any(a => a.Kind == VariableKind.Ice))
            yield return Variable;
    }

    /// <summary>Whether an action only presses down, and so may hold what the wind tips.</summary>
    public static bool OnlyPressesDown(VariableAction variable) => variable.Action switch
    {
        IceAction => true,
        ImposedLoad load => load.Down.Newtons >= 0 && load.AlongX.Newtons == 0 && load.AlongY.Newtons == 0,
        _ => false,
    };
}
