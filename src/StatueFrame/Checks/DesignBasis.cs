using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>
/// The basis of design: the set of codes, how much hangs on the figure, how rare a wind it is for. What is chosen here
/// reaches the factors on actions and on resistances, and stands at the head of the sheet.
/// </summary>
/// <remarks>Immutable and safe to share between threads. See <see cref="EurocodeBasis"/> and <see cref="AsceBasis"/>.</remarks>
public abstract record DesignBasis
{
    internal DesignBasis() { }

    /// <summary>The basis on one line, as in "Eurocodes, recommended values, consequence class CC2".</summary>
    public abstract string Name { get; }

    /// <summary>The code of resistances that belongs to it.</summary>
    internal abstract DesignCode Resistance { get; }

    /// <summary>The national values of resistances; null for the recommended ones.</summary>
    internal virtual NationalAnnex? AnnexInUse => null;

    /// <summary>The codes alone, as in "Eurocodes, recommended values".</summary>
    internal abstract string Codes { get; }

    /// <summary>What it takes for the user and no number depends on.</summary>
    internal virtual IEnumerable<Assumption> Assumptions() => [];

    /// <summary>What it takes for the user in the factors of a situation that it made.</summary>
    internal abstract IEnumerable<Assumption> AssumptionsIn(Situation situation);

    internal abstract void Validate(Validator v);

    /// <summary>
    /// The situations of all limit states that the code asks for: each variable action leads once, with every choice of the
    /// others beside it. The weight is unfavorable in them; every check also runs with weights at their own value where they
    /// help, and overturning and sliding with 0.9 of them, so that these need no situations of their own.
    /// </summary>
    /// <param name="actions">What acts, at its characteristic values.</param>
    /// <exception cref="InvalidStatueException">The basis or the actions have problems, or do not belong together; all are listed.</exception>
    public ValueList<Situation> Combine(CharacteristicActions actions)
    {
        ArgumentNullException.ThrowIfNull(actions);
        var v = new Validator();
        Validate(v, actions);
        v.ThrowIfAny();
        return Combined(new ActionsInTurn(actions));
    }

    /// <summary>Looks at the basis and at what it is to combine.</summary>
    internal void Validate(Validator v, CharacteristicActions actions)
    {
        int before = v.Problems.Count;
        Validate(v.At(nameof(DesignBasis)));
        Validator at = v.At(nameof(CharacteristicActions));
        actions.Validate(at);
        if (v.Problems.Count > before)
            return;
        foreach ((_, VariableAction variable, Validator item) in at.Items(actions.Variable, StatueSize.Actions, nameof(CharacteristicActions.Variable)))
        {
            if (Refuses(variable) is var (problem, hint))
                item.Add(nameof(VariableAction.Action), problem, hint);
        }
        int choices = Choices(VariableKind.Wind) * Choices(VariableKind.Temperature) * Choices(VariableKind.Ice);
        if (choices > StatueSize.Situations)
            at.Add(nameof(CharacteristicActions.Variable), $"make {choices} choices of wind, heat and ice, more than {StatueSize.Situations}", "Leave out alternatives that are surely not the worst.");
        else if (v.Problems.Count == before && Combined(new ActionsInTurn(actions)).Count is var count && count > StatueSize.Situations)
            at.Add(nameof(CharacteristicActions.Variable), $"make {count} situations, more than {StatueSize.Situations}", "Leave out alternatives that are surely not the worst.");

        int Choices(VariableKind kind) => 1 + actions.Variable.Count(a => a.Kind == kind);
    }

    /// <summary>What does not belong to the code, and what to do about it; null when an action can be combined.</summary>
    private protected abstract (string Problem, string Hint)? Refuses(VariableAction variable);

    private protected abstract ValueList<Situation> Combined(ActionsInTurn actions);
}
