using System.Buffers;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// A growing set of vectors, orthonormal in the scalar product of a positive definite A, in which the pairs of
/// B x = θ A x are sought: the Ritz pairs are those of the projected matrix vᵀ B v. Every vector v is kept together with
/// A v, so that only solutions with A and products with B are needed; every new vector is made orthogonal to all earlier
/// ones, more than once.
/// </summary>
/// <remarks>For one thread. The room is rented; dispose of it.</remarks>
internal sealed class RitzSpace(SymmetricMatrix a, SymmetricMatrix b, LdlFactorization factors) : IDisposable
{
    private const double Vanished = 1e-28;

    private readonly int n = a.Order;
    private int capacity;
    private double[] v = [];
    private double[] av = [];
    private double[] projected = [];
    private double[] small = [];
    private double[] ritzVectors = [];
    private double[] ritzValues = [];
    private int[] order = [];

    /// <summary>Number of vectors.</summary>
    public int Count { get; private set; }

    /// <summary>Number of vectors whose column of the projected matrix is known.</summary>
    public int Processed { get; private set; }

    /// <summary>Number of Ritz pairs found last.</summary>
    public int PairCount { get; private set; }

    /// <summary>The Ritz value θ of pair <paramref name="i"/>, descending.</summary>
    public double Value(int i) => ritzValues[order[i]];

    /// <summary>Whether there is a pair of that number with θ &gt; 0.</summary>
    public bool IsPositive(int i) => i < PairCount && Value(i) > 1e-14 * Value(0);

    /// <summary>The vector of pair <paramref name="i"/>, of length 1 in the scalar product of A.</summary>
    public void Vector(int i, Span<double> x) => Combine(v, i, x);

    /// <summary>Makes room for a number of vectors, so that it need not grow on the way.</summary>
    public void Reserve(int count) => Grow(count);

    /// <summary>Appends A⁻¹B r; false when nothing new is left of it.</summary>
    public bool AppendSolved(ReadOnlySpan<double> r)
    {
        Grow(Count + 1);
        b.Multiply(r, At(av, Count));
        return Append([], 0);
    }

    /// <summary>Appends the vector w; false when nothing new is left of it.</summary>
    public bool AppendVector(ReadOnlySpan<double> w)
    {
        Grow(Count + 1);
        a.Multiply(w, At(av, Count));
        return Append([], 0);
    }

    /// <summary>
    /// A step of Lanczos: takes the next vector v, and appends A⁻¹B v made orthogonal to all others. But for rounding only
    /// the last few vectors, the first of them <paramref name="reach"/> back from the end, overlap with it.
    /// </summary>
    public void Step(int reach)
    {
        Grow(Count + 1);
        Span<double> column = NextColumn();
        b.Multiply(At(v, Processed), At(av, Count));
        Processed++;
        Append(column, Math.Max(0, Count - reach));
    }

    /// <summary>Finds the columns of the projected matrix that are missing, and appends nothing.</summary>
    public void Close()
    {
        Grow(Count + 1);
        for (; Processed < Count; Processed++)
        {
            Span<double> column = NextColumn(), bv = At(av, Count);
            b.Multiply(At(v, Processed), bv);
            for (int i = 0; i < Count; i++)
                column[i] = DenseVector.Dot(At(v, i), bv);
        }
    }

    /// <summary>Solves the projected problem.</summary>
    public void FindPairs()
    {
        int m = PairCount = Processed;
        Resize(ref small, m * m + 2 * m);
        Resize(ref ritzVectors, m * m);
        Resize(ref ritzValues, m);
        for (int i = 0; i < m; i++)
        {
            for (int j = 0; j <= i; j++)
                small[i * m + j] = small[j * m + i] = projected[i * capacity + j];
        }
        DenseEigen.Solve(small.AsSpan(0, m * m), ritzVectors, ritzValues.AsSpan(0, m), small.AsSpan(m * m, 2 * m));
        if (order.Length < m)
            order = new int[Math.Max(m, capacity)];
        for (int i = 0; i < m; i++)
            order[i] = i;
        order.AsSpan(0, m).Sort((i, j) => ritzValues[j].CompareTo(ritzValues[i]));
    }

    /// <summary>The length of A⁻¹B x − θ x while all vectors come from steps: what sticks out of the processed ones.</summary>
    public double ResidualOfSteps(int pair)
    {
        ReadOnlySpan<double> s = RitzVector(pair);
        double sum = 0;
        for (int row = PairCount; row < Count; row++)
        {
            double part = 0;
            for (int j = 0; j < s.Length; j++)
                part += projected[j * capacity + row] * s[j];
            sum += part * part;
        }
        return Math.Sqrt(sum);
    }

