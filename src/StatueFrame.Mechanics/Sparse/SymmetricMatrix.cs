using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Sparse;

/// <summary>A sparse symmetric matrix: the values of its lower triangle on a shared <see cref="SparsityPattern"/>.</summary>
/// <remarks>Safe to read from many threads; writing to <see cref="Values"/> is for the one thread that builds it.</remarks>
public sealed class SymmetricMatrix(SparsityPattern pattern)
{
    private readonly double[] values = new double[pattern.Count];

    /// <summary>Where the values stand.</summary>
    public SparsityPattern Pattern { get; } = pattern;

    /// <summary>Number of rows and columns.</summary>
    public int Order => Pattern.Order;

    /// <summary>The stored values, in the order of <see cref="SparsityPattern.Rows"/>.</summary>
    public Span<double> Values => values;

    /// <summary>The value at (<paramref name="i"/>, <paramref name="j"/>), either triangle; zero where nothing is stored.</summary>
    public double this[int i, int j]
    {
        get
        {
            int index = Pattern.IndexOf(Math.Max(i, j), Math.Min(i, j));
            return index < 0 ? 0 : values[index];
        }
    }

    /// <summary>Computes y = A x.</summary>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y.Clear();
        ReadOnlySpan<int> starts = Pattern.ColumnStarts, rows = Pattern.Rows;
        for (int column = 0; column < Order; column++)
        {
            int k = starts[column];
            double xc = x[column], sum = values[k] * xc;
            for (k++; k < starts[column + 1]; k++)
            {
                int row = rows[k];
                sum += values[k] * x[row];
                y[row] += values[k] * xc;
            }
            y[column] += sum;
        }
    }

    /// <summary>Computes Y = A X for several vectors, one after the other; <paramref name="scratch"/> has eight values a row.</summary>
    internal void Multiply(ReadOnlySpan<double> x, Span<double> y, Span<double> scratch)
    {
        const int Lanes = 4;
        int n = Order;
        Span<double> from = scratch[..(Lanes * n)], to = scratch.Slice(Lanes * n, Lanes * n);
        for (int first = 0; first < x.Length; first += Lanes * n)
        {
            int count = Math.Min(Lanes, (x.Length - first) / n);
            from.Clear();
            for (int lane = 0; lane < count; lane++)
            {
                ReadOnlySpan<double> one = x.Slice(first + lane * n, n);
                for (int i = 0; i < one.Length; i++)
                    from[Lanes * i + lane] = one[i];
            }
            MultiplyFour(ref MemoryMarshal.GetReference(from), to);
            for (int lane = 0; lane < count; lane++)
            {
                Span<double> one = y.Slice(first + lane * n, n);
                for (int i = 0; i < one.Length; i++)
                    one[i] = to[Lanes * i + lane];
            }
        }
    }

    /// <summary>Four vectors side by side, the values of a row next to each other.</summary>
    private void MultiplyFour(ref double x, Span<double> product)
    {
        const int Lanes = 4;
        product.Clear();
        ref double y = ref MemoryMarshal.GetReference(product);
        ReadOnlySpan<int> starts = Pattern.ColumnStarts, rows = Pattern.Rows;
        for (int column = 0; column < Order; column++)
        {
            int k = starts[column];
            var xc = Vector256.LoadUnsafe(ref x, (nuint)(Lanes * column));
            Vector256<double> sum = values[k] * xc;
            ReadOnlySpan<int> below = rows[(k + 1)..starts[column + 1]];
            ReadOnlySpan<double> entries = values.AsSpan(k + 1, below.Length);
            for (int i = 0; i < below.Length; i++)
            {
                nuint at = (nuint)(Lanes * below[i]);
                var entry = Vector256.Create(entries[i]);
                sum += entry * Vector256.LoadUnsafe(ref x, at);
                (Vector256.LoadUnsafe(ref y, at) + entry * xc).StoreUnsafe(ref y, at);
            }
            nuint own = (nuint)(Lanes * column);
            (Vector256.LoadUnsafe(ref y, own) + sum).StoreUnsafe(ref y, own);
        }
    }

    /// <summary>A new matrix a·A + b·B on the common pattern.</summary>
    /// <exception cref="ArgumentException">The two matrices do not share one pattern.</exception>
    public static SymmetricMatrix Combine(double a, SymmetricMatrix matrixA, double b, SymmetricMatrix matrixB)
    {
        if (matrixA.Pattern != matrixB.Pattern)
            throw new ArgumentException("The two matrices must share one sparsity pattern.", nameof(matrixB));
        var sum = new SymmetricMatrix(matrixA.Pattern);
        for (int k = 0; k < sum.values.Length; k++)
            sum.values[k] = a * matrixA.values[k] + b * matrixB.values[k];
        return sum;
    }
}
