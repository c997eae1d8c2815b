using System.Globalization;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>Turns the description of a statue into numbers: nodes, elements, masses.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class ModelBuilder
{
    private readonly Statue statue;
    private readonly Validator validator = new();
    private readonly FrameBuilder frame = new();
    private readonly List<BodyModel> bodies = [];
    private readonly List<double[]> nodeMasses = [];
    private readonly Dictionary<string, Place> places = [];
    private readonly MassSummary masses = new();

    private ModelBuilder(Statue statue) => this.statue = statue;

    public static StatueModel Build(Statue statue)
    {
        var v = new Validator();
        statue.Validate(v);
        v.ThrowIfAny();
        return BuildValid(statue);
    }

    /// <summary>Builds the model of a statue that has been validated.</summary>
    public static StatueModel BuildValid(Statue statue, string variant = "") => new ModelBuilder(statue).Build(variant);

    private StatueModel Build(string variant)
    {
        var trunk = new BodyAxes(Axes3D.Global, Vector3D.Zero);
        AddBody("", statue.Tower, statue.Skin, statue.Standoffs, statue.Seams, trunk, null, validator);
        for (int i = 0; i < statue.Limbs.Count; i++)
        {
            Limb limb = statue.Limbs[i];
            Place root = places[limb.From];
            var axes = new BodyAxes(limb.Axes, root.Center + limb.Root.Meters);
            AddBody(limb.Name + "/", limb.Tower, limb.Skin, limb.Standoffs, limb.Seams, axes, root, validator.At(nameof(Statue.Limbs), i));
        }
        validator.ThrowIfAny();
        foreach (Fitting fitting in statue.Fittings)
        {
            Place on = places[fitting.On];
            AddPointMass(on, fitting.Mass.Kilograms, fitting.At?.Meters ?? on.Center);
            masses.Add(MassGroup.Fittings, fitting.Mass.Kilograms, fitting.At?.Meters ?? on.Center);
        }
        for (int node = 0; node < nodeMasses.Count; node++)
            frame.AddMass(node, nodeMasses[node]);
        try
        {
            Frame built = frame.Build();
            LooseParts.RequireMoreThanRounding(built);
            double[][] inertia = [.. Enumerable.Range(0, Frame.NodeSize).Select(direction => RigidInertia(built, direction))];
            return new StatueModel(statue, [.. bodies], places, built, inertia, masses) { Variant = variant, NodeMasses = [.. nodeMasses] };
        }
        catch (FrameException e)
        {
            throw LooseParts.Explain(bodies, frame, e);
        }
    }

    /// <summary>
    /// Mass times a rigid motion of everything about the base's center, as nodal forces. Where the ground holds a node, the
    /// mass matrix that is solved with lacks the held freedoms, though what is on them counts for the free ones too; that
    /// part is added here.
    /// </summary>
    private double[] RigidInertia(Frame built, int direction)
    {
        double[] motion = built.RigidMotion(direction, bodies[0].Levels[0].Center), forces = built.InertiaForces(motion);
        foreach (FiniteElement element in built.Elements)
        {
            if (!element.Nodes.ToArray().Any(IsHeld))
                continue;
            var m = new double[element.FreedomCount * element.FreedomCount];
            element.AddMass(m);
            AddHeld(m, element.Nodes);
        }
        for (int node = 0; node < nodeMasses.Count; node++)
        {
            if (IsHeld(node))
                AddHeld(nodeMasses[node], [node]);
        }
        return forces;

        bool IsHeld(int node) => built.Nodes[node].Restrained != Freedoms.None;

        void AddHeld(ReadOnlySpan<double> mass, ReadOnlySpan<int> nodes)
        {
            int size = nodes.Length * Frame.NodeSize;
            for (int i = 0; i < size; i++)
            {
                int at = nodes[i / Frame.NodeSize] * Frame.NodeSize + i % Frame.NodeSize;
                for (int j = 0; j < size; j++)
                {
                    int moved = nodes[j / Frame.NodeSize] * Frame.NodeSize + j % Frame.NodeSize;
                    if (built.EquationOf(at) < 0 || built.EquationOf(moved) < 0)
                        forces[at] += mass[i * size + j] * motion[moved];
                }
            }
        }
    }

    private void AddBody(
        string prefix, Tower tower, Skin? skin, ValueList<StandoffRing> standoffs, SeamStiffness? seams,
        BodyAxes axes, Place? root, Validator at)
    {
        Place[] levels = AddLevels(prefix, tower, axes, root);
        SegmentModel[] segments = AddSegments(prefix, tower, axes, levels);
        HoldBase(tower.Base, axes, levels[0], root, segments[0].Element);
        SkinBand[] bands = skin is null ? [] : BandBuilder.Bands(skin);
        Place[] bandPlaces = AddBands(prefix, bands, axes);
        RingElement[] rings = new RingPlacer(prefix, tower, bands, axes, levels, bandPlaces).Place(standoffs, at);
        if (seams is null && rings.Length == standoffs.Count)
            RequireRings(bands, rings, at);
        foreach (RingElement ring in rings)
            AddRing(ring, levels, bandPlaces[ring.Band]);
        for (int band = 1; seams is not null && band < bands.Length; band++)
        {
            if (skin!.HasJointAt(bands[band].Bottom))
                continue;
            frame.Add(new SeamElement(seams, axes, bands[band].BottomOutline, bands[band].Bottom, bandPlaces[band - 1], bandPlaces[band]));
        }
        bodies.Add(new BodyModel
        {
            Prefix = prefix,
            Tower = tower,
            Skin = skin,
            Axes = axes,
            Levels = levels,
            Bands = bands,
            BandPlaces = bandPlaces,
            Segments = segments,
            Rings = rings,
            Seams = seams,
        });
        foreach ((Place level, double mass, Vector3D middle) in bodies[^1].FrameMasses)
        {
            AddPointMass(level, mass, middle);
            masses.Add(prefix.Length == 0 ? MassGroup.LevelFrames : MassGroup.Limbs, mass, middle);
        }
        foreach (SegmentModel segment in segments)
        {
            AddPointMass(segment.Lower, segment.JointMass, segment.Lower.Center);
            masses.Add(prefix.Length == 0 ? MassGroup.Tower : MassGroup.Limbs, segment.JointMass, segment.Lower.Center);
        }
    }

    /// <summary>Asks for a ring on every band, as nothing else holds bands that no seams tie.</summary>
    private static void RequireRings(SkinBand[] bands, RingElement[] rings, Validator at)
    {
        var held = rings.Select(ring => ring.Band).ToHashSet();
        foreach (SkinBand band in bands.Where(band => !held.Contains(band.Index)))
            at.Add(nameof(Statue.Standoffs), string.Create(CultureInfo.InvariantCulture, $"{band.Name}, from {band.Bottom:0.###} m to {band.Top:0.###} m, has no standoffs: nothing holds it"), "Add a ring whose bars meet the skin there, or choose other BandEdges.");
    }

    private Place[] AddLevels(string prefix, Tower tower, BodyAxes axes, Place? root)
    {
        var levels = new Place[tower.Levels.Count];
        for (int i = 0; i < levels.Length; i++)
        {
            Vector3D center = axes.ToGlobal(tower.Levels[i].Center);
            string name = prefix + tower.Levels[i].Name;
            levels[i] = i == 0 && root is { } held && tower.Base.IsFixed
                ? held with { Center = center }
                : Place.At(AddNode(center, name), center);
            places[name] = levels[i];
        }
        return levels;
    }

    private void HoldBase(TowerBase towerBase, BodyAxes axes, Place first, Place? root, FrameElement above)
    {
        double[] k = towerBase.Stiffnesses;
        if (root is { } from)
        {
            if (!towerBase.IsFixed)
                frame.Add(new JointElement(k, axes.Axes, from, first, above));
            return;
        }
        var held = Freedoms.None;
        Span<double> springs = stackalloc double[36];
        for (int i = 0; i < k.Length; i++)
        {
            if (double.IsPositiveInfinity(k[i]))
                held |= (Freedoms)(1 << i);
            else
                springs[i * Frame.NodeSize + i] = k[i];
        }
        frame.Restrain(first.Node, held);
        if (held != Freedoms.All)
            frame.AddStiffness(first.Node, springs);
    }

    private SegmentModel[] AddSegments(string prefix, Tower tower, BodyAxes axes, Place[] levels)
    {
        var segments = new SegmentModel[tower.Segments.Count];
        for (int i = 0; i < segments.Length; i++)
        {
            TowerLevel bottom = tower.Levels[i], top = tower.Levels[i + 1];
            segments[i] = new SegmentModel(tower.Segments[i], $"{prefix}{bottom.Name}–{top.Name}", axes, (levels[i], bottom), (levels[i + 1], top));
            frame.Add(segments[i].Element);
            masses.Add(prefix.Length == 0 ? MassGroup.Tower : MassGroup.Limbs, segments[i].Mass, segments[i].CenterOfMass);
        }
        return segments;
    }

    private Place[] AddBands(string prefix, SkinBand[] bands, BodyAxes axes)
    {
        var result = new Place[bands.Length];
        for (int i = 0; i < bands.Length; i++)
        {
            Vector3D centroid = axes.ToGlobal(bands[i].Centroid);
            string name = prefix + StatueNames.OfBand(i);
            result[i] = places[name] = Place.At(AddNode(centroid, name), centroid);
            new PointMass(result[i].Node, bands[i].Mass, Vector3D.Zero, bands[i].Inertia.ToGlobal(axes.Axes)).AddMass(nodeMasses[result[i].Node]);
            masses.Add(prefix.Length == 0 ? MassGroup.Skin : MassGroup.Limbs, bands[i].Mass, centroid);
        }
        return result;
    }

    private void AddRing(RingElement ring, Place[] levels, Place band)
    {
        frame.Add(ring);
        Place level = Array.Find(levels, l => l.Node == ring.Start);
        foreach (BarModel bar in ring.Bars)
        {
            BarPlacement place = bar.Bar.Place;
            AddPointMass(level, 0.5 * bar.Mass, place.TowerEnd);
            AddPointMass(band, 0.5 * bar.Mass, place.SkinEnd);
            masses.Add(MassGroup.Standoffs, bar.Mass, 0.5 * (place.TowerEnd + place.SkinEnd));
        }
        foreach (BarPlacement loose in ring.Loose)
        {
            Vector3D middle = 0.5 * (loose.TowerEnd + loose.SkinEnd);
            AddPointMass(level, loose.Mass, middle);
            masses.Add(MassGroup.Standoffs, loose.Mass, middle);
        }
        foreach (PlacedBracket bracket in ring.Brackets)
        {
            AddPointMass(level, bracket.Mass, bracket.Middle);
            masses.Add(MassGroup.Brackets, bracket.Mass, bracket.Middle);
        }
    }

    private int AddNode(Vector3D position, string name)
    {
        nodeMasses.Add(new double[Frame.NodeSize * Frame.NodeSize]);
        return frame.AddNode(position, name);
    }

    private void AddPointMass(Place place, double mass, Vector3D at) =>
        PointMass.Add(mass, at - place.NodeAt, nodeMasses[place.Node]);
}
