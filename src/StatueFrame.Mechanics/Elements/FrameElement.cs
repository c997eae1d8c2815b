namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// An element that joins two nodes of a frame. It speaks in global axes at its two nodes: twelve freedoms, the six of
/// the start node first, each in the order of <see cref="Freedoms"/>; matrices are 12×12, row-major, symmetric.
/// </summary>
/// <remarks>Implementations are immutable and safe to share between threads.</remarks>
public abstract class FrameElement(int start, int end)
{
    /// <summary>The number of freedoms an element joins.</summary>
    public const int Size = 12;

    /// <summary>Index of the start node in the frame.</summary>
    public int Start { get; } = start;

    /// <summary>Index of the end node in the frame.</summary>
    public int End { get; } = end;

    /// <summary>Adds the stiffness matrix to <paramref name="k"/> (144 values; N/m, N, N·m).</summary>
    public abstract void AddStiffness(Span<double> k);

    /// <summary>Adds the consistent mass matrix to <paramref name="m"/> (144 values; kg, kg·m, kg·m²).</summary>
    public virtual void AddMass(Span<double> m) { }

    /// <summary>
    /// Adds the geometric stiffness of the element under the state of stress that the displacements
    /// <paramref name="u"/> (12 values, global axes) cause. Tension stiffens.
    /// </summary>
    public virtual void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg) { }

    /// <summary>
    /// The axial force under the displacements <paramref name="u"/> when the geometric stiffness is that force times a matrix
    /// of its own, as of a single straight member; null for all others.
    /// </summary>
    internal virtual double? AxialForceOf(ReadOnlySpan<double> u) => null;
}
