using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// A statue as numbers: built once, then asked for its modes and for its response to any number of situations. The
/// stiffness is factored when the model is built.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class StatueModel
{
    private readonly Dictionary<string, Place> places;
    private readonly double[] selfWeight;
    private readonly (BodyModel Body, int Band)[] bands;
    private readonly List<(RingElement Ring, int BandInStatue)> rings = [];
    private readonly Dictionary<BarModel, Vector3D> hungMasses = new(ReferenceEqualityComparer.Instance);

    internal StatueModel(Statue statue, BodyModel[] bodies, Dictionary<string, Place> places, Frame frame, double[][] rigidInertia, MassSummary masses)
    {
        Statue = statue;
        Bodies = bodies;
        Frame = frame;
        Masses = masses;
        this.places = places;
        RigidInertia = rigidInertia;
        selfWeight = Array.ConvertAll(rigidInertia[2], force => -SelfWeight.Gravity * force);
        Statics = new LinearStatics(frame);
        bands = [.. bodies.SelectMany(body => Enumerable.Range(0, body.Bands.Length).Select(band => (body, band)))];
        int firstBand = 0;
        foreach (BodyModel body in bodies)
        {
            rings.AddRange(body.Rings.Select(ring => (ring, firstBand + ring.Band)));
            firstBand += body.Bands.Length;
        }
        Segments = [.. bodies.SelectMany(body => body.Segments)];
        BarCount = rings.Sum(r => r.Ring.Bars.Length);
        foreach (Fitting fitting in statue.Fittings)
            Hang(fitting.On, new Vector3D(0, 0, -fitting.Mass.Kilograms), fitting.At, hungMasses);
        BareSlices = BareSlice.Of(bodies);
        HasTensionOnly = bodies.Any(body => body.Segments.Any(s => s.IsTensionOnly));
        if (Array.TrueForAll(selfWeight, force => force == 0))
            throw new InvalidStatueException([new Problem(nameof(Statue.Tower), "nothing that can move has a mass", "Give core segments a Mass, or add a skin or fittings.")]);
    }

    /// <summary>Builds the model of a statue.</summary>
    /// <param name="statue">The description.</param>
    /// <exception cref="InvalidStatueException">
    /// The description has problems, all of which are listed; or a part is loose, and the message names the level or band
    /// and its direction.
    /// </exception>
    public static StatueModel Build(Statue statue) => ModelBuilder.Build(statue);

    /// <summary>The description the model was built from.</summary>
    public Statue Statue { get; }

    /// <summary>What this model takes that others of the same statue do not, in words, as in "bands tied"; empty for the plain one.</summary>
    internal string Variant { get; init; } = "";

    /// <summary>Masses by group, and their center.</summary>
    public MassSummary Masses { get; }

    /// <summary>The masses put on each node, 6×6; those of elements apart.</summary>
    internal double[][] NodeMasses { get; init; } = [];

    internal BodyModel[] Bodies { get; }

    internal Frame Frame { get; }

    internal LinearStatics Statics { get; }

    /// <summary>Nodal forces of the weight of everything, N and N·m; what acts on held freedoms goes straight into the ground.</summary>
    internal ReadOnlySpan<double> SelfWeightLoads => selfWeight;

    /// <summary>Mass times a unit of each rigid motion of everything about the base's center, six full vectors.</summary>
    internal double[][] RigidInertia { get; }

    /// <summary>
    /// The participation of a mode in a rigid motion of everything, moments about the base's center: what its inertia puts on the base for ω² = 1. Mass
    /// that lies between a held node and a free one counts in it.
    /// </summary>
    internal double Participation(ReadOnlySpan<double> shape, int direction) => DenseVector.Dot(shape, RigidInertia[direction]);

    /// <summary>The statue's lowest modes of vibration, undamped, about the unloaded state.</summary>
    /// <param name="count">How many, from 1; fewer are returned when the model has fewer.</param>
    public ModalResponse Modes(int count = 12)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return new ModalResponse(this, Mechanics.Vibration.Modes.Solve(Statics, Math.Min(count, Frame.EquationCount)));
    }

    /// <summary>What happens in a situation: one load case a wind heading, or one when there is no wind.</summary>
    /// <param name="situation">The actions with their factors.</param>
    /// <exception cref="InvalidStatueException">
    /// The situation has problems, all of which are listed; or tension-only braces leave a part loose, which is named.
    /// </exception>
    public Response Respond(Situation situation) => Respond(situation, "");

    /// <summary>The same for a situation that was changed, with what was changed in words.</summary>
    internal Response Respond(Situation situation, string label)
    {
        ArgumentNullException.ThrowIfNull(situation);
        var v = new Validator();
        situation.Validate(v.At(nameof(Situation)), new StatueNames(Statue));
        v.ThrowIfAny();
        return RespondValid(situation, label);
    }

    /// <summary>The same without looking at the situation, which the library made of a valid one.</summary>
    internal Response RespondValid(Situation situation, string label = "")
    {
        try
        {
            return new Response(this, situation, label);
        }
        catch (FrameException e)
        {
            throw LooseParts.Explain(Bodies, e);
        }
    }

    /// <summary>Height of the center of a level or band above the base of the trunk's tower.</summary>
    /// <param name="part">Its name, as in "L7", "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">The statue has no such level or band.</exception>
    public UnitsNet.Length ElevationOf(string part) => places.TryGetValue(part, out Place place)
        ? UnitsNet.Length.FromMeters(place.Center.Z)
        : throw new ArgumentException($"The statue has no level or band \"{part}\". {new StatueNames(Statue).Suggest(part)}", nameof(part));

    /// <summary>
    /// What the standoffs of a band oppose to its movement, about the band's centroid, in the statue's axes: the sum of all
    /// rings that carry it.
    /// </summary>
    /// <param name="band">The band, as in "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">No standoffs carry a band of that name.</exception>
    public SupportStiffness StiffnessOf(string band)
    {
        var sum = new double[36];
        foreach (BarModel bar in BarsOf(band))
            bar.Bar.AddTo(sum);
        return new SupportStiffness(band, sum);
    }

    /// <summary>
    /// What one standoff opposes to a movement of its skin end, in its own axes: x from the tower to the skin, y along its
    /// thickness, z along its width.
    /// </summary>
    /// <param name="band">The band that it carries.</param>
    /// <param name="bar">Its number in its ring, from 1; of several rings the first that has it.</param>
    /// <exception cref="ArgumentException">No standoffs carry a band of that name, or there is no bar of that number.</exception>
    public SupportStiffness StiffnessOf(string band, int bar)
    {
        BarModel found = Array.Find(BarsOf(band), b => b.Number == bar) ?? throw new ArgumentException($"{band} has no bar {bar}; bars are counted from 1.", nameof(bar));
        var k = new double[36];
        found.Bar.Stiffness.CopyTo(k);
        return new SupportStiffness(found.Where, k);
    }

    private BarModel[] BarsOf(string band)
    {
        BarModel[] bars = [.. rings.Where(r => r.Ring.BandName == band).SelectMany(r => r.Ring.Bars)];
        return bars.Length > 0 ? bars : throw new ArgumentException($"No standoffs carry \"{band}\". {new StatueNames(Statue).Suggest(band)}", nameof(band));
    }

    /// <summary>Height above ground of the highest level or band edge, m.</summary>
    internal double GreatestHeightAboveGround
    {
        get
        {
            double top = 0;
            foreach (BodyModel body in Bodies)
            {
                foreach (Place level in body.Levels)
                    top = Math.Max(top, level.Center.Z);
                foreach (SkinBand band in body.Bands)
                    top = Math.Max(top, Math.Max(body.Axes.ToGlobal(new Vector3D(0, 0, band.Bottom)).Z, body.Axes.ToGlobal(new Vector3D(0, 0, band.Top)).Z));
            }
            return top + Statue.BaseAboveGround.Meters;
        }
    }

    /// <summary>Center of the trunk's first level, m: what base moments are about.</summary>
    internal Vector3D BaseCenter => Bodies[0].Levels[0].Center;

    /// <summary>Number of bands of the whole statue.</summary>
    internal int BandCount => bands.Length;

    /// <summary>True when every band's skin gives a force coefficient.</summary>
    internal bool AllBandsHaveCoefficient => bands.All(b => b.Body.Bands[b.Band] is { ForceCoefficient: not null } or { HeadingCoefficients: not null });

    internal int BarCount { get; }

    /// <summary>The fittings that meet wind and pressure: what they hang on, where, and their wind area, m².</summary>
    internal IEnumerable<(Fitting Fitting, Place Place, Vector3D At, double Area)> FittingsInWind
    {
        get
        {
            foreach (Fitting fitting in Statue.Fittings)
            {
                if (fitting.WindArea is not { SquareMeters: > 0 and double area })
                    continue;
                Place place = PlaceOf(fitting.On);
                yield return (fitting, place, fitting.At?.Meters ?? place.Center, area);
            }
        }
    }

    internal bool HasTensionOnly { get; }

    /// <summary>The tower that stands in the open.</summary>
    internal BareSlice[] BareSlices { get; }

    /// <summary>Every ring with the number, in the whole statue, of the band it carries.</summary>
    internal IReadOnlyList<(RingElement Ring, int BandInStatue)> Rings => rings;

    /// <summary>All segments, body by body.</summary>
    internal SegmentModel[] Segments { get; }

    /// <summary>The tower segments that have lattice members, body by body.</summary>
    internal IEnumerable<SegmentModel> LatticeSegments => Segments.Where(s => s.Members.Count > 0);

    internal (BodyModel Body, int Band) BandAt(int bandInStatue) => bands[bandInStatue];

    /// <summary>Mass that a bar carries alone when the skin is limp, kg: its strip, and the fittings that hang on it.</summary>
    internal double StripMass(BarModel bar) => bar.Share.Mass - hungMasses.GetValueOrDefault(bar).Z;

    /// <summary>Hangs a force on the bars of the band named: on the nearest one, or on all alike when it has no place of its own; not when it names a level.</summary>
    internal void Hang(string on, Vector3D force, Point3? at, Dictionary<BarModel, Vector3D> onBars)
    {
        BarModel[] near = [.. rings.Where(r => r.Ring.BandName == on).SelectMany(r => r.Ring.Bars)];
        if (near.Length == 0)
            return;
        if (at is { } place)
            near = [near.FirstGreatest(bar => -(bar.Bar.Place.SkinEnd - place.Meters).Length)];
        foreach (BarModel bar in near)
            onBars[bar] = onBars.GetValueOrDefault(bar) + force / near.Length;
    }

    internal Place PlaceOf(string name) => places[name];

    /// <summary>The position of a named point, m.</summary>
    internal Vector3D PositionOf(NamedPoint point) => point.At?.Meters ?? places[point.On].Center;

    /// <summary>Whether a named point moves with a limb, and so up and down too.</summary>
    internal bool IsOnLimb(string point)
    {
        string on = Statue.Points.First(p => p.Name == point).On;
        return Bodies.Skip(1).Any(body => on.StartsWith(body.Prefix, StringComparison.Ordinal));
    }

    /// <summary>The displacement and rotation that a full vector of displacements gives a point of a level or band.</summary>
    internal (Vector3D Displacement, Vector3D Rotation) Motion(ReadOnlySpan<double> u, Place place, Vector3D at)
    {
        ReadOnlySpan<double> node = u.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
        var rotation = new Vector3D(node[3], node[4], node[5]);
        return (new Vector3D(node[0], node[1], node[2]) + rotation.Cross(at - place.NodeAt), rotation);
    }
}
