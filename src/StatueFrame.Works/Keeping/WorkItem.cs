namespace StatueFrame.Works;

/// <summary>One work on a part.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Urgency">When.</param>
/// <param name="Part">The part, by its name on the sheet.</param>
/// <param name="Reason">Why, as in "bars.bending 1.12 as it is; worn".</param>
/// <param name="Utilization">The worst utilization of a check there; null when none looks at it.</param>
public sealed record WorkItem(Urgency Urgency, string Part, string Reason, double? Utilization);
