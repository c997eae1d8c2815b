namespace StatueFrame.Checks;

/// <summary>One link by which load travels from the sheet to the ground, and what holds it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Link">The link, as in "saddles".</param>
/// <param name="What">What of it has to hold, as in "slip of clamped straps".</param>
/// <param name="State">Whether it is held.</param>
/// <param name="Ids">The checks that hold it, by id; empty where the library has none.</param>
/// <param name="Governing">The check with the greatest utilization among them; null when none was done.</param>
/// <param name="Reason">Why it is open; empty when it is not.</param>
public sealed record PathLink(string Link, string What, LinkState State, ValueList<string> Ids, Check? Governing, string Reason)
{
    /// <summary>The greatest utilization of its checks; null when none was done.</summary>
    public double? Worst => Governing?.Utilization;

    /// <summary>The greatest utilization as printed, as in "0.72"; empty when none was done.</summary>
    public string WorstText => Worst is { } worst ? CheckNumber.Utilization(worst) : "";

    /// <summary>The link on one line.</summary>
    public override string ToString() => State switch
    {
        LinkState.Open => $"{Link}, {What}: OPEN: {Reason}",
        LinkState.Fails => $"{Link}, {What}: FAILS, {WorstText}",
        _ => $"{Link}, {What}: holds, {WorstText}",
    };
}
