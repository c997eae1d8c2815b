using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// A straight beam in space: axial, torsion and bending in both principal planes, shear-flexible (Timoshenko), of a
/// uniform or varying section, with rigid end offsets and released or springy end joints.
/// </summary>
/// <remarks>
/// <para>The stiffness comes from the end flexibility, integrated along the length, so one element is exact for any smooth
/// taper up to the quadrature: 4 Gauss points for a uniform beam (exact), 8 for a moderate taper, 16 when a rigidity varies
/// more than threefold. Mass and geometric stiffness use the displacement field of the same beam loaded at its ends. End
/// joints are condensed out statically; mass and geometric stiffness follow through the same condensation.</para>
/// <para>The geometric stiffness is that of the axial force, including the second-order motion of the rigid offsets and the
/// torsional (Wagner) term. The parts of end moments and shear forces, which matter for lateral-torsional buckling, are
/// left out.</para>
/// <para>Immutable and safe to share between threads, when the section function is.</para>
/// </remarks>
public sealed class BeamElement : FrameElement
{
    private const double StrongTaper = 3;
    private const double Mechanism = 1e-12;

    private readonly BeamDefinition definition;
    private readonly MemberLine line;
    private readonly GaussRule rule;
    private readonly BeamRod stretch, twist;
    private readonly BeamPlane xy, xz;
    private readonly bool hasJoints;

    /// <summary>Lays a beam between two nodes.</summary>
    /// <param name="start">Index of the start node.</param>
    /// <param name="startPosition">Position of the start node, m, global axes.</param>
    /// <param name="end">Index of the end node.</param>
    /// <param name="endPosition">Position of the end node, m, global axes.</param>
    /// <param name="definition">Section, orientation, offsets and joints.</param>
    /// <exception cref="ArgumentException">
    /// The beam has no length, a value is not finite, a rigidity is not positive, a mass or a joint stiffness is negative,
    /// or the releases leave the beam loose between its nodes.
    /// </exception>
    public BeamElement(int start, Vector3D startPosition, int end, Vector3D endPosition, BeamDefinition definition)
        : base(start, end)
    {
        ArgumentNullException.ThrowIfNull(definition);
        this.definition = definition;
        line = MemberLine.Between(
            start, startPosition, definition.StartOffset, end, endPosition, definition.EndOffset, definition.Up);
        if (definition.Roll != 0)
            line = line with { Axes = line.Axes.Rolled(Finite(definition.Roll, "Roll")) };

        rule = definition.IsUniform ? GaussRule.Four : GaussRule.Eight;
        Span<BeamSection> storage = stackalloc BeamSection[GaussRule.MaxCount];
        ReadOnlySpan<BeamSection> sections = Sample(storage);
        if (!definition.IsUniform && IsStrongTaper(sections))
        {
            rule = GaussRule.Sixteen;
            sections = Sample(storage);
        }
        Check(sections);
        stretch = new BeamRod(twist: false, Length, rule, sections);
        twist = new BeamRod(twist: true, Length, rule, sections);
        xy = new BeamPlane(xz: false, Length, rule, sections);
        xz = new BeamPlane(xz: true, Length, rule, sections);
        hasJoints = CheckJoints();
    }

    /// <summary>The local axes of the beam, in global components; x runs from start to end.</summary>
    public Axes3D Axes => line.Axes;

    /// <summary>The length between the beam's ends, offsets taken off, m.</summary>
    public double Length => line.Length;

    /// <inheritdoc/>
    public override void AddStiffness(Span<double> k)
    {
        Span<double> local = stackalloc double[Size * Size];
        LocalStiffness(local, []);
        line.ToGlobal(local);
        SmallMatrix.AddSymmetric(local, k, Size);
    }

    /// <inheritdoc/>
    public override void AddMass(Span<double> m)
    {
        ReadOnlySpan<BeamSection> sections = Sample(stackalloc BeamSection[GaussRule.MaxCount]);
        Span<double> local = stackalloc double[Size * Size];
        stretch.AddMass(rule, sections, local);
        twist.AddMass(rule, sections, local);
        xy.AddMass(rule, sections, local);
        xz.AddMass(rule, sections, local);
        ThroughJoints(local);
        line.ToGlobal(local);
        SmallMatrix.AddSymmetric(local, m, Size);
    }

