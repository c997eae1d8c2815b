using System.Buffers;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics;

/// <summary>
/// A frame in space, ready to be solved: nodes with six freedoms, the elements between them, and the stiffness and mass
/// matrices of the freedoms that are not restrained. Vectors over all nodes ("full", 6 values a node, in the order of
/// <see cref="Freedoms"/>) are what goes in and out; vectors over the equations ("reduced") are for the solvers.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads; the values of <see cref="Stiffness"/> and <see cref="Mass"/> must not be
/// written to.
/// </remarks>
public sealed class Frame
{
    /// <summary>Number of freedoms of a node.</summary>
    public const int NodeSize = 6;

    private readonly FrameNode[] nodes;
    private readonly FiniteElement[] elements;
    private readonly SortedDictionary<int, double[]> springs;

    internal Frame(
        FrameNode[] nodes, FiniteElement[] elements, SortedDictionary<int, double[]> springs, FrameTopology topology,
        SymmetricMatrix stiffness, SymmetricMatrix mass)
    {
        this.nodes = nodes;
        this.elements = elements;
        this.springs = springs;
        Topology = topology;
        Stiffness = stiffness;
        Mass = mass;
    }

    /// <summary>The nodes, by index.</summary>
    public IReadOnlyList<FrameNode> Nodes => nodes;

    /// <summary>The elements, in the order in which they were added.</summary>
    public IReadOnlyList<FiniteElement> Elements => elements;

    /// <summary>Number of values of a full vector: six for each node, restrained or not.</summary>
    public int FreedomCount => NodeSize * nodes.Length;

    /// <summary>Number of equations: the freedoms that are not restrained.</summary>
    public int EquationCount => Stiffness.Order;

    /// <summary>The stiffness of the unrestrained freedoms, ground springs included.</summary>
    public SymmetricMatrix Stiffness { get; }

    /// <summary>The mass of the unrestrained freedoms.</summary>
    public SymmetricMatrix Mass { get; }

    /// <summary>The order of elimination, shared by every matrix of this frame and of frames built like it.</summary>
    public SymbolicFactorization Symbolic => Topology.Symbolic;

    internal FrameTopology Topology { get; }

    /// <summary>The equation of a freedom, or −1 when it is restrained.</summary>
    /// <param name="freedom">6 · node + freedom, from 0.</param>
    public int EquationOf(int freedom) => Topology.Equations[freedom];

    /// <summary>The freedom, 6 · node + freedom, of an equation.</summary>
    public int FreedomOf(int equation) => Topology.FreedomOfEquation[equation];

    /// <summary>A freedom as messages call it, such as "RotationX of node 3 'neck'".</summary>
    /// <param name="freedom">6 · node + freedom, from 0.</param>
    public string Describe(int freedom) => $"{(Freedoms)(1 << freedom % NodeSize)} of {nodes[freedom / NodeSize]}";

    /// <summary>Picks the values at the unrestrained freedoms out of a full vector.</summary>
    public void Reduce(ReadOnlySpan<double> full, Span<double> reduced)
    {
        ReadOnlySpan<int> freedoms = Topology.FreedomOfEquation;
        for (int equation = 0; equation < freedoms.Length; equation++)
            reduced[equation] = full[freedoms[equation]];
    }

    /// <summary>Spreads a reduced vector over all freedoms, with zero at the restrained ones.</summary>
    public void Expand(ReadOnlySpan<double> reduced, Span<double> full)
    {
        full.Clear();
        ReadOnlySpan<int> freedoms = Topology.FreedomOfEquation;
        for (int equation = 0; equation < freedoms.Length; equation++)
            full[freedoms[equation]] = reduced[equation];
    }

    /// <summary>
    /// The geometric stiffness of the unrestrained freedoms under the stresses that the displacements cause.
    /// </summary>
    /// <param name="displacements">A full vector; m, rad.</param>
    public SymmetricMatrix GeometricStiffness(ReadOnlySpan<double> displacements)
    {
        var sum = new SymmetricMatrix(Topology.Pattern);
        AddGeometricStiffness(displacements, sum);
        return sum;
    }

    /// <summary>Adds the geometric stiffness to a matrix on this frame's pattern.</summary>
    /// <param name="displacements">A full vector; m, rad.</param>
    /// <param name="sum">What it is added to.</param>
    public void AddGeometricStiffness(ReadOnlySpan<double> displacements, SymmetricMatrix sum)
    {
        RequireFull(displacements, nameof(displacements));
        if (sum.Pattern != Topology.Pattern)
            throw new ArgumentException("The matrix must be on the frame's own pattern.", nameof(sum));
        Span<double> u = stackalloc double[Topology.MostFreedoms], matrix = stackalloc double[u.Length * u.Length];
        for (int element = 0; element < elements.Length; element++)
        {
            int size = elements[element].FreedomCount;
            elements[element].Gather(displacements, u);
            matrix.Clear();
            elements[element].AddGeometricStiffness(u[..size], matrix[..(size * size)]);
            Topology.ScatterElement(element, matrix, sum.Values);
        }
    }

