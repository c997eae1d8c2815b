using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// Many members between two nodes, summed into one element: members join the start node, the end node and interior
/// nodes, and the interior nodes are condensed out. The stiffness is exact; mass and geometric stiffness follow the static shape
/// of the interior (Guyan reduction), which is exact for rigid-body motion, and so for loads that act as the mass does.
/// </summary>
/// <remarks>
/// <para>Members number their nodes locally: 0 is the start node, 1 the end node, 2 and above the interior nodes.</para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source: Guyan, Reduction of stiffness and mass matrices, AIAA Journal 3 (1965).</para>
/// </remarks>
public sealed class Superelement : FrameElement
{
    private const int Node = 6;
    private const int Block = Size * Size;
    private const int Axes = 3;

    private readonly FrameElement[] members;
    private readonly double[] stiffness = new double[Block];

    /// <summary>Row by row: the motion of each interior freedom for a unit of each of the twelve freedoms outside.</summary>
    private readonly double[] interior;

    /// <summary>Row by row: the motion of each interior freedom for a unit of force per mass along x, y and z, with both nodes held.</summary>
    private readonly double[] ownMotion;

    /// <summary>Worked out when first asked for; two threads that ask at once work out the same.</summary>
    private AxialStiffening[]? stiffening;

    /// <summary>Sums and condenses the members.</summary>
    /// <param name="start">Index of the start node in the frame.</param>
    /// <param name="end">Index of the end node in the frame.</param>
    /// <param name="interiorNodes">Number of interior nodes.</param>
    /// <param name="members">The members, in local node numbers.</param>
    /// <exception cref="ArgumentException">A member joins an unknown local node, or an interior node is loose.</exception>
    public Superelement(int start, int end, int interiorNodes, ReadOnlySpan<FrameElement> members)
        : base(start, end)
    {
        this.members = members.ToArray();
        foreach (FrameElement member in members)
        {
            if (Math.Min(member.Start, member.End) < 0 || Math.Max(member.Start, member.End) >= 2 + interiorNodes)
                throw new ArgumentException($"A member joins local nodes {member.Start} and {member.End}; there are {2 + interiorNodes}.", nameof(members));
        }
        (interior, ownMotion) = (new double[interiorNodes * Node * Size], new double[interiorNodes * Node * Axes]);
        Condense(interiorNodes * Node);
    }

    /// <summary>The displacements of the two nodes of a member, from those of the element's own two nodes.</summary>
    /// <param name="member">One of the members, or any element between the same local nodes.</param>
    /// <param name="u">Twelve displacements of this element's nodes, global axes.</param>
    /// <param name="memberU">Receives the twelve displacements of the member's nodes.</param>
    /// <param name="perMass">What acts on all members between the two nodes, along their length as their mass does, m/s²; gravity downwards for their weight.</param>
    public void MemberDisplacements(FrameElement member, ReadOnlySpan<double> u, Span<double> memberU, Vector3D perMass = default)
    {
        NodeDisplacements(member.Start, u, perMass, memberU[..Node]);
        NodeDisplacements(member.End, u, perMass, memberU[Node..]);
    }

    /// <inheritdoc/>
    public override void AddStiffness(Span<double> k)
    {
        for (int i = 0; i < Block; i++)
            k[i] += stiffness[i];
    }

    /// <inheritdoc/>
    public override void AddMass(Span<double> m)
    {
        Span<double> own = stackalloc double[Block];
        foreach (FrameElement member in members)
        {
            if (IsOutside(member))
            {
                member.AddMass(m);
                continue;
            }
            own.Clear();
            member.AddMass(own);
            AddReduced(member, own, m);
        }
    }

