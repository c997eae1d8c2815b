using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>What a statue's file holds: the statue, what acts on it, and what is enough.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record StatueDocument
{
    /// <summary>What the statue is.</summary>
    public required Statue Statue { get; init; }

    /// <summary>What acts, by itself, of which the basis of design makes the situations; null when these are written by hand.</summary>
    public CharacteristicActions? Actions { get; init; }

    /// <summary>Situations written by hand; may be empty.</summary>
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
        if (Actions is not null)
        {
            int before = v.Problems.Count;
            v.Required(Criteria.Basis)?.Validate(v, Actions);
            if (v.Problems.Count > before)
                return v.Problems;
        }
        if (AllSituations() is { Count: > 0 } all)
            StatueSheet.Validate(v, Statue, Criteria, all.AsSpan());
        else
            Criteria.Validate(v.At(nameof(Criteria)), new StatueNames(Statue));
        return v.Problems;
    }

    /// <summary>Analyzes and checks the statue; see <see cref="StatueChecks.Check(Statue, Criteria, ReadOnlySpan{Situation})"/>.</summary>
    /// <exception cref="InvalidStatueException">The description has problems, all of which are listed; or there is no situation.</exception>
    public CheckSheet Check() => Statue.Check(Criteria, AllSituations().AsSpan());

    /// <summary>The situations it is checked in: those written by hand, and those that the basis of design makes of the actions.</summary>
    /// <exception cref="InvalidStatueException">The actions have problems or do not belong to the basis.</exception>
    public ValueList<Situation> AllSituations() => Actions is null ? Situations : [.. Situations, .. Criteria.Basis.Combine(Actions)];
}
