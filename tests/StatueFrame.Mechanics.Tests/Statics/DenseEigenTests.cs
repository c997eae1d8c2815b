using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Tests.Statics;

public class DenseEigenTests
{
    [Fact]
    public void Vectors_are_orthonormal_and_rebuild_the_matrix() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, 10000], Gen.Int[0, 2]).Sample((n, seed, kind) =>
        {
            var random = new Random(seed);
            Matrix<double> a = Matrix<double>.Build.Dense(n, n, (_, _) => random.NextDouble() - 0.5);
            a = kind switch
            {
                0 => a + a.Transpose(),
                1 => Matrix<double>.Build.Diagonal(n, n, i => i / 3),
                _ => a.SubMatrix(0, n, 0, (n + 2) / 3) * a.SubMatrix(0, n, 0, (n + 2) / 3).Transpose(),
            };
            var vectors = new double[n * n];
            var values = new double[n];
            DenseEigen.Solve(a.ToRowMajorArray(), vectors, values, new double[2 * n]);
            Matrix<double> q = Matrix<double>.Build.DenseOfRowMajor(n, n, vectors);
            Matrix<double> back = q.Transpose() * Matrix<double>.Build.Diagonal(values) * q;
            return (back - a).FrobeniusNorm() <= 1e-13 * n * Math.Max(1, a.FrobeniusNorm())
                && (q * q.Transpose() - Matrix<double>.Build.DenseIdentity(n)).FrobeniusNorm() <= 1e-13 * n;
        }, iter: 300);
}
