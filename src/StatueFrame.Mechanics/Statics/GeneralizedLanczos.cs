using System.Buffers;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// The largest positive eigenvalues θ of B x = θ A x, with A positive definite and B symmetric, by a banded Lanczos
/// process in the scalar product of A. Every vector v is kept together with A v, so that only solutions with A and
/// products with B are needed; every new vector is made orthogonal to all earlier ones, more than once. The number of
/// negative pivots of A − B/σ (Sylvester's law of inertia) proves that no eigenvalue was missed; while it says that one
/// was, the process goes on with new start vectors.
/// </summary>
/// <remarks>For one thread. The factorization that it is given is used up.</remarks>
internal sealed class GeneralizedLanczos(SymmetricMatrix a, SymmetricMatrix b, LdlFactorization factors) : IDisposable
{
    private const int BlockSize = 2;
    private const double Tolerance = 1e-10;
    private const double Vanished = 1e-28;

    private readonly int n = a.Order;
    private StartVectors random = new();
    private SymmetricMatrix? shifted;

    private int capacity;
    private double[] v = [];
    private double[] av = [];
    private double[] projected = [];
    private int vectorCount;
    private int processed;

    private double[] small = [];
    private double[] ritzVectors = [];
    private double[] ritzValues = [];
    private int[] order = [];

    /// <summary>How many pairs were found; less than wanted only when there are no more.</summary>
    public int Found { get; private set; }

    /// <summary>Number of eigenvalues above the one at which the count was made, by negative pivots.</summary>
    public int Counted { get; private set; }

    /// <summary>True when the count agrees with what was found.</summary>
    public bool MissedNone { get; private set; }

    /// <summary>The eigenvalue θ of pair <paramref name="i"/>, descending.</summary>
    public double Value(int i) => ritzValues[order[i]];

    /// <summary>The eigenvector of pair <paramref name="i"/>, of length 1 in the scalar product of A.</summary>
    public void Vector(int i, Span<double> x)
    {
        x.Clear();
        ReadOnlySpan<double> s = RitzVector(i);
        for (int j = 0; j < s.Length; j++)
            DenseVector.AddScaled(x, s[j], At(v, j));
    }

    /// <summary>The number of eigenvalues above <paramref name="theta"/> &gt; 0. Overwrites the factorization.</summary>
    public int CountAbove(double theta)
    {
        shifted ??= new SymmetricMatrix(a.Pattern);
        for (int attempt = 0; ; attempt++)
        {
            ReadOnlySpan<double> av = a.Values, bv = b.Values;
            Span<double> difference = shifted.Values;
            double factor = 1 / theta;
            for (int k = 0; k < difference.Length; k++)
                difference[k] = av[k] - factor * bv[k];
            factors.Factor(shifted);
            if (factors.SingularEquation < 0 || attempt == 3)
                return factors.NegativePivots;
            theta *= 1 - 1e-7;
        }
    }

    /// <summary>Finds the <paramref name="wanted"/> largest positive eigenvalues; the factorization must hold A.</summary>
    public void Solve(int wanted)
    {
        Grow(Math.Min(n, 3 * wanted + 8) + BlockSize);
        Start();
        int next = 2 * wanted + 10;
        while (true)
        {
            while (processed < vectorCount && processed < next)
                Process();
            bool closed = processed == vectorCount;
            int converged = FindRitzPairs(closed);
            if (closed && converged < wanted && Start())
            {
                next = processed + BlockSize;
                continue;
            }
            if (closed || converged >= wanted)
            {
                int last = LastOfCluster(Math.Min(wanted, converged) - 1);
                if (last < converged)
                {
                    Verify(last, Math.Min(wanted, converged));
                    if (MissedNone || Counted <= last)
                        return;
                    factors.Factor(a);
                    if (!Start())
                        return;
                }
            }
            next = processed + Math.Max(4, wanted / 3);
        }
    }

    /// <summary>Gives back the rented room.</summary>
    public void Dispose()
    {
        foreach (double[] rented in (ReadOnlySpan<double[]>)[v, av, projected, small, ritzVectors, ritzValues])
            Return(rented);
        v = av = projected = small = ritzVectors = ritzValues = [];
    }

    /// <summary>Appends start vectors A⁻¹B r with random r; false when nothing new is left in that range.</summary>
    private bool Start()
    {
        int before = vectorCount;
        for (int i = 0; i < BlockSize && vectorCount < n; i++)
        {
            Grow(vectorCount + 1);
            Span<double> r = At(v, vectorCount);
            random.Fill(r);
            b.Multiply(r, At(av, vectorCount));
            Append([], 0);
        }
        return vectorCount > before;
    }

