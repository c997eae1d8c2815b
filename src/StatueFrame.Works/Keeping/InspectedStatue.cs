namespace StatueFrame.Works;

/// <summary>A statue as an inspection found it: thinned where it was measured, without what has failed.</summary>
/// <remarks>
/// Immutable and safe to share between threads. What the description holds once for many members is taken at the least that was
/// measured of any of them: a leg's thickness for the legs of its segment, a band's for its two stations. Damaged parts
/// that still work in part are not weakened by a guess; they stand in <see cref="NotTaken"/>.
/// </remarks>
public sealed record InspectedStatue
{
    private InspectedStatue()
    {
    }

    /// <summary>The statue as it is.</summary>
    public required Statue Statue { get; init; }

    /// <summary>What was changed, a line a finding.</summary>
    public required ValueList<string> Changes { get; init; }

    /// <summary>Findings that the description has no place for, or that a person must judge.</summary>
    public required ValueList<string> NotTaken { get; init; }

    /// <summary>Takes findings into a statue.</summary>
    /// <param name="statue">The statue as built.</param>
    /// <param name="record">The findings.</param>
    /// <exception cref="InvalidStatueException">The description has problems, or the record names parts that are not there; all are listed.</exception>
    public static InspectedStatue Of(Statue statue, InspectionRecord record)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(record);
        var taking = new FindingTaker(statue);
        foreach (Finding finding in record.Latest)
            taking.Take(finding);
        return new InspectedStatue { Statue = taking.Result(), Changes = [.. taking.Changes], NotTaken = [.. taking.NotTaken] };
    }
}
