using MathNet.Numerics.LinearAlgebra;

namespace StatueFrame.Shape;

/// <summary>
/// Least squares of independent observations l = A x + v with standard errors σ: x minimizes Σ(v/σ)². Solved by QR of the
/// rows divided by σ.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class LinearAdjustment
{
    private LinearAdjustment(Vector<double> x, Matrix<double> covariance, double[] residuals, double[] redundancies, double weighted, double[] sigma)
    {
        Unknowns = [.. x];
        Covariance = covariance;
        Residuals = residuals;
        Redundancies = redundancies;
        Weighted = weighted;
        Standardized = [.. residuals.Select((v, i) => redundancies[i] > LeastRedundancy ? v / (sigma[i] * Math.Sqrt(redundancies[i])) : 0)];
    }

    /// <summary>An observation with less redundancy than this is not controlled by any other.</summary>
    public const double LeastRedundancy = 1e-6;

    public double[] Unknowns { get; }

    /// <summary>Covariance of the unknowns from the standard errors given, (AᵀPA)⁻¹.</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>Adjusted less observed.</summary>
    public double[] Residuals { get; }

    /// <summary>Each observation's share of the redundancy: from 0, not controlled, to nearly 1.</summary>
    public double[] Redundancies { get; }

    /// <summary>Each residual over its own standard error; zero where nothing controls the observation.</summary>
    public double[] Standardized { get; }

    /// <summary>Σ(v/σ)².</summary>
    public double Weighted { get; }

    /// <summary>Observations less unknowns.</summary>
    public int Freedom => Residuals.Length - Unknowns.Length;

    /// <summary>The adjustment; null when the observations do not fix the unknowns.</summary>
    public static LinearAdjustment? Of(double[,] design, double[] observed, double[] sigma)
    {
        int n = observed.Length, u = design.GetLength(1);
        if (n < u)
            return null;
        Matrix<double> A = Matrix<double>.Build.DenseOfArray(design);
        Matrix<double> B = Matrix<double>.Build.Dense(n, u, (i, j) => A[i, j] / sigma[i]);
        Vector<double> l = Vector<double>.Build.Dense(n, i => observed[i] / sigma[i]);
        var qr = B.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        double[] diagonal = [.. qr.R.Diagonal().Select(Math.Abs)];
        if (!(diagonal.Min() > 1e-10 * diagonal.Max()))
            return null;
        Vector<double> x = qr.Solve(l);
        Matrix<double> inverse = qr.R.Inverse(), covariance = inverse * inverse.Transpose();
        Vector<double> v = B * x - l;
        // The hat matrix is Q Qᵀ.
        double[] redundancies = [.. Enumerable.Range(0, n).Select(i => Math.Max(0, 1 - qr.Q.Row(i).DotProduct(qr.Q.Row(i))))];
        return new LinearAdjustment(x, covariance, [.. v.Select((r, i) => r * sigma[i])], redundancies, v.DotProduct(v), sigma);
    }
}
