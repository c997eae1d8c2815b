using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// An even coat of ice: its weight on the whole skin and on all members of bare tower, and thicker bare members for the
/// wind of the same situation. Multiply that wind by <see cref="IceClass.WindFactor"/>:
/// <c>[1.35 * new SelfWeight(), 1.5 * ice, 1.5 * 0.6 * ice.Class.WindFactor * wind]</c>.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The coat on skin grows outward only; what the ice adds to the skin's wind
/// area is left out, and so is its mass in modes. Source: ISO 12494:2017, 7 and 9.
/// </remarks>
public sealed record IceAction : StatueAction
{
    internal static readonly Source Iso12494 = new("ISO 12494:2017", "7.4 glaze, 7.5 rime, 9.2 combined wind");

    /// <summary>The class of icing at the site.</summary>
    public required IceClass Class { get; init; }

    /// <inheritdoc/>
    public override string Title => $"ice {Class?.Name}".TrimEnd();

    internal double ThicknessSi => Class.Thickness.Meters;

    internal double DensitySi => Class.Density.KilogramsPerCubicMeter;

    internal IEnumerable<Assumption> Assumptions()
    {
        yield return new Assumption($"coat of {Title}", Invariant($"even, {Class.Thickness.Millimeters:0} mm of {DensitySi:0} kg/m³ on the outside of all skin and on all bare members"), Iso12494);
        if (!Class.IsGlaze)
            yield return new Assumption("shape of rime", "an even coat instead of vanes into the wind; drag by the members' own shapes", Source.Assumed("ice"));
    }

    internal override void Validate(Validator v) => v.Required(Class);
}
