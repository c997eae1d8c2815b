using System.Text.RegularExpressions;

namespace StatueFrame;

/// <summary>
/// A description cannot be analyzed. The message lists every problem that was found, not just the first; one that is the same
/// at many items of a list, as a standoff that many rings share, is told once with the first and the last of them.
/// </summary>
public sealed partial class InvalidStatueException : ArgumentException
{
    /// <summary>Creates the exception for a list of problems.</summary>
    /// <param name="problems">All that was found; at least one.</param>
    /// <param name="inner">The error behind them, if there is one.</param>
    public InvalidStatueException(IReadOnlyList<Problem> problems, Exception? inner = null)
        : base(Describe(problems), inner) => Problems = problems;

    /// <summary>All problems found, in the order of the description.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    private static string Describe(IReadOnlyList<Problem> problems)
    {
        Problem[][] told = [.. problems.GroupBy(p => (ItemNumber().Replace(p.Path, "[]"), p.Message, p.Hint)).Select(alike => alike.ToArray())];
        string places = told.Length < problems.Count ? $" at {problems.Count} places" : "";
        return $"{told.Length} {(told.Length == 1 ? "problem" : "problems")}{places} in the description:{Environment.NewLine}"
            + string.Join(Environment.NewLine, told.Select(alike => "  " + OnOneLine(alike)));
    }

    private static string OnOneLine(Problem[] alike) => alike.Length == 1
        ? alike[0].ToString()
        : (alike[0] with { Path = $"{alike[0].Path}{(alike.Length > 2 ? $", {alike.Length - 2} more" : "")} and {alike[^1].Path}" }).ToString();

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex ItemNumber();
}