    /// <summary>
    /// The forces that the nodes put on an element to hold it displaced, k·u: node after node, global axes; N, N·m.
    /// </summary>
    /// <param name="element">Index of the element.</param>
    /// <param name="displacements">A full vector; m, rad.</param>
    /// <param name="forces">Receives six values a node.</param>
    public void ElementForces(int element, ReadOnlySpan<double> displacements, Span<double> forces)
    {
        RequireFull(displacements, nameof(displacements));
        Span<double> u = stackalloc double[elements[element].FreedomCount], matrix = stackalloc double[u.Length * u.Length];
        matrix.Clear();
        elements[element].Gather(displacements, u);
        elements[element].AddStiffness(matrix);
        Multiply(matrix, u, forces);
    }

    /// <summary>
    /// A small rigid motion of the whole frame as a full vector: unit displacement along, or unit rotation about, one axis.
    /// Restrained freedoms move along.
    /// </summary>
    /// <param name="direction">0, 1, 2: displacement along x, y, z; 3, 4, 5: rotation about x, y, z.</param>
    /// <param name="about">The point about which a rotation turns, m.</param>
    public double[] RigidMotion(int direction, Vector3D about = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(direction);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(direction, NodeSize);
        var motion = new double[FreedomCount];
        Vector3D axis = (direction % 3) switch { 0 => Vector3D.UnitX, 1 => Vector3D.UnitY, _ => Vector3D.UnitZ };
        for (int node = 0; node < nodes.Length; node++)
        {
            Vector3D displacement = direction < 3 ? axis : axis.Cross(nodes[node].Position - about);
            motion[NodeSize * node] = displacement.X;
            motion[NodeSize * node + 1] = displacement.Y;
            motion[NodeSize * node + 2] = displacement.Z;
            if (direction >= 3)
                motion[NodeSize * node + direction] = 1;
        }
        return motion;
    }

    /// <summary>Mass times acceleration at the unrestrained freedoms, as a full vector; zero at restrained freedoms.</summary>
    /// <param name="accelerations">A full vector; m/s², rad/s². Values at restrained freedoms are passed over.</param>
    public double[] InertiaForces(ReadOnlySpan<double> accelerations)
    {
        var forces = new double[FreedomCount];
        InertiaForces(accelerations, forces);
        return forces;
    }

    /// <summary>As <see cref="InertiaForces(ReadOnlySpan{double})"/>, into room that the caller provides.</summary>
    public void InertiaForces(ReadOnlySpan<double> accelerations, Span<double> forces)
    {
        RequireFull(accelerations, nameof(accelerations));
        double[] rented = ArrayPool<double>.Shared.Rent(2 * EquationCount);
        Span<double> reduced = rented.AsSpan(0, EquationCount), product = rented.AsSpan(EquationCount, EquationCount);
        Reduce(accelerations, reduced);
        Mass.Multiply(reduced, product);
        Expand(product, forces);
        ArrayPool<double>.Shared.Return(rented);
    }

    /// <summary>The ground springs: nodes and their 6×6 stiffness.</summary>
    internal IEnumerable<KeyValuePair<int, double[]>> Springs => springs;

    /// <summary>y = A x for a small dense matrix, row-major.</summary>
    internal static void Multiply(ReadOnlySpan<double> matrix, ReadOnlySpan<double> x, Span<double> y)
    {
        for (int i = 0; i < x.Length; i++)
            y[i] = DenseVector.Dot(matrix.Slice(i * x.Length, x.Length), x);
    }

    /// <summary>Throws unless the vector holds one or more full vectors of finite values; returns how many.</summary>
    internal int RequireFull(ReadOnlySpan<double> vectors, string name, bool single = true)
    {
        int count = vectors.Length / FreedomCount;
        if (vectors.Length == 0 || vectors.Length % FreedomCount != 0 || (single && count != 1))
            throw new ArgumentException($"Expected {FreedomCount} values, six a node, not {vectors.Length}.", name);
        for (int i = 0; i < vectors.Length; i++)
        {
            if (!double.IsFinite(vectors[i]))
                throw new ArgumentException($"The value for {Describe(i % FreedomCount)} is not finite.", name);
        }
        return count;
    }
}
