using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>
/// The stress of the standoffs of a ring in gusts, at the worst of the four corners of their two ends: there it is linear in the loads. All
/// forces of a ring depend on the six motions of its band against its level, so that gusts are looked at once a ring.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class GustBarStress
{
    private const int Motions = Frame.NodeSize, Corners = BarEnds.Corners;

    private readonly double[][][] motions;
    private readonly double[] atPeakPressure;
    private readonly GustMoments moments;

    /// <param name="model">The statue's model.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="sources">The gusts, those along the wind first.</param>
    /// <param name="wind">The wind that the bands meet.</param>
    public GustBarStress(StatueModel model, RingElement ring, IReadOnlyList<GustSource> sources, StatueWind wind)
    {
        Vector3D arm = model.Frame.Nodes[ring.End].Position - model.Frame.Nodes[ring.Start].Position;
        motions = [.. sources.Select(MotionsIn)];
        moments = sources.Select((source, i) => source.Covariance.Through(motions[i])).Aggregate((a, b) => a + b);
        atPeakPressure = Array.ConvertAll(motions[0], motion => wind.AtPeakPressure(motion));

        double[][] MotionsIn(GustSource source)
        {
            double[][] rows = [.. Enumerable.Range(0, Motions).Select(_ => new double[source.Covariance.Count])];
            Span<double> r = stackalloc double[Motions];
            for (int i = 0; i < source.Covariance.Count; i++)
            {
                RelativeMotion.Of(source.Displacements(i), ring.Start, ring.End, arm, r);
                for (int k = 0; k < Motions; k++)
                    rows[k][i] = r[k];
            }
            return rows;
        }
    }

    /// <summary>The worst corner of a bar in gusts, and its axial force.</summary>
    public (GustStatistics Stress, GustStatistics Axial) Of(PlacedBar bar)
    {
        BarEnds[] unit = ByUnitMotions(bar);
        FlatRectangle section = bar.Place.Standoff.Rectangle;
        GustStatistics worst = moments.Of(Corner(unit, section, 0));
        for (int corner = 1; corner < Corners; corner++)
        {
            GustStatistics stress = moments.Of(Corner(unit, section, corner));
            if (Math.Abs(stress.Peak) > Math.Abs(worst.Peak))
                worst = stress;
        }
        return (worst, moments.Of(Array.ConvertAll(unit, ends => ends.Skin.N)));
    }

    /// <summary>The stress of the corner that the peak pressure on all bands stresses most: its statistics, and its value for every coordinate, source by source.</summary>
    public (GustStatistics Stress, double[][] Effects) OfWorstCorner(PlacedBar bar)
    {
        BarEnds[] unit = ByUnitMotions(bar);
        FlatRectangle section = bar.Place.Standoff.Rectangle;
        double[] worst = Enumerable.Range(0, Corners).Select(corner => Corner(unit, section, corner)).MaxBy(c => Math.Abs(DenseVector.Dot(c, atPeakPressure)))!;
        return (moments.Of(worst), Array.ConvertAll(motions, source =>
        {
            var effects = new double[source[0].Length];
            for (int k = 0; k < Motions; k++)
                DenseVector.AddScaled(effects, worst[k], source[k]);
            return effects;
        }));
    }

    private static double[] Corner(BarEnds[] unit, FlatRectangle section, int corner) => Array.ConvertAll(unit, ends => ends.AtCorner(section, corner));

    /// <summary>End forces for a unit of each motion of the band against its level.</summary>
    private static BarEnds[] ByUnitMotions(PlacedBar bar)
    {
        Span<double> one = stackalloc double[Motions], still = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size];
        still.Clear();
        var unit = new BarEnds[Motions];
        for (int k = 0; k < Motions; k++)
        {
            one.Clear();
            one[k] = 1;
            bar.Forces(still, one, forces);
            unit[k] = BarEnds.Of(forces);
        }
        return unit;
    }
}
