namespace StatueFrame.Mechanics.Sparse;

/// <summary>The numeric step: A = L D Lᵀ without interchange of rows beyond the symbolic order.</summary>
public sealed class LdlFactorization
{
    private readonly double[,] l;
    private readonly double[] d;

    /// <summary>Makes room for factors; <see cref="Factor"/> fills it.</summary>
    public LdlFactorization(SymbolicFactorization symbolic)
    {
        Symbolic = symbolic;
        l = new double[symbolic.Pattern.Order, symbolic.Pattern.Order];
        d = new double[symbolic.Pattern.Order];
    }

    /// <summary>Factors <paramref name="matrix"/>.</summary>
    public LdlFactorization(SymbolicFactorization symbolic, SymmetricMatrix matrix)
        : this(symbolic) => Factor(matrix);

    /// <summary>Factors <paramref name="matrix"/> in place of what was factored before.</summary>
    public void Factor(SymmetricMatrix matrix)
    {
        int n = matrix.Order;
        NegativePivots = 0;
        SingularEquation = -1;
        for (int j = 0; j < n; j++)
        {
            double dj = matrix[j, j];
            for (int k = 0; k < j; k++) dj -= l[j, k] * l[j, k] * d[k];
            d[j] = dj;
            if (dj < 0) NegativePivots++;
            if (SingularEquation < 0 && Math.Abs(dj) <= 1e-13 * Math.Abs(matrix[j, j])) SingularEquation = j;
            for (int i = j + 1; i < n; i++)
            {
                double s = matrix[i, j];
                for (int k = 0; k < j; k++) s -= l[i, k] * l[j, k] * d[k];
                l[i, j] = s / dj;
            }
        }
    }

    /// <summary>The symbolic step that this factorization follows.</summary>
    public SymbolicFactorization Symbolic { get; }

    /// <summary>Number of negative pivots, which is the number of negative eigenvalues (Sylvester's law of inertia).</summary>
    public int NegativePivots { get; private set; }

    /// <summary>The first equation (original numbering) whose pivot vanished against its diagonal, or −1.</summary>
    public int SingularEquation { get; private set; } = -1;

    /// <summary>Solves A x = b in place for one or more right-hand sides, each of Order values, one after the other.</summary>
    public void Solve(Span<double> rightHandSides)
    {
        int n = d.Length;
        for (int at = 0; at < rightHandSides.Length; at += n)
        {
            Span<double> b = rightHandSides.Slice(at, n);
            for (int i = 0; i < n; i++)
                for (int k = 0; k < i; k++) b[i] -= l[i, k] * b[k];
            for (int i = n - 1; i >= 0; i--)
            {
                b[i] /= d[i];
                for (int k = i + 1; k < n; k++) b[i] -= l[k, i] * b[k];
            }
        }
    }
}
