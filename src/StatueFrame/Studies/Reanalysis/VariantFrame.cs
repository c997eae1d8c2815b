using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Studies;

/// <summary>The equations of a variant: stiffness, mass and weight assembled and factored in room that is used again. SI units.</summary>
/// <remarks>For one thread; filled anew for every variant.</remarks>
internal sealed class VariantFrame
{
    private const int Node = Frame.NodeSize, Entries = Node * Node;

    private readonly ReanalysisBasis basis;
    private readonly VariantParts parts;
    private readonly FrameTopology topology;
    private readonly double[] nodeMasses, springs = new double[Entries];
    private readonly Freedoms held;
    private readonly SubspaceIteration modes;
    private readonly double[] frequencies;

    public VariantFrame(ReanalysisBasis basis, VariantParts parts)
    {
        (this.basis, this.parts) = (basis, parts);
        Frame frame = basis.Model.Frame;
        topology = frame.Topology;
        (Stiffness, Mass) = (new SymmetricMatrix(topology.Pattern), new SymmetricMatrix(topology.Pattern));
        Factors = new LdlFactorization(topology.Symbolic);
        nodeMasses = new double[frame.Nodes.Count * Entries];
        held = frame.Nodes[basis.Model.Bodies[0].Levels[0].Node].Restrained;
        Weights = new double[frame.FreedomCount];
        int n = frame.EquationCount;
        modes = new SubspaceIteration(topology.Symbolic, Math.Max(1, basis.ModeShapes.Length / n));
        frequencies = new double[Math.Min(basis.Frequencies, n)];
    }

    public SymmetricMatrix Stiffness { get; }

    public SymmetricMatrix Mass { get; }

    /// <summary>The stiffness, factored.</summary>
    public LdlFactorization Factors { get; }

    /// <summary>Nodal forces of the weight of everything, a full vector.</summary>
    public double[] Weights { get; }

    public double Kilograms { get; private set; }

    public Vector3D Center { get; private set; }

    /// <summary>Assembles and factors what the parts say; false when it does not stand.</summary>
    public bool Assemble(Statue variant)
    {
        nodeMasses.AsSpan().Clear();
        Weights.AsSpan().Clear();
        Mass.Values.Clear();
        basis.FixedStiffness.CopyTo(Stiffness.Values);
        Vector3D moment = Vector3D.Zero;
        Kilograms = 0;
        AddSegments(ref moment);
        AddBands(ref moment);
        AddRings(ref moment);
        AddFittings(variant, ref moment);
        AddNodes();
        AddSprings(variant.Tower.Base);
        Center = Kilograms > 0 ? moment / Kilograms : Vector3D.Zero;
        DenseVector.Scale(Weights, -SelfWeight.Gravity);
        for (int node = 0; node < nodeMasses.Length / Entries; node++)
        {
            if (LooseParts.LooseButForRounding(Stiffness, topology, node) != Freedoms.None)
                return false;
        }
        return Factors.Factor(Stiffness) && Factors.NegativePivots == 0;
    }

    /// <summary>The lowest circular frequencies, rad/s, ascending.</summary>
    public ReadOnlySpan<double> Frequencies()
    {
        int wanted = frequencies.Length;
        if (wanted < modes.Size && modes.Solve(Stiffness, Mass, Factors, basis.ModeShapes, wanted))
        {
            for (int i = 0; i < wanted; i++)
                frequencies[i] = 1 / Math.Sqrt(modes.Value(i));
            return frequencies;
        }
        using var lanczos = new GeneralizedLanczos(Stiffness, Mass, Factors);
        lanczos.Solve(wanted);
        for (int i = 0; i < lanczos.Found; i++)
            frequencies[i] = 1 / Math.Sqrt(lanczos.Value(i));
        return frequencies.AsSpan(0, lanczos.Found);
    }

    /// <summary>Adds the geometric stiffness under displacements, a full vector, times a factor to a matrix on the pattern.</summary>
    public void AddGeometricStiffness(ReadOnlySpan<double> displacements, double factor, SymmetricMatrix sum)
    {
        Span<double> u = stackalloc double[FrameElement.Size], kg = stackalloc double[FrameElement.Size * FrameElement.Size];
        for (int s = 0; s < parts.Segments.Length; s++)
        {
            basis.Segments[s].Model.Element.Gather(displacements, u);
            kg.Clear();
            foreach (AxialStiffening part in parts.Segments[s].Stiffenings)
                DenseVector.AddScaled(kg, factor * DenseVector.Dot(part.Force, u), part.Matrix);
            topology.ScatterElement(basis.Segments[s].Element, kg, sum.Values);
        }
    }

