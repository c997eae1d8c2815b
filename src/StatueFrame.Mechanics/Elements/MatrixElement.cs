namespace StatueFrame.Mechanics.Elements;

/// <summary>An element given by its matrices: whatever was condensed or measured elsewhere, in global axes.</summary>
/// <remarks>Immutable and safe to share between threads, when its geometric stiffness function is.</remarks>
public sealed class MatrixElement : FrameElement
{
    private readonly double[] stiffness;
    private readonly double[]? mass;
    private readonly GeometricStiffness? geometricStiffness;

    /// <summary>Takes copies of the matrices.</summary>
    /// <param name="start">Index of the start node.</param>
    /// <param name="end">Index of the end node.</param>
    /// <param name="stiffness">144 values, row-major, symmetric within 1e-9.</param>
    /// <param name="mass">144 values, row-major, symmetric within 1e-9; empty for no mass.</param>
    /// <param name="geometricStiffness">Gives the geometric stiffness; null for none.</param>
    /// <exception cref="ArgumentException">One node twice, or a matrix of wrong size, not finite or not symmetric.</exception>
    public MatrixElement(
        int start, int end, ReadOnlySpan<double> stiffness, ReadOnlySpan<double> mass = default,
        GeometricStiffness? geometricStiffness = null) : base(start, end)
    {
        string name = $"the element from node {start} to node {end}";
        if (start == end)
            throw new ArgumentException($"An element must join two different nodes, not node {start} twice.", nameof(end));
        this.stiffness = SmallMatrix.CheckedSymmetric(stiffness, Size, $"The stiffness of {name}", nameof(stiffness));
        if (!mass.IsEmpty)
            this.mass = SmallMatrix.CheckedSymmetric(mass, Size, $"The mass of {name}", nameof(mass));
        this.geometricStiffness = geometricStiffness;
    }

    /// <inheritdoc/>
    public override void AddStiffness(Span<double> k) => SmallMatrix.AddSymmetric(stiffness, k, Size);

    /// <inheritdoc/>
    public override void AddMass(Span<double> m)
    {
        if (mass is not null)
            SmallMatrix.AddSymmetric(mass, m, Size);
    }

    /// <inheritdoc/>
    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg) => geometricStiffness?.Invoke(u, kg);
}
