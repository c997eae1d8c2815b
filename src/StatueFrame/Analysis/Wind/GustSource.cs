using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>
/// One of the random fields that gusts are made of, each independent of the others: along the wind; along it too, but against one another
/// on both sides of a band, which twists; and across the wind. With it goes what it loads every part with. SI units.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Its coordinates are the loads of the parts, and then the modes, by what they exceed the
/// quasi-static motion (see <see cref="GustCovariance"/>).
/// </remarks>
internal sealed class GustSource : MotionShapes
{
    private readonly StatueWind wind;
    private readonly WindModes modes;
    private readonly (Vector3D Force, Vector3D Moment)[] loads;
    private readonly double[] statics, atRest;
    private readonly Lazy<Resultant[]> onBase;
    private readonly int size;

    /// <summary>A field and its loads.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="wind">The wind that the parts meet.</param>
    /// <param name="field">The gusts.</param>
    /// <param name="swing">By how much of its load a part's own gust of one standard deviation swings it.</param>
    /// <param name="loadOf">That load: a force at the pressure center of the part, N, and a couple, N·m.</param>
    /// <param name="transfer">The transfer functions of the modes.</param>
    /// <param name="duration">Time of the peak, s.</param>
    /// <param name="hasMean">False when the load has no mean.</param>
    public GustSource(
        StatueModel model, WindModes modes, StatueWind wind, GustField field, Func<StatueWind.Part, double> swing,
        Func<StatueWind.Part, (Vector3D Force, Vector3D Moment)> loadOf, ModalTransfer transfer, double duration, bool hasMean) : base(model)
    {
        (this.wind, this.modes, size) = (wind, modes, model.Frame.FreedomCount);
        loads = Array.ConvertAll(wind.Parts, part => loadOf(part));
        var nodal = new double[loads.Length * size];
        var modalForces = new double[modes.Count * loads.Length];
        for (int a = 0; a < loads.Length; a++)
        {
            (Vector3D force, Vector3D moment) = loads[a];
            Span<double> own = nodal.AsSpan(a * size, size);
            foreach ((Place place, Vector3D at, Vector3D share, Vector3D couple) in wind.Parts[a].Shares(force, moment))
                Put(own, place, share, couple + (at - place.NodeAt).Cross(share));
            for (int i = 0; i < modes.Count; i++)
                modalForces[i * loads.Length + a] = DenseVector.Dot(own, modes.Shape(i));
        }
        statics = model.Statics.Solve(nodal);
        atRest = new double[size];
        onBase = new Lazy<Resultant[]>(Base);
        Covariance = new GustCovariance(field, Array.ConvertAll(wind.Parts, part => swing(part)), modalForces, transfer, duration, hasMean);
    }

    private static void Put(Span<double> nodal, Place place, Vector3D force, Vector3D moment)
    {
        Span<double> node = nodal.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
        (node[0], node[1], node[2]) = (node[0] + force.X, node[1] + force.Y, node[2] + force.Z);
        (node[3], node[4], node[5]) = (node[3] + moment.X, node[4] + moment.Y, node[5] + moment.Z);
    }

    /// <summary>What it does to every quantity.</summary>
    public GustCovariance Covariance { get; }

    public override int Count => Covariance.Count;

    /// <summary>Static displacements under a part's load, or a mode's shape.</summary>
    public override ReadOnlySpan<double> Displacements(int coordinate) =>
        coordinate < loads.Length ? statics.AsSpan(coordinate * size, size) : modes.Shape(coordinate - loads.Length);

    /// <summary>None with static loads; of a mode ω²φ.</summary>
    public override ReadOnlySpan<double> Accelerations(int coordinate) =>
        coordinate < loads.Length ? atRest : modes.Accelerations(coordinate - loads.Length);

    public override Resultant[] Base()
    {
        var all = new Resultant[Count];
        for (int a = 0; a < loads.Length; a++)
            all[a] = Resultant.Of(loads[a].Force, wind.Parts[a].At - Model.BaseCenter) + new Resultant(Vector3D.Zero, loads[a].Moment);
        for (int i = 0; i < modes.Count; i++)
            all[loads.Length + i] = OfMode(modes.Shape(i), modes.Omega[i]);
        return all;
    }

    /// <summary>What each coordinate puts on the base along a force direction or about a moment axis through its center.</summary>
    public double[] OnBase(Vector3D axis, Vector3D direction) => Array.ConvertAll(onBase.Value, r => r.Force.Dot(direction) + r.Moment.Dot(axis));
}
