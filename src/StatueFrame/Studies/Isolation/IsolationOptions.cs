using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>What an <see cref="IsolationStudy"/> looks at.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record IsolationOptions
{
    /// <summary>The ways to hold the skin; two or more.</summary>
    public required ValueList<IsolationVariant> Variants { get; init; }

    /// <summary>Damping of all modes.</summary>
    public required DampingModel Damping { get; init; }

    /// <summary>Base, hold-downs and the skin's gap.</summary>
    public ShockLimits Limits { get; init; } = new();

    /// <summary>
    /// True to look besides at each statue with its base free to lift (<see cref="RockingStatue"/>), on the width of
    /// <see cref="Limits"/> or else of the tower's plan, with its hold-downs as a tendon of constant force.
    /// </summary>
    public bool IsFreeToRock { get; init; }

    /// <summary>How the responses are worked out.</summary>
    public ShockOptions Response { get; init; } = new();

    internal void Validate(Validator v)
    {
        v.Required(Damping);
        v.Required(Limits)?.Validate(v.At(nameof(Limits)));
        v.Required(Response)?.Validate(v.At(nameof(Response)));
        var names = new HashSet<string>();
        foreach ((_, IsolationVariant variant, Validator at) in v.Items(Variants, StatueSize.Situations))
        {
            if (at.Named(variant.Name, nameof(IsolationVariant.Name)) && !names.Add(variant.Name))
                at.Add(nameof(IsolationVariant.Name), $"\"{variant.Name}\" is the name of an earlier variant", "Give one of them another name with Named.");
        }
        if (Variants?.Count < 2)
            v.Add(nameof(Variants), $"must be two or more, are {Variants.Count}", "Compare bars of two thicknesses, or with IsolationVariant.RigidLinks.");
        if (Response?.Yielding is not null && Variants?.Any(variant => variant?.IsRigid == true) == true)
            v.Add(nameof(Variants), "hold rigid links, which cannot yield", "Leave out Yielding or the rigid links.");
    }
}
