using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>
/// Runs one entry of the catalogue over many demands and keeps the worst that was done and the first that was not, apart: one
/// never hides the other.
/// </summary>
/// <remarks>For one thread.</remarks>
internal struct Worst<T>(CheckEntry<T> entry)
{
    private T? done, notDone;
    private Exception? error;

    /// <summary>The greatest utilization; null when none was done.</summary>
    public double? Utilization { get; private set; }

    public bool AnyNotDone { get; private set; }

    public readonly CheckEntry<T> Entry => entry;

    /// <summary>Looks at one demand.</summary>
    public void Look(in T demand)
    {
        double? found;
        try
        {
            found = entry.Utilization(demand);
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            if (error is null)
                (notDone, AnyNotDone, error) = (demand, true, e);
            return;
        }
        if (found is not { } utilization)
        {
            if (!AnyNotDone)
                (notDone, AnyNotDone) = (demand, true);
        }
        else if (Utilization is not { } worst || Extremes.Exceeds(utilization, worst))
        {
            (done, Utilization) = (demand, utilization);
        }
    }

    /// <summary>
    /// Whether a demand, and any that asks less in every number, leaves the worst as it is. Beyond 1 nothing is said: more force may ask
    /// less there, as across P_c/5 of AISC H1-1.
    /// </summary>
    public readonly bool IsNoWorse(in T demand)
    {
        try
        {
            return entry.Utilization(demand) is { } found ? found <= Math.Min(1, Utilization ?? -1) : AnyNotDone;
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            return false;
        }
    }

    /// <summary>The worst that was done, or else the first that was not; false for none.</summary>
    public readonly bool TryGet(out T demand)
    {
        demand = (Utilization is not null ? done : notDone)!;
        return Utilization is not null || AnyNotDone;
    }

    /// <summary>The checks of a sheet: at most one done and one not done.</summary>
    public readonly IEnumerable<Check> Checks(string situation)
    {
        var found = new List<Check>(2);
        if (Utilization is not null)
            found.Add(entry.With(done!, situation).From((done as ITraced)?.Origin));
        if (error is not null)
            found.Add(Check.BrokenOff(entry.Subject(entry.NameOf(notDone!), situation), error, Source.Assumed("checks")));
        else if (AnyNotDone)
            found.Add(entry.With(notDone!, situation));
        return found;
    }
}
