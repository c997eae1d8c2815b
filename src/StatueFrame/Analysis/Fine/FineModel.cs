using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The fine model of a statue, from the same description: its skin a shell of flat triangles, every standoff between its level
/// and one point of the shell, tower and limbs as in <see cref="StatueModel"/>. It judges that model, in which every band of skin
/// is one rigid body.
/// </summary>
/// <remarks>
/// Bands are one sheet, but for the joints that the skin describes and for seams of given stiffness, which become springs along
/// the line. Levels stay rigid in plan. The wind on a band presses on the side it comes from, along its own direction; with weight,
/// ice and what is hung on it, it has the resultant that the other model puts on the band. Saddles hold one point each and slide
/// without friction. Folds add mass and no stiffness; the skins of trunk and limbs are not joined. Immutable and safe to share
/// between threads.
/// </remarks>
public sealed class FineModel
{
    /// <summary>A bound of the other model may be exceeded by this much before it is told.</summary>
    internal const double Tolerated = 1.05;

    private const int LeastColumns = 16;

    private FineModel(StatueModel reduced, Frame frame, Length size, BandMesh[] bands, FineBar[] bars)
    {
        (Reduced, Frame, Size, Bands, Bars) = (reduced, frame, size, bands, bars);
        Statics = new LinearStatics(frame);
        ByRing = new Dictionary<RingElement, FineBar[]>(ReferenceEqualityComparer.Instance);
        foreach (IGrouping<RingElement, FineBar> ring in bars.GroupBy(bar => bar.Ring))
            ByRing[ring.Key] = [.. ring];
    }

    /// <summary>The model that this one judges.</summary>
    public StatueModel Reduced { get; }

    /// <summary>The longest side of a triangle, about.</summary>
    public Length Size { get; }

    /// <summary>Number of triangles of skin.</summary>
    public int TriangleCount => Bands.Sum(band => band.Triangles.Length);

    /// <summary>Number of equations.</summary>
    public int EquationCount => Frame.EquationCount;

    internal Frame Frame { get; }

    internal LinearStatics Statics { get; }

    internal BandMesh[] Bands { get; }

    internal FineBar[] Bars { get; }

    internal Dictionary<RingElement, FineBar[]> ByRing { get; }

    /// <summary>Builds the fine model of a statue.</summary>
    /// <param name="statue">The description.</param>
    /// <param name="mesh">How finely; defaults when null.</param>
    /// <exception cref="InvalidStatueException">The description or the mesh has problems, or a part is loose.</exception>
    public static FineModel Build(Statue statue, FineMesh? mesh = null) => Build(StatueModel.Build(statue), mesh);

    /// <summary>Builds the fine model beside a model that is there.</summary>
    /// <param name="reduced">The model.</param>
    /// <param name="mesh">How finely; defaults when null.</param>
    /// <exception cref="InvalidStatueException">The mesh has problems, the statue has no skin, or a part of it is loose.</exception>
    public static FineModel Build(StatueModel reduced, FineMesh? mesh = null)
    {
        ArgumentNullException.ThrowIfNull(reduced);
        mesh ??= new FineMesh();
        var v = new Validator();
        mesh.Validate(v.At(nameof(FineMesh)));
        if (reduced.BandCount == 0)
            v.Add(nameof(Statue.Skin), "is not described, and a fine model is one of the skin", "Give Statue.Skin, or use StatueModel.");
        v.ThrowIfAny();
        double size = mesh.Size?.Meters ?? UsualSize(reduced);
        RequireRoom(reduced, size, v);
        v.ThrowIfAny();
        FrameBuilder frame = TowerOf(reduced);
        var bands = new List<BandMesh>();
        var bars = new List<FineBar>();
        int firstBand = 0;
        foreach (BodyModel body in reduced.Bodies)
        {
            if (body.Bands.Length == 0)
                continue;
            var mesher = new SkinMesher(body, frame, size, ColumnsOf(body, size), mesh.Armature);
            bands.AddRange(mesher.Mesh(firstBand));
            firstBand += body.Bands.Length;
            foreach ((RingElement ring, BarModel bar, int node, Vector3D at) in mesher.Ends)
            {
                var end = new FineBar(body, ring, bar, body.Levels.First(level => level.Node == ring.Start), node, at);
                bars.Add(end);
                frame.Add(end);
                AddMass(frame, node, at, 0.5 * bar.Mass, bar.Bar.Place.SkinEnd);
            }
            AddSeams(body, mesher, frame);
        }
        AddFittings(reduced, bars, frame);
        try
        {
            return new FineModel(reduced, frame.Build(), Length.FromMeters(size), [.. bands], [.. bars]);
        }
        catch (FrameException e)
        {
            throw LooseParts.Explain(reduced.Bodies, e);
        }
    }

    /// <summary>What happens in a situation without shock and earthquake: one load case a wind heading, or one without wind.</summary>
    /// <param name="situation">The actions with their factors.</param>
    /// <exception cref="InvalidStatueException">The situation has problems; all of them are listed.</exception>
    public FineResponse Respond(Situation situation)
    {
        ArgumentNullException.ThrowIfNull(situation);
        var v = new Validator();
        situation.Validate(v.At(nameof(Situation)), new StatueNames(Reduced.Statue));
        v.ThrowIfAny();
        return RespondValid(situation);
    }

    /// <summary>The same without looking at the situation.</summary>
    internal FineResponse RespondValid(Situation situation) => new(this, situation);

