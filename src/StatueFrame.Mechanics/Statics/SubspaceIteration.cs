using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// The largest positive eigenvalues θ of B x = θ A x, with A positive definite and B symmetric, from the vectors of a
/// similar problem: X ← A⁻¹B X with a Rayleigh–Ritz step, until the values settle. The number of negative pivots of
/// A − B/σ (Sylvester's law of inertia) proves that no eigenvalue was missed. Needs no memory once it is made.
/// </summary>
/// <remarks>
/// For one thread. Source: Bathe and Wilson, Large eigenvalue problems in dynamic analysis, J. Eng. Mech. Div. ASCE 98 (1972).
/// </remarks>
internal sealed class SubspaceIteration
{
    private const double Settled = 1e-12, Cluster = 1e-6;
    private const int MostSteps = 40;

    private readonly int n, size;
    private readonly SymmetricMatrix shifted;
    private readonly LdlFactorization shiftedFactors;
    private readonly double[] x, bx, turned, lanes, small, half, vectors, values, before, work;
    private readonly int[] order;

    /// <summary>Makes room.</summary>
    /// <param name="symbolic">The pattern of A and B.</param>
    /// <param name="size">Number of vectors; more than will be wanted.</param>
    public SubspaceIteration(SymbolicFactorization symbolic, int size)
    {
        (n, this.size) = (symbolic.Order, size);
        shifted = new SymmetricMatrix(symbolic.Pattern);
        shiftedFactors = new LdlFactorization(symbolic);
        (x, bx, turned, lanes) = (new double[n * size], new double[n * size], new double[n * size], new double[8 * n]);
        (small, half, vectors) = (new double[size * size], new double[size * size], new double[size * size]);
        (values, before, work) = (new double[size], new double[size], new double[2 * size]);
        order = new int[size];
    }

    /// <summary>Number of vectors.</summary>
    public int Size => size;

    /// <summary>The eigenvalue θ of pair <paramref name="i"/>, descending.</summary>
    public double Value(int i) => values[order[i]];

