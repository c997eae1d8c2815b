using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The stiffness between two nodes whose relative motion is measured at the second of them: how far it moves from where
/// the first would carry it rigidly.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class RigidPair
{
    /// <summary>Spreads a 6×6 against the relative motion over the twelve freedoms of the two nodes.</summary>
    /// <param name="k36">The 6×6, row-major, symmetric.</param>
    /// <param name="arm">From the first node to the second, m.</param>
    /// <param name="k144">The 12×12 that it is added to.</param>
    public static void AddTo(ReadOnlySpan<double> k36, Vector3D arm, Span<double> k144)
    {
        const int Size = FrameElement.Size, Node = Frame.NodeSize;
        Span<double> k = stackalloc double[Size * Size];
        for (int i = 0; i < Node; i++)
        {
            for (int j = 0; j < Node; j++)
            {
                k[Size * i + j] = k[Size * (i + Node) + j + Node] = k36[Node * i + j];
                k[Size * i + j + Node] = k[Size * (i + Node) + j] = -k36[Node * i + j];
            }
        }
        SmallMatrix.CarryByArm(k, Size, 0, arm);
        SmallMatrix.AddSymmetric(k, k144, Size);
    }
}
