using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>
/// The members that lie in a level of a lattice as a truss in its plan: the axial forces that members above and below, the hub and the
/// standoffs make of them. What pushes on the level and what holds it meet at the legs; a force that has no answer among those looked at
/// is answered evenly by all legs.
/// </summary>
/// <remarks>SI units, in the axes of the tower; for one thread. A plan that does not keep its shape drops what would change it.</remarks>
internal sealed class LevelPlane
{
    private readonly LevelMember[] members;
    private readonly LevelSide[] sides;
    private readonly HubSheet.Arm[] legs;
    private readonly Vector3D center;

    /// <summary>The axial force of every member for a unit along x and y at every leg.</summary>
    private readonly Matrix<double> forces;

    /// <param name="level">A level with legs and a frame.</param>
    /// <param name="sides">Its sides with what stands on them.</param>
    public LevelPlane(TowerLevel level, LevelSide[] sides)
    {
        this.sides = sides;
        members = [.. level.Members];
        center = level.Center;
        legs = HubSheet.Arm.Of(level, 0);
        forces = Solve();
    }

    /// <summary>A force on each member, and one more on each side: what its own forces along it, put between its legs, make of it at most.</summary>
    internal int Rows => members.Length + sides.Length;

    /// <summary>The most axial force of every member in a situation, N: the worst of each source, all at one time.</summary>
    /// <param name="body">The tower or limb.</param>
    /// <param name="level">The level's number in it.</param>
    /// <param name="first">Number of the body's first segment in the statue.</param>
    /// <param name="carried">What the hub hands to the legs, in every state; empty without a hub.</param>
    /// <param name="demands">What acts.</param>
    /// <param name="amplification">What second order makes of forces of the tower.</param>
    public double[] Most(BodyModel body, int level, int first, IEnumerable<IEnumerable<Vector3D[]>> carried, SituationDemands demands, double amplification)
    {
        var sum = new double[Rows];
        foreach ((int at, bool top) in (ReadOnlySpan<(int, bool)>)[(level - 1, true), (level, false)])
        {
            if (at >= 0 && at < body.Segments.Length && body.Segments[at].Members.Count > 0)
                Add(sum, amplification, body.Segments[at].IsTensionOnly ? OfActing(body.Segments[at], first + at, top, demands) : OfCuts(body.Segments[at], first + at, top, demands));
        }
        foreach (IEnumerable<Vector3D[]> states in carried)
            Add(sum, amplification, Greatest(states, (shares, axial) => OnLegs(shares, axial)));
        foreach (LevelSide side in sides)
        {
            foreach ((_, double a, Vector3D force, Vector3D moment) in side.Feet)
            {
                Vector3D at = side.From + a * side.Along;
                AddSizes(sum, LevelSide.Most(force, side.Along), at, side.Along);
                AddSizes(sum, LevelSide.Most(force, side.Across), at, side.Across);
                // A moment in the plan is a pair of forces across at its legs.
                var pair = new double[Rows];
                Push(side.To, 1 / side.Length * side.Across, pair);
                Push(side.From, -1 / side.Length * side.Across, pair);
                Add(sum, moment.Z, pair);
            }
        }
        return [.. members.Select((_, i) => sum[i] + (i < sides.Length ? sum[members.Length + i] : 0))];
    }

    /// <summary>Adds what a force at a point of a side makes of all members; it goes to the two legs of the side by the lever arms.</summary>
    internal void Push(Vector3D at, Vector3D force, Span<double> axial)
    {
        LevelSide side = sides.MinBy(s => (at - s.From - s.PositionOf(at) * s.Along).Length)!;
        double t = side.PositionOf(at) / side.Length;
        var onLegs = new Vector3D[legs.Length];
        onLegs[side.Leg] = (1 - t) * force;
        onLegs[(side.Leg + 1) % legs.Length] = t * force;
        OnLegs(onLegs, axial);
        if (t is > 1e-6 and < 1 - 1e-6)
            axial[members.Length + side.Leg] += Math.Max(t, 1 - t) * force.Dot(side.Along);
    }

    private void OnLegs(ReadOnlySpan<Vector3D> onLegs, Span<double> axial)
    {
        Vector3D sum = Vector3D.Zero, moment = Vector3D.Zero;
        for (int i = 0; i < legs.Length; i++)
            (sum, moment) = (sum + onLegs[i], moment + legs[i].At.Cross(onLegs[i]));
        Vector3D[] answers = HubSheet.Share(legs, new(sum.X, sum.Y, 0), new(0, 0, moment.Z));
        for (int i = 0; i < legs.Length; i++)
        {
            Vector3D left = onLegs[i] - answers[i];
            for (int j = 0; j < members.Length; j++)
                axial[j] += forces[j, 2 * i] * left.X + forces[j, 2 * i + 1] * left.Y;
        }
    }

