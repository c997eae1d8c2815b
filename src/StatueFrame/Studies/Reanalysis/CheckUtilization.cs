namespace StatueFrame.Studies;

/// <summary>The governing utilization of one kind of check in a situation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Id">The kind of check, as in "bars.bending".</param>
/// <param name="Utilization">The greatest demand over capacity; infinite without capacity, null when none of the kind could be checked.</param>
/// <param name="NotChecked">How many of the kind could not be checked.</param>
public readonly record struct CheckUtilization(string Id, double? Utilization, int NotChecked);
