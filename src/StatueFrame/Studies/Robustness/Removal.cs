namespace StatueFrame.Studies;

/// <summary>A part taken away from a statue.</summary>
/// <remarks>Immutable and safe to share between threads, if the change is.</remarks>
/// <param name="kind">What kind of part.</param>
/// <param name="where">Which one, as in "L7, band 3, bar 2".</param>
/// <param name="change">Gives the statue without the part; a pure function.</param>
public sealed class Removal(RemovalKind kind, string where, Func<Statue, Statue> change)
{
    /// <summary>What kind of part.</summary>
    public RemovalKind Kind { get; } = kind;

    /// <summary>Which one, as in "L7, band 3, bar 2".</summary>
    public string Where { get; } = where;

    /// <summary>Where the part is in the model, for a quick look; null when it must be built anew.</summary>
    internal RemovalPlace? Place { get; init; }

    /// <summary>The statue without the part.</summary>
    /// <param name="statue">The whole statue.</param>
    public Statue From(Statue statue) => change(statue);

    /// <summary>The kind in words, as in "one standoff".</summary>
    public string Title => Kind switch
    {
        RemovalKind.Bar => "one standoff",
        RemovalKind.Saddle => "one saddle",
        RemovalKind.Ring => "one ring of standoffs",
        RemovalKind.Brace => "one brace",
        RemovalKind.Anchor => "one anchor bar",
        _ => "one part",
    };

    /// <summary>The part on one line.</summary>
    public override string ToString() => $"without {Title}: {Where}";
}
