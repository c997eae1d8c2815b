using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The peaks of all parts of a statue while it is shaken, whatever shakes it: cuts, lattice members, standoffs and the base.
/// Every force is a sum over coordinates, and one rule turns such a sum into its peak.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Factor 1 on the shaking; peaks have no sign and do not come at one time.</remarks>
/// <param name="model">The statue.</param>
/// <param name="motion">How it can move.</param>
/// <param name="combination">The rule.</param>
internal sealed class DynamicPeaks(StatueModel model, MotionShapes motion, PeakCombination combination)
{
    /// <summary>Six motions of an end against the other, and three accelerations.</summary>
    private const int Within = Frame.NodeSize + 3;

    private readonly Lazy<CutPeaks> onBase = new(() => PeaksOnBase(motion, combination));

    /// <summary>The peaks of single standoffs.</summary>
    public PeakBars Bars => new(model, motion, combination);

    /// <summary>What comes down at the base, in every direction.</summary>
    public CutPeaks OnBase => onBase.Value;

    /// <summary>The peak accelerations of a point of a level or band, sideways in any direction and up and down, m/s².</summary>
    public (double Across, double Up) AccelerationsAt(Place place, Vector3D at)
    {
        (Vector3D Displacement, Vector3D Rotation)[] moved = motion.Motions(place, at, accelerations: true);
        return (
            combination.GreatestInPlane(Array.ConvertAll(moved, m => m.Displacement.X), Array.ConvertAll(moved, m => m.Displacement.Y)),
            combination.Peak(Array.ConvertAll(moved, m => m.Displacement.Z)));
    }

    /// <summary>The peaks of the forces at both ends of a segment.</summary>
    public (CutPeaks Bottom, CutPeaks Top) EndPeaks(SegmentModel segment)
    {
        double[][] rows = motion.Cuts(segment);
        return (Cut(rows[..Frame.NodeSize], combination), Cut(rows[Frame.NodeSize..], combination));
    }

    /// <summary>The peaks of the axial forces of a segment's lattice members, N, without sign.</summary>
    public double[] MemberPeaks(SegmentModel segment)
    {
        PeakCombination moved = combination.Through(motion.MotionsWithin(segment.Element));
        return Array.ConvertAll(AxialByUnitMotions(segment), c => moved.Peak(c));
    }

    /// <summary>The axial forces of a segment's lattice members for a unit of each of <see cref="MotionShapes.MotionsWithin"/>, a row a member, N.</summary>
    public static double[][] AxialByUnitMotions(SegmentModel segment) =>
        ByUnitMotions(segment, segment.Members.Count, (ReadOnlySpan<double> u, in BetweenLevels between, Span<double> axial) => segment.AxialForces(segment.Element, u, axial, between));

    /// <summary>
    /// The states of a segment's lattice members when their axial force, one of their other forces, or the stress of one of
    /// their corners has its peak: <see cref="MemberForces.Count"/> values each, one after the other; with either sign.
    /// </summary>
    public double[][] MemberStates(SegmentModel segment)
    {
        const int n = Analysis.MemberForces.Count, corners = 8;
        PeakCombination moved = combination.Through(motion.MotionsWithin(segment.Element));
        double[][] rows = ByUnitMotions(segment, segment.Members.Count * n, (ReadOnlySpan<double> u, in BetweenLevels between, Span<double> forces) => segment.MemberForces(segment.Element, u, forces, between));
        var all = new double[segment.Members.Count][];
        Span<double> c = stackalloc double[Within], state = stackalloc double[Within];
        for (int i = 0; i < all.Length; i++)
        {
            SectionProperties p = segment.Members[i].Section.Properties;
            var states = new List<double>();
            for (int measure = 0; measure < n + corners; measure++)
            {
                for (int k = 0; k < c.Length; k++)
                    c[k] = measure < n ? rows[i * n + measure][k] : Corner(i, k, measure - n, p);
                if (!moved.StateAtPeak(c, state))
                    continue;
                if (moved.IsSingle && states.Count > 0)
                    break;
                for (int part = 0; part < n; part++)
                    states.Add(Mechanics.Statics.DenseVector.Dot(rows[i * n + part], state));
            }
            all[i] = [.. states];
        }
        return all;

        double Corner(int member, int k, int corner, in SectionProperties p)
        {
            int end = corner < corners / 2 ? 0 : 2;
            double strong = (corner & 1) == 0 ? 1 : -1, weak = (corner & 2) == 0 ? 1 : -1;
            return rows[member * n][k] / p.A + strong * rows[member * n + 3 + end][k] / p.Wy + weak * rows[member * n + 4 + end][k] / p.Wz;
        }
    }

    /// <summary>What a unit of each motion of a segment's end against its start, and of each acceleration of the segment, makes of a number of forces, a row a force.</summary>
    private static double[][] ByUnitMotions(SegmentModel segment, int count, ByMotion forces)
    {
        double[][] rows = [.. Enumerable.Range(0, count).Select(_ => new double[Within])];
        var column = new double[count];
        Span<double> u = stackalloc double[FrameElement.Size];
        for (int k = 0; k < Within; k++)
        {
            u.Clear();
            if (k < Frame.NodeSize)
                u[Frame.NodeSize + k] = 1;
            Vector3D pushed = segment.Mass * (k switch { Frame.NodeSize => Vector3D.UnitX, Frame.NodeSize + 1 => Vector3D.UnitY, Frame.NodeSize + 2 => Vector3D.UnitZ, _ => Vector3D.Zero });
            forces(u, new BetweenLevels(0, pushed, Vector3D.Zero), column);
            for (int i = 0; i < count; i++)
                rows[i][k] = column[i];
        }
        return rows;
    }

    private static CutPeaks PeaksOnBase(MotionShapes motion, PeakCombination combination)
    {
        Resultant[] all = motion.Base();
        double[][] rows =
        [
            Array.ConvertAll(all, r => r.Force.X), Array.ConvertAll(all, r => r.Force.Y), Array.ConvertAll(all, r => r.Force.Z),
            Array.ConvertAll(all, r => r.Moment.X), Array.ConvertAll(all, r => r.Moment.Y), Array.ConvertAll(all, r => r.Moment.Z),
        ];
        return Cut(rows, combination);
    }

    /// <summary>A cut from its six forces, a row each with a value a coordinate.</summary>
    private static CutPeaks Cut(double[][] rows, PeakCombination combination)
    {
        double[][] own = [.. Enumerable.Range(0, rows.Length).Select(i => Enumerable.Range(0, rows.Length).Select(j => i == j ? 1.0 : 0).ToArray())];
        return new CutPeaks(combination.Through(rows), own);
    }

    private delegate void ByMotion(ReadOnlySpan<double> u, in BetweenLevels between, Span<double> forces);
}
