using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>A rigid body carried by a node: mass, where its centroid lies, and its own inertia.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class PointMass
{
    private const int Size = 6;

    /// <summary>Hangs a body on a node.</summary>
    /// <param name="node">Index of the node in the frame.</param>
    /// <param name="mass">Mass, kg; zero or more.</param>
    /// <param name="offset">From the node to the body's centroid, m, global axes.</param>
    /// <param name="inertia">Inertia about the body's own centroid, kg·m²; positive semidefinite.</param>
    /// <exception cref="ArgumentException">A value is not finite, the mass negative, or the inertia not positive semidefinite.</exception>
    public PointMass(int node, double mass, Vector3D offset = default, InertiaTensor inertia = default)
    {
        if (!(mass >= 0 && double.IsFinite(mass)))
            throw new ArgumentException(Invariant($"The mass at node {node} must be finite and not negative, but is {mass}."), nameof(mass));
        if (!offset.IsFinite)
            throw new ArgumentException($"The mass at node {node} must have a finite offset, not {offset}.", nameof(offset));
        Span<double> tensor = stackalloc double[9];
        inertia.CopyTo(tensor);
        double trace = Math.Abs(inertia.XX) + Math.Abs(inertia.YY) + Math.Abs(inertia.ZZ);
        bool finite = true;
        foreach (double value in tensor)
            finite &= double.IsFinite(value);
        if (!finite || !SmallMatrix.IsPositiveSemidefinite(tensor, 3, allowance: 0, floor: 1e-9 * trace))
            throw new ArgumentException($"The inertia at node {node} must be finite and positive semidefinite, but is {inertia}.", nameof(inertia));
        Node = node;
        Mass = mass;
        Offset = offset;
        Inertia = inertia;
    }

    /// <summary>Index of the node in the frame.</summary>
    public int Node { get; }

    /// <summary>Mass, kg.</summary>
    public double Mass { get; }

    /// <summary>From the node to the body's centroid, m, global axes.</summary>
    public Vector3D Offset { get; }

    /// <summary>Inertia about the body's own centroid, kg·m².</summary>
    public InertiaTensor Inertia { get; }

    /// <summary>Adds the mass matrix of the node's six freedoms to <paramref name="m"/> (36 values; kg, kg·m, kg·m²).</summary>
    public void AddMass(Span<double> m)
    {
        Span<double> own = stackalloc double[Size * Size], tensor = stackalloc double[9];
        Inertia.CopyTo(tensor);
        for (int i = 0; i < 3; i++)
        {
            own[(Size + 1) * i] = Mass;
            tensor.Slice(3 * i, 3).CopyTo(own[(Size * (i + 3) + 3)..]);
        }
        SmallMatrix.CarryByArm(own, Size, 0, Offset);
        SmallMatrix.AddSymmetric(own, m, Size);
    }

    /// <summary>
    /// Adds a mass without inertia of its own to a node's 6×6, row-major: with v = u + θ×r at the arm r, m·v works through
    /// m on u, m r× between u and θ, and m (r·r − r rᵀ) on θ.
    /// </summary>
    internal static void Add(double mass, Vector3D offset, Span<double> m36)
    {
        (double x, double y, double z) = offset;
        Vector3D p = mass * offset;
        for (int i = 0; i < 3; i++)
            m36[(Frame.NodeSize + 1) * i] += mass;
        Pair(m36, 0, 4, p.Z);
        Pair(m36, 0, 5, -p.Y);
        Pair(m36, 1, 3, -p.Z);
        Pair(m36, 1, 5, p.X);
        Pair(m36, 2, 3, p.Y);
        Pair(m36, 2, 4, -p.X);
        m36[21] += p.Y * y + p.Z * z;
        m36[28] += p.X * x + p.Z * z;
        m36[35] += p.X * x + p.Y * y;
        Pair(m36, 3, 4, -p.X * y);
        Pair(m36, 3, 5, -p.X * z);
        Pair(m36, 4, 5, -p.Y * z);

        static void Pair(Span<double> m36, int i, int j, double value)
        {
            m36[Frame.NodeSize * i + j] += value;
            m36[Frame.NodeSize * j + i] += value;
        }
    }
}
