namespace StatueFrame.Analysis;

/// <summary>
/// Brings six trial forces at two hinges back to |e| ≤ 1 at each: (I + CΓ) e = e₀ with one γ ≥ 0 a hinge, zero where the
/// hinge stays inside. C is symmetric and positive semidefinite, so there is one solution.
/// </summary>
internal static class HingeReturn
{
    private const int Size = 6, Per = 3, MostSweeps = 200, MostSteps = 60;
    private const double Settled = 1e-12;

    /// <summary>
    /// The slips maximize a concave function of both γ. Sweeps that find each γ with the other one held always lead there;
    /// Newton's method on both shortens the way where both hinges slip.
    /// </summary>
    /// <param name="C">The give, 6×6.</param>
    /// <param name="trial">e₀.</param>
    /// <param name="e">Receives e.</param>
    /// <param name="slip">Receives Γe.</param>
    public static void Solve(ReadOnlySpan<double> C, ReadOnlySpan<double> trial, Span<double> e, Span<double> slip)
    {
        double g0 = 0, g1 = 0;
        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            g0 = Single(C, trial, e, g0, g1, 0);
            g1 = Single(C, trial, e, g0, g1, Per);
            double excess = 1 / Norm(e, 0) - 1;
            if (Math.Abs(excess) <= Settled || (g0 == 0 && excess > 0) || (g0 > 0 && g1 > 0 && Both(C, trial, e, ref g0, ref g1)))
                break;
        }
        for (int i = 0; i < Size; i++)
            slip[i] = (i < Per ? g0 : g1) * e[i];
    }

    /// <summary>
    /// The γ of one hinge with that of the other held, from zero up: 1/|e| rises with it along a concave line, so that
    /// Newton's method on 1/|e| − 1 comes from one side. Leaves e at the result.
    /// </summary>
    private static double Single(ReadOnlySpan<double> C, ReadOnlySpan<double> trial, Span<double> e, double g0, double g1, int hinge)
    {
        Span<double> a = stackalloc double[Size * Size], room = stackalloc double[Size * Size], column = stackalloc double[Size];
        double g = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            Assemble(C, hinge == 0 ? g : g0, hinge == 0 ? g1 : g, a);
            trial.CopyTo(e);
            SolveDense(a, room, e);
            double n = Norm(e, hinge);
            if (n <= 1 + Settled)
                break;
            Column(C, e, hinge, a, room, column);
            double slope = -Dot(e, column, hinge) / (n * n * n);
            if (!(slope > 0))
                break;
            g -= (1 / n - 1) / slope;
        }
        return g;
    }

    /// <summary>Newton's method on both; true when it settles with both hinges slipping, else nothing is changed.</summary>
    private static bool Both(ReadOnlySpan<double> C, ReadOnlySpan<double> trial, Span<double> e, ref double g0, ref double g1)
    {
        Span<double> a = stackalloc double[Size * Size], room = stackalloc double[Size * Size];
        Span<double> c0 = stackalloc double[Size], c1 = stackalloc double[Size];
        (double x, double y) = (g0, g1);
        for (int step = 0; step < 12 && x > 0 && y > 0; step++)
        {
            Assemble(C, x, y, a);
            trial.CopyTo(e);
            SolveDense(a, room, e);
            double n0 = Norm(e, 0), n1 = Norm(e, Per), r0 = 1 / n0 - 1, r1 = 1 / n1 - 1;
            if (Math.Abs(r0) <= Settled && Math.Abs(r1) <= Settled)
            {
                (g0, g1) = (x, y);
                return true;
            }
            Column(C, e, 0, a, room, c0);
            Column(C, e, Per, a, room, c1);
            double j00 = -Dot(e, c0, 0) / (n0 * n0 * n0), j01 = -Dot(e, c1, 0) / (n0 * n0 * n0);
            double j10 = -Dot(e, c0, Per) / (n1 * n1 * n1), j11 = -Dot(e, c1, Per) / (n1 * n1 * n1);
            double determinant = j00 * j11 - j01 * j10;
            if (determinant == 0)
                break;
            (x, y) = (x - (j11 * r0 - j01 * r1) / determinant, y - (j00 * r1 - j10 * r0) / determinant);
        }
        return false;
    }

    private static void Assemble(ReadOnlySpan<double> C, double g0, double g1, Span<double> a)
    {
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
                a[Size * i + j] = (i == j ? 1 : 0) + C[Size * i + j] * (j < Per ? g0 : g1);
        }
    }

    /// <summary>The change of e with one γ: −(I + CΓ)⁻¹ C e at that hinge.</summary>
    private static void Column(ReadOnlySpan<double> C, ReadOnlySpan<double> e, int from, ReadOnlySpan<double> a, Span<double> room, Span<double> column)
    {
        for (int i = 0; i < Size; i++)
            column[i] = -(C[Size * i + from] * e[from] + C[Size * i + from + 1] * e[from + 1] + C[Size * i + from + 2] * e[from + 2]);
        SolveDense(a, room, column);
    }

    /// <summary>Gaussian elimination with the largest pivot of each column.</summary>
    private static void SolveDense(ReadOnlySpan<double> matrix, Span<double> a, Span<double> x)
    {
        matrix.CopyTo(a);
        for (int k = 0; k < Size; k++)
        {
            int pivot = k;
            for (int i = k + 1; i < Size; i++)
            {
                if (Math.Abs(a[Size * i + k]) > Math.Abs(a[Size * pivot + k]))
                    pivot = i;
            }
            if (pivot != k)
            {
                for (int j = k; j < Size; j++)
                    (a[Size * k + j], a[Size * pivot + j]) = (a[Size * pivot + j], a[Size * k + j]);
                (x[k], x[pivot]) = (x[pivot], x[k]);
            }
            for (int i = k + 1; i < Size; i++)
            {
                double factor = a[Size * i + k] / a[Size * k + k];
                for (int j = k; j < Size; j++)
                    a[Size * i + j] -= factor * a[Size * k + j];
                x[i] -= factor * x[k];
            }
        }
        for (int i = Size - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < Size; j++)
                x[i] -= a[Size * i + j] * x[j];
            x[i] /= a[Size * i + i];
        }
    }

    private static double Norm(ReadOnlySpan<double> v, int from) => Math.Sqrt(Dot(v, v, from));

    private static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int from) =>
        x[from] * y[from] + x[from + 1] * y[from + 1] + x[from + 2] * y[from + 2];
}