    /// <inheritdoc/>
    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg)
    {
        AxialStiffening[] parts = stiffening ??= Stiffening();
        foreach (AxialStiffening part in parts)
        {
            double N = DenseVector.Dot(part.Force, u);
            DenseVector.AddScaled(kg, N, part.Matrix);
        }
        if (parts.Length < members.Length)
            AddOthers(u, kg);
    }

    /// <summary>
    /// What each straight member does to the geometric stiffness, in the order of the members: its axial force follows from the
    /// twelve displacements, and its matrix is that of a unit force. Members that are not straight single ones are left out.
    /// </summary>
    internal ReadOnlySpan<AxialStiffening> AxialStiffenings => stiffening ??= Stiffening();

    private AxialStiffening[] Stiffening()
    {
        var parts = new List<AxialStiffening>(members.Length);
        foreach (FrameElement member in members)
        {
            if (AxialStiffening.Of(member) is not { } own)
                continue;
            if (IsOutside(member))
            {
                parts.Add(own);
                continue;
            }
            var matrix = new double[Block];
            AddReduced(member, own.Matrix, matrix);
            parts.Add(new AxialStiffening(Reduced(member, own.Force), matrix));
        }
        return [.. parts];
    }

    private void AddOthers(ReadOnlySpan<double> u, Span<double> kg)
    {
        Span<double> own = stackalloc double[Block];
        Span<double> memberU = stackalloc double[Size];
        foreach (FrameElement member in members)
        {
            MemberDisplacements(member, u, memberU);
            if (member.AxialForceOf(memberU) is not null)
                continue;
            own.Clear();
            member.AddGeometricStiffness(memberU, own);
            if (IsOutside(member))
                DenseVector.AddScaled(kg, 1, own);
            else
                AddReduced(member, own, kg);
        }
    }

    private void NodeDisplacements(int node, ReadOnlySpan<double> u, Vector3D perMass, Span<double> result)
    {
        if (node < 2)
        {
            u.Slice(node * Node, Node).CopyTo(result);
            return;
        }
        for (int i = 0; i < Node; i++)
        {
            int freedom = (node - 2) * Node + i;
            ReadOnlySpan<double> row = InteriorRow(freedom), own = ownMotion.AsSpan(freedom * Axes, Axes);
            double sum = own[0] * perMass.X + own[1] * perMass.Y + own[2] * perMass.Z;
            for (int j = 0; j < Size; j++)
                sum += row[j] * u[j];
            result[i] = sum;
        }
    }

    /// <summary>Whether a member runs from the start node to the end node, so that its matrices need no condensing.</summary>
    private static bool IsOutside(FrameElement member) => member is { Start: 0, End: 1 };

    private ReadOnlySpan<double> InteriorRow(int freedom) => interior.AsSpan(freedom * Size, Size);

    /// <summary>Rᵀ·own for the twelve values of a member, where R takes the twelve freedoms outside to the member's twelve.</summary>
    private double[] Reduced(FrameElement member, ReadOnlySpan<double> own)
    {
        Span<double> r = stackalloc double[Block];
        Reduction(member.Start, r[..(Node * Size)]);
        Reduction(member.End, r[(Node * Size)..]);
        var sum = new double[Size];
        for (int k = 0; k < Size; k++)
            DenseVector.AddScaled(sum, own[k], r.Slice(k * Size, Size));
        return sum;
    }

    /// <summary>Adds Rᵀ·own·R, where R takes the twelve freedoms outside to the member's twelve.</summary>
    private void AddReduced(FrameElement member, ReadOnlySpan<double> own, Span<double> sum)
    {
        Span<double> r = stackalloc double[Block];
        Reduction(member.Start, r[..(Node * Size)]);
        Reduction(member.End, r[(Node * Size)..]);
        Span<double> right = stackalloc double[Block];
        right.Clear();
        for (int i = 0; i < Size; i++)
            for (int k = 0; k < Size; k++)
                for (int j = 0; j < Size; j++)
                    right[i * Size + j] += own[i * Size + k] * r[k * Size + j];
        for (int k = 0; k < Size; k++)
            for (int i = 0; i < Size; i++)
                for (int j = 0; j < Size; j++)
                    sum[i * Size + j] += r[k * Size + i] * right[k * Size + j];
    }

    private void Reduction(int node, Span<double> rows)
    {
        if (node >= 2)
        {
            interior.AsSpan((node - 2) * Node * Size, Node * Size).CopyTo(rows);
            return;
        }
        rows.Clear();
        for (int i = 0; i < Node; i++)
            rows[i * Size + node * Node + i] = 1;
    }

    private void Condense(int n)
    {
        var inner = new double[n * n];
        var border = new double[n * Size];
        const int columns = Size + Axes;
        var right = new double[n * columns];
        Span<double> own = stackalloc double[Block];
        Span<int> at = stackalloc int[Size];
        foreach (FrameElement member in members)
        {
            if (IsOutside(member))
            {
                member.AddStiffness(stiffness);
                continue;
            }
            own.Clear();
            member.AddStiffness(own);
            for (int i = 0; i < Node; i++)
            {
                at[i] = member.Start * Node + i - Size;
                at[Node + i] = member.End * Node + i - Size;
            }
            for (int i = 0; i < Size; i++)
            {
                for (int j = 0; j < Size; j++)
                {
                    double value = own[i * Size + j];
                    if (at[i] < 0 && at[j] < 0)
                        stiffness[(at[i] + Size) * Size + at[j] + Size] += value;
                    else if (at[i] >= 0 && at[j] >= 0)
                        inner[at[i] * n + at[j]] += value;
                    else if (at[i] >= 0)
                        border[at[i] * Size + at[j] + Size] += value;
                }
            }
            own.Clear();
            member.AddMass(own);
            for (int i = 0; i < Size; i++)
            {
                for (int axis = 0; axis < Axes && at[i] >= 0; axis++)
                    right[at[i] * columns + Size + axis] += own[i * Size + axis] + own[i * Size + Node + axis];
            }
        }
        if (n == 0)
            return;
        for (int k = 0; k < n; k++)
        {
            for (int j = 0; j < Size; j++)
                right[k * columns + j] = -border[k * Size + j];
        }
        if (!SolveInPlace(inner, right, n, columns, out int loose))
            throw new ArgumentException($"Interior node {loose / Node + 2} is loose: nothing holds it in {(Freedoms)(1 << (loose % Node))}.");
        for (int k = 0; k < n; k++)
        {
            right.AsSpan(k * columns, Size).CopyTo(interior.AsSpan(k * Size));
            right.AsSpan(k * columns + Size, Axes).CopyTo(ownMotion.AsSpan(k * Axes));
        }
        for (int k = 0; k < n; k++)
            for (int i = 0; i < Size; i++)
                for (int j = 0; j < Size; j++)
                    stiffness[i * Size + j] += border[k * Size + i] * interior[k * Size + j];
        for (int i = 0; i < Size; i++)
            for (int j = 0; j < i; j++)
                stiffness[i * Size + j] = stiffness[j * Size + i] = 0.5 * (stiffness[i * Size + j] + stiffness[j * Size + i]);
    }

    /// <summary>Solves inner · x = b for several right-hand sides, stored row by row, by Cholesky's method.</summary>
    private static bool SolveInPlace(double[] inner, double[] b, int n, int columns, out int loose)
    {
        for (int j = 0; j < n; j++)
        {
            double diagonal = inner[j * n + j], pivot = diagonal;
            for (int k = 0; k < j; k++)
                pivot -= inner[j * n + k] * inner[j * n + k];
            if (!(pivot > 1e-13 * diagonal))
            {
                loose = j;
                return false;
            }
            pivot = inner[j * n + j] = Math.Sqrt(pivot);
            for (int i = j + 1; i < n; i++)
            {
                double sum = inner[i * n + j];
                for (int k = 0; k < j; k++)
                    sum -= inner[i * n + k] * inner[j * n + k];
                inner[i * n + j] = sum / pivot;
            }
        }
        for (int row = 0; row < n; row++)
        {
            for (int k = 0; k < row; k++)
                Subtract(inner[row * n + k], k, row);
            Divide(row);
        }
        for (int row = n - 1; row >= 0; row--)
        {
            for (int k = row + 1; k < n; k++)
                Subtract(inner[k * n + row], k, row);
            Divide(row);
        }
        loose = -1;
        return true;

        void Subtract(double factor, int from, int row)
        {
            for (int j = 0; j < columns; j++)
                b[row * columns + j] -= factor * b[from * columns + j];
        }

        void Divide(int row)
        {
            for (int j = 0; j < columns; j++)
                b[row * columns + j] /= inner[row * n + row];
        }
    }
}
