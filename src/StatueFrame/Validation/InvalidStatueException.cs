namespace StatueFrame;

/// <summary>A description cannot be analyzed. The message lists every problem that was found, not just the first.</summary>
public sealed class InvalidStatueException : ArgumentException
{
    /// <summary>Creates the exception for a list of problems.</summary>
    /// <param name="problems">All that was found; at least one.</param>
    /// <param name="inner">The error behind them, if there is one.</param>
    public InvalidStatueException(IReadOnlyList<Problem> problems, Exception? inner = null)
        : base(Describe(problems), inner) => Problems = problems;

    /// <summary>All problems found, in the order of the description.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    private static string Describe(IReadOnlyList<Problem> problems) =>
        $"{problems.Count} {(problems.Count == 1 ? "problem" : "problems")} in the description:{Environment.NewLine}"
        + string.Join(Environment.NewLine, problems.Select(p => "  " + p));
}
