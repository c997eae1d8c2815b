namespace StatueFrame;

/// <summary>
/// Situations by ASCE/SEI 7-22 from dead load D, people L and wind W. What the factors rest on stands in
/// <see cref="Situation.Factors"/> and so on the sheet.
/// </summary>
/// <remarks>
/// Stateless; safe to use from many threads. Snow, ice with its own wind (2.3.3), temperature and earthquake are not
/// covered and refused. Source: ASCE/SEI 7-22, 2.3.1 and 2.4.1.
/// </remarks>
public static class Asce7Combinations
{
    private static readonly (string Name, double Dead, double Live, double Wind)[] strength =
    [
        ("1.4D", 1.4, 0, 0),
        ("1.2D + 1.6L", 1.2, 1.6, 0),
        ("1.2D + 1.0W + L", 1.2, 1.0, 1.0),
        ("0.9D + 1.0W", 0.9, 0, 1.0),
    ];

    private static readonly (string Name, double Dead, double Live, double Wind)[] allowable =
    [
        ("D", 1, 0, 0),
        ("D + L", 1, 1, 0),
        ("D + 0.6W", 1, 0, 0.6),
        ("D + 0.75L + 0.75(0.6W)", 1, 0.75, 0.45),
        ("0.6D + 0.6W", 0.6, 0, 0.6),
    ];

    /// <summary>Strength design (LRFD), 2.3.1.</summary>
    /// <param name="permanent">Actions that stay: <c>[new SelfWeight()]</c>.</param>
    /// <param name="variable">Wind and people; at most one wind.</param>
    /// <exception cref="ArgumentException">The actions cannot be combined.</exception>
    public static ValueList<Situation> Strength(IReadOnlyList<StatueAction> permanent, params ReadOnlySpan<VariableAction> variable) =>
        Make(strength, "strength design", Source.Asce7_22("2.3.1"), permanent, variable);

    /// <summary>
    /// Allowable stress design (ASD), 2.4.1: for checks against allowable stresses, which carry the safety factor.
    /// </summary>
    /// <inheritdoc cref="Strength"/>
    public static ValueList<Situation> Allowable(IReadOnlyList<StatueAction> permanent, params ReadOnlySpan<VariableAction> variable) =>
        Make(allowable, "allowable stress", Source.Asce7_22("2.4.1"), permanent, variable);

    private static ValueList<Situation> Make(
        (string Name, double Dead, double Live, double Wind)[] combinations, string method, Source source,
        IReadOnlyList<StatueAction> permanent, ReadOnlySpan<VariableAction> variable)
    {
        var parts = new CombinationParts(permanent, variable);
        if (parts.Variable.FirstOrDefault(a => a.Kind is not (VariableKind.Wind or VariableKind.People)) is { } other)
            throw new ArgumentException($"{other.Action.Title} ({other.Kind}) is not covered; write its situations by hand.", nameof(variable));
        if (parts.Wind?.Profile.IsCharacteristic == true)
            throw new ArgumentException("EN 1991-1-4 gives a characteristic wind; the factor 1.0 of ASCE 7 needs a wind for strength design. Use En1990Combinations.", nameof(variable));
        bool hasLive = parts.Variable.Any(a => a.Kind == VariableKind.People), hasWind = parts.Wind is not null;
        var all = new List<Situation>();
        foreach ((string name, double dead, double live, double wind) in combinations)
        {
            // Without one of the actions, only the combinations that differ remain.
            if ((wind > 0 && !hasWind) || (wind == 0 && live > 0 && !hasLive) || (wind == 0.45 && !hasLive))
                continue;
            var actions = new List<FactoredAction>(permanent.Select(p => dead * p));
            foreach (VariableAction a in parts.Variable)
            {
                double factor = a.Kind == VariableKind.Wind ? wind : live;
                if (factor > 0)
                    actions.Add(factor * a.Action);
            }
            all.Add(new Situation
            {
                Name = $"{method} {name}",
                Actions = actions.ToValueList(),
                Factors = Notes(name, method, source, parts.Wind),
            });
        }
        return all.ToValueList();
    }

    private static ValueList<Assumption> Notes(string name, string method, Source source, WindAction? wind)
    {
        var factors = new Assumption($"factors of \"{method} {name}\"", name, source);
        return wind is null or { Profile: AsceWind }
            ? [factors]
            : [factors, new Assumption("wind of the user's own", "taken as a wind for strength design, as the maps of ASCE 7", Source.User)];
    }
}