    /// <summary>Takes the next vector v, and appends A⁻¹B v made orthogonal to all others.</summary>
    private void Process()
    {
        Grow(vectorCount + 1);
        Span<double> column = projected.AsSpan(processed * capacity, capacity);
        column.Clear();
        b.Multiply(At(v, processed), At(av, vectorCount));
        processed++;
        Append(column, Math.Max(0, vectorCount - 3 * BlockSize));
    }

    /// <summary>
    /// Completes the vector v whose product A v stands at the end: takes away from A v what overlaps with earlier vectors,
    /// and only then solves for v, so that the two agree to the last digits. The coefficients of what is taken away are
    /// the projected matrix. But for rounding only vectors from <paramref name="firstCoupled"/> on overlap with a new one,
    /// so the first pass takes those alone; all others follow, until a pass takes away less than it leaves. A vector of
    /// which nothing is left is dropped.
    /// </summary>
    private void Append(Span<double> coefficients, int firstCoupled)
    {
        Span<double> w = At(v, vectorCount), aw = At(av, vectorCount);
        double removed = 0, left = 0;
        for (int pass = 0; pass < 8; pass++)
        {
            double now = 0;
            for (int i = pass == 0 ? firstCoupled : 0; i < vectorCount; i++)
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
            return;
        double norm = Math.Sqrt(left);
        DenseVector.Scale(w, 1 / norm);
        DenseVector.Scale(aw, 1 / norm);
        if (!coefficients.IsEmpty)
            coefficients[vectorCount] = norm;
        vectorCount++;
    }

    /// <summary>Solves the projected problem; returns how many of the largest positive eigenvalues have converged.</summary>
    private int FindRitzPairs(bool closed)
    {
        int m = processed;
        Resize(ref small, m * m + 2 * m);
        Resize(ref ritzVectors, m * m);
        Resize(ref ritzValues, m);
        for (int j = 0; j < m; j++)
        {
            for (int i = j; i < m; i++)
                small[i * m + j] = small[j * m + i] = projected[j * capacity + i];
        }
        DenseEigen.Solve(small.AsSpan(0, m * m), ritzVectors, ritzValues.AsSpan(0, m), small.AsSpan(m * m, 2 * m));
        if (order.Length < m)
            order = new int[Math.Max(m, capacity)];
        for (int i = 0; i < m; i++)
            order[i] = i;
        order.AsSpan(0, m).Sort((i, j) => ritzValues[j].CompareTo(ritzValues[i]));
        int converged = 0;
        while (converged < m && IsPositive(converged) && (closed || ResidualOf(converged) <= Tolerance * Value(converged)))
            converged++;
        return converged;
    }

    private bool IsPositive(int i) => i < processed && Value(i) > 1e-14 * Value(0);

    private double ResidualOf(int i)
    {
        ReadOnlySpan<double> s = RitzVector(i);
        double sum = 0;
        for (int row = processed; row < vectorCount; row++)
        {
            double part = 0;
            for (int j = 0; j < processed; j++)
                part += projected[j * capacity + row] * s[j];
            sum += part * part;
        }
        return Math.Sqrt(sum);
    }

    /// <summary>The last of the eigenvalues that equal number <paramref name="i"/> within 1e-6.</summary>
    private int LastOfCluster(int i)
    {
        while (i >= 0 && IsPositive(i + 1) && Value(i + 1) > (1 - 1e-6) * Value(i))
            i++;
        return i;
    }

    private void Verify(int last, int wanted)
    {
        Found = wanted;
        MissedNone = last < 0;
        if (last < 0)
            return;
        double lambda = 1 / Value(last), step = 1e-3 * lambda;
        if (IsPositive(last + 1))
            step = Math.Min(step, 0.5 * (1 / Value(last + 1) - lambda));
        Counted = CountAbove(1 / (lambda + step));
        MissedNone = Counted == last + 1;
    }

    private Span<double> At(double[] vectors, int i) => vectors.AsSpan(i * n, n);

    private ReadOnlySpan<double> RitzVector(int i) => ritzVectors.AsSpan(order[i] * processed, processed);

    private void Grow(int needed)
    {
        if (needed <= capacity)
            return;
        int grown = Math.Max(needed, capacity + capacity / 2);
        double[] matrix = ArrayPool<double>.Shared.Rent(grown * grown);
        for (int j = 0; j < processed; j++)
        {
            Span<double> column = matrix.AsSpan(j * grown, grown);
            column.Clear();
            projected.AsSpan(j * capacity, capacity).CopyTo(column);
        }
        Return(projected);
        projected = matrix;
        Resize(ref v, grown * n, vectorCount * n);
        Resize(ref av, grown * n, vectorCount * n);
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
