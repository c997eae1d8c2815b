using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// Substitution with one panel of the factor for four right-hand sides at once, one to a lane. The lanes never mix, so
/// that a right-hand side gives the same bits in whatever company it is solved.
/// </summary>
internal static class PanelSolve
{
    /// <summary>Right-hand sides solved together: the value of equation i for side r stands at 4 i + r.</summary>
    public const int Lanes = PanelKernel.Lanes;

    private const int Tile = PanelKernel.TileColumns;

    /// <summary>Solves with the unit triangle of a panel and carries the result down to the rows below it.</summary>
    /// <param name="panel">The panel, column by column.</param>
    /// <param name="stride">Distance between two columns.</param>
    /// <param name="width">Number of columns.</param>
    /// <param name="rows">The equation of each row; the panel's own columns come first.</param>
    /// <param name="x">The right-hand sides.</param>
    public static void Forward(ref double panel, int stride, int width, ReadOnlySpan<int> rows, ref double x)
    {
        int column = 0;
        for (; column + Tile <= width; column += Tile)
            ForwardSix(ref Unsafe.Add(ref panel, column * stride + column), stride, rows[column..], ref x);
        for (; column < width; column++)
            ForwardOne(ref Unsafe.Add(ref panel, column * stride + column), rows[column..], ref x);
    }

    /// <summary>Divides by the pivots, gathers from the rows below the panel and solves with the transposed unit triangle.</summary>
    /// <param name="panel">The panel, column by column.</param>
    /// <param name="stride">Distance between two columns.</param>
    /// <param name="pivots">The pivot of each column.</param>
    /// <param name="rows">The equation of each row; the panel's own columns come first.</param>
    /// <param name="x">The right-hand sides.</param>
    public static void Backward(ref double panel, int stride, ReadOnlySpan<double> pivots, ReadOnlySpan<int> rows, ref double x)
    {
        for (int i = 0; i < pivots.Length; i++)
            (At(ref x, rows[i]) / Vector256.Create(pivots[i])).StoreUnsafe(ref x, Place(rows[i]));
        int column = pivots.Length;
        while (column % Tile != 0)
        {
            column--;
            BackwardOne(ref Unsafe.Add(ref panel, column * stride + column), rows[column..], ref x);
        }
        while (column > 0)
        {
            column -= Tile;
            BackwardSix(ref Unsafe.Add(ref panel, column * stride + column), stride, rows[column..], ref x);
        }
    }

    private static void ForwardOne(ref double column, ReadOnlySpan<int> rows, ref double x)
    {
        var minusX = -At(ref x, rows[0]);
        for (int i = 1; i < rows.Length; i++)
            Vector256.FusedMultiplyAdd(Entry(ref column, i), minusX, At(ref x, rows[i])).StoreUnsafe(ref x, Place(rows[i]));
    }

    private static void ForwardSix(ref double l, int stride, ReadOnlySpan<int> rows, ref double x)
    {
        for (int k = 0; k < Tile - 1; k++)
            ForwardOne(ref Unsafe.Add(ref l, k * stride + k), rows[k..Tile], ref x);
        Vector256<double> x0 = -At(ref x, rows[0]), x1 = -At(ref x, rows[1]), x2 = -At(ref x, rows[2]);
        Vector256<double> x3 = -At(ref x, rows[3]), x4 = -At(ref x, rows[4]), x5 = -At(ref x, rows[5]);
        for (int i = Tile; i < rows.Length; i++)
        {
            ref double row = ref Unsafe.Add(ref l, i);
            var sum = At(ref x, rows[i]);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, 0), x0, sum);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, stride), x1, sum);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, 2 * stride), x2, sum);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, 3 * stride), x3, sum);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, 4 * stride), x4, sum);
            sum = Vector256.FusedMultiplyAdd(Entry(ref row, 5 * stride), x5, sum);
            sum.StoreUnsafe(ref x, Place(rows[i]));
        }
    }

    private static void BackwardOne(ref double column, ReadOnlySpan<int> rows, ref double x)
    {
        var sum = At(ref x, rows[0]);
        for (int i = 1; i < rows.Length; i++)
            sum = Vector256.FusedMultiplyAdd(Entry(ref column, i), -At(ref x, rows[i]), sum);
        sum.StoreUnsafe(ref x, Place(rows[0]));
    }

    private static void BackwardSix(ref double l, int stride, ReadOnlySpan<int> rows, ref double x)
    {
        Vector256<double> x0 = At(ref x, rows[0]), x1 = At(ref x, rows[1]), x2 = At(ref x, rows[2]);
        Vector256<double> x3 = At(ref x, rows[3]), x4 = At(ref x, rows[4]), x5 = At(ref x, rows[5]);
        for (int i = Tile; i < rows.Length; i++)
        {
            ref double row = ref Unsafe.Add(ref l, i);
            var below = -At(ref x, rows[i]);
            x0 = Vector256.FusedMultiplyAdd(Entry(ref row, 0), below, x0);
            x1 = Vector256.FusedMultiplyAdd(Entry(ref row, stride), below, x1);
            x2 = Vector256.FusedMultiplyAdd(Entry(ref row, 2 * stride), below, x2);
            x3 = Vector256.FusedMultiplyAdd(Entry(ref row, 3 * stride), below, x3);
            x4 = Vector256.FusedMultiplyAdd(Entry(ref row, 4 * stride), below, x4);
            x5 = Vector256.FusedMultiplyAdd(Entry(ref row, 5 * stride), below, x5);
        }
        x0.StoreUnsafe(ref x, Place(rows[0]));
        x1.StoreUnsafe(ref x, Place(rows[1]));
        x2.StoreUnsafe(ref x, Place(rows[2]));
        x3.StoreUnsafe(ref x, Place(rows[3]));
        x4.StoreUnsafe(ref x, Place(rows[4]));
        x5.StoreUnsafe(ref x, Place(rows[5]));
        for (int k = Tile - 2; k >= 0; k--)
            BackwardOne(ref Unsafe.Add(ref l, k * stride + k), rows[k..Tile], ref x);
    }

    private static nuint Place(int equation) => (nuint)(Lanes * equation);

    private static Vector256<double> At(ref double x, int equation) => Vector256.LoadUnsafe(ref x, Place(equation));

    private static Vector256<double> Entry(ref double l, int place) => Vector256.Create(Unsafe.Add(ref l, place));
}
