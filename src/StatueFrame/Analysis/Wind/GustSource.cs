using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// One of the random fields that gusts are made of, each independent of the others: along the wind; along it too, but against one another
/// on both sides of a band, which twists; and across the wind. With it goes what it loads every band with. SI units.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Its coordinates are the loads of the bands, and then the modes, by what they exceed the
/// quasi-static motion (see <see cref="GustCovariance"/>).
/// </remarks>
internal sealed class GustSource
{
    private readonly BandWind wind;
    private readonly WindModes modes;
    private readonly (Vector3D Force, Vector3D Moment)[] loads;
    private readonly double[] statics;
    private readonly int size;

    /// <summary>A field and its loads.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="wind">The wind that the bands meet.</param>
    /// <param name="field">The gusts.</param>
    /// <param name="swing">By which part of its load a band's own gust of one standard deviation swings it.</param>
    /// <param name="loadOf">That load: a force at the pressure center of the band, N, and a couple, N·m.</param>
    /// <param name="transfer">The transfer functions of the modes.</param>
    /// <param name="duration">Time of the peak, s.</param>
    /// <param name="hasMean">False when the load has no mean.</param>
    public GustSource(
        StatueModel model, WindModes modes, BandWind wind, GustField field, Func<BandWind.Band, double> swing,
        Func<BandWind.Band, (Vector3D Force, Vector3D Moment)> loadOf, ModalTransfer transfer, double duration, bool hasMean)
    {
        (this.wind, this.modes, size) = (wind, modes, model.Frame.FreedomCount);
        loads = Array.ConvertAll(wind.Bands, band => loadOf(band));
        var nodal = new double[loads.Length * size];
        var modalForces = new double[modes.Count * loads.Length];
        for (int a = 0; a < loads.Length; a++)
        {
            (Vector3D force, Vector3D moment) = loads[a];
            BandWind.Band band = wind.Bands[a];
            moment += (band.At - band.Place.NodeAt).Cross(force);
            double[] six = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
            six.CopyTo(nodal, a * size + band.Place.Node * Frame.NodeSize);
            for (int i = 0; i < modes.Count; i++)
            {
                ReadOnlySpan<double> moved = modes.Shape(i).Slice(band.Place.Node * Frame.NodeSize, Frame.NodeSize);
                for (int d = 0; d < six.Length; d++)
                    modalForces[i * loads.Length + a] += six[d] * moved[d];
            }
        }
        statics = model.Statics.Solve(nodal);
        Covariance = new GustCovariance(field, Array.ConvertAll(wind.Bands, band => swing(band)), modalForces, transfer, duration, hasMean);
    }

    /// <summary>What it does to every quantity.</summary>
    public GustCovariance Covariance { get; }

    /// <summary>The displacements of a coordinate, a full vector: static ones under a band's load, or a mode's shape.</summary>
    public ReadOnlySpan<double> Shape(int coordinate) =>
        coordinate < loads.Length ? statics.AsSpan(coordinate * size, size) : modes.Shape(coordinate - loads.Length);

    /// <summary>What each coordinate puts on the base along a force direction or about a moment axis through its center.</summary>
    public double[] OnBase(Vector3D axis, Vector3D direction)
    {
        var c = new double[Covariance.Count];
        for (int a = 0; a < loads.Length; a++)
            c[a] = loads[a].Force.Dot(direction) + (wind.Bands[a].At.Cross(loads[a].Force) + loads[a].Moment).Dot(axis);
        for (int i = 0; i < modes.Count; i++)
        {
            double w = modes.Omega[i];
            double Part(int d) => modes.Participation(i, d);
            c[loads.Length + i] = w * w * (
                direction.Dot(new Vector3D(Part(0), Part(1), Part(2))) + axis.Dot(new Vector3D(Part(3), Part(4), Part(5))));
        }
        return c;
    }
}
