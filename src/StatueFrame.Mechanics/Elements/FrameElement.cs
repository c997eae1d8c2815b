namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// An element that joins two nodes of a frame: twelve freedoms, the six of the start node first; matrices are 12×12.
/// </summary>
/// <remarks>Implementations are immutable and safe to share between threads.</remarks>
public abstract class FrameElement(int start, int end) : FiniteElement(start, end)
{
    /// <summary>The number of freedoms an element joins.</summary>
    public const int Size = 12;

    /// <summary>Index of the start node in the frame.</summary>
    public int Start { get; } = start;

    /// <summary>Index of the end node in the frame.</summary>
    public int End { get; } = end;

    /// <summary>
    /// The axial force under the displacements <paramref name="u"/> when the geometric stiffness is that force times a matrix
    /// of its own, as of a single straight member; null for all others.
    /// </summary>
    internal virtual double? AxialForceOf(ReadOnlySpan<double> u) => null;
}
