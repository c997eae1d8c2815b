using System.Numerics;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>
/// The covariance of all that moves the statue in gusts. Its coordinates are the loads of the bands, as multiples w of
/// their mean (quasi-static part, all modes in it), and for each mode what its amplitude exceeds the quasi-static one by,
/// e = q − Q/ω² (dynamic part). A quantity that is Σ c_a w_a + Σ c_i e_i has the variance cᵀΣc.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class GustCovariance
{
    private readonly int N, M;
    private readonly double[] sigma, velocity, acceleration;
    private readonly double duration;
    private readonly bool hasMean;

    /// <summary>Integrates over the frequencies.</summary>
    /// <param name="field">The gusts.</param>
    /// <param name="swing">By which part of its load a band's own gust of one standard deviation swings it.</param>
    /// <param name="modalForces">Modal force of each band's load, mode by mode: M×N, mass-normalized modes.</param>
    /// <param name="transfer">The modes' transfer functions.</param>
    /// <param name="duration">Time of the peak, s.</param>
    /// <param name="hasMean">False when the loads swing about zero.</param>
    public GustCovariance(GustField field, double[] swing, double[] modalForces, ModalTransfer transfer, double duration, bool hasMean)
    {
        (N, M, this.duration, this.hasMean) = (swing.Length, transfer.Count, duration, hasMean);
        sigma = new double[(N + M) * (N + M)];
        velocity = new double[M * M];
        acceleration = new double[M * M];
        // Modal forces of one standard deviation of gust, mode by mode.
        var psi = new double[M * N];
        for (int i = 0; i < M; i++)
        {
            for (int a = 0; a < N; a++)
                psi[i * N + a] = swing[a] * modalForces[i * N + a];
        }
        Integrate(field, transfer, psi);
        for (int a = 0; a < N; a++)
        {
            for (int b = 0; b < N; b++)
                sigma[a * (N + M) + b] *= swing[a] * swing[b];
            for (int i = 0; i < M; i++)
            {
                sigma[a * (N + M) + N + i] *= swing[a];
                sigma[(N + i) * (N + M) + a] = sigma[a * (N + M) + N + i];
            }
        }
    }

    /// <summary>Number of coordinates: bands and modes.</summary>
    public int Count => N + M;

    /// <summary>The statistics of the quantity Σ c_a w_a + Σ c_i e_i whose mean is Σ c_a.</summary>
    public GustStatistics Of(ReadOnlySpan<double> c)
    {
        double mean = 0, background = 0, total = 0;
        for (int i = 0; i < Count; i++)
        {
            ReadOnlySpan<double> row = sigma.AsSpan(i * Count, Count);
            double loads = DenseVector.Dot(row[..N], c[..N]);
            total += c[i] * (loads + DenseVector.Dot(row[N..], c[N..]));
            if (i < N)
            {
                mean += hasMean ? c[i] : 0;
                background += c[i] * loads;
            }
        }
        double upcrossing = Ratio(Quadratic(velocity, c[N..]), total);
        return new GustStatistics(mean, Root(background), Root(total), upcrossing, duration);
    }

    /// <summary>Means and covariances of a few quantities of that kind.</summary>
    /// <param name="rows">Their coefficients, a row each.</param>
    public GustMoments Through(double[][] rows)
    {
        int n = rows.Length;
        double[] mean = Array.ConvertAll(rows, row => hasMean ? row.AsSpan(0, N).ToArray().Sum() : 0), background = new double[n * n], total = new double[n * n], speed = new double[n * n], moved = new double[Count];
        for (int i = 0; i < n; i++)
        {
            // Σ c of the loads alone, then of all.
            for (int a = 0; a < Count; a++)
                moved[a] = DenseVector.Dot(sigma.AsSpan(a * Count, N), rows[i].AsSpan(0, N));
            for (int j = 0; j < n; j++)
                background[i * n + j] = DenseVector.Dot(moved.AsSpan(0, N), rows[j].AsSpan(0, N));
            for (int a = 0; a < Count; a++)
                moved[a] += DenseVector.Dot(sigma.AsSpan(a * Count + N, M), rows[i].AsSpan(N));
            for (int j = 0; j < n; j++)
                total[i * n + j] = DenseVector.Dot(moved, rows[j]);
            for (int k = 0; k < M; k++)
                moved[k] = DenseVector.Dot(velocity.AsSpan(k * M, M), rows[i].AsSpan(N));
            for (int j = 0; j < n; j++)
                speed[i * n + j] = DenseVector.Dot(moved.AsSpan(0, M), rows[j].AsSpan(N));
        }
        return new GustMoments(mean, background, total, speed, duration);
    }

    /// <summary>The statistics of the acceleration of that quantity.</summary>
    public GustStatistics AccelerationOf(ReadOnlySpan<double> c)
    {
        double square = Quadratic(acceleration, c[N..]);
        return new GustStatistics(0, 0, Root(square), Ratio(square, Quadratic(velocity, c[N..])), duration);
    }

    internal static double Root(double square) => Math.Sqrt(Math.Max(0, square));

    internal static double Ratio(double faster, double slower) =>
        slower > 0 && faster > 0 ? Math.Sqrt(faster / slower) / (2 * Math.PI) : 0;

    private double Quadratic(double[] matrix, ReadOnlySpan<double> c)
    {
        double sum = 0;
        for (int i = 0; i < M; i++)
            sum += c[i] * DenseVector.Dot(matrix.AsSpan(i * M, M), c);
        return sum;
    }

    private void Integrate(GustField field, ModalTransfer transfer, double[] psi)
    {
        double[] n = field.Frequencies, S = new double[N * N], Y = new double[M * N];
        int size = N + M;
        for (int k = 0; k < n.Length; k++)
        {
            double w = 2 * Math.PI * n[k];
            double step = 0.5 * (n[Math.Min(k + 1, n.Length - 1)] - n[Math.Max(k - 1, 0)]);
            field.CrossSpectra(k, S);
            for (int a = 0; a < N; a++)
                DenseVector.AddScaled(sigma.AsSpan(a * size, N), step, S.AsSpan(a * N, N));
            for (int i = 0; i < M; i++)
            {
                Complex excess = transfer.Excess(w, i);
                double weight = (transfer.Single(k, i) * excess).Real;
                ReadOnlySpan<double> shape = psi.AsSpan(i * N, N);
                for (int a = 0; a < N; a++)
                {
                    double y = DenseVector.Dot(S.AsSpan(a * N, N), shape);
                    Y[i * N + a] = y;
                    sigma[a * size + N + i] += weight * y;
                }
                for (int j = 0; j <= i; j++)
                {
                    AddModes(i, j, w, transfer.Pair(k, i, j), excess * Complex.Conjugate(transfer.Excess(w, j)), DenseVector.Dot(psi.AsSpan(j * N, N), Y.AsSpan(i * N, N)));
                }
            }
        }
    }

    private void AddModes(int i, int j, double w, Complex weight, Complex excess, double spectrum)
    {
        int size = N + M;
        double square = w * w;
        sigma[(N + i) * size + N + j] += spectrum * (weight * excess).Real;
        velocity[i * M + j] += spectrum * square * weight.Real;
        acceleration[i * M + j] += spectrum * square * square * weight.Real;
        if (i != j)
        {
            sigma[(N + j) * size + N + i] = sigma[(N + i) * size + N + j];
            velocity[j * M + i] = velocity[i * M + j];
            acceleration[j * M + i] = acceleration[i * M + j];
        }
    }
}
