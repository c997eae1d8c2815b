using System.Globalization;

namespace StatueFrame;

/// <summary>An action with its factor in one situation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Factor">Partial, combination or reduction factor; from −10 to 10.</param>
/// <param name="Action">What acts.</param>
public sealed record FactoredAction(double Factor, StatueAction Action)
{
    /// <summary>An action as it is, with the factor 1.</summary>
    public static implicit operator FactoredAction(StatueAction action) => new(1, action);

    /// <summary>The factor and the action, as in "1.35 self-weight".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Factor:0.###} {Action?.Title}");

    internal void Validate(Validator v)
    {
        v.InRange(Factor, -10, 10, "It is a partial or combination factor, as in 1.35.");
        v.Required(Action)?.Validate(v.At(nameof(Action)));
    }
}
