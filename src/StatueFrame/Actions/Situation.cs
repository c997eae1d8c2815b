namespace StatueFrame;

/// <summary>
/// A design situation: the actions that occur together, each with its factor, for one limit state. Wind in several
/// headings gives one load case a heading.
/// </summary>
/// <remarks>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source of the term: EN 1990:2002+A1:2005, 1.5.2.2.</para>
/// </remarks>
public sealed record Situation
{
    /// <summary>Short name, as in "design wind".</summary>
    public required string Name { get; init; }

    /// <summary>The limit state it is for; strength by default.</summary>
    public LimitState LimitState { get; init; } = LimitState.Strength;

    /// <summary>What acts, with factors: <c>[1.35 * new SelfWeight(), 1.5 * wind]</c>.</summary>
    public required ValueList<FactoredAction> Actions { get; init; }

    /// <summary>What its factors rest on, for the sheet; the combination rules fill it in.</summary>
    public ValueList<Assumption> Factors { get; init; } = [];

    /// <summary>The situation's ice, or null.</summary>
    internal IceAction? Ice => Actions.Select(a => a.Action).OfType<IceAction>().FirstOrDefault();

    /// <summary>The situation's wind, or null.</summary>
    internal FactoredAction? Wind => Actions.FirstOrDefault(a => a.Action is WindAction);

    /// <summary>The situation's earthquake, or null.</summary>
    internal FactoredAction? Earthquake => Actions.FirstOrDefault(a => a.Action is EarthquakeAction);

    internal bool HasShock => Actions.Any(a => a.Action is ShockAction);

    internal void Validate(Validator v, StatueNames names)
    {
        v.Named(Name);
        if (Actions?.Count == 0)
            v.Add(nameof(Actions), "must not be empty", "A situation without actions has nothing to check.");
        int winds = 0, coats = 0, shocks = 0;
        foreach ((_, FactoredAction factored, Validator at) in v.Items(Actions, StatueSize.Actions))
        {
            factored.Validate(at);
            if (factored.Action is ImposedLoad load)
                names.Require(at.At(nameof(FactoredAction.Action)), nameof(ImposedLoad.On), load.On);
            if (factored.Action is ShockAction shock)
                shock.ValidatePlaces(at.At(nameof(FactoredAction.Action)), names);
            if (factored.Action is WindAction { GustByBand.Count: > 0 and var count } && count != names.BandCount)
                at.At(nameof(FactoredAction.Action)).Add(nameof(WindAction.GustByBand), $"has {count} factors, and the statue {names.BandCount} bands", "Give one a band, trunk first and then limb by limb, or find them anew by GustFactors.ByBand.");
            shocks += factored.Action is ShockAction ? 1 : 0;
            winds += factored.Action is WindAction ? 1 : 0;
            coats += factored.Action is IceAction ? 1 : 0;
        }
        if (winds > 1)
            v.Add(nameof(Actions), "has more than one wind", "Put each wind in a situation of its own.");
        if (winds > 0 && shocks > 0)
            v.Add(nameof(Actions), "has both a shock and wind", "Put the wind's share in as ImposedLoad, or each in a situation of its own.");
        if (shocks > 0 && Actions?.Any(a => a?.Action is EarthquakeAction) == true)
            v.Add(nameof(Actions), "has both a shock and an earthquake", "Put each in a situation of its own.");
        if (coats > 1)
            v.Add(nameof(Actions), "has more than one coat of ice", "Put each in a situation of its own.");
        if (Actions?.Count(a => a?.Action is EarthquakeAction) > 1)
            v.Add(nameof(Actions), "has more than one earthquake", "Put each in a situation of its own; an action holds all three components.");
        v.Defined(LimitState);
        foreach ((_, Assumption factor, Validator at) in v.Items(Factors, StatueSize.Actions))
            at.Required(factor.Source);
    }
}
