using System.Text;
using StatueFrame.Checks;
using StatueFrame.Reporting;
using static System.FormattableString;
using Verdict = StatueFrame.Checks.Verdict;

namespace StatueFrame.Works;

/// <summary>Works by urgency, from what was found and from the sheet of the statue as it is.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record WorkList
{
    /// <summary>Above this utilization a worn part is renewed before the storms (common practice, no source).</summary>
    private const double Little = 0.9;

    private WorkList()
    {
    }

    /// <summary>The works, the most urgent first.</summary>
    public required ValueList<WorkItem> Items { get; init; }

    /// <summary>Makes the list.</summary>
    /// <param name="record">The findings.</param>
    /// <param name="asIs">The check sheet of <see cref="InspectedStatue.Statue"/>.</param>
    public static WorkList Of(InspectionRecord record, CheckSheet asIs)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(asIs);
        var items = new Dictionary<string, WorkItem>();
        var byPart = new Dictionary<string, Check>();
        foreach (Check check in asIs.Checks.Where(c => c.Utilization is not null && c.Nature != Nature.Range))
        {
            foreach (string part in PartsOf(InspectionRecord.Plain(check.Where)))
            {
                if (!byPart.TryGetValue(part, out Check? worst) || check.Utilization > worst.Utilization)
                    byPart[part] = check;
            }
        }
        foreach (Finding f in record.Latest)
        {
            string part = InspectionRecord.Plain(f.Part);
            (Check? worst, bool own) = (byPart.GetValueOrDefault(part), true);
            // The sheet names the worst bar of a ring: of another one the worst of its band is told.
            for (int comma = part.LastIndexOf(','); worst is null && comma > 0; comma = part.LastIndexOf(',', comma - 1))
                (worst, own) = (byPart.GetValueOrDefault(part[..comma]), false);
            double? u = worst?.Utilization;
            Urgency when = f.Condition == PartCondition.Failed || u > 1 ? Urgency.AtOnce
                : f.Condition == PartCondition.Damaged || (f.Condition == PartCondition.Worn && u > Little) ? Urgency.BeforeStorms
                : f.Condition == PartCondition.Worn ? Urgency.Planned : Urgency.Watch;
            string check = worst is null ? "no check looks at it" : Invariant($"{worst.Id} {u:0.00} as it is{(own ? "" : $", the worst of {string.Join(", ", part.Split(", ").SkipLast(1))}")}");
            items[part] = new WorkItem(when, f.Part, Invariant($"{f.Condition.ToString().ToLowerInvariant()} on {f.Date:yyyy-MM-dd}{(f.Note.Length > 0 ? $", {f.Note}" : "")}; {check}"), u);
        }
        foreach (Check check in asIs.Checks.Where(c => c.Verdict == Verdict.Fail))
        {
            string part = InspectionRecord.Plain(check.Where);
            if (!PartsOf(part).Any(items.ContainsKey))
                items[$"{check.Id}, {part}"] = new WorkItem(Urgency.AtOnce, check.Where.Length > 0 ? check.Where : "whole statue", Invariant($"not found by the inspection; {check.Id} {check.Utilization:0.00} as it is"), check.Utilization);
        }
        return new WorkList { Items = [.. items.Values.OrderBy(i => i.Urgency).ThenByDescending(i => i.Utilization ?? 0).ThenBy(i => i.Part, StringComparer.Ordinal)] };
    }

    /// <summary>The list as comma-separated values (RFC 4180), with a heading.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["urgency", "part", "reason", "utilization"]);
        foreach (WorkItem i in Items)
            CsvText.AppendLine(text, [Word(i.Urgency), i.Part, i.Reason, i.Utilization is { } u ? Invariant($"{u:0.000}") : ""]);
        return text.ToString();
    }

    /// <summary>The works, for a calculation package of the statue as it is.</summary>
    public Appendix ToAppendix() => new()
    {
        Title = "Works by urgency",
        Heads = ["urgency", "part", "reason"],
        Rows = [.. Items.Select(i => ValueList.Create<string>([Word(i.Urgency), i.Part, i.Reason]))],
    };

    /// <summary>The list as plain text, with the caution.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (IGrouping<Urgency, WorkItem> group in Items.GroupBy(i => i.Urgency))
        {
            TextLayout.AppendLine(text, $"{Word(group.Key).ToUpperInvariant()}: {group.Count()}");
            foreach (WorkItem i in group.Take(40))
                TextLayout.AppendWrapped(text, "  ", $"{i.Part}: {i.Reason}");
            if (group.Count() > 40)
                TextLayout.AppendLine(text, $"  and {group.Count() - 40} more, in ToCsv");
        }
        TextLayout.AppendWrapped(text, "", Invariant($"Worn parts that use more than {Little:0.0} of what is allowed are renewed before the storms (common practice, no source)."));
        TextLayout.AppendWrapped(text, "", Drawing.Caution);
        return text.ToString();
    }

    private static string Word(Urgency urgency) => urgency switch
    {
        Urgency.AtOnce => "at once",
        Urgency.BeforeStorms => "before the next storms",
        Urgency.Planned => "at the next renewal",
        _ => "watch",
    };

    /// <summary>The part that a check looks at and the larger ones that it lies in: of "band 3, bar 7, tower end" also "band 3, bar 7" and "band 3".</summary>
    private static IEnumerable<string> PartsOf(string where)
    {
        string[] words = where.Split(", ");
        for (int n = 1; n <= words.Length; n++)
            yield return string.Join(", ", words.Take(n));
    }
}
