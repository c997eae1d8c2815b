namespace StatueFrame.Checks;

/// <summary>The one order of checks, which neither the order they came in nor rounding noise can change.</summary>
internal static class CheckOrder
{
    private static readonly Comparer<(Check Check, string Family, double Utilization)> byFamily = Comparer<(Check Check, string Family, double Utilization)>.Create((a, b) =>
    {
        int order = string.CompareOrdinal(a.Family, b.Family);
        return order != 0 ? order : CompareWorst(a.Check, a.Utilization, b.Check, b.Utilization);
    });

    /// <summary>Failed, passed, not checked; in each the greatest utilization first; then by subject.</summary>
    public static Comparer<Check> WorstFirst { get; } = Comparer<Check>.Create(CompareWorst);

    /// <summary>By family, then <see cref="WorstFirst"/>.</summary>
    public static ValueList<Check> Sorted(ValueList<Check> checks)
    {
        // A family is a new text, and a utilization loses its noise by way of one: once a check, not once a comparison.
        var keyed = new (Check Check, string Family, double Utilization)[checks.Count];
        for (int i = 0; i < keyed.Length; i++)
            keyed[i] = (checks[i], checks[i].Family, Compared(checks[i].Utilization));
        return keyed.OrderBy(key => key, byFamily).Select(key => key.Check).ToValueList();
    }

    /// <summary>By id, place and situation.</summary>
    public static int CompareSubjects(CheckSubject a, CheckSubject b)
    {
        int order = string.CompareOrdinal(a.Id, b.Id);
        order = order != 0 ? order : string.CompareOrdinal(a.Where, b.Where);
        return order != 0 ? order : string.CompareOrdinal(a.Situation, b.Situation);
    }

    private static int CompareWorst(Check a, Check b) => CompareWorst(a, Compared(a.Utilization), b, Compared(b.Utilization));

    private static int CompareWorst(Check a, double utilizationOfA, Check b, double utilizationOfB)
    {
        int order = Severity(a.Verdict).CompareTo(Severity(b.Verdict));
        order = order != 0 ? order : utilizationOfB.CompareTo(utilizationOfA);
        order = order != 0 ? order : CompareSubjects(a.Subject, b.Subject);
        return order != 0 ? order : string.CompareOrdinal(a.VerdictText, b.VerdictText);
    }

    private static int Severity(Verdict verdict) => verdict switch { Verdict.Fail => 0, Verdict.Pass => 1, _ => 2 };

    private static double Compared(double? utilization) => CheckNumber.WithoutNoise(utilization ?? -1);
}
