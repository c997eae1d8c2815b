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
        var builder = new ModelBuilder(statue);
        statue.Validate(builder.validator);
        builder.validator.ThrowIfAny();
        return builder.Build();
    }

    private StatueModel Build()
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
        return new StatueModel(statue, [.. bodies], places, frame.Build(), masses);
    }

    private void AddBody(
        string prefix, Tower tower, Skin? skin, ValueList<StandoffRing> standoffs, SeamStiffness? seams,
        BodyAxes axes, Place? root, Validator at)
    {
        Place[] levels = AddLevels(prefix, tower, axes, root);
        SegmentModel[] segments = AddSegments(prefix, tower, axes, levels);
        SkinBand[] bands = skin is null ? [] : BandBuilder.Bands(skin);
        Place[] bandPlaces = AddBands(prefix, bands, axes);
        RingElement[] rings = new RingPlacer(prefix, tower, bands, axes, levels, bandPlaces).Place(standoffs, at);
        foreach (RingElement ring in rings)
            AddRing(ring, levels, bandPlaces[ring.Band]);
        for (int band = 1; seams is not null && band < bands.Length; band++)
            frame.Add(new SeamElement(seams, axes, bands[band].BottomOutline, bands[band].Bottom, bandPlaces[band - 1], bandPlaces[band]));
        bodies.Add(new BodyModel
        {
            Prefix = prefix, Tower = tower, Skin = skin, Axes = axes, Levels = levels,
            Bands = bands, BandPlaces = bandPlaces, Segments = segments, Rings = rings, HasSeams = seams is not null,
        });
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
        HoldBase(tower.Base, axes, levels[0], root);
        return levels;
    }

    private void HoldBase(TowerBase towerBase, BodyAxes axes, Place first, Place? root)
    {
        double[] k = towerBase.Stiffnesses;
        if (root is { } from)
        {
            if (!towerBase.IsFixed)
                frame.Add(new JointElement(k, axes.Axes, from, first));
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
    }

    private int AddNode(Vector3D position, string name)
    {
        nodeMasses.Add(new double[Frame.NodeSize * Frame.NodeSize]);
        return frame.AddNode(position, name);
    }

    private void AddPointMass(Place place, double mass, Vector3D at) =>
        PointMass.Add(mass, at - place.NodeAt, nodeMasses[place.Node]);
}
