using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// The assumptions of a sheet as they are printed and numbered: what carries most comes first, factors taken as 1 come last.
/// An assumption carries the checks of strength that rest on it, up to the greatest utilization among them.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class AssumptionOrder
{
    private readonly Dictionary<string, int> numbers = [];
    private readonly Dictionary<string, (double Utilization, int Count)> carried = [];

    public AssumptionOrder(CheckSheet sheet)
    {
        foreach (Check check in sheet.Checks)
        {
            if (check is not { Utilization: { } utilization, Nature: not Nature.Range })
                continue;
            foreach (string input in check.AssumedInputs)
            {
                (double most, int count) = carried.GetValueOrDefault(input);
                carried[input] = (Math.Max(most, CheckNumber.WithoutNoise(utilization)), count + 1);
            }
        }
        All = [.. sheet.Assumptions.OrderBy(a => a.IsNeutral).ThenByDescending(a => CarriedBy(a).Count > 0).ThenByDescending(a => CarriedBy(a).Utilization).ThenByDescending(a => CarriedBy(a).Count)];
        foreach ((int i, Assumption assumption) in All.Index())
            numbers.TryAdd(assumption.Short, i + 1);
    }

    /// <summary>All of them in order.</summary>
    public IReadOnlyList<Assumption> All { get; }

    /// <summary>Those that say something.</summary>
    public IEnumerable<Assumption> Own => All.Where(a => !a.IsNeutral);

    /// <summary>Factors taken as 1.</summary>
    public IReadOnlyList<Assumption> Neutral => [.. All.Where(a => a.IsNeutral)];

    /// <summary>The number of an assumption from 1.</summary>
    public int NumberOf(Assumption assumption) => numbers[assumption.Short];

    /// <summary>The greatest utilization of the checks that rest on an assumption, and how many do.</summary>
    public (double Utilization, int Count) CarriedBy(Assumption assumption) => carried.GetValueOrDefault(assumption.Short);

    /// <summary>The numbers of what a check rests on, as in "1–5, 7"; empty when it rests on nothing listed.</summary>
    public string NumbersOf(Check check)
    {
        int[] all = [.. check.AssumedInputs.Select(input => numbers.GetValueOrDefault(input)).Where(n => n > 0).Distinct().Order()];
        var parts = new List<string>();
        for (int first = 0, last; first < all.Length; first = last + 1)
        {
            for (last = first; last + 1 < all.Length && all[last + 1] == all[last] + 1;)
                last++;
            parts.Add(last == first ? Invariant($"{all[first]}") : Invariant($"{all[first]}–{all[last]}"));
        }
        return string.Join(", ", parts);
    }

    /// <summary>What a check rests on and the sheet does not list.</summary>
    public IEnumerable<string> Unlisted(Check check) => check.AssumedInputs.Where(input => !numbers.ContainsKey(input));

    /// <summary>The verdict in words, with listed assumptions by their numbers, as in "pass (assumed 1–5, 7)".</summary>
    public string VerdictOf(Check check) => Unlisted(check).Any()
        ? check.VerdictText
        : check.VerdictWord + (NumbersOf(check) is { Length: > 0 } list ? $" (assumed {list})" : "") + (check.Reason.Length > 0 ? $": {check.Reason}" : "");
}
