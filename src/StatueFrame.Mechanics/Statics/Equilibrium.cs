using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Statics;

/// <summary>What the ground does to a frame, and whether forces balance. All vectors are full vectors of one load case.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class Equilibrium
{
    /// <summary>
    /// The forces that the ground puts on the frame: at restrained freedoms whatever holds them at zero, at ground springs
    /// the spring force −k·u. Loads and reactions together are in equilibrium. N, N·m.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="displacements">Displacements of a first-order analysis; m, rad.</param>
    /// <param name="loads">The loads that caused them; N, N·m.</param>
    public static double[] Reactions(Frame frame, ReadOnlySpan<double> displacements, ReadOnlySpan<double> loads)
    {
        frame.RequireFull(displacements, nameof(displacements));
        frame.RequireFull(loads, nameof(loads));
        var reactions = new double[frame.FreedomCount];
        Span<double> forces = stackalloc double[Math.Max(Frame.NodeSize, frame.Topology.MostFreedoms)];
        for (int i = 0; i < frame.Elements.Count; i++)
        {
            FiniteElement element = frame.Elements[i];
            if (!IsAnyRestrained(frame, element.Nodes))
                continue;
            frame.ElementForces(i, displacements, forces[..element.FreedomCount]);
            for (int j = 0; j < element.Nodes.Length; j++)
                AddAtRestrained(frame, element.Nodes[j], forces.Slice(Frame.NodeSize * j, Frame.NodeSize), reactions);
        }
        for (int freedom = 0; freedom < reactions.Length; freedom++)
        {
            if (frame.EquationOf(freedom) < 0)
                reactions[freedom] -= loads[freedom];
        }
        foreach ((int node, double[] spring) in frame.Springs)
        {
            Span<double> force = forces[..Frame.NodeSize];
            Frame.Multiply(spring, displacements.Slice(Frame.NodeSize * node, Frame.NodeSize), force);
            for (int i = 0; i < Frame.NodeSize; i++)
            {
                if (frame.EquationOf(Frame.NodeSize * node + i) >= 0)
                    reactions[Frame.NodeSize * node + i] -= force[i];
            }
        }
        return reactions;
    }

    /// <summary>The resultant of nodal forces and moments.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="forces">A full vector; N, N·m.</param>
    /// <param name="about">The point about which the moment is taken, m.</param>
    /// <returns>Force in N and moment in N·m.</returns>
    public static (Vector3D Force, Vector3D Moment) Resultant(Frame frame, ReadOnlySpan<double> forces, Vector3D about = default)
    {
        frame.RequireFull(forces, nameof(forces));
        Vector3D force = Vector3D.Zero, moment = Vector3D.Zero;
        for (int node = 0; node < frame.Nodes.Count; node++)
        {
            ReadOnlySpan<double> f = forces.Slice(Frame.NodeSize * node, Frame.NodeSize);
            var atNode = new Vector3D(f[0], f[1], f[2]);
            force += atNode;
            moment += (frame.Nodes[node].Position - about).Cross(atNode) + new Vector3D(f[3], f[4], f[5]);
        }
        return (force, moment);
    }

    /// <summary>
    /// How well K u = f holds at the unrestrained freedoms: the largest |K u − f| / (|K| |u| + |f|), row by row (the
    /// componentwise backward error of Oettli and Prager). Has no unit; around 1e-15 for a sound solution.
    /// </summary>
    public static double Residual(Frame frame, ReadOnlySpan<double> displacements, ReadOnlySpan<double> loads)
    {
        frame.RequireFull(displacements, nameof(displacements));
        frame.RequireFull(loads, nameof(loads));
        int order = frame.EquationCount;
        var u = new double[order];
        var difference = new double[order];
        var size = new double[order];
        frame.Reduce(displacements, u);
        ReadOnlySpan<int> starts = frame.Stiffness.Pattern.ColumnStarts, rows = frame.Stiffness.Pattern.Rows;
        ReadOnlySpan<double> values = frame.Stiffness.Values;
        for (int column = 0; column < order; column++)
        {
            for (int k = starts[column]; k < starts[column + 1]; k++)
            {
                Add(rows[k], values[k] * u[column]);
                if (rows[k] != column)
                    Add(column, values[k] * u[rows[k]]);
            }
        }
        double worst = 0;
        for (int equation = 0; equation < order; equation++)
        {
            Add(equation, -loads[frame.FreedomOf(equation)]);
            if (size[equation] > 0)
                worst = Math.Max(worst, Math.Abs(difference[equation]) / size[equation]);
        }
        return worst;

        void Add(int equation, double term)
        {
            difference[equation] += term;
            size[equation] += Math.Abs(term);
        }
    }

    private static bool IsAnyRestrained(Frame frame, ReadOnlySpan<int> nodes)
    {
        foreach (int node in nodes)
        {
            if (frame.Nodes[node].Restrained != Freedoms.None)
                return true;
        }
        return false;
    }

    private static void AddAtRestrained(Frame frame, int node, ReadOnlySpan<double> forces, Span<double> reactions)
    {
        for (int i = 0; i < Frame.NodeSize; i++)
        {
            if (frame.EquationOf(Frame.NodeSize * node + i) < 0)
                reactions[Frame.NodeSize * node + i] += forces[i];
        }
    }
}
