using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>Why a check moved: the numbers in its working that are not the same.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Before">The check of the earlier sheet at the place of <paramref name="After"/>; null when it was not done there.</param>
/// <param name="After">The governing check of a family on the later sheet.</param>
/// <param name="Given">Inputs of the check that changed, as in "t: 14 mm → 18 mm".</param>
public sealed record CheckReason(Check? Before, Check After, ValueList<string> Given)
{
    /// <summary>The reason on one line.</summary>
    public override string ToString() =>
        $"{After.Subject}: {Before?.UtilizationText ?? "not checked"} → {After.UtilizationText}{(Given.Count > 0 ? $" as {string.Join(", ", Given)}" : "")}";

    /// <summary>The governing checks of the later sheet that moved, the greatest change first.</summary>
    internal static ValueList<CheckReason> Between(CheckSheet earlier, CheckSheet later, double tolerance)
    {
        Dictionary<StudyKey, Check> before = StudyKey.WorstOf(earlier);
        return later.GoverningByFamily
            .Select(check => (After: check, Before: before.GetValueOrDefault(StudyKey.Of(check)) is { Verdict: not Verdict.NotChecked } found ? found : null))
            .Where(pair => pair.Before is null || CheckNumber.Differ(pair.Before.Utilization ?? 0, pair.After.Utilization ?? 0, tolerance, 1))
            .OrderByDescending(pair => Math.Abs((pair.After.Utilization ?? 0) - (pair.Before?.Utilization ?? 0)))
            .ThenBy(pair => pair.After.Id, StringComparer.Ordinal)
            .Select(pair => new CheckReason(pair.Before, pair.After, pair.Before is null ? [] : Changed(pair.Before, pair.After, tolerance).ToValueList()))
            .ToValueList();
    }

    private static IEnumerable<string> Changed(Check before, Check after, double tolerance)
    {
        var was = new Dictionary<(string, string), WorkingLine.Given>();
        foreach (WorkingLine.Given line in before.Working().Lines.OfType<WorkingLine.Given>())
            was.TryAdd((line.Symbol.ToText(), line.Meaning), line);
        foreach (WorkingLine.Given line in after.Working().Lines.OfType<WorkingLine.Given>())
        {
            string symbol = line.Symbol.ToText();
            if (was.Remove((symbol, line.Meaning), out WorkingLine.Given? old) && CheckNumber.Differ(old.Value, line.Value, tolerance, 0))
                yield return $"{symbol}: {TextLayout.Format(old.Value, old.Dimension, DisplayUnits.Metric)} → {TextLayout.Format(line.Value, line.Dimension, DisplayUnits.Metric)}";
        }
    }
}
