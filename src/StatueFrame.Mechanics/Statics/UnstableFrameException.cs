namespace StatueFrame.Mechanics.Statics;

/// <summary>The loads of a second-order analysis are at or beyond those at which the frame buckles.</summary>
public sealed class UnstableFrameException : FrameException
{
    /// <summary>Creates the exception from the problem found.</summary>
    public UnstableFrameException(FrameProblem problem)
        : base(problem)
    {
    }
}
