namespace StatueFrame.Reporting;

/// <summary>How many checks a calculation package shows the working of.</summary>
public enum WorkingExtent
{
    /// <summary>Every check that was done.</summary>
    EveryCheck,

    /// <summary>The worst check of each kind, and every check that fails.</summary>
    WorstOfEachKind,
}