    /// <inheritdoc/>
    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg)
    {
        ReadOnlySpan<BeamSection> sections = Sample(stackalloc BeamSection[GaussRule.MaxCount]);
        double N = AxialForce(u);
        Span<double> local = stackalloc double[Size * Size];
        twist.AddGeometricStiffness(rule, sections, N, local);
        xy.AddGeometricStiffness(rule, sections, N, local);
        xz.AddGeometricStiffness(rule, sections, N, local);
        ThroughJoints(local);
        line.ToGlobal(local);
        line.AddArmGeometricStiffness(N, local);
        SmallMatrix.AddSymmetric(local, kg, Size);
    }

    /// <summary>
    /// The forces and moments that act on the beam at its ends, in its local axes: the six of the start (forces along x,
    /// y, z, moments about x, y, z), then the six of the end; N and N·m. The axial force, tension positive, is value 6.
    /// </summary>
    /// <param name="u">Displacements of the two nodes, 12 values, global axes.</param>
    /// <param name="forces">Receives the 12 values.</param>
    public void EndForces(ReadOnlySpan<double> u, Span<double> forces)
    {
        Span<double> d = stackalloc double[Size], k = stackalloc double[Size * Size];
        line.ToLocal(u, d);
        LocalStiffness(k, []);
        for (int i = 0; i < Size; i++)
        {
            double sum = 0;
            for (int j = 0; j < Size; j++)
                sum += k[Size * i + j] * d[j];
            forces[i] = sum;
        }
    }

    internal override double? AxialForceOf(ReadOnlySpan<double> u) => AxialForce(u);

    /// <summary>The axial force that the displacements of the two nodes (12 values, global axes) cause, N, tension positive.</summary>
    public double AxialForce(ReadOnlySpan<double> u)
    {
        if (hasJoints)
        {
            Span<double> forces = stackalloc double[Size];
            EndForces(u, forces);
            return forces[6];
        }
        Span<double> d = stackalloc double[Size];
        line.ToLocal(u, d);
        return stretch.Force(d[6] - d[0]);
    }

    /// <summary>
    /// Stiffness in local axes with the joints condensed out; fills <paramref name="t"/>, unless it is empty, with the
    /// displacements inside the joints that follow from those outside.
    /// </summary>
    private void LocalStiffness(Span<double> k, Span<double> t)
    {
        stretch.AddStiffness(k);
        twist.AddStiffness(k);
        xy.AddStiffness(k);
        xz.AddStiffness(k);
        if (!hasJoints)
            return;
        Span<double> joints = stackalloc double[Size];
        CopyJoints(joints);
        for (int i = 0; i < Size; i++)
            SmallMatrix.Condense(k, Size, i, joints[i], t);
    }

    private void ThroughJoints(Span<double> m)
    {
        if (!hasJoints)
            return;
        Span<double> k = stackalloc double[Size * Size], t = stackalloc double[Size * Size];
        SmallMatrix.SetUnit(t, Size);
        LocalStiffness(k, t);
        SmallMatrix.Transform(m, Size, t);
    }

    private ReadOnlySpan<BeamSection> Sample(Span<BeamSection> storage)
    {
        Span<BeamSection> sections = storage[..rule.Count];
        for (int i = 0; i < sections.Length; i++)
            sections[i] = definition.SectionAt(rule.Points[i]);
        return sections;
    }

    private void CopyJoints(Span<double> joints)
    {
        definition.StartJoint.CopyTo(joints);
        definition.EndJoint.CopyTo(joints[6..]);
    }

    /// <summary>Checks the joints, and that every inner freedom is held as it is condensed; tells whether any is not rigid.</summary>
    private bool CheckJoints()
    {
        Span<double> joints = stackalloc double[Size], k = stackalloc double[Size * Size], diagonal = stackalloc double[Size];
        CopyJoints(joints);
        bool all = true;
        foreach (double joint in joints)
        {
            if (!(joint >= 0))
                throw Problem(Invariant($"has a joint stiffness of {joint}; it must be 0 or more"));
            all &= double.IsPositiveInfinity(joint);
        }
        if (all)
            return false;
        LocalStiffness(k, []);
        for (int i = 0; i < Size; i++)
            diagonal[i] = k[(Size + 1) * i];
        for (int i = 0; i < Size; i++)
        {
            if (k[(Size + 1) * i] + joints[i] <= Mechanism * diagonal[i])
                throw Problem($"is loose between its nodes: its releases leave nothing to hold local {(Freedoms)(1 << (i % 6))}");
            SmallMatrix.Condense(k, Size, i, joints[i], []);
        }
        return true;
    }

    private void Check(ReadOnlySpan<BeamSection> sections)
    {
        foreach (ref readonly BeamSection s in sections)
        {
            if (!(IsPositive(s.EA) && IsPositive(s.EIy) && IsPositive(s.EIz) && IsPositive(s.GJ) && s.GAy > 0 && s.GAz > 0))
                throw Problem($"needs positive, finite rigidities (a shear rigidity may be infinite) all along, but has {s}");
            if (!(IsNotNegative(s.Mass) && IsNotNegative(s.RotaryY) && IsNotNegative(s.RotaryZ)))
                throw Problem($"needs finite masses of 0 or more all along, but has {s}");
        }

        static bool IsPositive(double value) => value > 0 && double.IsFinite(value);
        static bool IsNotNegative(double value) => value >= 0 && double.IsFinite(value);
    }

    private static bool IsStrongTaper(ReadOnlySpan<BeamSection> sections)
    {
        return Varies(sections, static s => s.EA) || Varies(sections, static s => s.GJ)
            || Varies(sections, static s => s.EIy) || Varies(sections, static s => s.EIz);

        static bool Varies(ReadOnlySpan<BeamSection> sections, Func<BeamSection, double> rigidity)
        {
            double min = double.PositiveInfinity, max = 0;
            foreach (BeamSection section in sections)
            {
                min = Math.Min(min, rigidity(section));
                max = Math.Max(max, rigidity(section));
            }
            return max > StrongTaper * min;
        }
    }

    private double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw Problem($"needs a finite {name}");

    private ArgumentException Problem(string what) => new($"{MemberLine.Name(Start, End)} {what}.", nameof(definition));
}
