using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>
/// The one writer of check sheets: runs entries of the catalogue over all demands of a part, and keeps of each the worst that
/// was done and the first that was not, apart.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class SheetWriter
{
    public List<ResultLine> Results { get; } = [];

    public List<Check> Checks { get; } = [];

    public List<Assumption> Assumptions { get; } = [];

    public List<string> Warnings { get; } = [];

    /// <summary>The situation that is being written; empty for none.</summary>
    public string Situation { get; set; } = "";

    /// <summary>Runs an entry over the demands of one part, or of like parts that one line stands for.</summary>
    public void Run<T>(CheckEntry<T> entry, IEnumerable<T> demands, params IEnumerable<Assumption> assumed)
    {
        var worst = new Worst<T>(entry);
        foreach (T demand in demands)
            worst.Look(demand);
        Add(worst, assumed);
    }

    /// <summary>Writes what was found.</summary>
    public void Add<T>(in Worst<T> worst, params IEnumerable<Assumption> assumed)
    {
        int first = Checks.Count;
        Checks.AddRange(worst.Checks(Situation));
        Assume(assumed, first);
    }

    /// <summary>Of checks of one kind the worst that was done and the first that was not.</summary>
    public void AddWorst(IEnumerable<Check> checks) => AddWorst(checks.Select(check => (check, (DemandOrigin?)null)));

    /// <summary>The same of checks with how the demand of each comes about.</summary>
    public void AddWorst(IEnumerable<(Check Check, DemandOrigin? Origin)> checks)
    {
        Check? done = null, notDone = null;
        DemandOrigin? origin = null;
        foreach ((Check check, DemandOrigin? from) in checks)
        {
            if (check.Utilization is not { } utilization)
                notDone ??= check;
            else if (done is null || Extremes.Exceeds(utilization, done.Utilization!.Value))
                (done, origin) = (check, from);
        }
        if (done is not null)
            Checks.Add(done.From(origin));
        if (notDone is not null)
            Checks.Add(notDone);
    }

    /// <summary>Writes one line for all parts that lack something for an entry.</summary>
    public void Missing(CheckEntry entry, string reason, IReadOnlyList<string> where)
    {
        if (where.Count > 0)
            Checks.Add(entry.NotChecked(reason, where.Count == 1 ? where[0] : FormattableString.Invariant($"{where[0]} and {where.Count - 1} more"), Situation));
    }

    /// <summary>Lists assumptions, and lets every check from one on say that it rests on them; one that was not done rests on nothing.</summary>
    public void Assume(IEnumerable<Assumption> assumptions, int firstCheck, int? beforeCheck = null)
    {
        Assumption[] all = [.. assumptions];
        Assumptions.AddRange(all);
        string[] inputs = Array.ConvertAll(all, assumption => assumption.Short);
        for (int i = firstCheck; i < (beforeCheck ?? Checks.Count); i++)
        {
            if (Checks[i].Verdict != Verdict.NotChecked)
                Checks[i] = Checks[i].Assuming(inputs);
        }
    }

    /// <summary>Writes a part of the sheet; when it breaks off, what it wrote so far stays, and a line says that the rest is missing.</summary>
    public void Guard(string part, Action write)
    {
        try
        {
            write();
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            Checks.Add(Check.BrokenOff(Catalogue.Find("calculation.broken-off")!.Subject(part, Situation), e, Source.Assumed("checks")));
        }
    }

    /// <summary>
    /// The situation that tells of a wind by itself, as of its vortices: of those with the same wind the first by name, so that
    /// the order of situations changes nothing.
    /// </summary>
    public Dictionary<WindAction, string> WindOwners { get; } = [];

    /// <summary>The same for heats with their factors.</summary>
    public Dictionary<ValueList<FactoredAction>, string> HeatOwners { get; } = [];

    /// <summary>Finds which situation tells of what several share.</summary>
    public void Share(ReadOnlySpan<Situation> situations)
    {
        foreach (Situation situation in situations)
        {
            if (situation.Wind?.Action is WindAction wind && (!WindOwners.TryGetValue(wind, out string? first) || string.CompareOrdinal(situation.Name, first) < 0))
                WindOwners[wind] = situation.Name;
            if (HeatSheet.HeatOf(situation) is { Count: > 0 } heat && (!HeatOwners.TryGetValue(heat, out string? warm) || string.CompareOrdinal(situation.Name, warm) < 0))
                HeatOwners[heat] = situation.Name;
        }
    }

    /// <summary>A writer for a part of the sheet that is worked out by itself; it knows what is shared so far, and is taken in by <see cref="Append"/>.</summary>
    public SheetWriter Beside()
    {
        var part = new SheetWriter();
        foreach ((WindAction wind, string owner) in WindOwners)
            part.WindOwners[wind] = owner;
        foreach ((ValueList<FactoredAction> heat, string owner) in HeatOwners)
            part.HeatOwners[heat] = owner;
        foreach ((WindAction wind, (ModalResponse, AcrossWindReport) found) in Vortices)
            part.Vortices[wind] = found;
        return part;
    }

    /// <summary>Takes in what a part has written.</summary>
    public void Append(SheetWriter part)
    {
        Results.AddRange(part.Results);
        Checks.AddRange(part.Checks);
        Assumptions.AddRange(part.Assumptions);
        Warnings.AddRange(part.Warnings);
        foreach ((WindAction wind, (ModalResponse, AcrossWindReport) found) in part.Vortices)
            Vortices.TryAdd(wind, found);
    }

    /// <summary>What vortices do in each wind on the sheet, with the modes they shake.</summary>
    public Dictionary<WindAction, (ModalResponse Modes, AcrossWindReport Report)> Vortices { get; } = [];
}
