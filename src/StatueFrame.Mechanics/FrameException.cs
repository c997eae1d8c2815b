namespace StatueFrame.Mechanics;

/// <summary>A frame cannot be built or solved; lists every problem found, each naming its node and freedom.</summary>
public class FrameException : Exception
{
    /// <summary>Creates the exception from all problems found.</summary>
    public FrameException(IReadOnlyList<FrameProblem> problems)
        : base(string.Join(Environment.NewLine, problems)) => Problems = problems;

    /// <summary>Creates the exception from one problem.</summary>
    public FrameException(FrameProblem problem)
        : this([problem])
    {
    }

    /// <summary>All problems found; never empty.</summary>
    public IReadOnlyList<FrameProblem> Problems { get; }
}
