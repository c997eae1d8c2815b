namespace StatueFrame.Mechanics;

/// <summary>One thing that is wrong with a frame.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Message">What is wrong, in words that name node and freedom.</param>
/// <param name="Node">Index of the node concerned, or −1 when the problem belongs to no single node.</param>
/// <param name="Freedoms">The freedoms concerned, or <see cref="Freedoms.None"/>.</param>
public sealed record FrameProblem(string Message, int Node = -1, Freedoms Freedoms = Freedoms.None)
{
    /// <summary>The message.</summary>
    public override string ToString() => Message;
}
