using System.Globalization;

namespace StatueFrame;

/// <summary>An action with its factor in one situation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Factor">Partial, combination or reduction factor; from 0 to 10, of imposed loads and temperatures from −10.</param>
/// <param name="Action">What acts.</param>
public sealed record FactoredAction(double Factor, StatueAction Action)
{
    /// <summary>An action as it is, with the factor 1.</summary>
    public static implicit operator FactoredAction(StatueAction action) => new(1, action);

    /// <summary>The factor and the action, as in "1.35 self-weight".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Factor:0.###} {Action?.Title}");

    /// <summary>Below this a factor leaves next to nothing of its action, as no code does.</summary>
    internal const double Small = 0.1;

    internal void Validate(Validator v)
    {
        if (Action is SelfWeight or WindAction or IceAction or EarthquakeAction or ShockAction)
            v.InRange(Factor, 0, 10, "It is a partial or combination factor, as in 1.35. Weight acts downwards and the heading says where wind blows: neither is turned by its factor.");
        else
            v.InRange(Factor, -10, 10, "It is a partial or combination factor, as in 1.35.");
        v.Required(Action)?.Validate(v.At(nameof(Action)));
    }
}
