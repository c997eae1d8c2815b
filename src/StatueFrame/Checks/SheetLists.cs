using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>The lines of a check sheet while it is being written.</summary>
internal sealed class SheetLists
{
    public List<ResultLine> Results { get; } = [];

    public List<Check> Checks { get; } = [];

    public List<Assumption> Assumptions { get; } = [];

    public List<string> Warnings { get; } = [];

    /// <summary>Lists assumptions, and lets every check from one on say that it rests on them; one that was not done rests on nothing.</summary>
    public void Assume(IEnumerable<Assumption> assumptions, int firstCheck)
    {
        Assumption[] all = [.. assumptions];
        Assumptions.AddRange(all);
        string[] inputs = Array.ConvertAll(all, assumption => assumption.Short);
        for (int i = firstCheck; i < Checks.Count; i++)
        {
            if (Checks[i].Verdict != Verdict.NotChecked)
                Checks[i] = Checks[i].Assuming(inputs);
        }
    }

    /// <summary>The winds whose vortices and galloping are on the sheet already.</summary>
    public HashSet<WindAction> WindsAcross { get; } = [];

    /// <summary>The heat of the situation that is being written; null without.</summary>
    public HeatField? Heat { get; set; }

    /// <summary>The heats, with their factors, whose effects are on the sheet already.</summary>
    public HashSet<ValueList<FactoredAction>> Heats { get; } = [];

    /// <summary>What vortices do in each wind on the sheet, with the modes they shake.</summary>
    public Dictionary<WindAction, (ModalResponse Modes, AcrossWindReport Report)> Vortices { get; } = [];
}