    private void AddSegments(ref Vector3D moment)
    {
        for (int s = 0; s < parts.Segments.Length; s++)
        {
            SegmentPart part = parts.Segments[s];
            topology.ScatterElement(basis.Segments[s].Element, part.Stiffness, Stiffness.Values);
            topology.ScatterElement(basis.Segments[s].Element, part.Mass, Mass.Values);
            FrameElement element = basis.Segments[s].Model.Element;
            DenseVector.AddScaled(Weights.AsSpan(element.Start * Node, Node), 1, part.Lifted.AsSpan(0, Node));
            DenseVector.AddScaled(Weights.AsSpan(element.End * Node, Node), 1, part.Lifted.AsSpan(Node, Node));
            Add(part.Kilograms, part.Kilograms * part.Center, ref moment);
            Place lower = basis.Segments[s].Model.Lower;
            PointMass.Add(part.JointMass, lower.Center - lower.NodeAt, NodeMass(lower.Node));
            Add(part.JointMass, part.JointMass * lower.Center, ref moment);
        }
    }

    private void AddBands(ref Vector3D moment)
    {
        int body = 0;
        foreach (BandPart band in basis.Bands)
        {
            while (basis.Model.Bodies[body] != band.Body)
                body++;
            BandPart.Weighing skin = parts.Skins[body];
            DenseVector.AddScaled(NodeMass(band.Node), skin.Sheet, band.SheetMatrix);
            DenseVector.AddScaled(NodeMass(band.Node), skin.Armature, band.ArmatureMatrix);
            Add(band.Mass(skin), band.Moment(skin), ref moment);
        }
    }

    private void AddRings(ref Vector3D moment)
    {
        foreach (RingState ring in parts.Rings)
        {
            topology.ScatterElement(ring.Part.Element, ring.Matrix, Stiffness.Values);
            DenseVector.AddScaled(NodeMass(ring.Part.Ring.Start), 1, ring.LevelMass);
            DenseVector.AddScaled(NodeMass(ring.Part.Ring.End), 1, ring.BandMass);
            Add(ring.Kilograms, ring.Moment, ref moment);
        }
        // A variant with other levels has a model of its own.
        foreach ((Place level, double mass, Vector3D at) in basis.FrameMasses)
        {
            PointMass.Add(mass, at - level.NodeAt, NodeMass(level.Node));
            Add(mass, mass * at, ref moment);
        }
    }

    private void AddFittings(Statue variant, ref Vector3D moment)
    {
        foreach (Fitting fitting in variant.Fittings.AsSpan())
        {
            Place on = basis.Model.PlaceOf(fitting.On);
            Vector3D at = fitting.At?.Meters ?? on.Center;
            PointMass.Add(fitting.Mass.Kilograms, at - on.NodeAt, NodeMass(on.Node));
            Add(fitting.Mass.Kilograms, fitting.Mass.Kilograms * at, ref moment);
        }
    }

    private void AddNodes()
    {
        for (int node = 0; node < nodeMasses.Length / Entries; node++)
        {
            ReadOnlySpan<double> mass = NodeMass(node);
            topology.ScatterNode(node, mass, Mass.Values);
            for (int i = 0; i < Node; i++)
                Weights[node * Node + i] += mass[i * Node + 2];
        }
    }

    private void AddSprings(TowerBase towerBase)
    {
        if (held == Freedoms.All)
            return;
        springs.AsSpan().Clear();
        double[] k = towerBase.Stiffnesses;
        for (int i = 0; i < Node; i++)
            springs[i * Node + i] = double.IsPositiveInfinity(k[i]) ? 0 : k[i];
        topology.ScatterNode(basis.Model.Bodies[0].Levels[0].Node, springs, Stiffness.Values);
    }

    private Span<double> NodeMass(int node) => nodeMasses.AsSpan(node * Entries, Entries);

    private void Add(double mass, Vector3D massTimesPosition, ref Vector3D moment)
    {
        Kilograms += mass;
        moment += massTimesPosition;
    }
}
