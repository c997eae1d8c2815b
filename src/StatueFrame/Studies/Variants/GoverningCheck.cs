using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>The governing check of a family of a variant, without its working.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Subject">What is checked, and where.</param>
/// <param name="Utilization">Demand over capacity.</param>
/// <param name="Verdict">Passed or failed.</param>
public sealed record GoverningCheck(CheckSubject Subject, double Utilization, Verdict Verdict)
{
    /// <summary>The utilization as sheets print it.</summary>
    public string UtilizationText => CheckNumber.Utilization(Utilization);

    /// <summary>The check on one line, as in "bars.bending, band 3, storm: 0.71".</summary>
    public override string ToString() => $"{Subject}: {UtilizationText}{(Verdict == Verdict.Fail ? " FAIL" : "")}";

    internal static GoverningCheck? Of(Check? check) => check is { Utilization: { } utilization } ? new(check.Subject, utilization, check.Verdict) : null;
}
