using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;

namespace StatueFrame.Tests.Standoffs;

/// <summary>
/// The stiffness of a bar by other means than the closed form: a chain of textbook beam elements (stiffness coefficients
/// with Φ), springs and saddle as freedoms of their own, all but the skin's six condensed out.
/// </summary>
internal static class BarChain
{
    private const int Elements = 4;

    public static Matrix<double> Stiffness(FlatRectangle section, double L, double E, double G, EndSprings tower, EndSprings skin, Vector3D slide)
    {
        int last = 6 * Elements;
        var chain = Matrix<double>.Build.Dense(last + 6, last + 6);
        for (int e = 0; e < Elements; e++)
        {
            Matrix<double> k = Element(section, L / Elements, E, G);
            for (int i = 0; i < 12; i++)
            {
                for (int j = 0; j < 12; j++)
                    chain[6 * e + i, 6 * e + j] += k[i, j];
            }
        }
        // Columns of T: the skin's six freedoms first, then whatever is free inside.
        List<Vector<double>> columns = [];
        List<(int Column, double k, int Skin)> springs = [];
        for (int i = 0; i < 6; i++)
            columns.Add(Vector<double>.Build.Dense(last + 6));
        for (int i = 0; i < 3; i++)
            columns[i][last + i] = 1;
        foreach ((int axis, double k1, double k2) in new[] { (3, tower.Twist, skin.Twist), (4, tower.Strong, skin.Strong), (5, tower.Weak, skin.Weak) })
        {
            if (double.IsFinite(k1))
            {
                springs.Add((columns.Count, k1, -1));
                columns.Add(Unit(axis));
            }
            if (double.IsFinite(k2))
            {
                springs.Add((columns.Count, k2, axis));
                columns.Add(Unit(last + axis));
            }
            else
            {
                columns[axis] = Unit(last + axis);
            }
        }
        for (int i = 6; i < last; i++)
            columns.Add(Unit(i));
        if (slide != Vector3D.Zero)
        {
            Vector<double> s = Vector<double>.Build.Dense(last + 6);
            (s[last], s[last + 1], s[last + 2]) = (slide.X, slide.Y, slide.Z);
            columns.Add(s);
        }
        Matrix<double> T = Matrix<double>.Build.DenseOfColumnVectors(columns);
        Matrix<double> K = T.TransposeThisAndMultiply(chain * T);
        foreach ((int column, double k, int at) in springs)
        {
            K[column, column] += k;
            if (at >= 0)
            {
                K[at, at] += k;
                K[at, column] -= k;
                K[column, at] -= k;
            }
        }
        int n = columns.Count - 6;
        Matrix<double> inner = K.SubMatrix(6, n, 6, n), side = K.SubMatrix(6, n, 0, 6);
        return K.SubMatrix(0, 6, 0, 6) - side.TransposeThisAndMultiply(inner.Solve(side));

        Vector<double> Unit(int i)
        {
            Vector<double> v = Vector<double>.Build.Dense(last + 6);
            v[i] = 1;
            return v;
        }
    }

    private static Matrix<double> Element(FlatRectangle s, double L, double E, double G)
    {
        var k = Matrix<double>.Build.Dense(12, 12);
        Two(0, E * s.A / L);
        Two(3, G * s.J / L);
        Bend(1, 5, 1, E * s.b * s.t * s.t * s.t / 12);
        Bend(2, 4, -1, E * s.t * s.b * s.b * s.b / 12);
        return k;

        void Two(int i, double value)
        {
            k[i, i] = k[i + 6, i + 6] = value;
            k[i, i + 6] = k[i + 6, i] = -value;
        }

        void Bend(int v, int r, int sign, double EI)
        {
            double phi = 12 * EI / (G * 5 / 6 * s.b * s.t * L * L), f = EI / (L * L * L * (1 + phi));
            double[,] m =
            {
                { 12, 6 * L, -12, 6 * L },
                { 6 * L, (4 + phi) * L * L, -6 * L, (2 - phi) * L * L },
                { -12, -6 * L, 12, -6 * L },
                { 6 * L, (2 - phi) * L * L, -6 * L, (4 + phi) * L * L },
            };
            int[] at = [v, r, v + 6, r + 6];
            for (int i = 0; i < 4; i++)
            {
                for (int j = 0; j < 4; j++)
                    k[at[i], at[j]] = f * m[i, j] * ((i + j) % 2 == 0 ? 1 : sign);
            }
        }
    }
}
