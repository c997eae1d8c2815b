using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>
/// The greatest forces in tower and limbs over all steps, from rest: the least and greatest of each force of every lattice
/// member; and for every other segment the forces at both ends at the times when these are the greatest in one of many
/// directions. All of them are linear in the motion of the segment's upper end against its lower one.
/// </summary>
/// <remarks>For one thread while it looks; after that immutable.</remarks>
internal sealed class TowerPeaks
{
    private const int Motions = Frame.NodeSize, Ends = FrameElement.Size;

    /// <summary>Bending is looked at along so many axes, both ways.</summary>
    private const int Axes = 8;

    /// <summary>What is kept of a segment that is no lattice: both ways along each axis and the greatest of any, at both ends; axial force both ways.</summary>
    private const int Slots = 2 * (2 * Axes + 1) + 2;

    private const int Never = -1;

    private static readonly (double Sin, double Cos)[] axes = [.. Enumerable.Range(0, Axes).Select(i => Math.SinCos(Math.PI * i / Axes))];

    private readonly Part[] parts;

    /// <param name="model">The model.</param>
    public TowerPeaks(StatueModel model) => parts = [.. model.Bodies.SelectMany(body => body.Segments).Select(segment => new Part(segment))];

    /// <summary>A segment with what was found of it.</summary>
    private sealed class Part
    {
        public Part(SegmentModel segment)
        {
            Segment = segment;
            IsLattice = segment.Members.Count > 0;
            Count = IsLattice ? segment.Members.Count * MemberForces.Count : Ends;
            Coefficients = new double[Count * Motions];
            Members = new (double, double)[segment.Members.Count * MemberForces.Count];
            Greatest = new double[IsLattice ? 0 : Slots];
            Samples = new int[Greatest.Length];
            Array.Fill(Samples, Never);
            MotionsAt = new double[Greatest.Length * Motions];
            Span<double> u = stackalloc double[FrameElement.Size];
            var column = new double[Count];
            for (int k = 0; k < Motions; k++)
            {
                u.Clear();
                u[Motions + k] = 1;
                if (IsLattice)
                    segment.MemberForces(segment.Element, u, column);
                else
                    segment.EndForces(segment.Element, u, column);
                for (int i = 0; i < Count; i++)
                    Coefficients[i * Motions + k] = column[i];
            }
        }

        public SegmentModel Segment { get; }

        public bool IsLattice { get; }

        public int Count { get; }

        /// <summary>Forces for a unit of each motion: of each member, or of both ends.</summary>
        public double[] Coefficients { get; }

        public (double Least, double Greatest)[] Members { get; }

        public double[] Greatest { get; }

        public int[] Samples { get; }

        public double[] MotionsAt { get; }

        public double Force(int i, ReadOnlySpan<double> motion) => DenseVector.Dot(Coefficients.AsSpan(i * Motions, Motions), motion);
    }

    /// <summary>Looks at one step.</summary>
    /// <param name="motions">Six motions a segment, from rest.</param>
    /// <param name="sample">The number of the step.</param>
    public void Look(ReadOnlySpan<double> motions, int sample)
    {
        for (int p = 0; p < parts.Length; p++)
        {
            ReadOnlySpan<double> motion = motions.Slice(p * Motions, Motions);
            if (parts[p].IsLattice)
                LookAtMembers(parts[p], motion);
            else
                LookAtEnds(parts[p], motion, sample);
        }
    }

    /// <summary>The least and greatest of each force of a member of a lattice segment, from rest.</summary>
    public ReadOnlySpan<(double Least, double Greatest)> MembersOf(SegmentModel segment, int member) => Find(segment).Members.AsSpan(member * MemberForces.Count, MemberForces.Count);

    /// <summary>The forces at both ends of a segment that is no lattice, from rest, at the times that count.</summary>
    public IEnumerable<(int Sample, double[] Cuts)> EndsOf(SegmentModel segment)
    {
        Part part = Find(segment);
        for (int slot = 0; slot < part.Samples.Length; slot++)
        {
            if (part.Samples[slot] == Never || Array.IndexOf(part.Samples, part.Samples[slot]) < slot)
                continue;
            var cuts = new double[Ends];
            for (int i = 0; i < Ends; i++)
                cuts[i] = part.Force(i, part.MotionsAt.AsSpan(slot * Motions, Motions));
            yield return (part.Samples[slot], cuts);
        }
    }

    private Part Find(SegmentModel segment) => Array.Find(parts, p => ReferenceEquals(p.Segment, segment))!;

    private static void LookAtMembers(Part part, ReadOnlySpan<double> motion)
    {
        for (int i = 0; i < part.Count; i++)
        {
            double N = part.Force(i, motion);
            ref (double Least, double Greatest) of = ref part.Members[i];
            if (N < of.Least)
                of.Least = N;
            else if (N > of.Greatest)
                of.Greatest = N;
        }
    }

    private static void LookAtEnds(Part part, ReadOnlySpan<double> motion, int sample)
    {
        int slot = 0;
        for (int end = 0; end < 2; end++)
        {
            double x = part.Force(6 * end + 3, motion), y = part.Force(6 * end + 4, motion);
            Keep(part, slot++, x * x + y * y, motion, sample);
            foreach ((double sin, double cos) in axes)
            {
                double bending = cos * x + sin * y;
                Keep(part, slot++, bending, motion, sample);
                Keep(part, slot++, -bending, motion, sample);
            }
        }
        double N = part.Force(2, motion);
        Keep(part, slot++, N, motion, sample);
        Keep(part, slot, -N, motion, sample);
    }

    private static void Keep(Part part, int slot, double value, ReadOnlySpan<double> motion, int sample)
    {
        if (!(value > part.Greatest[slot]))
            return;
        (part.Greatest[slot], part.Samples[slot]) = (value, sample);
        motion.CopyTo(part.MotionsAt.AsSpan(slot * Motions, Motions));
    }
}
