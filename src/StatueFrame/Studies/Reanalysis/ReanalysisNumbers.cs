using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What a <see cref="StatueReanalysis"/> finds of a variant: numbers alone, for review by <see cref="StatueChecks.Check(Statue, Criteria, ReadOnlySpan{Situation})"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ReanalysisNumbers
{
    internal ReanalysisNumbers()
    {
    }

    /// <summary>Total mass.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Center of mass.</summary>
    public required Point3 Center { get; init; }

    /// <summary>The lowest natural frequencies, ascending.</summary>
    public required ValueList<Frequency> Frequencies { get; init; }

    /// <summary>One entry a situation, in their order.</summary>
    public required ValueList<SituationNumbers> Situations { get; init; }

    /// <summary>The greatest utilization of a kind of check over all situations; null when none was checked.</summary>
    /// <param name="id">The kind, as in "bars.bending".</param>
    public double? UtilizationOf(string id)
    {
        double? greatest = null;
        foreach (SituationNumbers situation in Situations.AsSpan())
        {
            if (situation.UtilizationOf(id) is { } utilization && !(utilization <= greatest))
                greatest = utilization;
        }
        foreach (CheckUtilization check in Others.AsSpan())
        {
            if (check.Id == id && check.Utilization is { } utilization && !(utilization <= greatest))
                greatest = utilization;
        }
        return greatest;
    }

    /// <summary>The governing utilization of each kind of check that belongs to no situation alone, as those of metals and fatigue.</summary>
    public ValueList<CheckUtilization> Others => Sheet.Value.Others;

    internal SheetOnDemand Sheet { get; init; } = null!;

    /// <summary>The check with the greatest utilization of all, and its situation; null when nothing was checked.</summary>
    public (string Situation, CheckUtilization Check)? Governing
    {
        get
        {
            (string, CheckUtilization)? governing = null;
            double greatest = -1;
            foreach (SituationNumbers situation in Situations.AsSpan())
            {
                foreach (CheckUtilization check in situation.Utilizations.AsSpan())
                {
                    if (check.Utilization > greatest)
                        (governing, greatest) = ((situation.Situation, check), check.Utilization.Value);
                }
            }
            return governing;
        }
    }

    /// <summary>True when something was checked and nothing of it fails, as <see cref="CheckSheet.Holds"/>.</summary>
    public bool Passes => Sheet.Value.Holds;
}
