using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>What a statue's file holds: the statue, what acts on it, and what is enough.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record StatueDocument
{
    /// <summary>What the statue is.</summary>
    public required Statue Statue { get; init; }

    /// <summary>The situations it is checked in; may be empty.</summary>
    public ValueList<Situation> Situations { get; init; } = [];

    /// <summary>What is enough.</summary>
    public Criteria Criteria { get; init; } = new();

    /// <summary>All problems that can be told without analyzing the statue, each with its path and a hint.</summary>
    public IReadOnlyList<Problem> FindProblems()
    {
        var v = new Validator();
        v.Required(Statue)?.Validate(v.At(nameof(Statue)));
        v.Required(Criteria);
        v.Required(Situations);
        if (Statue is null || Criteria is null || Situations is null)
            return v.Problems;
        if (Situations.Count > 0)
            StatueSheet.Validate(v, Statue, Criteria, Situations.AsSpan());
        else
            Criteria.Validate(v.At(nameof(Criteria)), new StatueNames(Statue));
        return v.Problems;
    }

    /// <summary>Analyzes and checks the statue; see <see cref="StatueChecks.Check(Statue, Criteria, ReadOnlySpan{Situation})"/>.</summary>
    /// <exception cref="InvalidStatueException">The description has problems, all of which are listed; or there is no situation.</exception>
    public CheckSheet Check() => Statue.Check(Criteria, Situations.AsSpan());
}
