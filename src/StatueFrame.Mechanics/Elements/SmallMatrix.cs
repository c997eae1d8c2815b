namespace StatueFrame.Mechanics.Elements;

/// <summary>The dense algebra of element matrices: small, square, row-major, symmetric; done in place.</summary>
internal static class SmallMatrix
{
    /// <summary>
    /// Takes a matrix of 3×3 blocks from local to global axes: each block B becomes Rᵀ B R, where the rows of R are the
    /// local axes.
    /// </summary>
    public static void ToGlobal(Span<double> m, int n, in Axes3D axes)
    {
        for (int row = 0; row < n; row++)
        {
            for (int column = 0; column < n; column += 3)
            {
                Span<double> t = m.Slice(n * row + column, 3);
                Vector3D global = axes.ToGlobal(new Vector3D(t[0], t[1], t[2]));
                (t[0], t[1], t[2]) = (global.X, global.Y, global.Z);
            }
        }
        for (int row = 0; row < n; row += 3)
        {
            for (int column = 0; column < n; column++)
            {
                int at = n * row + column;
                Vector3D global = axes.ToGlobal(new Vector3D(m[at], m[at + n], m[at + 2 * n]));
                (m[at], m[at + n], m[at + 2 * n]) = (global.X, global.Y, global.Z);
            }
        }
    }

    /// <summary>
    /// Moves the six freedoms that start at <paramref name="at"/> from the tip of a rigid arm to its foot.
    /// <paramref name="arm"/> runs from foot to tip, so the tip moves by u + θ × arm.
    /// </summary>
    public static void CarryByArm(Span<double> m, int n, int at, Vector3D arm)
    {
        if (arm == Vector3D.Zero)
            return;
        for (int row = 0; row < n; row++)
            AddMoment(m, n * row + at, 1, arm);
        for (int column = 0; column < n; column++)
            AddMoment(m, n * at + column, n, arm);

        static void AddMoment(Span<double> m, int i, int stride, Vector3D arm)
        {
            Vector3D moment = arm.Cross(new Vector3D(m[i], m[i + stride], m[i + 2 * stride]));
            m[i + 3 * stride] += moment.X;
            m[i + 4 * stride] += moment.Y;
            m[i + 5 * stride] += moment.Z;
        }
    }

    /// <summary>
    /// Puts a spring of stiffness <paramref name="joint"/> (0 to +∞) between freedom <paramref name="i"/> and the rest of
    /// the world, and condenses the inner side of it out of the stiffness <paramref name="k"/>. With 0 the freedom is
    /// released and its row and column become zero.
    /// </summary>
    /// <param name="k">The stiffness, replaced.</param>
    /// <param name="n">Number of rows.</param>
    /// <param name="i">The freedom.</param>
    /// <param name="joint">Stiffness of the spring; +∞ changes nothing.</param>
    /// <param name="t">
    /// Either empty, or the matrix T that gives the inner displacements from the outer ones; multiplied from the right.
    /// Start from the unit matrix.
    /// </param>
    public static void Condense(Span<double> k, int n, int i, double joint, Span<double> t)
    {
        if (double.IsPositiveInfinity(joint))
            return;
        double compliance = 1 / (k[n * i + i] + joint);
        double passed = joint > 0 ? 1 / (1 + k[n * i + i] / joint) : 0;

        for (int row = 0; row < t.Length; row += n)
        {
            double inner = t[row + i];
            for (int j = 0; j < n; j++)
                t[row + j] = j == i ? inner * passed : t[row + j] - inner * compliance * k[n * i + j];
        }
        for (int row = 0; row < n; row++)
        {
            if (row == i)
                continue;
            double factor = compliance * k[n * row + i];
            for (int j = 0; j < n; j++)
                if (j != i)
                    k[n * row + j] -= factor * k[n * i + j];
        }
        for (int j = 0; j < n; j++)
        {
            if (j != i)
                k[n * i + j] = k[n * j + i] *= passed;
        }
        k[n * i + i] *= passed;
    }

    /// <summary>Replaces <paramref name="m"/> by Tᵀ M T.</summary>
    public static void Transform(Span<double> m, int n, ReadOnlySpan<double> t)
    {
        Span<double> product = stackalloc double[n * n];
        Multiply(m, t, product, n);
        m.Clear();
        for (int k = 0; k < n; k++)
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    m[n * i + j] += t[n * k + i] * product[n * k + j];
    }

    /// <summary>Sets <paramref name="m"/> to the unit matrix.</summary>
    public static void SetUnit(Span<double> m, int n)
    {
        m.Clear();
        for (int i = 0; i < n; i++)
            m[(n + 1) * i] = 1;
    }

    /// <summary>Adds <paramref name="source"/>, made exactly symmetric from its upper triangle.</summary>
    public static void AddSymmetric(ReadOnlySpan<double> source, Span<double> target, int n)
    {
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                target[n * i + j] += source[i < j ? n * i + j : n * j + i];
    }

    /// <summary>A symmetric copy of a square matrix given by a caller, after checks of its size and its values.</summary>
    /// <exception cref="ArgumentException">Wrong size, a value that is not finite, or no symmetry within 1e-9.</exception>
    public static double[] CheckedSymmetric(ReadOnlySpan<double> m, int n, string subject, string parameter)
    {
        if (m.Length != n * n)
            throw new ArgumentException($"{subject} must have {n * n} values, not {m.Length}.", parameter);
        double largest = 0;
        foreach (double value in m)
        {
            if (!double.IsFinite(value))
                throw new ArgumentException($"{subject} must be finite.", parameter);
            largest = Math.Max(largest, Math.Abs(value));
        }
        var copy = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double a = m[n * i + j], b = m[n * j + i];
                double scale = Math.Sqrt(Math.Abs(m[(n + 1) * i])) * Math.Sqrt(Math.Abs(m[(n + 1) * j]));
                if (Math.Abs(a - b) > 1e-9 * scale + 1e-13 * largest)
                    throw new ArgumentException($"{subject} must be symmetric: ({i}, {j}) is {a}, ({j}, {i}) is {b}.", parameter);
                copy[n * i + j] = 0.5 * a + 0.5 * b;
            }
        }
        return copy;
    }

    /// <summary>
    /// Whether a symmetric matrix is positive semidefinite once <paramref name="allowance"/> (relative to each diagonal
    /// entry) and <paramref name="floor"/> are added to its diagonal: Cholesky's steps meet no negative pivot.
    /// </summary>
    public static bool IsPositiveSemidefinite(ReadOnlySpan<double> m, int n, double allowance, double floor = 0)
    {
        Span<double> a = stackalloc double[n * n];
        m.CopyTo(a);
        for (int i = 0; i < n; i++)
            a[(n + 1) * i] = a[(n + 1) * i] * (1 + allowance) + floor;
        for (int k = 0; k < n; k++)
        {
            double pivot = a[(n + 1) * k];
            if (pivot < 0)
                return false;
            for (int i = k + 1; i < n; i++)
            {
                if (a[n * i + k] == 0)
                    continue;
                if (pivot == 0)
                    return false;
                double factor = a[n * i + k] / pivot;
                for (int j = k + 1; j < n; j++)
                    a[n * i + j] -= factor * a[n * k + j];
            }
        }
        return true;
    }

    private static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> product, int n)
    {
        product.Clear();
        for (int i = 0; i < n; i++)
            for (int k = 0; k < n; k++)
                for (int j = 0; j < n; j++)
                    product[n * i + j] += a[n * i + k] * b[n * k + j];
    }
}
