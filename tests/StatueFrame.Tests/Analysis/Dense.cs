using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Tests.Analyses;

/// <summary>Small dense matrices for reference computations, and a generator.</summary>
internal static class Dense
{
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    public static Matrix<double> Zero(int rows, int columns) => Matrix<double>.Build.Dense(rows, columns);

    public static Matrix<double> Stiffness(FrameElement element)
    {
        var k = new double[144];
        element.AddStiffness(k);
        return Matrix<double>.Build.DenseOfRowMajor(12, 12, k);
    }

    public static Matrix<double> Mass(FrameElement element)
    {
        var m = new double[144];
        element.AddMass(m);
        return Matrix<double>.Build.DenseOfRowMajor(12, 12, m);
    }

    /// <summary>The motion of a point at the arm r from a node, by the node's motion: u + θ×r, and θ.</summary>
    public static Matrix<double> Arm(Vector3D r)
    {
        Matrix<double> t = Matrix<double>.Build.DenseIdentity(6);
        (t[0, 4], t[0, 5]) = (r.Z, -r.Y);
        (t[1, 3], t[1, 5]) = (-r.Z, r.X);
        (t[2, 3], t[2, 4]) = (r.Y, -r.X);
        return t;
    }

    public static Vector<double> Vector(Vector3D v) => Vector<double>.Build.Dense([v.X, v.Y, v.Z]);

    /// <summary>The greatest difference of two stiffness matrices, each entry against the geometric mean of its two diagonal entries.</summary>
    public static double Difference(Matrix<double> ours, Matrix<double> expected)
    {
        double worst = 0;
        for (int i = 0; i < ours.RowCount; i++)
        {
            for (int j = 0; j < ours.ColumnCount; j++)
                worst = Math.Max(worst, Math.Abs(ours[i, j] - expected[i, j]) / Math.Sqrt(expected[i, i] * expected[j, j]));
        }
        return worst;
    }
}
