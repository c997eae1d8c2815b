using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>Collects the greatest utilization of each kind of check.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class UtilizationTally
{
    private readonly Dictionary<string, int> places = [];
    private readonly List<CheckUtilization> tally = [];

    public void Clear()
    {
        for (int i = 0; i < tally.Count; i++)
            tally[i] = new CheckUtilization(tally[i].Id, null, 0);
    }

    /// <summary>Counts a check in; a null demand or capacity counts as not checked.</summary>
    public void Add(string id, double? demand, double? capacity) =>
        Add(id, demand is { } d && capacity is { } c ? Check.UtilizationOf(d, c) : null);

    /// <summary>Counts a check in; null counts as not checked.</summary>
    public void Add(string id, double? utilization)
    {
        if (!places.TryGetValue(id, out int at))
        {
            places[id] = at = tally.Count;
            tally.Add(new CheckUtilization(id, null, 0));
        }
        CheckUtilization known = tally[at];
        if (utilization is null)
            tally[at] = known with { NotChecked = known.NotChecked + 1 };
        else if (!(utilization <= known.Utilization))
            tally[at] = known with { Utilization = utilization };
    }

    public ValueList<CheckUtilization> ToList()
    {
        int count = 0;
        foreach (CheckUtilization check in tally)
            count += IsUsed(check) ? 1 : 0;
        var used = new CheckUtilization[count];
        count = 0;
        foreach (CheckUtilization check in tally)
        {
            if (IsUsed(check))
                used[count++] = check;
        }
        return ValueList.Create<CheckUtilization>(used);

        static bool IsUsed(in CheckUtilization check) => check.Utilization is not null || check.NotChecked > 0;
    }
}
