using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Tests.Analyses;

namespace StatueFrame.Tests.Towers;

/// <summary>
/// A lattice panel meshed member by member: every joint is a node of its own, those at the two levels are tied to the
/// level's node by rigid arms, and the rest are eliminated with dense matrices. Geometry and topology are worked out anew.
/// </summary>
internal sealed class LatticeMesh
{
    private readonly record struct Rod(string Label, int A, int B, FrameElement Element, double EA, BeamSection Section);

    private readonly List<Vector3D> joints = [];
    private readonly List<int> level = [];
    private readonly List<Rod> rods = [];
    private readonly Vector3D[] bottom, top;
    private readonly LatticeSegment segment;
    private readonly Vector3D lowerNode, upperNode;
    private readonly Matrix<double> motion;
    private readonly Matrix<double> tie, tied;

    /// <summary>Meshes a panel.</summary>
    /// <param name="segment">The panel.</param>
    /// <param name="bottom">Corners of the lower plan, anticlockwise, outer axes.</param>
    /// <param name="top">Corners of the upper plan.</param>
    /// <param name="lowerNode">Where the lower node is.</param>
    /// <param name="upperNode">Where the upper node is.</param>
    /// <param name="acts">Whether a member acts; all by default.</param>
    public LatticeMesh(LatticeSegment segment, Vector3D[] bottom, Vector3D[] top, Vector3D lowerNode, Vector3D upperNode, Func<string, bool>? acts = null)
    {
        (this.segment, this.bottom, this.top, this.lowerNode, this.upperNode) = (segment, bottom, top, lowerNode, upperNode);
        int legs = bottom.Length, bays = segment.Bays;
        for (int j = 0; j <= bays; j++)
        {
            for (int leg = 0; leg < legs; leg++)
                Joint(At(leg, j), j == 0 ? 0 : j == bays ? 1 : -1);
        }
        for (int j = 0; j < bays; j++)
        {
            for (int leg = 0; leg < legs; leg++)
            {
                int next = (leg + 1) % legs;
                string face = $"face {leg + 1}, bay {j + 1}";
                int footA = j * legs + leg, footB = j * legs + next, headA = (j + 1) * legs + leg, headB = (j + 1) * legs + next;
                Beam($"leg {leg + 1}, bay {j + 1}", footA, headA, segment.Legs);
                if (segment.Bracing == Bracing.KBrace)
                {
                    int middle = Joint(0.5 * (joints[headA] + joints[headB]), j + 1 == bays ? 1 : -1);
                    if (j + 1 < bays)
                    {
                        Beam($"horizontal a, {face}", headA, middle, segment.Horizontals ?? segment.Braces);
                        Beam($"horizontal b, {face}", middle, headB, segment.Horizontals ?? segment.Braces);
                    }
                    Bar($"brace a, {face}", footA, middle, segment.Braces);
                    Bar($"brace b, {face}", footB, middle, segment.Braces);
                    continue;
                }
                if (segment.Bracing == Bracing.SingleDiagonal)
                {
                    if ((leg + j) % 2 == 0)
                        Bar($"brace, {face}", footA, headB, segment.Braces);
                    else
                        Bar($"brace, {face}", footB, headA, segment.Braces);
                }
                else
                {
                    Bar($"brace a, {face}", footA, headB, segment.Braces);
                    Bar($"brace b, {face}", footB, headA, segment.Braces);
                }
                if (j + 1 < bays)
                    Bar($"horizontal, {face}", headA, headB, segment.Horizontals ?? segment.Braces);
            }
        }
        (Stiffness, motion, tie, tied) = Solve(acts ?? (_ => true));
    }

    public Matrix<double> Stiffness { get; }

    /// <summary>Axial forces by label: E·A times the stretch over the length.</summary>
    public Dictionary<string, double> AxialForces(Vector<double> u, Vector3D perMass = default)
    {
        Vector<double> all = motion * u;
        if (tied.RowCount > 12)
        {
            int m = tied.RowCount - 12;
            Vector<double> inner = tied.SubMatrix(12, m, 12, m).Solve((tie.Transpose() * Spread(perMass)).SubVector(12, m));
            all += tie.SubMatrix(0, tie.RowCount, 12, m) * inner;
        }
        return rods.ToDictionary(r => r.Label, r =>
        {
            Vector3D chord = joints[r.B] - joints[r.A], x = chord.Normalized();
            double stretch = 0;
            for (int i = 0; i < 3; i++)
                stretch += (i == 0 ? x.X : i == 1 ? x.Y : x.Z) * (all[6 * r.B + i] - all[6 * r.A + i]);
            return r.EA * stretch / chord.Length;
        });
    }

    /// <summary>Half of each member's load at each of its joints, with the moments of an end that is held where a member is stiffly joined.</summary>
    private Vector<double> Spread(Vector3D perMass)
    {
        Vector<double> f = Vector<double>.Build.Dense(6 * joints.Count);
        foreach (Rod rod in rods)
        {
            Vector3D chord = joints[rod.B] - joints[rod.A], force = rod.Section.Mass * chord.Length * perMass;
            Vector3D held = rod.Element is BeamElement ? 1.0 / 12 * chord.Cross(force) : Vector3D.Zero;
            foreach ((int joint, double sign) in new[] { (rod.A, 1), (rod.B, -1) })
            {
                foreach ((int i, double value) in new[] { 0.5 * force.X, 0.5 * force.Y, 0.5 * force.Z, sign * held.X, sign * held.Y, sign * held.Z }.Index())
                    f[6 * joint + i] += value;
            }
        }
        return f;
    }

