using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The springs of a limb's joint: between the rigid extension of its root level and its own first level.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class JointElement : FrameElement
{
    /// <summary>Stands for rigid, relative to the finite springs and to anything a limb can be made of.</summary>
    private const double Rigid = 1e13;

    private readonly double[] stiffness = new double[Size * Size];

    /// <summary>Joins two places by springs along and about the given axes, +∞ for rigid.</summary>
    public JointElement(ReadOnlySpan<double> springs, Axes3D axes, Place root, Place first)
        : base(root.Node, first.Node)
    {
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
            double k = Math.Min(springs[i], Rigid);
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

    private static void Put(Span<double> b, int at, Vector3D v) => (b[at], b[at + 1], b[at + 2]) = (v.X, v.Y, v.Z);
}
