namespace StatueFrame.Reporting;

/// <summary>How much of the workings a calculation package shows.</summary>
public enum WorkingExtent
{
    /// <summary>
    /// The worst check of each kind in full, and the numbers of all others that go by the same steps as a table below it: every
    /// check can be followed, on a fraction of the paper.
    /// </summary>
    WorstAndTables,

    /// <summary>The worst check of each kind and every check that fails, in full; no working of the others.</summary>
    WorstOfEachKind,

    /// <summary>Every check in full. A large statue's package is then too long to print: several checks a page, thousands of checks.</summary>
    EveryCheck,
}
