namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// What joins nodes of a frame. It speaks in global axes at its nodes: six freedoms each, in the order of
/// <see cref="Freedoms"/>, node after node; matrices are square, row-major, symmetric.
/// </summary>
/// <remarks>Implementations are immutable and safe to share between threads.</remarks>
public abstract class FiniteElement
{
    private readonly int[] nodes;

    /// <summary>An element that joins some nodes.</summary>
    /// <param name="nodes">Their indices in the frame.</param>
    protected FiniteElement(params ReadOnlySpan<int> nodes) => this.nodes = nodes.ToArray();

    /// <summary>The indices of its nodes in the frame.</summary>
    public ReadOnlySpan<int> Nodes => nodes;

    /// <summary>The number of freedoms it joins, six a node.</summary>
    public int FreedomCount => Frame.NodeSize * nodes.Length;

    /// <summary>Adds the stiffness matrix to <paramref name="k"/> (N/m, N, N·m).</summary>
    public abstract void AddStiffness(Span<double> k);

    /// <summary>Adds the consistent mass matrix to <paramref name="m"/> (kg, kg·m, kg·m²).</summary>
    public virtual void AddMass(Span<double> m) { }

    /// <summary>
    /// Adds the geometric stiffness of the element under the state of stress that the displacements <paramref name="u"/>
    /// of its nodes (global axes) cause. Tension stiffens.
    /// </summary>
    public virtual void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg) { }

    /// <summary>Picks the displacements of its nodes out of a full vector.</summary>
    /// <param name="full">A full vector of the frame.</param>
    /// <param name="own">Receives <see cref="FreedomCount"/> values.</param>
    public void Gather(ReadOnlySpan<double> full, Span<double> own)
    {
        for (int i = 0; i < nodes.Length; i++)
            full.Slice(Frame.NodeSize * nodes[i], Frame.NodeSize).CopyTo(own[(Frame.NodeSize * i)..]);
    }
}
