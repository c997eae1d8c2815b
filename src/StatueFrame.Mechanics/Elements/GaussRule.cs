using MathNet.Numerics.Integration;

namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// Gauss-Legendre integration over [0, 1], both to the end (<see cref="Weights"/>) and up to each of its own points
/// (<see cref="Accumulate"/>). The two agree: accumulating twice and then integrating gives the same sums as one
/// integration with the lever arm, so a displacement field accumulated from a curvature meets the end of the beam
/// exactly.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class GaussRule
{
    /// <summary>Four points: exact for the mass of a uniform beam.</summary>
    public static readonly GaussRule Four = new(4);

    /// <summary>Eight points: for a moderate taper.</summary>
    public static readonly GaussRule Eight = new(8);

    /// <summary>Sixteen points: for a strong taper.</summary>
    public static readonly GaussRule Sixteen = new(16);

    /// <summary>The largest number of points of any rule.</summary>
    public const int MaxCount = 16;

    private readonly double[] points, weights, running;

    private GaussRule(int n)
    {
        var rule = new GaussLegendreRule(-1, 1, n);
        double[] t = rule.Abscissas, w = rule.Weights;
        points = Array.ConvertAll(t, value => 0.5 * (1 + value));
        weights = Array.ConvertAll(w, value => 0.5 * value);

        // The interpolating polynomial as a sum of Legendre polynomials P_k, integrated term by term:
        // (2k+1) times the integral of P_k from −1 to t is P_{k+1}(t) − P_{k−1}(t).
        running = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double sum = t[i] + 1;
                for (int k = 1; k < n; k++)
                    sum += Legendre(k, t[j]) * (Legendre(k + 1, t[i]) - Legendre(k - 1, t[i]));
                running[n * i + j] = 0.25 * w[j] * sum;
            }
        }
    }

    /// <summary>The number of points.</summary>
    public int Count => points.Length;

    /// <summary>The points, rising, inside (0, 1).</summary>
    public ReadOnlySpan<double> Points => points;

    /// <summary>The weights; their sum is 1.</summary>
    public ReadOnlySpan<double> Weights => weights;

    /// <summary>The integrals from 0 to each point of the function whose values at the points are given.</summary>
    public void Accumulate(ReadOnlySpan<double> values, Span<double> integrals)
    {
        int n = Count;
        for (int i = 0; i < n; i++)
        {
            ReadOnlySpan<double> row = running.AsSpan(n * i, n);
            double sum = 0;
            for (int j = 0; j < n; j++)
                sum += row[j] * values[j];
            integrals[i] = sum;
        }
    }

    private static double Legendre(int k, double t)
    {
        double previous = 0, p = 1;
        for (int m = 0; m < k; m++)
            (previous, p) = (p, ((2 * m + 1) * t * p - m * previous) / (m + 1));
        return p;
    }
}
