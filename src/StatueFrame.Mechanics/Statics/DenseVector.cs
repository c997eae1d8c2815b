using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// The few vector operations that the solvers spend their time in, four numbers at a time. The order of summation is
/// fixed, so the bits do not depend on the machine.
/// </summary>
internal static class DenseVector
{
    /// <summary>The scalar product.</summary>
    public static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        y = y[..x.Length];
        ReadOnlySpan<Vector256<double>> xs = MemoryMarshal.Cast<double, Vector256<double>>(x);
        ReadOnlySpan<Vector256<double>> ys = MemoryMarshal.Cast<double, Vector256<double>>(y);
        Vector256<double> even = default, odd = default;
        int i = 0;
        for (; i + 1 < xs.Length; i += 2)
        {
            even += xs[i] * ys[i];
            odd += xs[i + 1] * ys[i + 1];
        }
        if (i < xs.Length)
            even += xs[i] * ys[i];
        double sum = Vector256.Sum(even + odd);
        for (int k = 4 * xs.Length; k < x.Length; k++)
            sum += x[k] * y[k];
        return sum;
    }

    /// <summary>y += a·x.</summary>
    public static void AddScaled(Span<double> y, double a, ReadOnlySpan<double> x)
    {
        x = x[..y.Length];
        Span<Vector256<double>> ys = MemoryMarshal.Cast<double, Vector256<double>>(y);
        ReadOnlySpan<Vector256<double>> xs = MemoryMarshal.Cast<double, Vector256<double>>(x);
        for (int i = 0; i < ys.Length; i++)
            ys[i] += a * xs[i];
        for (int k = 4 * ys.Length; k < y.Length; k++)
            y[k] += a * x[k];
    }

    /// <summary>x *= a.</summary>
    public static void Scale(Span<double> x, double a)
    {
        for (int i = 0; i < x.Length; i++)
            x[i] *= a;
    }

    /// <summary>Turns two vectors in their plane: x becomes c·x + s·y, y becomes c·y − s·x.</summary>
    public static void Rotate(Span<double> x, Span<double> y, double c, double s)
    {
        y = y[..x.Length];
        Span<Vector256<double>> xs = MemoryMarshal.Cast<double, Vector256<double>>(x);
        Span<Vector256<double>> ys = MemoryMarshal.Cast<double, Vector256<double>>(y);
        for (int i = 0; i < xs.Length; i++)
            (xs[i], ys[i]) = (c * xs[i] + s * ys[i], c * ys[i] - s * xs[i]);
        for (int k = 4 * xs.Length; k < x.Length; k++)
            (x[k], y[k]) = (c * x[k] + s * y[k], c * y[k] - s * x[k]);
    }

    /// <summary>The largest magnitude; zero for an empty vector.</summary>
    public static double LargestMagnitude(ReadOnlySpan<double> x)
    {
        double largest = 0;
        foreach (double value in x)
            largest = Math.Max(largest, Math.Abs(value));
        return largest;
    }

    /// <summary>
    /// Scales the vector so that its largest component is positive and, when <paramref name="largest"/> is given, has that
    /// size. Of components that are equal within 1e-6 the first counts, so that rounding does not choose the sign.
    /// </summary>
    public static void Orient(Span<double> x, double? largest = null)
    {
        double size = LargestMagnitude(x);
        if (size == 0)
            return;
        double scale = largest is null ? 1 : largest.Value / size;
        foreach (double value in x)
        {
            if (Math.Abs(value) < (1 - 1e-6) * size)
                continue;
            Scale(x, value < 0 ? -scale : scale);
            return;
        }
    }
}
