namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// Where a straight member lies between two nodes: its axes, its length, and the rigid arms from each node to its end.
/// Takes matrices and displacements between the local axes at the member's ends and the global axes at the nodes.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct MemberLine(Axes3D Axes, double Length, Vector3D StartArm, Vector3D EndArm)
{
    private const int Size = FrameElement.Size;

    /// <summary>Lays a member between two nodes.</summary>
    /// <exception cref="ArgumentException">One node twice, a value that is not finite, or no length.</exception>
    public static MemberLine Between(
        int start, Vector3D startPosition, Vector3D startArm, int end, Vector3D endPosition, Vector3D endArm, Vector3D up)
    {
        if (start == end)
            throw new ArgumentException($"A member must join two different nodes, not node {start} twice.", nameof(end));
        if (!(startPosition.IsFinite && endPosition.IsFinite && startArm.IsFinite && endArm.IsFinite && up.IsFinite))
            throw new ArgumentException($"{Name(start, end)} needs finite positions, offsets and directions.", nameof(startPosition));
        Vector3D from = startPosition + startArm, to = endPosition + endArm, chord = to - from;
        if (!(chord.Length > 1e-12 * (from.Length + to.Length)) || !double.IsFinite(chord.Length))
            throw new ArgumentException($"{Name(start, end)} has no length (from {from} to {to}).", nameof(endPosition));
        return new MemberLine(Axes3D.Along(chord, up), chord.Length, startArm, endArm);
    }

    /// <summary>How messages name a member.</summary>
    public static string Name(int start, int end) => $"The member from node {start} to node {end}";

    /// <summary>Takes a symmetric 12×12 matrix, in place, from local axes at the ends to global axes at the nodes.</summary>
    public void ToGlobal(Span<double> m)
    {
        RowsToNodes(m, Axes);
        SmallMatrix.Transpose(m, Size);
        RowsToNodes(m, Axes);
    }

    /// <summary>Takes a symmetric 12×12 matrix, in place, from global axes at the ends to global axes at the nodes.</summary>
    public void ToNodes(Span<double> m)
    {
        RowsToNodes(m, null);
        SmallMatrix.Transpose(m, Size);
        RowsToNodes(m, null);
    }

    private void RowsToNodes(Span<double> m, Axes3D? from)
    {
        if (from is { } axes)
            SmallMatrix.RowsToGlobal(m, Size, axes);
        SmallMatrix.RowsByArm(m, Size, 0, StartArm);
        SmallMatrix.RowsByArm(m, Size, 6, EndArm);
    }

    /// <summary>The local displacements of the member's ends from the global displacements of its nodes.</summary>
    public void ToLocal(ReadOnlySpan<double> u, Span<double> local)
    {
        End(Axes, StartArm, u[..6], local[..6]);
        End(Axes, EndArm, u[6..], local[6..]);

        static void End(in Axes3D axes, Vector3D arm, ReadOnlySpan<double> u, Span<double> local)
        {
            Vector3D rotation = new(u[3], u[4], u[5]);
            Vector3D move = axes.ToLocal(new Vector3D(u[0], u[1], u[2]) + rotation.Cross(arm));
            Vector3D turn = axes.ToLocal(rotation);
            (local[0], local[1], local[2]) = (move.X, move.Y, move.Z);
            (local[3], local[4], local[5]) = (turn.X, turn.Y, turn.Z);
        }
    }

    /// <summary>
    /// Adds the geometric stiffness of the rigid arms, in global axes, for an axial force <paramref name="N"/> (tension
    /// positive): the tip of an arm o moves by θ×o + ½ θ×(θ×o), and the force f works on the second part, which makes
    /// ½(f oᵀ + o fᵀ) − (f·o) 1 on the node's rotations.
    /// </summary>
    public void AddArmGeometricStiffness(double N, Span<double> kg)
    {
        Arm(-N * Axes.X, StartArm, 3, kg);
        Arm(N * Axes.X, EndArm, 9, kg);

        static void Arm(Vector3D f, Vector3D o, int at, Span<double> kg)
        {
            if (o == Vector3D.Zero)
                return;
            ReadOnlySpan<double> force = [f.X, f.Y, f.Z], arm = [o.X, o.Y, o.Z];
            double work = f.Dot(o);
            for (int i = 0; i < 3; i++)
                for (int j = 0; j < 3; j++)
                    kg[Size * (at + i) + at + j] += 0.5 * (force[i] * arm[j] + arm[i] * force[j]) - (i == j ? work : 0);
        }
    }
}
