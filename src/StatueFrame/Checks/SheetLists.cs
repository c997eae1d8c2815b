namespace StatueFrame.Checks;

/// <summary>The lines of a check sheet while it is being written.</summary>
internal sealed class SheetLists
{
    public List<ResultLine> Results { get; } = [];

    public List<Check> Checks { get; } = [];

    public List<Assumption> Assumptions { get; } = [];

    public List<string> Warnings { get; } = [];

    /// <summary>The winds whose vortices and galloping are on the sheet already.</summary>
    public HashSet<WindAction> WindsAcross { get; } = [];
}