    /// <summary>The length of A⁻¹B x − θ x, computed as it stands; leaves x and B x.</summary>
    public double Residual(int pair, Span<double> x, Span<double> bx)
    {
        Grow(Count + 1);
        Span<double> r = At(v, Count), ar = At(av, Count);
        Vector(pair, x);
        b.Multiply(x, bx);
        Combine(av, pair, ar);
        for (int i = 0; i < n; i++)
            ar[i] = bx[i] - Value(pair) * ar[i];
        ar.CopyTo(r);
        factors.Solve(r);
        return Math.Sqrt(Math.Max(0, DenseVector.Dot(r, ar)));
    }

    /// <summary>Gives back the rented room.</summary>
    public void Dispose()
    {
        foreach (double[] rented in (ReadOnlySpan<double[]>)[v, av, projected, small, ritzVectors, ritzValues])
            Return(rented);
        v = av = projected = small = ritzVectors = ritzValues = [];
    }

    /// <summary>
    /// Completes the vector v whose product A v stands at the end: takes away from A v what overlaps with earlier vectors,
    /// and only then solves for v, so that the two agree to the last digits. The coefficients of what is taken away are
    /// the projected matrix. The first pass takes only vectors from <paramref name="firstCoupled"/> on; all others follow,
    /// until a pass takes away less than it leaves. A vector of which nothing is left is dropped.
    /// </summary>
    private bool Append(Span<double> coefficients, int firstCoupled)
    {
        Span<double> w = At(v, Count), aw = At(av, Count);
        double removed = 0, left = 0;
        for (int pass = 0; pass < 8; pass++)
        {
            double now = 0;
            for (int i = pass == 0 ? firstCoupled : 0; i < Count; i++)
            {
                double c = DenseVector.Dot(At(v, i), aw);
                DenseVector.AddScaled(aw, -c, At(av, i));
                if (!coefficients.IsEmpty)
                    coefficients[i] += c;
                now += c * c;
            }
            removed += now;
            if (pass == 0)
                continue;
            aw.CopyTo(w);
            factors.Solve(w);
            left = DenseVector.Dot(w, aw);
            if (left >= now || left <= Vanished * removed)
                break;
        }
        if (!(left > Vanished * removed))
            return false;
        double norm = Math.Sqrt(left);
        DenseVector.Scale(w, 1 / norm);
        DenseVector.Scale(aw, 1 / norm);
        if (!coefficients.IsEmpty)
            coefficients[Count] = norm;
        Count++;
        return true;
    }

    private void Combine(double[] vectors, int pair, Span<double> sum)
    {
        sum.Clear();
        ReadOnlySpan<double> s = RitzVector(pair);
        for (int j = 0; j < s.Length; j++)
            DenseVector.AddScaled(sum, s[j], At(vectors, j));
    }

    private ReadOnlySpan<double> RitzVector(int i) => ritzVectors.AsSpan(order[i] * PairCount, PairCount);

    private Span<double> At(double[] vectors, int i) => vectors.AsSpan(i * n, n);

    private Span<double> NextColumn()
    {
        Span<double> column = projected.AsSpan(Processed * capacity, capacity);
        column.Clear();
        return column;
    }

    private void Grow(int needed)
    {
        if (needed <= capacity)
            return;
        int grown = Math.Max(needed, capacity + capacity / 2);
        double[] matrix = ArrayPool<double>.Shared.Rent(grown * grown);
        for (int j = 0; j < Processed; j++)
        {
            Span<double> column = matrix.AsSpan(j * grown, grown);
            column.Clear();
            projected.AsSpan(j * capacity, capacity).CopyTo(column);
        }
        Return(projected);
        projected = matrix;
        Resize(ref v, grown * n, Count * n);
        Resize(ref av, grown * n, Count * n);
        capacity = grown;
    }

    private static void Resize(ref double[] array, int length, int keep = 0)
    {
        if (array.Length >= length)
            return;
        double[] grown = ArrayPool<double>.Shared.Rent(length);
        array.AsSpan(0, keep).CopyTo(grown);
        Return(array);
        array = grown;
    }

    private static void Return(double[] rented)
    {
        if (rented.Length > 0)
            ArrayPool<double>.Shared.Return(rented);
    }
}
