using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Shells;

public class ShellElementTests
{
    private static readonly ShellSection sheet = new() { E = 110e9, Nu = 0.34, Thickness = 0.0024, Mass = 21.4 };

    private static readonly Gen<Vector3D> point = Gen.Double[-1, 1].Array[3].Select(c => new Vector3D(c[0], c[1], c[2]));

    private static readonly Gen<ShellElement> triangle = point.Array[3]
        .Where(p => (p[1] - p[0]).Cross(p[2] - p[0]).Length > 0.2)
        .Select(p => new ShellElement([0, 1, 2], p, sheet));

    private static Matrix<double> StiffnessOf(ShellElement element)
    {
        var k = new double[18 * 18];
        element.AddStiffness(k);
        return Matrix<double>.Build.DenseOfRowMajor(18, 18, k);
    }

    [Fact]
    public void Only_rigid_motions_meet_no_resistance() => triangle.Sample(element =>
    {
        Matrix<double> k = StiffnessOf(element);
        // Made alike in size: rotations times a length.
        for (int i = 0; i < 18; i++)
        {
            double s = i % 6 < 3 ? 1 : 1 / Math.Sqrt(element.Area);
            k.SetRow(i, s * k.Row(i));
            k.SetColumn(i, s * k.Column(i));
        }
        double[] values = [.. k.Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).Order()];
        Assert.All(values[..6], v => Assert.True(Math.Abs(v) < 1e-9 * values[^1]));
        Assert.True(values[6] > 1e-11 * values[^1] && values[6] > 10 * Math.Abs(values[5]), $"{values[5]} {values[6]} {values[^1]}");
    }, iter: 200);

    [Fact]
    public void The_order_of_the_nodes_changes_nothing() => Gen.Select(point.Array[3].Where(p => (p[1] - p[0]).Cross(p[2] - p[0]).Length > 0.2), Gen.Double[-1, 1].Array[18]).Sample((p, u) =>
    {
        double[] turned = [.. u[6..], .. u[..6]];
        double a = Energy(new ShellElement([0, 1, 2], p, sheet), u), b = Energy(new ShellElement([0, 1, 2], [p[1], p[2], p[0]], sheet), turned);
        Assert.Equal(a, b, 1e-9 * a);

        static double Energy(ShellElement element, double[] u)
        {
            Vector<double> v = Vector<double>.Build.Dense(u);
            return v * (StiffnessOf(element) * v);
        }
    }, iter: 100);

    [Fact]
    public void Free_heat_leaves_no_stress() => Gen.Select(triangle, Gen.Double[1e-5, 1e-3]).Sample((element, strain) =>
    {
        var loads = new double[18];
        element.AddStrainLoad(strain, 0, loads);
        // A body that grows alike everywhere: every node moves from the middle, none turns.
        double[] u = new double[18];
        for (int i = 0; i < 3; i++)
        {
            Vector3D move = strain * (element.Corner(i) - element.Center);
            (u[6 * i], u[6 * i + 1], u[6 * i + 2]) = (move.X, move.Y, move.Z);
        }
        Vector<double> held = StiffnessOf(element) * Vector<double>.Build.Dense(u);
        double size = loads.Max(Math.Abs);
        for (int i = 0; i < 18; i++)
            Assert.Equal(loads[i], held[i], 1e-9 * size);
        ShellStress stress = element.StressFrom(u, strain);
        Assert.True(Math.Abs(stress.Nx) + Math.Abs(stress.Ny) + Math.Abs(stress.Nxy) < 1e-9 * 110e9 * 0.0024 * strain);
    }, iter: 100);

    [Fact]
    public void Mass_is_that_of_the_triangle() => triangle.Sample(element =>
    {
        var m = new double[18 * 18];
        element.AddMass(m);
        double sum = 0;
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++)
                sum += m[6 * i * 18 + 6 * j];
        Assert.Equal(21.4 * element.Area, sum, 1e-12);
    }, iter: 50);

    /// <summary>An irregular inner mesh must hold every constant membrane stress and every constant curvature.</summary>
    [Fact]
    public void Irregular_patches_hold_constant_stress_and_curvature()
    {
        Gen.Double[-0.15, 0.15].Array[50].Sample(noise =>
        {
            int at = 0;
            var inner = new Dictionary<(double, double), Vector3D>();
            ShellMesh Mesh() => new(3, 3, sheet, (s, r) =>
            {
                if (inner.TryGetValue((s, r), out Vector3D known))
                    return known;
                bool edge = s is 0 or 1 || r is 0 or 1;
                return inner[(s, r)] = new Vector3D(s + (edge ? 0 : noise[at++]), r + (edge ? 0 : noise[at++]), 0);
            });
            foreach (int state in Enumerable.Range(0, 6))
            {
                var e = new double[6];
                e[state] = 1e-3;
                ShellMesh mesh = Mesh();
                var at6 = new double[mesh.Frame.FreedomCount];
                for (int node = 0; node < mesh.Frame.Nodes.Count; node++)
                {
                    (double x, double y) = (mesh.Frame.Nodes[node].Position.X, mesh.Frame.Nodes[node].Position.Y);
                    at6[6 * node] = e[0] * x + 0.5 * e[2] * y;
                    at6[6 * node + 1] = e[1] * y + 0.5 * e[2] * x;
                    at6[6 * node + 2] = -0.5 * (e[3] * x * x + e[4] * y * y + e[5] * x * y);
                    at6[6 * node + 3] = -(e[4] * y + 0.5 * e[5] * x);
                    at6[6 * node + 4] = e[3] * x + 0.5 * e[5] * y;
                }
                // No force is needed at the inner nodes, and every triangle has the same stress.
                var forces = new double[at6.Length];
                var own = new double[18];
                for (int i = 0; i < mesh.Frame.Elements.Count; i++)
                {
                    mesh.Frame.ElementForces(i, at6, own);
                    for (int k = 0; k < 18; k++)
                        forces[6 * mesh.Frame.Elements[i].Nodes[k / 6] + k % 6] += own[k];
                }
                double size = forces.Max(Math.Abs);
                for (int i = 1; i < 3; i++)
                    for (int j = 1; j < 3; j++)
                        for (int k = 0; k < 6; k++)
                            Assert.True(Math.Abs(forces[6 * mesh[i, j] + k]) < 1e-9 * size, $"state {state}: {forces[6 * mesh[i, j] + k]} of {size}");
                double E = 110e9 / (1 - 0.34 * 0.34), t = 0.0024, D = E * t * t * t / 12;
                foreach (ShellElement element in mesh.Elements)
                {
                    ShellStress s = mesh.Stress(at6, element);
                    // The invariants of a state of stress do not ask for axes.
                    Assert.Equal(E * t * 1.34 * (e[0] + e[1]), s.Nx + s.Ny, 1e-9 * E * t * 1e-3);
                    Assert.Equal(D * 1.34 * (e[3] + e[4]), s.Mx + s.My, 1e-9 * D * 1e-3);
                    Assert.Equal(Shear(E * t, e[0], e[1], e[2]), double.Hypot(0.5 * (s.Nx - s.Ny), s.Nxy), 1e-9 * E * t * 1e-3);
                    Assert.Equal(Shear(D, e[3], e[4], e[5]), double.Hypot(0.5 * (s.Mx - s.My), s.Mxy), 1e-9 * D * 1e-3);
                }

                static double Shear(double modulus, double x, double y, double xy) => 0.5 * modulus * 0.66 * double.Hypot(x - y, xy);
            }
        }, iter: 10);
    }

    [Fact]
    public void A_plate_converges_with_the_square_of_the_mesh()
    {
        double exact = 0.00406235;
        double coarse = Math.Abs(Deflection(8) - exact), fine = Math.Abs(Deflection(16) - exact);
        Assert.InRange(Math.Log2(coarse / fine), 1.6, 2.6);

        static double Deflection(int n)
        {
            ShellMesh mesh = new ShellMesh(n, n, sheet, (s, r) => new Vector3D(s, r, 0))
                .Hold(p => true, Freedoms.X | Freedoms.Y | Freedoms.RotationZ)
                .Hold(p => p.X is < 1e-9 or > 1 - 1e-9 || p.Y is < 1e-9 or > 1 - 1e-9, Freedoms.Z).Press(_ => Vector3D.UnitZ);
            double D = 110e9 * Math.Pow(0.0024, 3) / (12 * (1 - 0.34 * 0.34));
            return D * mesh.Move(mesh.Solve(), mesh[n / 2, n / 2]).Z;
        }
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Vector3D[] p = [default, Vector3D.UnitX, Vector3D.UnitY];
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], [default, Vector3D.UnitX, 2 * Vector3D.UnitX], sheet));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1], p, sheet));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], p, sheet with { Thickness = 0 }));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], p, sheet with { Nu = 0.5 }));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], p, sheet with { E = double.NaN }));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], p, sheet with { Mass = -1 }));
        Assert.Throws<ArgumentException>(() => new ShellElement([0, 1, 2], [default, Vector3D.UnitX, new(0, double.NaN, 0)], sheet));
    }
}
