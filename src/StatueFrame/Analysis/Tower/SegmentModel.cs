using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// A tower segment as a frame element between the nodes of two levels. A lattice is one condensed element whose members'
/// forces can still be read; where its braces act in tension only, it is condensed anew for every set of acting braces.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SegmentModel
{
    private readonly Place lower;
    private readonly Place upper;
    private readonly BodyAxes axes;
    private readonly LatticePanel? panel;
    private readonly FrameElement[] members;

    /// <summary>Its mass matrix, 12×12.</summary>
    private readonly double[] ownMass = new double[FrameElement.Size * FrameElement.Size];

    /// <summary>What its own weight between its levels adds to the forces in the cuts, twelve values.</summary>
    private readonly double[] weightInCuts = new double[FrameElement.Size];

    public SegmentModel(TowerSegment segment, string name, BodyAxes axes, (Place Place, TowerLevel Level) bottom, (Place Place, TowerLevel Level) top)
    {
        (lower, upper, this.axes) = (bottom.Place, top.Place, axes);
        (Segment, Name) = (segment, name);
        panel = segment is LatticeSegment lattice ? new LatticePanel(lattice, bottom.Level, top.Level) : null;
        members = panel is null ? [] : [.. panel.Members.Select(MakeMember)];
        Element = segment switch
        {
            MemberSegment member => Beam(Definition(member), member.Roll.Radians),
            CoreSegment core => Beam(new BeamDefinition(core.AsBeamSection()), 0),
            BlockSegment block => Beam(Definition(block), 0),
            _ => Condense(members),
        };
        Element.AddMass(ownMass);
        (Mass, CenterOfMass) = panel is null ? RigidMass() : MembersMass();
        CutOwnWeight();
    }

    /// <summary>Name of the segment, as in "L3–L4".</summary>
    public string Name { get; }

    public TowerSegment Segment { get; }

    /// <summary>
    /// The element for mass, modes and buckling, and for every load when no brace is tension-only. Where braces are, each
    /// crossing pair has the stiffness of one diagonal here, half from each.
    /// </summary>
    public FrameElement Element { get; }

    /// <summary>Distance of its two levels, m.</summary>
    public double Span => (upper.Center - lower.Center).Length;

    /// <summary>Mass of the segment, kg.</summary>
    public double Mass { get; }

    /// <summary>Mass of the joint at its lower level that its members leave out, kg; it rides on that level.</summary>
    public double JointMass => Segment is MemberSegment { LowerJoint: { } joint } tube ? joint.Mass(tube) : 0;

    /// <summary>The level it stands on.</summary>
    public Place Lower => lower;

    /// <summary>The level it carries.</summary>
    public Place Upper => upper;

    /// <summary>Its center of mass, in the statue's axes, m.</summary>
    public Vector3D CenterOfMass { get; }

    public bool IsTensionOnly => Segment is LatticeSegment { Bracing: Bracing.TensionOnlyCross };

    /// <summary>The members of a lattice; empty for other segments.</summary>
    public IReadOnlyList<LatticeMember> Members => panel?.Members ?? [];

    /// <summary>The faces of a lattice that have no diagonal in some bay, as in "face 2, bay 1": legs bend as posts there.</summary>
    public IReadOnlyList<string> FacesWithoutDiagonal => panel?.FacesWithoutDiagonal ?? [];

    /// <summary>Whether a face on either side of a leg has no diagonal in the leg's bay.</summary>
    public bool LacksDiagonalBeside(LatticeMember leg) => panel!.LacksDiagonalBeside(leg);

    /// <summary>A member as an element in the panel's local node numbers; a tension-only brace has its full stiffness.</summary>
    public FrameElement Member(int index) =>
        IsTensionOnly && Members[index].Pair >= 0 ? MakeBar(Members[index], 1) : members[index];

    /// <summary>The element with only those members acting that <paramref name="acts"/> names.</summary>
    public Superelement WithActing(ReadOnlySpan<bool> acts)
    {
        var acting = new List<FrameElement>(members.Length);
        for (int i = 0; i < members.Length; i++)
        {
            if (acts[i])
                acting.Add(Member(i));
        }
        return Condense(acting.ToArray());
    }

    /// <summary>The axial forces of all members, N, tension positive, from the twelve displacements of the two levels' nodes.</summary>
    /// <param name="element">The element that was solved: <see cref="Element"/> or one from <see cref="WithActing"/>.</param>
    /// <param name="u">The twelve displacements.</param>
    /// <param name="axial">Receives a force for every member; for one that does not act, what it would carry if it did.</param>
    /// <param name="between">What acts between the levels.</param>
    public void AxialForces(FrameElement element, ReadOnlySpan<double> u, Span<double> axial, in BetweenLevels between = default)
    {
        Span<double> forces = stackalloc double[members.Length * Analysis.MemberForces.Count];
        MemberForces(element, u, forces, between);
        for (int i = 0; i < members.Length; i++)
            axial[i] = forces[i * Analysis.MemberForces.Count];
    }

    /// <summary>
    /// Of every member the axial force, tension positive, the two shears, and the moments about its strong and its weak axis at
    /// its first and at its second joint; N and N·m. Pinned members have axial force alone.
    /// </summary>
    /// <param name="element">As of <see cref="AxialForces"/>.</param>
    /// <param name="u">The twelve displacements.</param>
    /// <param name="forces">Receives <see cref="Analysis.MemberForces.Count"/> values a member.</param>
    /// <param name="between">What acts between the levels.</param>
    public void MemberForces(FrameElement element, ReadOnlySpan<double> u, Span<double> forces, in BetweenLevels between = default)
    {
        Span<double> memberU = stackalloc double[FrameElement.Size], ends = stackalloc double[FrameElement.Size];
        var condensed = (Superelement)element;
        Vector3D perMass = between.PerMass(Mass);
        forces.Clear();
        for (int i = 0; i < members.Length; i++)
        {
            FrameElement member = Member(i);
            condensed.MemberDisplacements(member, u, memberU, perMass);
            Span<double> of = forces.Slice(i * Analysis.MemberForces.Count, Analysis.MemberForces.Count);
            if (member is BeamElement beam)
            {
                beam.EndForces(memberU, ends);
                (of[0], of[1], of[2]) = (ends[6], ends[7], ends[8]);
                (of[3], of[4], of[5], of[6]) = (ends[4], ends[5], ends[10], ends[11]);
            }
            else
            {
                of[0] = ((BarElement)member).AxialForce(memberU);
            }
        }
    }

    /// <summary>
    /// What the members of a lattice push on one of its two levels: the number of each that ends there, where it ends, m, and its force, N, for a
    /// unit of each of the three forces and three moments in the cut at the upper level, in the body's axes. Nothing loads it between its levels.
    /// </summary>
    /// <param name="top">True for the upper level.</param>
    public IEnumerable<(int Member, Vector3D At, Vector3D[] Pushes)> PushesOn(bool top)
    {
        const int n = Frame.NodeSize, all = FrameElement.Size;
        var condensed = (Superelement)Element;
        var cuts = Matrix<double>.Build.Dense(n, n);
        int node = top ? 1 : 0;
        (int Member, bool AtStart)[] ends =
        [
            .. Enumerable.Range(0, members.Length).Where(i => Members[i].Start == node).Select(i => (i, true)),
            .. Enumerable.Range(0, members.Length).Where(i => Members[i].End == node).Select(i => (i, false)),
        ];
        var moved = Matrix<double>.Build.Dense(3 * ends.Length, n);
        Span<double> u = stackalloc double[all], cut = stackalloc double[all], memberU = stackalloc double[all], k = stackalloc double[all * all];
        for (int motion = 0; motion < n; motion++)
        {
            u.Clear();
            u[n + motion] = 1;
            EndForces(Element, u, cut);
            for (int i = 0; i < n; i++)
                cuts[i, motion] = cut[n + i];
            for (int e = 0; e < ends.Length; e++)
            {
                FrameElement member = members[ends[e].Member];
                condensed.MemberDisplacements(member, u, memberU);
                k.Clear();
                member.AddStiffness(k);
                for (int i = 0; i < 3; i++)
                    moved[3 * e + i, motion] = -SmallProduct(k, ends[e].AtStart ? i : n + i, memberU);
            }
        }
        Matrix<double> perUnit = moved * cuts.Inverse();
        return ends.Select((end, e) =>
        {
            LatticeMember member = Members[end.Member];
            Vector3D[] pushes = [.. Enumerable.Range(0, n).Select(c => axes.Axes.ToLocal(new Vector3D(perUnit[3 * e, c], perUnit[3 * e + 1, c], perUnit[3 * e + 2, c])))];
            return (end.Member, end.AtStart ? member.From : member.To, pushes);
        });

        static double SmallProduct(ReadOnlySpan<double> k, int row, ReadOnlySpan<double> u)
        {
            double sum = 0;
            for (int j = 0; j < all; j++)
                sum += k[row * all + j] * u[j];
            return sum;
        }
    }

    /// <summary>The forces in cuts at the two levels, from the displacements of all nodes.</summary>
    /// <param name="element">The element that was solved.</param>
    /// <param name="displacements">A full vector of the frame.</param>
    /// <param name="between">What acts between the levels.</param>
    public (SectionForce Bottom, SectionForce Top) SectionForces(FrameElement element, ReadOnlySpan<double> displacements, in BetweenLevels between = default)
    {
        Span<double> u = stackalloc double[FrameElement.Size], cuts = stackalloc double[FrameElement.Size];
        element.Gather(displacements, u);
        EndForces(element, u, cuts);
        // The nodes push on the ends with K u less what acts between the levels and is shared by them.
        Span<double> shared = stackalloc double[FrameElement.Size], ofShared = stackalloc double[FrameElement.Size];
        shared.Clear();
        Put(lower, between.Lower, shared);
        Put(upper, between.Upper, shared[Frame.NodeSize..]);
        AddStiffJoints(between.Lower + between.Upper, shared);
        Cut(shared, ofShared);
        for (int i = 0; i < cuts.Length; i++)
            cuts[i] += between.WeightFactor * weightInCuts[i] - ofShared[i];

        static void Put(Place place, Vector3D force, Span<double> node)
        {
            Vector3D moment = (place.Center - place.NodeAt).Cross(force);
            (node[0], node[1], node[2], node[3], node[4], node[5]) = (force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z);
        }
        return (SectionForce.Of(cuts[..Frame.NodeSize]), SectionForce.Of(cuts[Frame.NodeSize..]));
    }

    /// <summary>The same as numbers: three forces and three moments in the body's axes at the lower level, then at the upper one.</summary>
    /// <param name="element">The element that was solved.</param>
    /// <param name="u">The twelve displacements of the two levels' nodes.</param>
    /// <param name="cuts">Receives twelve values.</param>
    public void EndForces(FrameElement element, ReadOnlySpan<double> u, Span<double> cuts)
    {
        Span<double> k = stackalloc double[FrameElement.Size * FrameElement.Size], f = stackalloc double[FrameElement.Size];
        k.Clear();
        element.AddStiffness(k);
        for (int i = 0; i < FrameElement.Size; i++)
        {
            double sum = 0;
            for (int j = 0; j < FrameElement.Size; j++)
                sum += k[i * FrameElement.Size + j] * u[j];
            f[i] = sum;
        }
        Cut(f, cuts);
    }

    /// <summary>
    /// What acts between the levels of a lattice bends it between them as it would bend a beam that both hold fast: what that puts on the two nodes
    /// beyond the shares of the levels, with no resultant. Nothing on other segments, whose forces between the levels are not asked for.
    /// </summary>
    /// <param name="force">What acts, along the lattice as its mass is, N.</param>
    /// <param name="f">Takes the twelve values.</param>
    public void AddStiffJoints(Vector3D force, Span<double> f)
    {
        if (panel is null || panel.Interior.Count == 0 || Mass == 0 || force.Length == 0)
            return;
        Span<double> moved = stackalloc double[FrameElement.Size], spread = stackalloc double[FrameElement.Size];
        Rigid(1 / Mass * force, Vector3D.Zero, moved);
        Frame.Multiply(ownMass, moved, spread);
        // The shares by the law of the lever, at the nodes; what they turn differently from the spread force is put on the lower one.
        double t = (CenterOfMass - lower.Center).Dot(upper.Center - lower.Center) / (Span * Span);
        Vector3D atLower = (1 - t) * force, atUpper = t * force;
        Vector3D turned = new Vector3D(spread[3] + spread[9], spread[4] + spread[10], spread[5] + spread[11]) + lower.NodeAt.Cross(new(spread[0], spread[1], spread[2])) + upper.NodeAt.Cross(new(spread[6], spread[7], spread[8]));
        Vector3D atNode = turned - lower.NodeAt.Cross(atLower) - upper.NodeAt.Cross(atUpper);
        Add(f, spread, atLower, atNode);
        Add(f[Frame.NodeSize..], spread[Frame.NodeSize..], atUpper, Vector3D.Zero);

        static void Add(Span<double> node, ReadOnlySpan<double> spread, Vector3D force, Vector3D moment)
        {
            (node[0], node[1], node[2]) = (node[0] + spread[0] - force.X, node[1] + spread[1] - force.Y, node[2] + spread[2] - force.Z);
            (node[3], node[4], node[5]) = (node[3] + spread[3] - moment.X, node[4] + spread[4] - moment.Y, node[5] + spread[5] - moment.Z);
        }
    }

    private void Cut(ReadOnlySpan<double> f, Span<double> cuts)
    {
        Cut(f[..Frame.NodeSize], lower, -1, cuts[..Frame.NodeSize]);
        Cut(f[Frame.NodeSize..], upper, 1, cuts[Frame.NodeSize..]);
    }

    /// <summary>The nodes push on the ends of a segment with K u less what its own weight, shared by them, puts there.</summary>
    private void CutOwnWeight()
    {
        Span<double> up = stackalloc double[FrameElement.Size], weight = stackalloc double[FrameElement.Size];
        Rigid(SelfWeight.Gravity * Vector3D.UnitZ, Vector3D.Zero, up);
        Frame.Multiply(ownMass, up, weight);
        Cut(weight, weightInCuts);
    }

    /// <summary>Takes from the forces in the cuts what the inertia of its own mass, which acts between its levels, puts on its nodes.</summary>
    /// <param name="accelerations">Accelerations of its two nodes, whose inertia forces are loads of that sign, m/s² and rad/s².</param>
    /// <param name="cuts">The forces in the cuts.</param>
    public void TakeInertia(ReadOnlySpan<double> accelerations, Span<double> cuts)
    {
        Span<double> shared = stackalloc double[FrameElement.Size], own = stackalloc double[FrameElement.Size];
        Frame.Multiply(ownMass, accelerations, shared);
        Cut(shared, own);
        for (int i = 0; i < cuts.Length; i++)
            cuts[i] -= own[i];
    }

    private void Cut(ReadOnlySpan<double> node, Place place, double sign, Span<double> cut)
    {
        Vector3D force = sign * new Vector3D(node[0], node[1], node[2]), moment = sign * new Vector3D(node[3], node[4], node[5]);
        moment = axes.Axes.ToLocal(moment - (place.Center - place.NodeAt).Cross(force));
        force = axes.Axes.ToLocal(force);
        (cut[0], cut[1], cut[2], cut[3], cut[4], cut[5]) = (force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z);
    }

    private Superelement Condense(ReadOnlySpan<FrameElement> acting) =>
        new(lower.Node, upper.Node, panel!.Interior.Count, acting);

    private FrameElement MakeMember(LatticeMember member) =>
        member.Pinned
            ? MakeBar(member, IsTensionOnly && member.Pair >= 0 ? 0.5 : 1)
            : new BeamElement(member.Start, NodeAt(member.Start), member.End, NodeAt(member.End), new BeamDefinition(SectionOf(member))
            {
                StartOffset = axes.ToGlobal(member.From) - NodeAt(member.Start),
                EndOffset = axes.ToGlobal(member.To) - NodeAt(member.End),
                Up = Outward(member),
            });

    private BarElement MakeBar(LatticeMember member, double stiffnessFactor)
    {
        BeamSection section = SectionOf(member);
        return new BarElement(
            member.Start, NodeAt(member.Start), member.End, NodeAt(member.End), stiffnessFactor * section.EA, section.Mass,
            axes.ToGlobal(member.From) - NodeAt(member.Start), axes.ToGlobal(member.To) - NodeAt(member.End));
    }

    private BeamSection SectionOf(LatticeMember member)
    {
        var lattice = (LatticeSegment)Segment;
        BeamSection section = member.Section.Of(lattice.Material);
        return section with { Mass = section.Mass * (1 + lattice.ConnectionMassFraction) };
    }

    private Vector3D NodeAt(int local) => local switch
    {
        0 => lower.NodeAt,
        1 => upper.NodeAt,
        _ => axes.ToGlobal(panel!.Interior[local - 2]),
    };

    /// <summary>
    /// From the middle of the plan at the member's own height to the member: local z of a leg or a horizontal points
    /// outward, in every bay alike.
    /// </summary>
    private Vector3D Outward(LatticeMember member)
    {
        Vector3D at = 0.5 * (axes.ToGlobal(member.From) + axes.ToGlobal(member.To)), axis = upper.Center - lower.Center;
        double t = (at - lower.Center).Dot(axes.Axes.Z) / axis.Dot(axes.Axes.Z);
        return at - lower.Center - t * axis;
    }

    private BeamElement Beam(BeamDefinition definition, double roll) =>
        new(lower.Node, lower.NodeAt, upper.Node, upper.NodeAt, definition with
        {
            StartOffset = lower.Center - lower.NodeAt,
            EndOffset = upper.Center - upper.NodeAt,
            Up = axes.Axes.X,
            Roll = roll,
        });

    private static BeamDefinition Definition(MemberSegment member) =>
        member.TopSection is null
            ? new BeamDefinition(member.Section.Of(member.Material))
            : new BeamDefinition(xi => member.SectionAt(xi).Of(member.Material));

    private static BeamDefinition Definition(BlockSegment block)
    {
        (double E, double G, double density) = (block.Stuff.E, block.Stuff.G, block.Stuff.Density.KilogramsPerCubicMeter);
        return block.TopSection is null
            ? new BeamDefinition(block.Section.Of(E, G, density))
            : new BeamDefinition(xi => block.SectionAt(xi).Of(E, G, density));
    }

    /// <summary>Mass and center of mass of a lattice: its members are straight and uniform.</summary>
    private (double Mass, Vector3D Center) MembersMass()
    {
        double sum = 0;
        Vector3D first = Vector3D.Zero;
        foreach (LatticeMember member in panel!.Members)
        {
            double mass = SectionOf(member).Mass * (member.To - member.From).Length;
            sum += mass;
            first += 0.5 * mass * (member.From + member.To);
        }
        return sum == 0 ? (0, 0.5 * (lower.Center + upper.Center)) : (sum, axes.ToGlobal(first / sum));
    }

    /// <summary>Mass and center of mass, from what rigid motions of the two nodes meet.</summary>
    private (double Mass, Vector3D Center) RigidMass()
    {
        ReadOnlySpan<double> m = ownMass;
        Span<double> x = stackalloc double[FrameElement.Size], y = stackalloc double[FrameElement.Size];
        Span<double> turnY = stackalloc double[FrameElement.Size], turnZ = stackalloc double[FrameElement.Size];
        Rigid(Vector3D.UnitX, Vector3D.Zero, x);
        Rigid(Vector3D.UnitY, Vector3D.Zero, y);
        Rigid(Vector3D.Zero, Vector3D.UnitY, turnY);
        Rigid(Vector3D.Zero, Vector3D.UnitZ, turnZ);
        double mass = Product(x, m, x);
        return mass == 0
            ? (0, 0.5 * (lower.Center + upper.Center))
            : (mass, new Vector3D(Product(turnZ, m, y), -Product(turnZ, m, x), Product(turnY, m, x)) / mass);
    }

    private void Rigid(Vector3D move, Vector3D turn, Span<double> motion)
    {
        Put(motion, move + turn.Cross(lower.NodeAt), turn);
        Put(motion[Frame.NodeSize..], move + turn.Cross(upper.NodeAt), turn);

        static void Put(Span<double> node, Vector3D u, Vector3D theta) =>
            (node[0], node[1], node[2], node[3], node[4], node[5]) = (u.X, u.Y, u.Z, theta.X, theta.Y, theta.Z);
    }

    private static double Product(ReadOnlySpan<double> a, ReadOnlySpan<double> m, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < FrameElement.Size; i++)
        {
            for (int j = 0; j < FrameElement.Size; j++)
                sum += a[i] * m[i * FrameElement.Size + j] * b[j];
        }
        return sum;
    }
}
