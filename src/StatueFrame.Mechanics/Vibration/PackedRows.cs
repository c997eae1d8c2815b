using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// A dense matrix that is multiplied by very many vectors: every four rows lie interleaved, so that four sums grow
/// together and none has to be added up across.
/// </summary>
/// <remarks>Safe to read from many threads; setting columns is for the one thread that builds it.</remarks>
internal sealed class PackedRows
{
    private const int Lanes = 4;

    private readonly double[] values;

    public PackedRows(int rows, int columns)
    {
        (Rows, Columns) = (rows, columns);
        Stride = (rows + Lanes - 1) / Lanes * Lanes;
        values = new double[Stride * columns];
    }

    public int Rows { get; }

    public int Columns { get; }

    /// <summary>Room that a product needs: the number of rows, up to the next multiple of four.</summary>
    public int Stride { get; }

    public void SetColumn(int column, ReadOnlySpan<double> rows, double factor = 1)
    {
        for (int i = 0; i < Rows; i++)
            values[i / Lanes * Lanes * Columns + column * Lanes + i % Lanes] = factor * rows[i];
    }

    /// <summary>y += A x.</summary>
    public void AddProduct(ReadOnlySpan<double> x, Span<double> y)
    {
        x = x[..Columns];
        ReadOnlySpan<Vector256<double>> a = MemoryMarshal.Cast<double, Vector256<double>>(values);
        Span<Vector256<double>> ys = MemoryMarshal.Cast<double, Vector256<double>>(y[..Stride]);
        int g = 0;
        for (; g + 3 < ys.Length; g += 4)
        {
            ReadOnlySpan<Vector256<double>> a0 = a.Slice(g * Columns, x.Length), a1 = a.Slice((g + 1) * Columns, x.Length);
            ReadOnlySpan<Vector256<double>> a2 = a.Slice((g + 2) * Columns, x.Length), a3 = a.Slice((g + 3) * Columns, x.Length);
            Vector256<double> y0 = ys[g], y1 = ys[g + 1], y2 = ys[g + 2], y3 = ys[g + 3];
            for (int k = 0; k < x.Length; k++)
            {
                var by = Vector256.Create(x[k]);
                y0 += a0[k] * by;
                y1 += a1[k] * by;
                y2 += a2[k] * by;
                y3 += a3[k] * by;
            }
            (ys[g], ys[g + 1], ys[g + 2], ys[g + 3]) = (y0, y1, y2, y3);
        }
        for (; g < ys.Length; g++)
        {
            ReadOnlySpan<Vector256<double>> row = a.Slice(g * Columns, x.Length);
            Vector256<double> sum = ys[g];
            for (int k = 0; k < x.Length; k++)
                sum += row[k] * Vector256.Create(x[k]);
            ys[g] = sum;
        }
    }
}