    /// <summary>The lowest modes of vibration, those of single panels of sheet among them.</summary>
    /// <param name="count">How many, from 1.</param>
    public ValueList<FineMode> Modes(int count = 12)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ModeSet modes = Mechanics.Vibration.Modes.Solve(Statics, Math.Min(count, EquationCount));
        double total = Reduced.Masses.TotalKilograms;
        return Enumerable.Range(0, modes.Count).Select(i => new FineMode(
            i + 1, Frequency.FromHertz(modes.Frequency(i)), modes.EffectiveMass(i, 0) / total, modes.EffectiveMass(i, 1) / total)).ToValueList();
    }

    /// <summary>A quarter of the mean distance of neighboring bars, so large that the mesh stays within a third of the room.</summary>
    private static double UsualSize(StatueModel model)
    {
        double along = 0;
        int bars = 0;
        foreach ((RingElement ring, _) in model.Rings)
            (along, bars) = (along + ring.Outline.Perimeter, bars + ring.Bars.Length);
        double size = bars > 0 ? Math.Clamp(0.25 * along / bars, 0.005, 5) : 0.25;
        while (NodesOf(model, size) > FineMesh.MostNodes / 3)
            size *= 1.1;
        return size;
    }

    private static void RequireRoom(StatueModel model, double size, Validator v)
    {
        double nodes = NodesOf(model, size);
        if (nodes > FineMesh.MostNodes)
            v.At(nameof(FineMesh)).Add(nameof(FineMesh.Size), $"makes about {nodes:0} nodes of skin; at most {FineMesh.MostNodes} are accepted", $"Take at least {Math.Ceiling(1000 * size * Math.Sqrt(nodes / FineMesh.MostNodes))} mm.");
    }

    private static double NodesOf(StatueModel model, double size) => model.Bodies.Where(body => body.Bands.Length > 0)
        .Sum(body => ColumnsOf(body, size) * body.Bands.Sum(band => 2 + (band.Top - band.Bottom) / size));

    private static int ColumnsOf(BodyModel body, double size)
    {
        double perimeter = body.Bands.Max(band => Math.Max(band.BottomOutline.Perimeter, band.TopOutline.Perimeter));
        int most = body.Rings.Select(ring => ring.Bars.Length).DefaultIfEmpty(0).Max();
        return 2 * (int)Math.Ceiling(0.5 * Math.Min(FineMesh.MostNodes, Math.Max(perimeter / size, Math.Max(LeastColumns, 2 * most))));
    }

    /// <summary>Nodes, elements and masses of tower and limbs as the other model has them. Its nodes of bands are held and carry nothing.</summary>
    private static FrameBuilder TowerOf(StatueModel reduced)
    {
        var frame = new FrameBuilder();
        HashSet<int> ofBands = [.. reduced.Bodies.SelectMany(body => body.BandPlaces).Select(place => place.Node)];
        foreach (FrameNode node in reduced.Frame.Nodes)
        {
            frame.AddNode(node.Position, node.Name);
            frame.Restrain(node.Index, ofBands.Contains(node.Index) ? Freedoms.All : node.Restrained);
            if (!ofBands.Contains(node.Index))
                frame.AddMass(node.Index, reduced.NodeMasses[node.Index]);
        }
        foreach ((int node, double[] spring) in reduced.Frame.Springs)
            frame.AddStiffness(node, spring);
        foreach (FiniteElement element in reduced.Frame.Elements.Where(element => element is not (RingElement or SeamElement)))
            frame.Add(element);
        return frame;
    }

    private static void AddMass(FrameBuilder frame, int node, Vector3D nodeAt, double mass, Vector3D at)
    {
        var m = new double[Frame.NodeSize * Frame.NodeSize];
        PointMass.Add(mass, at - nodeAt, m);
        frame.AddMass(node, m);
    }

    /// <summary>Ties the two sides of an open edge by the springs that the description gives it.</summary>
    private static void AddSeams(BodyModel body, SkinMesher mesher, FrameBuilder frame)
    {
        if (body.Seams is not { } seams)
            return;
        (double across, double along) = (seams.Across.Pascals, seams.Along.Pascals);
        var k36 = new double[36];
        var k = new double[144];
        foreach ((int below, int above, Vector3D arm, double length) in mesher.Seams)
        {
            Array.Clear(k36);
            Array.Clear(k);
            (k36[0], k36[7], k36[14]) = (along * length, along * length, across * length);
            SmallMatrix.ToGlobal(k36, Frame.NodeSize, body.Axes.Axes);
            RigidPair.AddTo(k36, arm, k);
            frame.Add(new MatrixElement(below, above, k));
        }
    }

    /// <summary>Fittings on bands hang where the other model hangs them on limp skin: at the nearest bar, or shared by all.</summary>
    private static void AddFittings(StatueModel reduced, List<FineBar> bars, FrameBuilder frame)
    {
        foreach (Fitting fitting in reduced.Statue.Fittings)
        {
            var hung = new Dictionary<BarModel, Vector3D>(ReferenceEqualityComparer.Instance);
            reduced.Hang(fitting.On, new Vector3D(0, 0, fitting.Mass.Kilograms), fitting.At, hung);
            foreach (FineBar bar in bars.Where(bar => hung.ContainsKey(bar.Bar)))
            {
                Vector3D end = bar.Bar.Bar.Place.SkinEnd;
                AddMass(frame, bar.End, end, hung[bar.Bar].Z, fitting.At?.Meters ?? end);
            }
        }
    }
}
