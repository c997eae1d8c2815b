using StatueFrame.Checks;

namespace StatueFrame.Works;

/// <summary>What hammering asks of one sheet.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Hammering
{
    internal Hammering()
    {
    }

    /// <summary>The sheet's number.</summary>
    public required int Sheet { get; init; }

    /// <summary>Annealings between passes of hammering; zero when the metal bears all of it at once.</summary>
    public required int Anneals { get; init; }

    /// <summary>The least thickness left over that of the blank.</summary>
    public required double ThicknessLeft { get; init; }

    /// <summary>
    /// Whether annealings and thickness keep to their limits. Never a pass: the blank of least distortion tells the least that
    /// hammering must do, and how a smith moves the metal is not known. What fails, fails.
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why, in words.</summary>
    public required string Reason { get; init; }
}