    /// <summary>Mass, first moment and inertia about the origin, of rigid motion: 6×6, from straight lines of mass.</summary>
    public Matrix<double> RigidMass()
    {
        Matrix<double> sum = Dense.Zero(6, 6), one = Matrix<double>.Build.DenseIdentity(3);
        foreach (Rod rod in rods)
        {
            Vector3D a = joints[rod.A], b = joints[rod.B], x = (b - a).Normalized();
            double L = (b - a).Length, m = rod.Section.Mass * L;
            Vector<double> va = Dense.Vector(a), vb = Dense.Vector(b), vx = Dense.Vector(x);
            Matrix<double> second = m / 6 * (2 * va.OuterProduct(va) + 2 * vb.OuterProduct(vb) + va.OuterProduct(vb) + vb.OuterProduct(va));
            Matrix<double> inertia = second.Trace() * one - second;
            if (rod.Element is BeamElement beam)
            {
                Vector<double> vy = Dense.Vector(beam.Axes.Y), vz = Dense.Vector(beam.Axes.Z);
                double y = rod.Section.RotaryY * L, z = rod.Section.RotaryZ * L;
                inertia += y * vy.OuterProduct(vy) + z * vz.OuterProduct(vz) + (y + z) * vx.OuterProduct(vx);
            }
            Vector3D s = 0.5 * m * (a + b);
            Matrix<double> first = Dense.Arm(s).SubMatrix(0, 3, 3, 3);
            sum.SetSubMatrix(0, 0, sum.SubMatrix(0, 3, 0, 3) + m * one);
            sum.SetSubMatrix(0, 3, sum.SubMatrix(0, 3, 3, 3) + first);
            sum.SetSubMatrix(3, 0, sum.SubMatrix(3, 3, 0, 3) + first.Transpose());
            sum.SetSubMatrix(3, 3, sum.SubMatrix(3, 3, 3, 3) + inertia);
        }
        return sum;
    }

    private Vector3D At(int leg, int joint)
    {
        double t = (double)joint / segment.Bays;
        return bottom[leg] + t * (top[leg] - bottom[leg]);
    }

    private int Joint(Vector3D at, int levelOfJoint)
    {
        joints.Add(at);
        level.Add(levelOfJoint);
        return joints.Count - 1;
    }

    private BeamSection SectionOf(Section section)
    {
        BeamSection s = section.Of(segment.Material);
        return s with { Mass = (1 + segment.ConnectionMassFraction) * s.Mass };
    }

    private void Beam(string label, int a, int b, Section section)
    {
        Vector3D low = Mean(bottom), high = Mean(top);
        // Local z points straight out from the middle of the plan at the member's own height.
        Vector3D axis = Normal(), middle = 0.5 * (joints[a] + joints[b]);
        double t = (middle - low).Dot(axis) / (high - low).Dot(axis);
        BeamSection s = SectionOf(section);
        rods.Add(new Rod(label, a, b, new BeamElement(0, joints[a], 1, joints[b], new BeamDefinition(s) { Up = middle - low - t * (high - low) }), s.EA, s));
    }

    private void Bar(string label, int a, int b, Section section)
    {
        BeamSection s = SectionOf(section);
        rods.Add(new Rod(label, a, b, new BarElement(0, joints[a], 1, joints[b], s.EA), s.EA, s));
    }

    /// <summary>Across the lower plan.</summary>
    private Vector3D Normal() => (bottom[1] - bottom[0]).Cross(bottom[2] - bottom[1]).Normalized();

    private static Vector3D Mean(Vector3D[] points) => points.Aggregate(Vector3D.Zero, (sum, p) => sum + p) / points.Length;

    private (Matrix<double> Stiffness, Matrix<double> Motion, Matrix<double> Tie, Matrix<double> Tied) Solve(Func<string, bool> acts)
    {
        int n = 6 * joints.Count;
        Matrix<double> k = Dense.Zero(n, n);
        foreach (Rod rod in rods.Where(r => acts(r.Label)))
        {
            Matrix<double> own = Dense.Stiffness(rod.Element);
            int[] at = [.. Enumerable.Range(6 * rod.A, 6), .. Enumerable.Range(6 * rod.B, 6)];
            for (int i = 0; i < 12; i++)
            {
                for (int j = 0; j < 12; j++)
                    k[at[i], at[j]] += own[i, j];
            }
        }
        int[] inner = [.. Enumerable.Range(0, joints.Count).Where(j => level[j] < 0)];
        Matrix<double> tie = Dense.Zero(n, 12 + 6 * inner.Length);
        for (int j = 0; j < joints.Count; j++)
        {
            if (level[j] >= 0)
                tie.SetSubMatrix(6 * j, 6 * level[j], Dense.Arm(joints[j] - (level[j] == 0 ? lowerNode : upperNode)));
            else
                tie.SetSubMatrix(6 * j, 12 + 6 * Array.IndexOf(inner, j), Matrix<double>.Build.DenseIdentity(6));
        }
        Matrix<double> tied = tie.TransposeThisAndMultiply(k * tie);
        if (inner.Length == 0)
            return (tied, tie, tie, tied);
        int m = 6 * inner.Length;
        Matrix<double> follow = -tied.SubMatrix(12, m, 12, m).Solve(tied.SubMatrix(12, m, 0, 12));
        Matrix<double> stiffness = tied.SubMatrix(0, 12, 0, 12) + tied.SubMatrix(0, 12, 12, m) * follow;
        return (stiffness, tie * Matrix<double>.Build.DenseIdentity(12).Stack(follow), tie, tied);
    }
}
