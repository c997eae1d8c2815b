using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;

namespace StatueFrame.Studies;

/// <summary>Adds Tᵀ K T for 6×6 matrices, row-major: how the stiffness of a bar comes to its ring.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class Congruence
{
    private const int Node = Frame.NodeSize;

    public static void Add(ReadOnlySpan<double> k, ReadOnlySpan<double> t, Span<double> sum)
    {
        Span<double> product = stackalloc double[Node * Node];
        product.Clear();
        for (int i = 0; i < Node; i++)
        {
            for (int j = 0; j < Node; j++)
                AddRow(k[i * Node + j], t.Slice(j * Node, Node), product.Slice(i * Node, Node));
        }
        for (int j = 0; j < Node; j++)
        {
            for (int i = 0; i < Node; i++)
                AddRow(t[j * Node + i], product.Slice(j * Node, Node), sum.Slice(i * Node, Node));
        }
    }

    private static void AddRow(double factor, ReadOnlySpan<double> row, Span<double> sum)
    {
        if (factor == 0)
            return;
        (Vector256.Create<double>(sum) + factor * Vector256.Create<double>(row)).CopyTo(sum);
        sum[4] += factor * row[4];
        sum[5] += factor * row[5];
    }
}
