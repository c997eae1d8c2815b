namespace StatueFrame.Checks;

/// <summary>How much of a check sheet is printed.</summary>
public enum SheetForm
{
    /// <summary>One page of at most 40 lines: verdict, basis, what governs each link of the load path, what is open, the assumptions that carry most.</summary>
    Short,

    /// <summary>What governs each family, results, all that is open or assumed; other checks are counted.</summary>
    Full,

    /// <summary>What fails and nothing else, worst first.</summary>
    Failures,

    /// <summary>The full form with every check of each part where it is worst.</summary>
    Parts,

    /// <summary>The full form with every check in every situation.</summary>
    Everything,
}
