namespace StatueFrame;

/// <summary>
/// What acts on a statue, at its characteristic values and each by itself. The basis of design makes every situation of it
/// that its code asks for: see <see cref="DesignBasis.Combine"/>.
/// </summary>
/// <remarks>
/// <para>Immutable and safe to share between threads.</para>
/// <para>
/// Winds are alternatives of each other and act one at a time, and so are heats and coats of ice. People, snow and other
/// loads act together. Source of the terms: EN 1990:2002+A1:2005, 1.5.3.
/// </para>
/// </remarks>
public sealed record CharacteristicActions
{
    /// <summary>Actions that stay; the statue's own weight by default.</summary>
    public ValueList<StatueAction> Permanent { get; init; } = [new SelfWeight()];

    /// <summary>Actions that come and go: <c>[wind, summer, winter, visitors]</c>.</summary>
    public ValueList<VariableAction> Variable { get; init; } = [];

    /// <summary>Shocks that are hoped never to come, one at a time.</summary>
    public ValueList<ShockAction> Accidental { get; init; } = [];

    /// <summary>Earthquakes, one at a time; each holds its components.</summary>
    public ValueList<EarthquakeAction> Seismic { get; init; } = [];

    internal void Validate(Validator v)
    {
        foreach ((_, StatueAction action, Validator at) in v.Items(Permanent, StatueSize.Actions))
        {
            if (action is not (SelfWeight or ImposedLoad))
                at.Add("", $"is no permanent action: {action.Title}", "Put winds, ice, heat and people into Variable, shocks into Accidental, earthquakes into Seismic.");
        }
        if (Permanent?.Any(action => action is SelfWeight) == false)
            v.Add(nameof(Permanent), "lacks the statue's own weight", "It always acts: [new SelfWeight()].");
        foreach ((_, VariableAction variable, Validator at) in v.Items(Variable, StatueSize.Actions))
            variable.Validate(at);
        foreach ((_, ShockAction shock, Validator at) in v.Items(Accidental, StatueSize.Actions))
            shock.Validate(at);
        foreach ((_, EarthquakeAction earthquake, Validator at) in v.Items(Seismic, StatueSize.Actions))
            earthquake.Validate(at);
    }
}
