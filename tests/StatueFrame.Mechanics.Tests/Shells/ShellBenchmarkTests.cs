using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Shells;

/// <summary>Shells with published answers. A tolerance is what the mesh still lacks.</summary>
public class ShellBenchmarkTests
{
    private const string MacNealHarder = "MacNeal and Harder, A proposed standard set of problems to test finite element accuracy, Finite Elem. Anal. Des. 1 (1985) 3–20";
    private const string Nafems = "NAFEMS, The Standard NAFEMS Benchmarks, rev. 3, 1990";
    private const string NafemsFrequencies = "NAFEMS, Selected Benchmarks for Natural Frequency Analysis, 1987";
    private const string Plates = "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., 1959";
    private const Freedoms AcrossX = Freedoms.X | Freedoms.RotationY | Freedoms.RotationZ;
    private const Freedoms AcrossY = Freedoms.Y | Freedoms.RotationX | Freedoms.RotationZ;
    private const Freedoms AcrossZ = Freedoms.Z | Freedoms.RotationX | Freedoms.RotationY;

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new (string, double, Vector3D, Vector3D)[]
        {
            ("extension", 3e-5, Vector3D.UnitX, Vector3D.UnitX), ("in-plane shear", 0.1081, Vector3D.UnitY, Vector3D.UnitY),
            ("out-of-plane shear", 0.4321, Vector3D.UnitZ, Vector3D.UnitZ),
        }.Select(c => Memory($"shell: straight cantilever, {c.Item1}", MacNealHarder, c.Item2, "-", 0.006, () => Straight(c.Item3).Dot(c.Item4))),
        Memory("shell: quarter ring, radial force at its end", "Timoshenko and Goodier, Theory of Elasticity, 3rd ed., 1970, Art. 33 (MacNeal and Harder print 0.08734 for this beam, from a handbook)", 0.08857, "-", 0.005, () => Curved(Vector3D.UnitX).X),
        new("shell: curved strip, out-of-plane shear", "curved beam, P R³ [(π/4)/EI + (3π/4 − 2)/GJ] with J = b t³/3 of a thin plate", 0.4545, "-", 0.015, () => Curved(Vector3D.UnitZ).Z, ValueKind.IndependentComputation),
        Memory("shell: twisted beam, in-plane shear", MacNealHarder, 0.005424, "-", 0.01, () => Twisted(Vector3D.UnitY).Y),
        Memory("shell: twisted beam, out-of-plane shear", MacNealHarder, 0.001754, "-", 0.01, () => Twisted(Vector3D.UnitZ).Z),
        Memory("shell: simply supported square plate, pressure", MacNealHarder, 4.062, "-", 0.005, () => Plate(1, clamped: false, pressed: true)),
        Memory("shell: simply supported plate 5:1, pressure", MacNealHarder, 12.97, "-", 0.005, () => Plate(5, clamped: false, pressed: true)),
        Memory("shell: clamped square plate, pressure", MacNealHarder, 1.26, "-", 0.01, () => Plate(1, clamped: true, pressed: true)),
        Memory("shell: clamped plate 5:1, pressure", MacNealHarder, 2.56, "-", 0.02, () => Plate(5, clamped: true, pressed: true)),
        Memory("shell: simply supported square plate, force in its middle", MacNealHarder, 11.60, "-", 0.01, () => Plate(1, clamped: false, pressed: false)),
        Memory("shell: clamped square plate, force in its middle", MacNealHarder, 5.60, "-", 0.01, () => Plate(1, clamped: true, pressed: false)),
        Memory("shell: Scordelis–Lo roof, side", MacNealHarder, 0.3024, "-", 0.01, () => -Roof(24)),
        Memory("shell: hemisphere with an 18° hole, under its load", MacNealHarder, 0.094, "-", 0.01, () => Hemisphere(48, 18, 10, 0.04, 6.825e7, 1)),
        Memory("shell: pinched cylinder with diaphragms", "Lindberg, Olson and Cowper 1969, as in Belytschko et al., Comput. Methods Appl. Mech. Engrg. 51 (1985) 221–258", 1.8248e-5, "-", 0.015, () => PinchedCylinder(40)),
        Memory("shell: hemisphere with point loads (LE3)", Nafems, 0.185, "m", 0.015, () => Hemisphere(48, 0, 10, 0.04, 68.25e9, 2000)),
        Memory("shell: twisted Z section, warping stress (LE5)", Nafems, -108, "MPa", 0.02, ZSection),
        .. new[] { 1.622, 2.360, 2.922, 4.233, 4.233, 7.416 }.Select((f, i) => Memory($"shell: free thin square plate (FV12), mode {i + 4}", NafemsFrequencies, f, "Hz", 0.01, () => FreePlate.Value[i + 3])),
        .. new[] { 0.421, 1.029, 2.582, 3.306, 3.753, 6.555 }.Select((f, i) => Memory($"shell: thin square cantilever plate (FV16), mode {i + 1}", NafemsFrequencies, f, "Hz", 0.01, () => CantileverPlate.Value[i])),
        .. new[] { 44.623, 130.03, 162.70, 246.05, 379.90, 391.44 }.Select((f, i) => Memory($"shell: tapered cantilever membrane (FV32), mode {i + 1}", NafemsFrequencies, f, "Hz", 0.005, () => TaperedMembrane.Value[i])),
        Memory("shell: moment in the middle of a simply supported square plate under pressure", Plates + ", Table 8", 0.0479, "q a²", 0.01, PlateMoment),
        Memory("shell: buckling of a simply supported square plate, k", "Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., 1961, Table 9-1", 4.00, "π² D/b²", 0.01, PlateBuckling),
        new("shell: clamped heated plate, biaxial stress", "closed form −E α θ/(1 − ν)", -1, "E α θ/(1 − ν)", 1e-9, HeldHeat, ValueKind.IndependentComputation),
        new("shell: plate heated on one face, edges clamped, moment", "closed form D (1 + ν) α θ/t", -1, "D (1 + ν) κ", 1e-9, HeldCurvature, ValueKind.IndependentComputation),
        new("shell: simply supported cylinder, lowest frequency", "Donnell's equations of a shallow shell, ω² = (D/ρt)[k⁴ + (Et/DR²) kₓ⁴/k⁴], least over all waves", 1, "of closed form", 0.02, CylinderFrequency, ValueKind.IndependentComputation),
        new("shell: cylinder under axial load, lowest buckling load", "classical E t/(R √(3 (1 − ν²)))", 1, "of closed form", 0.03, CylinderBuckling, ValueKind.IndependentComputation),
        new("shell: pressurized closed cylinder, hoop force", "membrane theory p R", 1, "p R", 0.005, HoopForce, ValueKind.IndependentComputation),
    ];

    private static PublishedValue Memory(string feature, string source, double expected, string unit, double tolerance, Func<double> compute) =>
        new(feature, source, expected, unit, tolerance, compute, ValueKind.FromMemory);

    private static ShellSection Sheet(double E, double nu, double t, double density = 0) => new() { E = E, Nu = nu, Thickness = t, Mass = density * t };

    private static bool Is(double a, double b) => Math.Abs(a - b) < 1e-6;

    private static Vector3D Straight(Vector3D force) =>
        Strip(new ShellMesh(90, 4, Sheet(1e7, 0.3, 0.1), (s, r) => new Vector3D(6 * s, 0.2 * r - 0.1, 0)), force);

    private static Vector3D Curved(Vector3D force) => Strip(new ShellMesh(90, 4, Sheet(1e7, 0.25, 0.1), (s, r) =>
    {
        (double sin, double cos) = Math.SinCos(0.5 * Math.PI * s);
        return (4.12 + 0.2 * r) * new Vector3D(sin, cos, 0);
    }), force);

    private static Vector3D Twisted(Vector3D force) => Strip(new ShellMesh(72, 8, Sheet(29e6, 0.22, 0.32), (s, r) =>
    {
        (double sin, double cos) = Math.SinCos(0.5 * Math.PI * s);
        return new Vector3D(12 * s, (0.55 - 1.1 * r) * sin, (1.1 * r - 0.55) * cos);
    }), force);

    /// <summary>A strip held where s = 0 and loaded by a force spread over its other end; the movement of that end's middle.</summary>
    private static Vector3D Strip(ShellMesh mesh, Vector3D force)
    {
        for (int j = 0; j <= mesh.N; j++)
            mesh.Hold(mesh[0, j], Freedoms.All).Load(mesh[mesh.M, j], (j == 0 || j == mesh.N ? 0.5 : 1.0) / mesh.N * force);
        return mesh.Move(mesh.Solve(), mesh[mesh.M, mesh.N / 2]);
    }

    /// <summary>A quarter of a plate 2 m wide; the deflection of its middle.</summary>
    private static double Plate(double aspect, bool clamped, bool pressed)
    {
        const int Cells = 24;
        double length = aspect;
        ShellMesh mesh = new ShellMesh(aspect > 1 ? 2 * Cells : Cells, Cells, Sheet(1.7472e7, 0.3, 1e-4), (s, r) => new Vector3D(s, length * r, 0))
            .Hold(p => true, Freedoms.X | Freedoms.Y | Freedoms.RotationZ)
            .Hold(p => Is(p.X, 0), AcrossX).Hold(p => Is(p.Y, 0), AcrossY)
            .Hold(p => Is(p.X, 1) || Is(p.Y, length), clamped ? Freedoms.All : Freedoms.Z)
            .Hold(p => Is(p.X, 1), Freedoms.RotationX).Hold(p => Is(p.Y, length), Freedoms.RotationY);
        if (pressed)
            mesh.Press(_ => 1e-4 * Vector3D.UnitZ);
        else
            mesh.Load(mesh[0, 0], 1e-4 * Vector3D.UnitZ);
        return mesh.Move(mesh.Solve(), mesh[0, 0]).Z;
    }

    /// <summary>A quarter of the roof; z is up, the axis along y.</summary>
    private static double Roof(int n)
    {
        ShellMesh mesh = new ShellMesh(n, n, Sheet(4.32e8, 0, 0.25), (s, r) =>
        {
            (double sin, double cos) = Math.SinCos(40 * Math.PI / 180 * s);
            return new Vector3D(25 * sin, 25 * r, 25 * cos);
        }).Hold(p => Is(p.Y, 25), Freedoms.X | Freedoms.Z).Hold(p => Is(p.X, 0), AcrossX).Hold(p => Is(p.Y, 0), AcrossY).Press(_ => -90 * Vector3D.UnitZ);
        return mesh.Move(mesh.Solve(), mesh[n, 0]).Z;
    }

    /// <summary>A quarter of a hemisphere, pulled along x and pushed along y at its equator, half of each force on the quarter's two edges.</summary>
    private static double Hemisphere(int n, double hole, double R, double t, double E, double force)
    {
        ShellMesh mesh = new ShellMesh(n, n, Sheet(E, 0.3, t), (s, r) =>
        {
            (double sin, double cos) = Math.SinCos(0.5 * Math.PI * s);
            (double up, double level) = Math.SinCos((90 - hole) * Math.PI / 180 * r);
            return R * new Vector3D(level * cos, level * sin, up);
        }).Hold(p => Is(p.Y, 0), AcrossY).Hold(p => Is(p.X, 0), AcrossX);
        mesh.Hold(mesh[n / 2, 0], Freedoms.Z).Load(mesh[0, 0], force * Vector3D.UnitX).Load(mesh[n, 0], -force * Vector3D.UnitY);
        return mesh.Move(mesh.Solve(), mesh[0, 0]).X;
    }

    /// <summary>An eighth of the cylinder, its axis along y.</summary>
    private static double PinchedCylinder(int n)
    {
        ShellMesh mesh = new ShellMesh(n, n, Sheet(3e6, 0.3, 3), (s, r) =>
        {
            (double sin, double cos) = Math.SinCos(0.5 * Math.PI * s);
            return new Vector3D(300 * sin, 300 * r, 300 * cos);
        }).Hold(p => Is(p.Y, 300), Freedoms.X | Freedoms.Z | Freedoms.RotationY).Hold(p => Is(p.X, 0), AcrossX).Hold(p => Is(p.Y, 0), AcrossY).Hold(p => Is(p.Z, 0), AcrossZ);
        mesh.Load(mesh[0, 0], -0.25 * Vector3D.UnitZ);
        return -mesh.Move(mesh.Solve(), mesh[0, 0]).Z;
    }

    /// <summary>Flanges 1 m wide on a web of 2 m, 10 m long, twisted by opposite shears of 0.6 MN on the flanges at its end; the stress of the flange's edge 2.5 m from its root.</summary>
    private static double ZSection()
    {
        const int Wide = 32;
        ShellMesh mesh = new(80, Wide, Sheet(210e9, 0.3, 0.1), (s, r) =>
        {
            double run = 4 * r;
            return new Vector3D(10 * s, run < 1 ? run - 1 : run > 3 ? run - 3 : 0, run < 1 ? 1 : run > 3 ? -1 : 2 - run);
        });
        mesh.Hold(p => Is(p.X, 0), Freedoms.All);
        int flange = Wide / 4;
        for (int j = 0; j <= flange; j++)
        {
            double part = (j == 0 || j == flange ? 0.5 : 1.0) / flange * 0.6e6;
            mesh.Load(mesh[mesh.M, j], -part * Vector3D.UnitY).Load(mesh[mesh.M, Wide - j], part * Vector3D.UnitY);
        }
        double[] u = mesh.Solve();
        return 1e-6 * StressAlongEdge(mesh, u, mesh.M / 4);
    }

    /// <summary>The strain along the free edge about a column of nodes, times E.</summary>
    private static double StressAlongEdge(ShellMesh mesh, double[] u, int i) =>
        210e9 * (mesh.Move(u, mesh[i + 1, 0]).X - mesh.Move(u, mesh[i - 1, 0]).X) / (2 * 10.0 / mesh.M);

    private static readonly Lazy<double[]> FreePlate = new(() =>
        new ShellMesh(24, 24, Sheet(200e9, 0.3, 0.05, 8000), (s, r) => new Vector3D(10 * s, 10 * r, 0)).Hold(p => true, Freedoms.X | Freedoms.Y | Freedoms.RotationZ).Hertz(9, shift: 100));

    private static readonly Lazy<double[]> CantileverPlate = new(() =>
        new ShellMesh(24, 24, Sheet(200e9, 0.3, 0.05, 8000), (s, r) => new Vector3D(10 * s, 10 * r, 0)).Hold(p => true, Freedoms.X | Freedoms.Y | Freedoms.RotationZ).Hold(p => Is(p.X, 0), Freedoms.All).Hertz(8));

    private static readonly Lazy<double[]> TaperedMembrane = new(() =>
        new ShellMesh(96, 48, Sheet(200e9, 0.3, 0.05, 8000), (s, r) => new Vector3D(10 * s, (5 - 4 * s) * (r - 0.5), 0)).Hold(p => true, Freedoms.Z | Freedoms.RotationX | Freedoms.RotationY).Hold(p => Is(p.X, 0), Freedoms.All).Hertz(8));

    private static ShellMesh HalfSupported(int n, double a, ShellSection section) => new ShellMesh(n, n, section, (s, r) => new Vector3D(a * s, a * r, 0))
        .Hold(p => Is(p.X, 0) || Is(p.Y, 0) || Is(p.X, a) || Is(p.Y, a), Freedoms.Z);

    private static double PlateMoment()
    {
        ShellMesh mesh = HalfSupported(40, 1, Sheet(210e9, 0.3, 0.01)).Hold(p => true, Freedoms.X | Freedoms.Y | Freedoms.RotationZ).Press(_ => Vector3D.UnitZ);
        double[] u = mesh.Solve();
        return mesh.Elements.Where(e => (e.Center - new Vector3D(0.5, 0.5, 0)).Length < 0.03).Average(e => 0.5 * (mesh.Stress(u, e).Mx + mesh.Stress(u, e).My));
    }

    private static double PlateBuckling()
    {
        const double E = 210e9, t = 0.01;
        ShellMesh mesh = HalfSupported(24, 1, Sheet(E, 0.3, t)).Hold(p => Is(p.X, 0), Freedoms.X).Hold(p => Is(p.Y, 0.5) && Is(p.X, 0), Freedoms.Y);
        for (int j = 0; j <= mesh.N; j++)
            mesh.Load(mesh[mesh.M, j], (j == 0 || j == mesh.N ? -0.5 : -1.0) / mesh.N * Vector3D.UnitX);
        double D = E * t * t * t / (12 * (1 - 0.09));
        return mesh.Buckling() / (Math.PI * Math.PI * D);
    }

    private static double HeldHeat()
    {
        ShellMesh mesh = new ShellMesh(5, 4, Sheet(100e9, 0.3, 0.002), (s, r) => new Vector3D(s + 0.1 * r * s, r, 0)).Hold(p => true, Freedoms.All & ~Freedoms.RotationZ).Hold(p => Is(p.X, 0) || Is(p.Y, 0) || Is(p.Y, 1) || Is(p.X, 1 + 0.1 * p.Y), Freedoms.All).Heat(1e-3, 0);
        double[] u = mesh.Solve();
        return mesh.Elements.Average(e => mesh.Stress(u, e).Nx) / (100e9 * 0.002 * 1e-3 / 0.7);
    }

    private static double HeldCurvature()
    {
        ShellMesh mesh = HalfSupported(6, 1, Sheet(100e9, 0.3, 0.002)).Hold(p => Is(p.X, 0) || Is(p.Y, 0) || Is(p.X, 1) || Is(p.Y, 1), Freedoms.All).Heat(0, 0.02);
        double[] u = mesh.Solve();
        return mesh.Elements.Average(e => mesh.Stress(u, e).My) / (100e9 / 0.91 * Math.Pow(0.002, 3) / 12 * 1.3 * 0.02);
    }

    private const double R = 1, L = 2, ThinE = 200e9, ThinT = 0.005, Density = 7850;

    /// <summary>A quarter of the way round, half the length: even about its middle.</summary>
    private static ShellMesh Cylinder(int round, int along, int parts = 4, double density = 0) => new ShellMesh(round, along, Sheet(ThinE, 0.3, ThinT, density), (s, r) =>
    {
        (double sin, double cos) = Math.SinCos(2 * Math.PI / parts * s);
        return new Vector3D(R * cos, R * sin, L * r);
    });

    private static double CylinderFrequency()
    {
        ShellMesh mesh = Cylinder(96, 24, 1, Density).Hold(p => Is(p.Z, 0) || Is(p.Z, L), Freedoms.X | Freedoms.Y);
        mesh.Hold(mesh[0, 0], Freedoms.Z);
        double D = ThinE * Math.Pow(ThinT, 3) / (12 * 0.91), least = double.MaxValue, kx = Math.PI / L;
        for (int n = 2; n < 20; n++)
        {
            double k = kx * kx + n * n / (R * R);
            // Donnell's shallow shell, with the inertia of the waves round it: a factor of 1 + 1/n².
            least = Math.Min(least, Math.Sqrt((D * k * k + ThinE * ThinT / (R * R) * Math.Pow(kx, 4) / (k * k)) / (Density * ThinT * (1 + 1.0 / (n * n)))));
        }
        return 2 * Math.PI * mesh.Hertz(2)[0] / least;
    }

    private static double CylinderBuckling()
    {
        const double t = 0.01, length = 0.5;
        ShellMesh mesh = new ShellMesh(48, 40, Sheet(ThinE, 0.3, t), (s, r) =>
        {
            (double sin, double cos) = Math.SinCos(0.5 * Math.PI * s);
            return new Vector3D(R * cos, R * sin, length * r);
        }).Hold(p => Is(p.Z, 0), Freedoms.Displacements).Hold(p => Is(p.Z, length), Freedoms.X | Freedoms.Y).Hold(p => Is(p.Y, 0), AcrossY).Hold(p => Is(p.X, 0), AcrossX);
        for (int i = 0; i <= mesh.M; i++)
            mesh.Load(mesh[i, mesh.N], (i == 0 || i == mesh.M ? -0.5 : -1.0) / mesh.M * 0.5 * Math.PI * R * Vector3D.UnitZ);
        return mesh.Buckling() / (ThinE * t * t / (R * Math.Sqrt(3 * 0.91)));
    }

    private static double HoopForce()
    {
        ShellMesh mesh = Cylinder(24, 24).Hold(p => Is(p.Y, 0), AcrossY).Hold(p => Is(p.X, 0), AcrossX).Hold(p => Is(p.Z, 0), AcrossZ);
        mesh.Press(e => 1000 * new Vector3D(e.Center.X, e.Center.Y, 0).Normalized());
        double[] u = mesh.Solve();
        return mesh.Elements.Average(e =>
        {
            ShellStress n = mesh.Stress(u, e);
            Vector3D round = e.Axes.ToLocal(Vector3D.UnitZ.Cross(e.Axes.Z));
            return n.Nx * round.X * round.X + 2 * n.Nxy * round.X * round.Y + n.Ny * round.Y * round.Y;
        }) / (1000 * R);
    }
}
