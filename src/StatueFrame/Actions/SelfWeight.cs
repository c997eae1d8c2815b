namespace StatueFrame;

/// <summary>The weight of tower, skin, standoffs, limbs and fittings, downwards, each at its own center of mass.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SelfWeight : StatueAction
{
    /// <summary>Standard acceleration of gravity, 9.80665 m/s² (3rd CGPM, 1901).</summary>
    internal const double Gravity = 9.80665;

    /// <inheritdoc/>
    public override string Title => "self-weight";

    internal override void Validate(Validator v)
    {
    }
}
