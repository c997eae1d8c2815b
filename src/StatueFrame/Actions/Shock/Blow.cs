using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A blow of known impulse at one place. With a contact time the force runs as half a sine; without one it is over
/// before anything moves, which is the worst of its impulse.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Blow : PlacedShock
{
    /// <summary>Force times time, 1e-3 to 1e8 N·s.</summary>
    public required Impulse Impulse { get; init; }

    /// <summary>How long the contact lasts, 1e-5 to 100 s; null for a blow without duration.</summary>
    public Duration? ContactTime { get; init; }

    private protected override void ValidateSize(Validator v)
    {
        v.Positive(Impulse, Impulse.NewtonSeconds, 1e-3, 1e8);
        if (ContactTime is { } time)
            v.Positive(time, time.Seconds, 1e-5, 100, nameof(ContactTime));
    }
}
