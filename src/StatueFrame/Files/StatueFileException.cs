namespace StatueFrame;

/// <summary>A statue's file or a table of its parts cannot be read, or a description cannot be put in one. The message lists every problem, not just the first.</summary>
public sealed class StatueFileException : FormatException
{
    /// <summary>The most problems that one exception lists.</summary>
    public const int MostProblems = 100;

    internal StatueFileException(IReadOnlyList<StatueFileProblem> problems, Exception? inner = null)
        : base(Describe(problems), inner) => Problems = problems.ToValueList();

    /// <summary>What was found, in the order of the file; at most <see cref="MostProblems"/>.</summary>
    public ValueList<StatueFileProblem> Problems { get; }

    private static string Describe(IReadOnlyList<StatueFileProblem> problems) =>
        $"{problems.Count} {(problems.Count == 1 ? "problem" : "problems")} in the file:{Environment.NewLine}"
        + string.Join(Environment.NewLine, problems.Select(p => "  " + p));
}