    /// <summary>What a segment makes of the members in the plan for a unit of each force and moment in the cut at its upper level.</summary>
    internal double[][] PerUnit(SegmentModel segment, bool top)
    {
        double[][] units = [.. Enumerable.Range(0, Frame.NodeSize).Select(_ => new double[Rows])];
        foreach ((_, Vector3D at, Vector3D[] pushes) in segment.PushesOn(top))
        {
            for (int k = 0; k < units.Length; k++)
                Push(at, pushes[k], units[k]);
        }
        return units;
    }

    /// <summary>The most that the members of a segment make of those in the plan, in every state of its cuts.</summary>
    private double[] OfCuts(SegmentModel segment, int number, bool top, SituationDemands demands)
    {
        double[][] units = PerUnit(segment, top);
        return Greatest(demands.EndsOf(number), (ends, axial) =>
        {
            (Vector3D F, Vector3D M) = (ends.Top.Forces, ends.Top.Moments);
            ReadOnlySpan<double> cut = [F.X, F.Y, F.Z, M.X, M.Y, M.Z];
            for (int k = 0; k < units.Length; k++)
            {
                for (int j = 0; j < axial.Length; j++)
                    axial[j] += cut[k] * units[k][j];
            }
        });
    }

    /// <summary>The same where braces act in tension only: each with the most it pulls, all at one time.</summary>
    private double[] OfActing(SegmentModel segment, int number, bool top, SituationDemands demands)
    {
        var most = new double[segment.Members.Count];
        demands.Members(number, (int member, in MemberForces forces, DemandState _) => most[member] = Math.Max(most[member], Math.Abs(forces.N)));
        var sum = new double[Rows];
        foreach ((int i, Vector3D at, _) in segment.PushesOn(top))
        {
            LatticeMember member = segment.Members[i];
            AddSizes(sum, most[i], at, (member.To - member.From).Normalized());
        }
        return sum;
    }

    private double[] Greatest<T>(IEnumerable<T> states, Action<T, double[]> put)
    {
        var greatest = new double[Rows];
        var axial = new double[Rows];
        foreach (T state in states)
        {
            Array.Clear(axial);
            put(state, axial);
            for (int j = 0; j < axial.Length; j++)
                greatest[j] = Math.Max(greatest[j], Math.Abs(axial[j]));
        }
        return greatest;
    }

    private void AddSizes(double[] sum, double size, Vector3D at, Vector3D direction)
    {
        var axial = new double[Rows];
        Push(at, direction, axial);
        Add(sum, size, axial);
    }

    private static void Add(double[] sum, double factor, double[] more)
    {
        for (int j = 0; j < sum.Length; j++)
            sum[j] += factor * Math.Abs(more[j]);
    }

    /// <summary>The truss by its stiffness: B of the stretches of members, EA/L of each, and the legs' motions of least size.</summary>
    private Matrix<double> Solve()
    {
        bool hasMiddle = members.Any(member => NodeOf(member.From) == legs.Length);
        int count = 2 * (legs.Length + (hasMiddle ? 1 : 0));
        var stretch = Matrix<double>.Build.Dense(members.Length, count);
        var stiff = new double[members.Length];
        for (int j = 0; j < members.Length; j++)
        {
            (Vector3D from, Vector3D to, Section section, Material material) = members[j];
            Vector3D along = (to - from).Normalized();
            (int a, int b) = (NodeOf(from), NodeOf(to));
            (stretch[j, 2 * a], stretch[j, 2 * a + 1], stretch[j, 2 * b], stretch[j, 2 * b + 1]) = (-along.X, -along.Y, along.X, along.Y);
            stiff[j] = material.YoungsModulus.Pascals * section.Properties.A / (to - from).Length;
        }
        // As parts of the stiffest, so that the motions left out are told from the soft ones.
        double most = stiff.Max();
        Matrix<double> scaled = Matrix<double>.Build.DenseOfDiagonalArray([.. stiff.Select(k => k / most)]) * stretch;
        return scaled * (stretch.TransposeThisAndMultiply(scaled)).PseudoInverse();
    }

    /// <summary>The leg at a point; the middle has the number after the last.</summary>
    private int NodeOf(Vector3D at)
    {
        for (int i = 0; i < legs.Length; i++)
        {
            if ((center + legs[i].At - at).Length < 1e-9)
                return i;
        }
        return legs.Length;
    }
}
