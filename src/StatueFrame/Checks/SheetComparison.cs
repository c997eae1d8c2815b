using System.Text;

namespace StatueFrame.Checks;

/// <summary>What is different between two check sheets, the gravest first.</summary>
/// <remarks>Immutable and safe to share between threads. Made by <see cref="CheckSheet.CompareWith"/>.</remarks>
/// <param name="Changes">
/// All differences: by <see cref="SheetChange.Kind"/>, then the greatest change of utilization first, then by subject.
/// </param>
[TypeFormatterSource(typeof(NotebookText))]
public sealed record SheetComparison(ValueList<SheetChange> Changes)
{
    /// <summary>True when the sheets say the same within the tolerance.</summary>
    public bool IsEmpty => Changes.Count == 0;

    /// <summary>The differences as plain text, one a line; empty when there are none.</summary>
    /// <param name="units">The units to print results in.</param>
    /// <param name="most">The most lines of each kind; the others are counted.</param>
    public string ToText(DisplayUnits units = DisplayUnits.Metric, int most = 30)
    {
        var text = new StringBuilder();
        foreach (IGrouping<SheetChangeKind, SheetChange> kind in Changes.GroupBy(change => change.Kind))
        {
            string[][] rows = [.. kind.Take(most).Select(change => new[] { change.Subject, change.ToText(units) })];
            TextLayout.AppendTable(text, 0, [new(60), new(0)], rows);
            if (kind.Count() > rows.Length)
                TextLayout.AppendWrapped(text, "", $"and {kind.Count() - rows.Length} more like these");
        }
        return text.ToString();
    }

    /// <summary>The differences in metric units.</summary>
    public override string ToString() => ToText();

    internal static SheetComparison Of(CheckSheet earlier, CheckSheet later, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        if (!(tolerance >= 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "The tolerance must be zero or more.");
        SheetChange[] changes =
        [
            .. CheckChanges(earlier, later, tolerance),
            .. ResultChanges(earlier, later, tolerance),
            .. StatementChanges("title", [earlier.Title], [later.Title]),
            .. StatementChanges("subject", [earlier.Subject], [later.Subject]),
            .. StatementChanges("assumption", earlier.Assumptions.Select(a => a.ToString()), later.Assumptions.Select(a => a.ToString())),
            .. StatementChanges("warning", earlier.Warnings, later.Warnings),
        ];
        return new SheetComparison(changes
            .OrderBy(change => change.Kind)
            .ThenByDescending(change => change.Size)
            .ThenBy(change => change.Subject, StringComparer.Ordinal)
            .ToValueList());
    }

    private static IEnumerable<SheetChange> CheckChanges(CheckSheet earlier, CheckSheet later, double tolerance)
    {
        foreach ((Check? before, Check? after) in Pair(earlier.Checks, later.Checks, check => check.Subject))
        {
            if (after is null)
                yield return new(SheetChangeKind.Disappeared, $"{before!.Subject}", before.Utilization, null, null, $"gone, was {before.VerdictText}");
            else if (before is null)
                yield return new(SheetChangeKind.Appeared, $"{after.Subject}", null, after.Utilization, null, $"new, {after.VerdictText}");
            else if (Change(before, after, tolerance, NewlyGoverns(after, earlier, later, tolerance)) is { } change)
                yield return change;
        }
    }

    private static SheetChange? Change(Check before, Check after, double tolerance, string governs)
    {
        bool isOtherVerdict = before.Verdict != after.Verdict;
        bool isOtherWording = before.VerdictText != after.VerdictText;
        bool isOtherUtilization = CheckNumber.Differ(before.Utilization ?? 0, after.Utilization ?? 0, tolerance, 1);
        bool isOtherNumber = isOtherUtilization
            || CheckNumber.Differ(before.Demand ?? 0, after.Demand ?? 0, tolerance, after.Capacity ?? 0)
            || CheckNumber.Differ(before.Capacity ?? 0, after.Capacity ?? 0, tolerance, after.Demand ?? 0);
        string wording = isOtherWording ? $"was {before.VerdictText}, now {after.VerdictText}" : "";
        string scaled = isOtherNumber && !isOtherUtilization ? "demand or capacity changed" : "";
        string remark = string.Join(", ", new[] { wording, scaled, governs }.Where(part => part.Length > 0));
        return !isOtherNumber && remark.Length == 0 ? null : new SheetChange(
            isOtherVerdict ? SheetChangeKind.Verdict : governs.Length > 0 ? SheetChangeKind.Governs : SheetChangeKind.Utilization,
            $"{after.Subject}", before.Utilization, after.Utilization, null, remark);
    }

    /// <summary>
    /// Whether a check took over from another one. Between two that are equal within the tolerance, as the bars of a
    /// symmetrical ring are, which of them leads the list means nothing.
    /// </summary>
    private static string NewlyGoverns(Check check, CheckSheet earlier, CheckSheet later, double tolerance)
    {
        return TookOver(earlier.Governing, later.Governing, later.Checks) ? "now governs"
            : TookOver(earlier.GoverningOf(check.Family), later.GoverningOf(check.Family), later.Checks) ? $"now governs {check.Family}"
            : "";

        bool TookOver(Check? before, Check? now, ValueList<Check> checks)
        {
            if (now is null || !ReferenceEquals(now, check) || before?.Subject == check.Subject)
                return false;
            Check? beforeNow = checks.FirstOrDefault(c => c.Subject == before?.Subject);
            return beforeNow?.Utilization is not { } old || CheckNumber.Differ(old, check.Utilization ?? 0, tolerance, 1);
        }
    }

    private static IEnumerable<SheetChange> ResultChanges(CheckSheet earlier, CheckSheet later, double tolerance)
    {
        var scales = new ResultScales(earlier, later);
        foreach ((ResultLine? before, ResultLine? after) in Pair(earlier.Results, later.Results, line => (line.Group, line.Name)))
        {
            ResultLine line = (after ?? before)!;
            bool isSame = before is not null && after is not null && before.Note == after.Note && before.Dimension == after.Dimension
                && !CheckNumber.Differ(before.Value, after.Value, tolerance, scales.Of(line.Dimension));
            string remark = before is null ? "new" : after is null ? "gone" : before.Note != after.Note ? after.Note : "";
            if (!isSame)
                yield return new(SheetChangeKind.Result, $"{line.Group}, {line.Name}", before?.Value, after?.Value, line.Dimension, remark);
        }
    }

    private static IEnumerable<SheetChange> StatementChanges(string what, IEnumerable<string> before, IEnumerable<string> after)
    {
        foreach (string text in before.Except(after))
            yield return new(SheetChangeKind.Statement, what, null, null, null, $"gone: {text}");
        foreach (string text in after.Except(before))
            yield return new(SheetChangeKind.Statement, what, null, null, null, $"new: {text}");
    }

    /// <summary>Items with the same key, the first with the first, the second with the second, and those left over.</summary>
    private static IEnumerable<(T? Before, T? After)> Pair<T, TKey>(ValueList<T> before, ValueList<T> after, Func<T, TKey> key)
        where T : class where TKey : notnull
    {
        Dictionary<TKey, Queue<T>> waiting = before.GroupBy(key).ToDictionary(group => group.Key, group => new Queue<T>(group));
        foreach (T item in after)
            yield return (waiting.TryGetValue(key(item), out Queue<T>? same) && same.TryDequeue(out T? first) ? first : null, item);
        foreach (T item in waiting.Values.SelectMany(queue => queue))
            yield return (item, null);
    }
}
