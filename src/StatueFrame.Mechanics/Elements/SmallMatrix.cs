using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using StatueFrame.Mechanics.Statics;
using static System.FormattableString;

namespace StatueFrame.Mechanics.Elements;

/// <summary>The dense algebra of element matrices: small, square, row-major, symmetric; done in place.</summary>
internal static class SmallMatrix
{
    /// <summary>
    /// Takes a symmetric matrix of 3×3 blocks from local to global axes: each block B becomes Rᵀ B R, where the rows of R
    /// are the local axes.
    /// </summary>
    public static void ToGlobal(Span<double> m, int n, in Axes3D axes)
    {
        RowsToGlobal(m, n, axes);
        Transpose(m, n);
        RowsToGlobal(m, n, axes);
    }

    /// <summary>
    /// Moves the six freedoms of a symmetric matrix that start at <paramref name="at"/> from the tip of a rigid arm to its
    /// foot. <paramref name="arm"/> runs from foot to tip, so the tip moves by u + θ × arm.
    /// </summary>
    public static void CarryByArm(Span<double> m, int n, int at, Vector3D arm)
    {
        if (arm == Vector3D.Zero)
            return;
        RowsByArm(m, n, at, arm);
        Transpose(m, n);
        RowsByArm(m, n, at, arm);
    }

    /// <summary>The first half of <see cref="ToGlobal"/>: Rᵀ M, block by block.</summary>
    public static void RowsToGlobal(Span<double> m, int n, in Axes3D axes)
    {
        (Vector3D X, Vector3D Y, Vector3D Z) = (axes.X, axes.Y, axes.Z);
        for (int row = 0; row < n; row += 3)
        {
            Span<double> first = m.Slice(n * row, n), second = m.Slice(n * (row + 1), n), third = m.Slice(n * (row + 2), n);
            Span<Vector256<double>> a = MemoryMarshal.Cast<double, Vector256<double>>(first);
            Span<Vector256<double>> b = MemoryMarshal.Cast<double, Vector256<double>>(second);
            Span<Vector256<double>> c = MemoryMarshal.Cast<double, Vector256<double>>(third);
            for (int k = 0; k < a.Length; k++)
            {
                Vector256<double> x = a[k], y = b[k], z = c[k];
                a[k] = X.X * x + Y.X * y + Z.X * z;
                b[k] = X.Y * x + Y.Y * y + Z.Y * z;
                c[k] = X.Z * x + Y.Z * y + Z.Z * z;
            }
            for (int k = 4 * a.Length; k < n; k++)
            {
                Vector3D global = axes.ToGlobal(new Vector3D(first[k], second[k], third[k]));
                (first[k], second[k], third[k]) = (global.X, global.Y, global.Z);
            }
        }
    }

    /// <summary>The first half of <see cref="CarryByArm"/>: adds to three rows of moments those of the three rows of forces above them.</summary>
    public static void RowsByArm(Span<double> m, int n, int at, Vector3D arm)
    {
        ReadOnlySpan<double> x = m.Slice(n * at, n), y = m.Slice(n * (at + 1), n), z = m.Slice(n * (at + 2), n);
        Span<double> mx = m.Slice(n * (at + 3), n), my = m.Slice(n * (at + 4), n), mz = m.Slice(n * (at + 5), n);
        DenseVector.AddScaled(mx, arm.Y, z);
        DenseVector.AddScaled(mx, -arm.Z, y);
        DenseVector.AddScaled(my, arm.Z, x);
        DenseVector.AddScaled(my, -arm.X, z);
        DenseVector.AddScaled(mz, arm.X, y);
        DenseVector.AddScaled(mz, -arm.Y, x);
    }

    /// <summary>Swaps rows and columns.</summary>
    public static void Transpose(Span<double> m, int n)
    {
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++)
                (m[n * i + j], m[n * j + i]) = (m[n * j + i], m[n * i + j]);
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
        {
            target[(n + 1) * i] += source[(n + 1) * i];
            for (int j = i + 1; j < n; j++)
            {
                double value = source[n * i + j];
                target[n * i + j] += value;
                target[n * j + i] += value;
            }
        }
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
                    throw new ArgumentException(Invariant($"{subject} must be symmetric: ({i}, {j}) is {a}, ({j}, {i}) is {b}."), parameter);
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

    /// <summary>Puts the inverse in the place of a symmetric positive definite matrix, by Gauss and Jordan without pivoting.</summary>
    public static void InvertPositive(Span<double> m, int n)
    {
        for (int k = 0; k < n; k++)
        {
            double pivot = m[(n + 1) * k];
            if (!(pivot > 0))
                throw new ArgumentException("The matrix is not positive definite.", nameof(m));
            m[(n + 1) * k] = 1;
            for (int j = 0; j < n; j++)
                m[n * k + j] /= pivot;
            for (int i = 0; i < n; i++)
            {
                if (i == k)
                    continue;
                double factor = m[n * i + k];
                m[n * i + k] = 0;
                for (int j = 0; j < n; j++)
                    m[n * i + j] -= factor * m[n * k + j];
            }
        }
    }

    public static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> product, int n)
    {
        product.Clear();
        for (int i = 0; i < n; i++)
            for (int k = 0; k < n; k++)
                for (int j = 0; j < n; j++)
                    product[n * i + j] += a[n * i + k] * b[n * k + j];
    }
}
