namespace StatueFrame.Studies;

/// <summary>What a <see cref="RobustnessStudy"/> takes away, and how closely it looks.</summary>
/// <remarks>Immutable and safe to share between threads, if the removals are.</remarks>
public sealed record RobustnessOptions
{
    /// <summary>The kinds to take away; null takes all that the statue has.</summary>
    public ValueList<RemovalKind>? Kinds { get; init; }

    /// <summary>Further removals of your own.</summary>
    public ValueList<Removal> More { get; init; } = [];

    /// <summary>
    /// Of how many removals of each kind, those that look worst, the whole sheet is made; 3 by default, at most 1000. The
    /// others are judged by their forces and movements alone.
    /// </summary>
    public int SheetsOfEachKind { get; init; } = 3;

    internal void Validate(Validator v)
    {
        v.InRange(SheetsOfEachKind, 1, 1000, "It is of how many removals the whole sheet is made.");
        if (Kinds is { } kinds)
        {
            for (int i = 0; i < kinds.Count; i++)
                v.At(nameof(Kinds), i).Defined(kinds[i], "");
        }
        foreach ((_, Removal _, _) in v.Items(More, 10_000))
        {
        }
    }
}