    /// <summary>Finds the <paramref name="wanted"/> largest eigenvalues; false when they do not settle or one was missed.</summary>
    /// <param name="a">A.</param>
    /// <param name="b">B, on the same pattern.</param>
    /// <param name="factors">A, factored.</param>
    /// <param name="start">The vectors to start with, one after the other.</param>
    /// <param name="wanted">How many; fewer than there are vectors.</param>
    public bool Solve(SymmetricMatrix a, SymmetricMatrix b, LdlFactorization factors, ReadOnlySpan<double> start, int wanted)
    {
        b.Multiply(start[..(n * size)], bx, lanes);
        Array.Fill(before, double.NaN);
        double shift = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            bx.AsSpan().CopyTo(x);
            (shift == 0 ? factors : shiftedFactors).Solve(x);
            if (!Project(b, shift))
                return false;
            if (HasSettled(wanted))
                return IsComplete(a, b, wanted);
            if (wanted == 1 && shift == 0)
                shift = Shift(a, b);
        }
        return false;
    }

    /// <summary>
    /// Near the largest eigenvalue the steps converge the faster the less its neighbors stand out: takes A − B/σ in place of A
    /// from now on, with σ just above it. Zero when the estimate is still too coarse for that.
    /// </summary>
    private double Shift(SymmetricMatrix a, SymmetricMatrix b)
    {
        const double Short = 0.98;
        double theta = Value(0) / Short;
        return theta > 0 && CountAbove(a, b, theta) == 0 ? 1 / theta : 0;
    }

    /// <summary>The number of eigenvalues above <paramref name="theta"/> &gt; 0; −1 when a pivot vanished.</summary>
    public int CountAbove(SymmetricMatrix a, SymmetricMatrix b, double theta)
    {
        Span<double> difference = shifted.Values;
        a.Values.CopyTo(difference);
        DenseVector.AddScaled(difference, -1 / theta, b.Values);
        return shiftedFactors.Factor(shifted) ? shiftedFactors.NegativePivots : -1;
    }

    /// <summary>
    /// Solves the problem projected on x, beside which (A − shift·B) x stands in bx, and replaces bx by B times the Ritz
    /// vectors. False when the vectors have become dependent.
    /// </summary>
    private bool Project(SymmetricMatrix b, double shift)
    {
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
                small[i * size + j] = DenseVector.Dot(x.AsSpan(i * n, n), bx.AsSpan(j * n, n));
        }
        b.Multiply(x, bx, lanes);
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
                half[i * size + j] = half[j * size + i] = DenseVector.Dot(x.AsSpan(i * n, n), bx.AsSpan(j * n, n));
        }
        DenseVector.AddScaled(small, shift, half);
        if (!Cholesky())
            return false;
        // With A = L Lᵀ in the projection, C = L⁻¹ B L⁻ᵀ has the eigenvectors y = Lᵀ s.
        SolveLower();
        Transpose();
        SolveLower();
        DenseEigen.Solve(half, vectors, values, work);
        Sort();
        turned.AsSpan().Clear();
        for (int i = 0; i < size; i++)
        {
            Span<double> s = vectors.AsSpan(i * size, size), to = turned.AsSpan(i * n, n);
            SolveUpper(s);
            for (int j = 0; j < size; j++)
                DenseVector.AddScaled(to, s[j], bx.AsSpan(j * n, n));
        }
        turned.AsSpan().CopyTo(bx);
        return true;
    }

    /// <summary>The factor L of the lower triangle of the small matrix, in its place.</summary>
    private bool Cholesky()
    {
        for (int j = 0; j < size; j++)
        {
            double diagonal = small[j * size + j], pivot = diagonal;
            for (int k = 0; k < j; k++)
                pivot -= small[j * size + k] * small[j * size + k];
            if (!(pivot > 1e-14 * diagonal))
                return false;
            pivot = small[j * size + j] = Math.Sqrt(pivot);
            for (int i = j + 1; i < size; i++)
            {
                double sum = small[i * size + j];
                for (int k = 0; k < j; k++)
                    sum -= small[i * size + k] * small[j * size + k];
                small[i * size + j] = sum / pivot;
            }
        }
        return true;
    }

    private void SolveLower()
    {
        for (int i = 0; i < size; i++)
        {
            Span<double> row = half.AsSpan(i * size, size);
            for (int k = 0; k < i; k++)
                DenseVector.AddScaled(row, -small[i * size + k], half.AsSpan(k * size, size));
            DenseVector.Scale(row, 1 / small[i * size + i]);
        }
    }

    private void SolveUpper(Span<double> s)
    {
        for (int i = size - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < size; k++)
                s[i] -= small[k * size + i] * s[k];
            s[i] /= small[i * size + i];
        }
    }

    private void Transpose()
    {
        for (int i = 0; i < size; i++)
            for (int j = 0; j < i; j++)
                (half[i * size + j], half[j * size + i]) = (half[j * size + i], half[i * size + j]);
    }

    private void Sort()
    {
        for (int i = 0; i < size; i++)
        {
            int at = i;
            for (; at > 0 && values[order[at - 1]] < values[i]; at--)
                order[at] = order[at - 1];
            order[at] = i;
        }
    }

    private bool HasSettled(int wanted)
    {
        bool settled = true;
        for (int i = 0; i < size; i++)
        {
            settled &= i > LastOf(wanted) || Math.Abs(Value(i) - before[i]) <= Settled * Value(i);
            before[i] = Value(i);
        }
        return settled;
    }

    /// <summary>The last of the pairs that belong to the wanted ones, those that equal the last wanted one included.</summary>
    private int LastOf(int wanted)
    {
        int last = wanted - 1;
        while (last + 1 < size && Value(last + 1) > (1 - Cluster) * Value(last))
            last++;
        return last;
    }

    private bool IsComplete(SymmetricMatrix a, SymmetricMatrix b, int wanted)
    {
        int last = LastOf(wanted);
        if (last + 1 >= size || !(Value(last) > 0))
            return false;
        double lambda = 1 / Value(last), step = 1e-3 * lambda;
        if (Value(last + 1) > 0)
            step = Math.Min(step, 0.5 * (1 / Value(last + 1) - lambda));
        return CountAbove(a, b, 1 / (lambda + step)) == last + 1;
    }
}
