using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The springs of a limb's joint: between the rigid extension of its root level and its own first level.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class JointElement : FrameElement
{
    /// <summary>
    /// How much stiffer than the limb's first segment a rigid direction is. It gives way by this part of what the segment does, and
    /// leaves the stiffness of the segment its digits, which a stiffness that is out of all proportion takes away.
    /// </summary>
    private const double RigidDisplacement = 1e4, RigidRotation = 1e5;

    private readonly double[] stiffness = new double[Size * Size];

    /// <summary>Joins two places by springs along and about the given axes, +∞ for rigid.</summary>
    /// <param name="springs">The six springs; one that is stiffer than rigid is rigid.</param>
    /// <param name="axes">Their axes.</param>
    /// <param name="root">The place that the limb branches off.</param>
    /// <param name="first">The place of the limb's first level.</param>
    /// <param name="above">The limb's first segment, which starts there.</param>
    public JointElement(ReadOnlySpan<double> springs, Axes3D axes, Place root, Place first, FrameElement above)
        : base(root.Node, first.Node)
    {
        (double displacement, double rotation) = Rigid(above);
        Vector3D arm = first.Center - root.NodeAt;
        Span<double> b = stackalloc double[Size];
        for (int i = 0; i < Frame.NodeSize; i++)
        {
            Vector3D e = (i % 3) switch { 0 => axes.X, 1 => axes.Y, _ => axes.Z };
            b.Clear();
            int at = i < 3 ? 0 : 3;
            Put(b, at, -e);
            Put(b, Frame.NodeSize + at, e);
            if (i < 3)
                Put(b, 3, -arm.Cross(e));
            double k = Math.Min(springs[i], i < 3 ? displacement : rotation);
            for (int row = 0; row < Size; row++)
            {
                for (int column = 0; column < Size; column++)
                    stiffness[row * Size + column] += k * b[row] * b[column];
            }
        }
    }

    public override void AddStiffness(Span<double> k)
    {
        for (int i = 0; i < stiffness.Length; i++)
            k[i] += stiffness[i];
    }

    private static (double Displacement, double Rotation) Rigid(FrameElement above)
    {
        var k = new double[Size * Size];
        above.AddStiffness(k);
        double Greatest(int from) => Enumerable.Range(from, 3).Max(i => k[i * (Size + 1)]);
        return (RigidDisplacement * Greatest(0), RigidRotation * Greatest(3));
    }

    private static void Put(Span<double> b, int at, Vector3D v) => (b[at], b[at + 1], b[at + 2]) = (v.X, v.Y, v.Z);
}
