using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The dense kernels of the numeric step, on panels stored column by column. Every value is the fused sum of its own
/// terms in the order of elimination, whatever the machine's vectors are, so that results do not depend on the machine.
/// </summary>
internal static class PanelKernel
{
    /// <summary>Values of one vector.</summary>
    public const int Lanes = 4;

    /// <summary>How far beyond its last value a panel may be read (what is read there is not used).</summary>
    public const int Overrun = TileRows;

    /// <summary>The widest block of columns worth factoring one by one; wider ones are halved and joined by <see cref="Subtract"/>.</summary>
    public const int NarrowBlock = 4 * TileColumns;

    /// <summary>Values of the scratch array that <see cref="Subtract"/> needs.</summary>
    public const int ScratchLength = TileRows * TileColumns + BlockColumns * BlockDepth;

    /// <summary>Columns of one tile: the freedoms of a node.</summary>
    public const int TileColumns = 6;

    private const int TileRows = 2 * Lanes, BlockColumns = 16 * TileColumns, BlockDepth = 256;

    /// <summary>
    /// Subtracts from a target panel the lower triangle (and what stands below) of S D Tᵀ, where S is a block of a
    /// finished panel and T its topmost rows: target[map[i], map[j]] −= Σ S[i, k] D[k] S[j, k] for i ≥ j.
    /// </summary>
    /// <param name="source">The block S in its panel.</param>
    /// <param name="sourceStride">Distance between two columns of the source panel.</param>
    /// <param name="pivots">The diagonal D.</param>
    /// <param name="columns">Rows of T, which are columns of the target that change.</param>
    /// <param name="map">The row of the target panel for each row of S.</param>
    /// <param name="target">The target panel. Values above its diagonal are not kept.</param>
    /// <param name="targetStride">Distance between two columns of the target panel.</param>
    /// <param name="scratch">At least <see cref="ScratchLength"/> values.</param>
    public static void Subtract(
        ref double source, int sourceStride, ReadOnlySpan<double> pivots, int columns,
        ReadOnlySpan<int> map, ref double target, int targetStride, Span<double> scratch)
    {
        ref double sums = ref MemoryMarshal.GetReference(scratch);
        ref double packed = ref Unsafe.Add(ref sums, TileRows * TileColumns);
        for (int k = 0; k < pivots.Length; k += BlockDepth)
        {
            ReadOnlySpan<double> d = pivots[k..Math.Min(k + BlockDepth, pivots.Length)];
            ref double block = ref Unsafe.Add(ref source, k * sourceStride);
            for (int j = 0; j < columns; j += BlockColumns)
            {
                int jEnd = Math.Min(j + BlockColumns, columns);
                Pack(ref block, sourceStride, d, j, jEnd, ref packed);
                for (int i = j; i < map.Length; i += TileRows)
                {
                    for (int tile = j; tile < jEnd && tile < i + TileRows; tile += TileColumns)
                    {
                        MultiplyTile(
                            ref Unsafe.Add(ref block, i), sourceStride, d.Length,
                            ref Unsafe.Add(ref packed, (tile - j) * d.Length), ref sums);
                        SubtractTile(
                            ref sums, map[i..Math.Min(i + TileRows, map.Length)],
                            map[tile..Math.Min(tile + TileColumns, jEnd)], ref target, targetStride);
                    }
                }
            }
        }
    }

    /// <summary>Writes rows of S times D tile by tile, those of one k side by side; a tile's missing rows are zero.</summary>
    private static void Pack(ref double source, int stride, ReadOnlySpan<double> pivots, int begin, int end, ref double to)
    {
        for (int tile = begin; tile < end; tile += TileColumns)
        {
            int count = Math.Min(TileColumns, end - tile);
            ref double from = ref Unsafe.Add(ref source, tile);
            foreach (double pivot in pivots)
            {
                int c = 0;
                for (; c < count; c++)
                    Unsafe.Add(ref to, c) = Unsafe.Add(ref from, c) * pivot;
                for (; c < TileColumns; c++)
                    Unsafe.Add(ref to, c) = 0;
                to = ref Unsafe.Add(ref to, TileColumns);
                from = ref Unsafe.Add(ref from, stride);
            }
        }
    }

