namespace StatueFrame.Checks;

/// <summary>The one order of checks, which neither the order they came in nor rounding noise can change.</summary>
internal static class CheckOrder
{
    /// <summary>Failed, passed, not checked; in each the greatest utilization first; then by subject.</summary>
    public static Comparer<Check> WorstFirst { get; } = Comparer<Check>.Create(CompareWorst);

    /// <summary>By family, then <see cref="WorstFirst"/>.</summary>
    public static ValueList<Check> Sorted(ValueList<Check> checks) =>
        checks.OrderBy(check => check.Family, StringComparer.Ordinal).ThenBy(check => check, WorstFirst).ToValueList();

    /// <summary>By id, place and situation.</summary>
    public static int CompareSubjects(CheckSubject a, CheckSubject b)
    {
        int order = string.CompareOrdinal(a.Id, b.Id);
        order = order != 0 ? order : string.CompareOrdinal(a.Where, b.Where);
        return order != 0 ? order : string.CompareOrdinal(a.Situation, b.Situation);
    }

    private static int CompareWorst(Check a, Check b)
    {
        int order = Severity(a.Verdict).CompareTo(Severity(b.Verdict));
        order = order != 0 ? order : Compared(b.Utilization).CompareTo(Compared(a.Utilization));
        order = order != 0 ? order : CompareSubjects(a.Subject, b.Subject);
        return order != 0 ? order : string.CompareOrdinal(a.VerdictText, b.VerdictText);
    }

    private static int Severity(Verdict verdict) => verdict switch { Verdict.Fail => 0, Verdict.Pass => 1, _ => 2 };

    private static double Compared(double? utilization) => CheckNumber.WithoutNoise(utilization ?? -1);
}
