using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The stress of one standoff in gusts, at the worst of the four corners of its two ends: there it is linear in the loads.</summary>
internal static class GustBarStress
{
    /// <summary>A displacement of the whole frame by coordinate.</summary>
    public delegate ReadOnlySpan<double> Displacements(int coordinate);

    public static (GustStatistics Stress, GustStatistics Axial) Of(
        RingElement ring, PlacedBar bar, GustCovariance covariance, Displacements shapes)
    {
        FlatBar flat = bar.Place.Standoff.Section;
        var section = new FlatRectangle(flat.Width.Meters, flat.Thickness.Meters);
        int count = covariance.Count;
        Span<double> forces = stackalloc double[FrameElement.Size], u = stackalloc double[FrameElement.Size];
        double[] axial = new double[count], corner = new double[count];
        var ends = new (double N, double Weak, double Strong)[2 * count];
        for (int i = 0; i < count; i++)
        {
            LoadCase.Gather(ring, shapes(i), u);
            bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
            axial[i] = forces[6];
            for (int end = 0; end < 2; end++)
                ends[end * count + i] = (forces[6] / section.A, forces[6 * end + 5] / section.WeakW, forces[6 * end + 4] / section.StrongW);
        }
        GustStatistics worst = default;
        for (int place = 0; place < 8; place++)
        {
            double weak = (place & 1) == 0 ? 1 : -1, strong = (place & 2) == 0 ? 1 : -1;
            for (int i = 0; i < count; i++)
            {
                (double N, double Weak, double Strong) end = ends[place / 4 * count + i];
                corner[i] = end.N + weak * end.Weak + strong * end.Strong;
            }
            GustStatistics stress = covariance.Of(corner);
            if (place == 0 || Math.Abs(stress.Peak) > Math.Abs(worst.Peak))
                worst = stress;
        }
        return (worst, covariance.Of(axial));
    }
}