    /// <summary>The sums of one tile, column by column.</summary>
    private static void MultiplyTile(ref double source, int stride, int depth, ref double packed, ref double sums)
    {
        Vector256<double> s00 = default, s10 = default, s01 = default, s11 = default, s02 = default, s12 = default;
        Vector256<double> s03 = default, s13 = default, s04 = default, s14 = default, s05 = default, s15 = default;
        for (int k = 0; k < depth; k++)
        {
            var upper = Vector256.LoadUnsafe(ref source);
            var lower = Vector256.LoadUnsafe(ref source, Lanes);
            var t = Vector256.Create(packed);
            s00 = Vector256.FusedMultiplyAdd(upper, t, s00);
            s10 = Vector256.FusedMultiplyAdd(lower, t, s10);
            t = Vector256.Create(Unsafe.Add(ref packed, 1));
            s01 = Vector256.FusedMultiplyAdd(upper, t, s01);
            s11 = Vector256.FusedMultiplyAdd(lower, t, s11);
            t = Vector256.Create(Unsafe.Add(ref packed, 2));
            s02 = Vector256.FusedMultiplyAdd(upper, t, s02);
            s12 = Vector256.FusedMultiplyAdd(lower, t, s12);
            t = Vector256.Create(Unsafe.Add(ref packed, 3));
            s03 = Vector256.FusedMultiplyAdd(upper, t, s03);
            s13 = Vector256.FusedMultiplyAdd(lower, t, s13);
            t = Vector256.Create(Unsafe.Add(ref packed, 4));
            s04 = Vector256.FusedMultiplyAdd(upper, t, s04);
            s14 = Vector256.FusedMultiplyAdd(lower, t, s14);
            t = Vector256.Create(Unsafe.Add(ref packed, 5));
            s05 = Vector256.FusedMultiplyAdd(upper, t, s05);
            s15 = Vector256.FusedMultiplyAdd(lower, t, s15);
            source = ref Unsafe.Add(ref source, stride);
            packed = ref Unsafe.Add(ref packed, TileColumns);
        }
        s00.StoreUnsafe(ref sums);
        s10.StoreUnsafe(ref sums, Lanes);
        s01.StoreUnsafe(ref sums, 2 * Lanes);
        s11.StoreUnsafe(ref sums, 3 * Lanes);
        s02.StoreUnsafe(ref sums, 4 * Lanes);
        s12.StoreUnsafe(ref sums, 5 * Lanes);
        s03.StoreUnsafe(ref sums, 6 * Lanes);
        s13.StoreUnsafe(ref sums, 7 * Lanes);
        s04.StoreUnsafe(ref sums, 8 * Lanes);
        s14.StoreUnsafe(ref sums, 9 * Lanes);
        s05.StoreUnsafe(ref sums, 10 * Lanes);
        s15.StoreUnsafe(ref sums, 11 * Lanes);
    }

    private static void SubtractTile(
        ref double sums, ReadOnlySpan<int> rows, ReadOnlySpan<int> columns, ref double target, int targetStride)
    {
        bool whole = rows.Length == TileRows && rows[^1] - rows[0] == TileRows - 1;
        foreach (int c in columns)
        {
            ref double column = ref Unsafe.Add(ref target, c * targetStride);
            if (whole)
            {
                column = ref Unsafe.Add(ref column, rows[0]);
                (Vector256.LoadUnsafe(ref column) - Vector256.LoadUnsafe(ref sums)).StoreUnsafe(ref column);
                (Vector256.LoadUnsafe(ref column, Lanes) - Vector256.LoadUnsafe(ref sums, Lanes)).StoreUnsafe(ref column, Lanes);
            }
            else
            {
                for (int r = 0; r < rows.Length; r++)
                    Unsafe.Add(ref column, rows[r]) -= Unsafe.Add(ref sums, r);
            }
            sums = ref Unsafe.Add(ref sums, TileRows);
        }
    }

    /// <summary>
    /// The pivot of a column, after <see cref="Subtract"/> has taken in the columns before <paramref name="begin"/>. Also
    /// leaves in <paramref name="factors"/> the multipliers that <see cref="FactorColumn"/> needs.
    /// </summary>
    public static double Pivot(
        ref double panel, int stride, ReadOnlySpan<double> pivots, int begin, int column, Span<double> factors)
    {
        double pivot = Unsafe.Add(ref panel, column * stride + column);
        for (int k = begin; k < column; k++)
        {
            double l = Unsafe.Add(ref panel, k * stride + column);
            factors[k - begin] = l * pivots[k];
            pivot = Math.FusedMultiplyAdd(-l, factors[k - begin], pivot);
        }
        return pivot;
    }

    /// <summary>Takes the columns from <paramref name="begin"/> on into a column and divides what stands below its pivot.</summary>
    public static void FactorColumn(ref double panel, int stride, int begin, int column, double pivot, ReadOnlySpan<double> factors)
    {
        var divisor = Vector256.Create(pivot);
        for (int i = (column + 1) & -Lanes; i < stride; i += Lanes)
        {
            ref double place = ref Unsafe.Add(ref panel, column * stride + i);
            var sum = Vector256.LoadUnsafe(ref place);
            ref double earlier = ref Unsafe.Add(ref panel, begin * stride + i);
            for (int k = 0; k < column - begin; k++)
            {
                sum = Vector256.FusedMultiplyAdd(-Vector256.LoadUnsafe(ref earlier), Vector256.Create(factors[k]), sum);
                earlier = ref Unsafe.Add(ref earlier, stride);
            }
            (sum / divisor).StoreUnsafe(ref place);
        }
    }
}
