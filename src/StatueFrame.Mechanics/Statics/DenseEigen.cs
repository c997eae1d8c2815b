namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// All eigenvalues and eigenvectors of a small dense symmetric matrix: Householder reduction to tridiagonal form, then
/// implicit QR steps with Wilkinson's shift (Golub and Van Loan, Matrix Computations, 4th ed., 8.3).
/// </summary>
internal static class DenseEigen
{
    /// <summary>Finds the eigenpairs, in no particular order.</summary>
    /// <param name="a">The matrix, n×n; overwritten.</param>
    /// <param name="vectors">Receives the eigenvectors as rows, n×n, each of length 1.</param>
    /// <param name="values">Receives the eigenvalues; its length is n.</param>
    /// <param name="work">Scratch, 2n.</param>
    public static void Solve(Span<double> a, Span<double> vectors, Span<double> values, Span<double> work)
    {
        int n = values.Length;
        Span<double> offDiagonal = work[..n], product = work.Slice(n, n);
        Reduce(a, values, offDiagonal, product);
        FormTransform(a, vectors, n);
        Iterate(values, offDiagonal, vectors);
    }

    /// <summary>Leaves in row k of <paramref name="a"/>, right of its diagonal, the Householder vector v of step k, scaled
    /// to vᵀv = 2, so that the step is I − v·vᵀ.</summary>
    private static void Reduce(Span<double> a, Span<double> diagonal, Span<double> offDiagonal, Span<double> product)
    {
        int n = diagonal.Length;
        for (int k = 0; k < n; k++)
        {
            diagonal[k] = a[k * n + k];
            if (k + 1 == n)
                return;
            Span<double> v = a.Slice(k * n + k + 1, n - k - 1);
            double norm = Math.Sqrt(DenseVector.Dot(v, v));
            offDiagonal[k] = v[0];
            if (k + 2 == n || norm == Math.Abs(v[0]))
            {
                v.Clear();
                continue;
            }
            offDiagonal[k] = v[0] > 0 ? -norm : norm;
            v[0] -= offDiagonal[k];
            DenseVector.Scale(v, Math.Sqrt(2 / DenseVector.Dot(v, v)));

            Span<double> w = product[..v.Length];
            for (int i = 0; i < v.Length; i++)
                w[i] = DenseVector.Dot(a.Slice((k + 1 + i) * n + k + 1, v.Length), v);
            DenseVector.AddScaled(w, -0.5 * DenseVector.Dot(v, w), v);
            for (int i = 0; i < v.Length; i++)
            {
                Span<double> row = a.Slice((k + 1 + i) * n + k + 1, v.Length);
                DenseVector.AddScaled(row, -v[i], w);
                DenseVector.AddScaled(row, -w[i], v);
            }
        }
    }

    /// <summary>The product of all steps, transposed: its rows are turned into the eigenvectors.</summary>
    private static void FormTransform(ReadOnlySpan<double> a, Span<double> vectors, int n)
    {
        vectors[..(n * n)].Clear();
        for (int i = 0; i < n; i++)
            vectors[i * n + i] = 1;
        for (int k = n - 3; k >= 0; k--)
        {
            ReadOnlySpan<double> v = a.Slice(k * n + k + 1, n - k - 1);
            for (int i = k + 1; i < n; i++)
            {
                Span<double> row = vectors.Slice(i * n + k + 1, v.Length);
                DenseVector.AddScaled(row, -DenseVector.Dot(row, v), v);
            }
        }
    }

    private static void Iterate(Span<double> d, Span<double> e, Span<double> vectors)
    {
        int n = d.Length, last = n - 1;
        for (int step = 0; last > 0; step++)
        {
            if (IsNegligible(d, e, last - 1))
            {
                last--;
                continue;
            }
            if (step > 60 * n)
                throw new InvalidOperationException("The small eigenvalue problem did not converge.");
            int first = last - 1;
            while (first > 0 && !IsNegligible(d, e, first - 1))
                first--;
            Step(d, e, vectors, first, last);
        }

        static bool IsNegligible(Span<double> d, Span<double> e, int i) =>
            Math.Abs(e[i]) <= 1.2e-16 * (Math.Abs(d[i]) + Math.Abs(d[i + 1]));
    }

    private static void Step(Span<double> d, Span<double> e, Span<double> vectors, int first, int last)
    {
        int n = d.Length;
        double half = 0.5 * (d[last - 1] - d[last]), corner = e[last - 1];
        double root = Math.Sqrt(half * half + corner * corner);
        double shift = d[last] - corner * corner / (half + (half < 0 ? -root : root));
        double x = d[first] - shift, bulge = e[first];
        for (int k = first; k < last; k++)
        {
            double r = Math.Sqrt(x * x + bulge * bulge);
            (double c, double s) = r == 0 ? (1, 0) : (x / r, bulge / r);
            if (k > first)
                e[k - 1] = r;
            double dk = d[k], dn = d[k + 1], ek = e[k];
            d[k] = c * c * dk + 2 * c * s * ek + s * s * dn;
            d[k + 1] = s * s * dk - 2 * c * s * ek + c * c * dn;
            e[k] = (c * c - s * s) * ek + c * s * (dn - dk);
            if (k + 1 < last)
            {
                x = e[k];
                bulge = s * e[k + 1];
                e[k + 1] *= c;
            }
            DenseVector.Rotate(vectors.Slice(k * n, n), vectors.Slice((k + 1) * n, n), c, s);
        }
    }
}
