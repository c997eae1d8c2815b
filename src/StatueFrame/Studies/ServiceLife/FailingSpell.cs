namespace StatueFrame.Studies;

/// <summary>A time in which a check fails.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="From">Years from now at which it was first seen to fail.</param>
/// <param name="To">Years from now at which it was first seen to pass again, as with new bars; null when it fails to the end.</param>
public sealed record FailingSpell(double From, double? To)
{
    /// <summary>The spell in words, as in "42.5 to 50 years".</summary>
    public override string ToString() => To is { } to
        ? FormattableString.Invariant($"{From:0.##} to {to:0.##} years")
        : FormattableString.Invariant($"{From:0.##} years to the end");
}
