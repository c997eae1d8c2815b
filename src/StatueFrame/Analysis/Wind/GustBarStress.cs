using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The stress of one standoff in gusts, at the worst of the four corners of its two ends: there it is linear in the loads.</summary>
internal static class GustBarStress
{
    /// <summary>A displacement of the whole frame by coordinate.</summary>
    public delegate ReadOnlySpan<double> Displacements(int coordinate);

    /// <summary>The worst corner in gusts, and the axial force.</summary>
    public static (GustStatistics Stress, GustStatistics Axial) Of(
        RingElement ring, PlacedBar bar, GustCovariance covariance, Displacements shapes)
    {
        (double[][] corners, double[] axial) = Corners(ring, bar, covariance.Count, shapes);
        GustStatistics worst = covariance.Of(corners[0]);
        foreach (double[] corner in corners.AsSpan(1))
        {
            GustStatistics stress = covariance.Of(corner);
            if (Math.Abs(stress.Peak) > Math.Abs(worst.Peak))
                worst = stress;
        }
        return (worst, covariance.Of(axial));
    }

    /// <summary>The stress, coordinate by coordinate, of the corner that the peak pressure on all bands stresses most.</summary>
    public static double[] WorstCorner(RingElement ring, PlacedBar bar, int count, Displacements shapes, BandWind wind) =>
        Corners(ring, bar, count, shapes).Corners.MaxBy(corner => Math.Abs(wind.AtPeakPressure(corner)))!;

    private static (double[][] Corners, double[] Axial) Corners(RingElement ring, PlacedBar bar, int count, Displacements shapes)
    {
        FlatBar flat = bar.Place.Standoff.Section;
        var section = new FlatRectangle(flat.Width.Meters, flat.Thickness.Meters);
        Span<double> forces = stackalloc double[FrameElement.Size], u = stackalloc double[FrameElement.Size];
        var axial = new double[count];
        double[][] corners = [.. Enumerable.Range(0, 8).Select(_ => new double[count])];
        for (int i = 0; i < count; i++)
        {
            ring.Gather(shapes(i), u);
            bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
            axial[i] = forces[6];
            for (int place = 0; place < corners.Length; place++)
            {
                int end = place / 4;
                double weak = (place & 1) == 0 ? 1 : -1, strong = (place & 2) == 0 ? 1 : -1;
                corners[place][i] = forces[6] / section.A + weak * forces[6 * end + 5] / section.WeakW + strong * forces[6 * end + 4] / section.StrongW;
            }
        }
        return (corners, axial);
    }
}
