namespace StatueFrame.Reporting;

/// <summary>How much of the workings a calculation package shows.</summary>
public enum WorkingExtent
{
    /// <summary>
    /// The worst check of each kind that is used to a quarter or governs its family, and every check that fails, in full; of the others
    /// a line a part, in the situation where it is worst. To be printed and countersigned.
    /// </summary>
    WorstOfEachKind,

    /// <summary>
    /// As an appendix: the worst check of each kind in full, and the numbers of all others that go by the same steps as a
    /// table below it, so that every check in every situation can be followed.
    /// </summary>
    WorstAndTables,

    /// <summary>Every check in full. A large statue's package is then too long to print: several checks a page, thousands of checks.</summary>
    EveryCheck,
}
