namespace StatueFrame.Mechanics.Elements;

/// <summary>An elastic support of a node, in global axes: six springs, or a full 6×6 stiffness as of a foundation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class GroundSpring
{
    private const int Size = 6;

    private readonly double[] stiffness;

    /// <summary>Six springs that do not disturb each other.</summary>
    /// <param name="node">Index of the node in the frame.</param>
    /// <param name="x">Stiffness along x, N/m; zero or more.</param>
    /// <param name="y">Stiffness along y, N/m; zero or more.</param>
    /// <param name="z">Stiffness along z, N/m; zero or more.</param>
    /// <param name="rotationX">Stiffness about x, N·m/rad; zero or more.</param>
    /// <param name="rotationY">Stiffness about y, N·m/rad; zero or more.</param>
    /// <param name="rotationZ">Stiffness about z, N·m/rad; zero or more.</param>
    /// <exception cref="ArgumentException">A stiffness is negative or not finite.</exception>
    public GroundSpring(
        int node, double x, double y, double z, double rotationX = 0, double rotationY = 0, double rotationZ = 0)
        : this(node, Diagonal([x, y, z, rotationX, rotationY, rotationZ]))
    {
    }

    /// <summary>A full stiffness matrix.</summary>
    /// <param name="node">Index of the node in the frame.</param>
    /// <param name="stiffness">36 values, row-major, symmetric within 1e-9 and positive semidefinite; N/m, N, N·m.</param>
    /// <exception cref="ArgumentException">Wrong size, not finite, not symmetric or not positive semidefinite.</exception>
    public GroundSpring(int node, ReadOnlySpan<double> stiffness)
    {
        string subject = $"The ground spring at node {node}";
        this.stiffness = SmallMatrix.CheckedSymmetric(stiffness, Size, subject, nameof(stiffness));
        if (!SmallMatrix.IsPositiveSemidefinite(this.stiffness, Size, allowance: 1e-9))
            throw new ArgumentException($"{subject} must not have a negative stiffness in any direction.", nameof(stiffness));
        Node = node;
    }

    /// <summary>Index of the node in the frame.</summary>
    public int Node { get; }

    /// <summary>Adds the stiffness to that of the node's six freedoms, <paramref name="k"/> (36 values).</summary>
    public void AddStiffness(Span<double> k) => SmallMatrix.AddSymmetric(stiffness, k, Size);

    private static double[] Diagonal(ReadOnlySpan<double> values)
    {
        var m = new double[Size * Size];
        for (int i = 0; i < Size; i++)
            m[(Size + 1) * i] = values[i];
        return m;
    }
}
