using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests;

/// <summary>A slender prismatic beam with round (equal both ways) bending stiffness, written out for the tests alone.</summary>
internal sealed class UniformBeam : FrameElement
{
    private readonly Axes3D axes;
    private readonly double L, EA, EI, GJ, m, polar;

    public UniformBeam(
        int start, int end, Vector3D from, Vector3D to, double EA = 1e8, double EI = 1e5, double GJ = 8e4, double mass = 20,
        double polar = 0.02)
        : base(start, end)
    {
        axes = Axes3D.Along(to - from, Vector3D.UnitZ);
        L = (to - from).Length;
        (this.EA, this.EI, this.GJ, m, this.polar) = (EA, EI, GJ, mass, polar);
    }

    public override void AddStiffness(Span<double> k) =>
        AddGlobal(k, EA / L, GJ / L, EI / (L * L * L), [12, 6 * L, 4 * L * L, 2 * L * L]);

    public override void AddMass(Span<double> k)
    {
        var local = new double[12, 12];
        Set(local, 0, 0, m * L / 3);
        Set(local, 6, 6, m * L / 3);
        Set(local, 6, 0, m * L / 6);
        Set(local, 3, 3, polar * L / 3);
        Set(local, 9, 9, polar * L / 3);
        Set(local, 9, 3, polar * L / 6);
        double f = m * L / 420;
        foreach ((int w, int r, double s) in Planes)
        {
            Set(local, w, w, 156 * f);
            Set(local, w + 6, w + 6, 156 * f);
            Set(local, w + 6, w, 54 * f);
            Set(local, r, r, 4 * L * L * f);
            Set(local, r + 6, r + 6, 4 * L * L * f);
            Set(local, r + 6, r, -3 * L * L * f);
            Set(local, r, w, s * 22 * L * f);
            Set(local, r + 6, w + 6, -s * 22 * L * f);
            Set(local, r + 6, w, -s * 13 * L * f);
            Set(local, w + 6, r, s * 13 * L * f);
        }
        ToGlobal(local, k);
    }

    public override void AddGeometricStiffness(ReadOnlySpan<double> u, Span<double> kg)
    {
        var stretch = new Vector3D(u[6] - u[0], u[7] - u[1], u[8] - u[2]);
        double N = EA / L * stretch.Dot(axes.X);
        AddGlobal(kg, 0, 0, N / (30 * L), [36, 3 * L, 4 * L * L, -L * L]);
    }

    private static (int W, int R, double S)[] Planes => [(1, 5, 1), (2, 4, -1)];

    /// <summary>Bending entries: [ww, wr, rr, rr of the other end] times <paramref name="bend"/>.</summary>
    private void AddGlobal(Span<double> k, double axial, double twist, double bend, double[] c)
    {
        var local = new double[12, 12];
        foreach ((int i, double s) in new[] { (0, axial), (3, twist) })
        {
            Set(local, i, i, s);
            Set(local, i + 6, i + 6, s);
            Set(local, i + 6, i, -s);
        }
        foreach ((int w, int r, double s) in Planes)
        {
            Set(local, w, w, c[0] * bend);
            Set(local, w + 6, w + 6, c[0] * bend);
            Set(local, w + 6, w, -c[0] * bend);
            Set(local, r, r, c[2] * bend);
            Set(local, r + 6, r + 6, c[2] * bend);
            Set(local, r + 6, r, c[3] * bend);
            Set(local, r, w, s * c[1] * bend);
            Set(local, r + 6, w, s * c[1] * bend);
            Set(local, w + 6, r, -s * c[1] * bend);
            Set(local, r + 6, w + 6, -s * c[1] * bend);
        }
        ToGlobal(local, k);
    }

    private static void Set(double[,] a, int i, int j, double value) => a[i, j] = a[j, i] = value;

    private void ToGlobal(double[,] local, Span<double> global)
    {
        double[,] r = { { axes.X.X, axes.X.Y, axes.X.Z }, { axes.Y.X, axes.Y.Y, axes.Y.Z }, { axes.Z.X, axes.Z.Y, axes.Z.Z } };
        for (int i = 0; i < 12; i++)
        {
            for (int j = 0; j < 12; j++)
            {
                for (int a = 0; a < 3; a++)
                {
                    for (int b = 0; b < 3; b++)
                        global[12 * i + j] += r[a, i % 3] * local[i / 3 * 3 + a, j / 3 * 3 + b] * r[b, j % 3];
                }
            }
        }
    }
}
