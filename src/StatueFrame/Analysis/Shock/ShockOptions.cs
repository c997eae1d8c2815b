using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>How a response in time is worked out. The defaults serve.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ShockOptions
{
    internal const int MostSteps = 2_000_000;

    /// <summary>
    /// How many modes swing, 1 to 2000; the rest follow statically. Null takes as many as the shock sets moving: at least
    /// 99.5 % of the energy, as <see cref="ShockResponse.Captured"/> tells.
    /// </summary>
    public int? Modes { get; init; }

    /// <summary>
    /// Time between two looks, at most an eighth of the shortest pulse and of the shortest period that swings; null takes
    /// a twentieth of the shortest period and a fortieth of the shortest pulse, whichever is less. The modes are exact for any step; the peaks between looks
    /// and the shape of curved pulses are not.
    /// </summary>
    public Duration? Step { get; init; }

    /// <summary>How long to look, at most two million steps; null takes the shock and four of the longest periods.</summary>
    public Duration? Length { get; init; }

    /// <summary>How bars yield; null keeps them elastic.</summary>
    public BarYielding? Yielding { get; init; }

    /// <summary>Whether to keep the history of each step's movement, base forces and energies; peaks are always kept.</summary>
    public bool KeepsHistory { get; init; }

    internal void Validate(Validator v)
    {
        if (Modes is { } modes)
            v.InRange(modes, 1, 2000, "It is how many modes swing; null takes as many as the shock sets moving.", nameof(Modes));
        if (Step is { } step)
            v.Positive(step, step.Seconds, 1e-7, 10, nameof(Step));
        if (Length is { } length)
            v.Positive(length, length.Seconds, 1e-5, 1e5, nameof(Length));
        Yielding?.Validate(v.At(nameof(Yielding)));
    }
}
