using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Studies;

/// <summary>
/// What all variants of one geometry have in common: the sparsity pattern and the order of elimination, where every element
/// stands, what wind and ice do, and the shapes that the lowest modes and the buckled statue are looked for near.
/// </summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class ReanalysisBasis
{
    private readonly HashSet<FrameElement> varied;

    public ReanalysisBasis(Statue statue, Criteria criteria, Situation[] situations, int frequencies)
    {
        var v = new Validator();
        statue.Validate(v);
        StatueSheet.Validate(v, statue, criteria, situations);
        v.ThrowIfAny();
        (Statue, Criteria, Frequencies) = (statue, criteria, frequencies);
        Model = ModelBuilder.BuildValid(statue);
        RequireScope(Model, criteria, situations);
        var elements = new Dictionary<FrameElement, int>();
        for (int i = 0; i < Model.Frame.Elements.Count; i++)
            elements[(FrameElement)Model.Frame.Elements[i]] = i;
        Segments = [.. Model.Bodies.SelectMany((body, b) => body.Segments.Select((segment, i) => new SegmentSlot(b, i, elements[segment.Element], segment, new SegmentPart(segment))))];
        Rings = [.. Model.Rings.Select(r => new RingPart(r.Ring, elements[r.Ring], r.BandInStatue, Model.BandAt(r.BandInStatue).Body))];
        varied = [.. Segments.Select(s => s.Model.Element), .. Rings.Select(r => (FrameElement)r.Ring)];
        FixedStiffness = FindFixedStiffness();
        Bands = [.. Model.Bodies.SelectMany(BandPart.Of)];
        FrameMasses = [.. Model.Bodies.SelectMany(body => body.FrameMasses)];
        MeetsCenters = FindWhetherCentersCount(situations);
        Loads = Array.ConvertAll(situations, situation => new LoadTable(Model, situation));
        ModeShapes = FindModeShapes();
        BucklingShapes = Array.ConvertAll(situations, FindBucklingShapes);
    }

    /// <summary>A segment of a tower: which body's, which of its segments, and which element of the frame.</summary>
    internal readonly record struct SegmentSlot(int Body, int Index, int Element, SegmentModel Model, SegmentPart Part);

    public Statue Statue { get; }

    public Criteria Criteria { get; }

    /// <summary>How many of the lowest frequencies are wanted; at most as many as the model has.</summary>
    public int Frequencies { get; }

    public StatueModel Model { get; }

    public SegmentSlot[] Segments { get; }

    public RingPart[] Rings { get; }

    public LoadTable[] Loads { get; }

    /// <summary>The stiffness of what does not vary, seams and joints of limbs, on the pattern of the frame.</summary>
    public double[] FixedStiffness { get; }

    /// <summary>The bands of all bodies, in the order of the model.</summary>
    public BandPart[] Bands { get; }

    /// <summary>The members of the level frames, which do not vary.</summary>
    public (Place Level, double Mass, Mechanics.Vector3D At)[] FrameMasses { get; }

    /// <summary>Whether something asked for or put on the statue is at the center of a band, which moves with the mass of its skin.</summary>
    public bool MeetsCenters { get; }

    /// <summary>Shapes of the lowest modes, one reduced vector after the other.</summary>
    public double[] ModeShapes { get; }

    /// <summary>For each strength situation shapes that the statue buckles in; empty when it buckles far above the loads.</summary>
    public double[][] BucklingShapes { get; }

    private static void RequireScope(StatueModel model, Criteria criteria, Situation[] situations)
    {
        if (criteria.Fine is not null)
            throw new ArgumentException($"A fine model is built anew for every variant: leave Criteria.{nameof(Criteria.Fine)} out, or take VariantStudy or Statue.Check.");
        if (model.HasTensionOnly)
            throw new ArgumentException("Braces that act in tension only go slack from case to case; take VariantStudy or Statue.Check.");
        foreach (Situation situation in situations)
        {
            if (situation.Actions.FirstOrDefault(a => a.Action is not (SelfWeight or WindAction or ImposedLoad or IceAction)) is { } other)
                throw new ArgumentException($"Situation \"{situation.Name}\" has {other.Action.Title}; a reanalysis takes self-weight, wind, ice and imposed loads. Take VariantStudy or Statue.Check.");
        }
    }

    private bool FindWhetherCentersCount(Situation[] situations)
    {
        return Statue.Points.Any(p => p.At is null && IsBand(p.On)) || Statue.Fittings.Any(f => f.At is null && IsBand(f.On))
            || situations.Any(s => s.Actions.Any(a => a.Action is IceAction || (a.Action is ImposedLoad { At: null } load && IsBand(load.On))));

        bool IsBand(string name) => Array.Exists(Bands, b => b.Body.BandName(b.Index) == name);
    }

    private double[] FindFixedStiffness()
    {
        FrameTopology topology = Model.Frame.Topology;
        var values = new double[topology.Pattern.Count];
        Span<double> k = stackalloc double[FrameElement.Size * FrameElement.Size];
        for (int i = 0; i < Model.Frame.Elements.Count; i++)
        {
            if (varied.Contains(Model.Frame.Elements[i]))
                continue;
            k.Clear();
            Model.Frame.Elements[i].AddStiffness(k);
            topology.ScatterElement(i, k, values);
        }
        return values;
    }

    private double[] FindModeShapes()
    {
        int n = Model.Frame.EquationCount, size = Math.Min(2 * Frequencies + 4, n);
        using var lanczos = new GeneralizedLanczos(Model.Frame.Stiffness, Model.Frame.Mass, Model.Statics.Factors);
        lanczos.Solve(size);
        return ShapesOf(lanczos, n);
    }

    private double[] FindBucklingShapes(Situation situation)
    {
        const int Shapes = 6;
        if (situation.LimitState != LimitState.Strength)
            return [];
        Response response = Model.Respond(situation);
        var softening = new Mechanics.Sparse.SymmetricMatrix(Model.Frame.Topology.Pattern);
        Model.Frame.AddGeometricStiffness(response.Stability.Case.Displacements, softening);
        DenseVector.Scale(softening.Values, -1);
        using var lanczos = new GeneralizedLanczos(Model.Frame.Stiffness, softening, Model.Statics.Factors);
        int wanted = Math.Min(Shapes, lanczos.CountAbove(1 / (10 * Stability.GreatestFactor)));
        if (wanted == 0)
            return [];
        lanczos.Solve(wanted);
        return ShapesOf(lanczos, Model.Frame.EquationCount);
    }

    private static double[] ShapesOf(GeneralizedLanczos lanczos, int n)
    {
        var shapes = new double[lanczos.Found * n];
        for (int i = 0; i < lanczos.Found; i++)
            lanczos.Vector(i, shapes.AsSpan(i * n, n));
        return shapes;
    }
}
