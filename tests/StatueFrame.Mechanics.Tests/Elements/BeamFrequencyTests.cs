using MathNet.Numerics;
using MathNet.Numerics.RootFinding;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class BeamFrequencyTests
{
    private const string Blevins = "Blevins, Formulas for Natural Frequency and Mode Shape, 1979, Table 8-1";
    private const string Kirchhoff = "Kirchhoff 1879, in Timoshenko, Vibration Problems in Engineering";
    private const string Nafems = "NAFEMS Selected Benchmarks for Natural Frequency Analysis, FV5, issue of 1989-01-09";
    private const Freedoms InPlane = Freedoms.Z | Freedoms.RotationY;
    private const Freedoms OutOfPlane = Freedoms.X | Freedoms.Y | Freedoms.RotationX | Freedoms.RotationZ;

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { 1.8751, 4.6941, 7.8548 }.Select((lambda, i) => new PublishedValue(
            $"uniform cantilever, λ of mode {i + 1}", Blevins, lambda, "-", 2e-5, () => Math.Sqrt(2 * Math.PI * CantileverHz.Value[i]))),
        new("wedge cantilever, c of mode 1", Kirchhoff, 5.315, "-", 1e-4, () => 2 * Math.PI * WedgeHz.Value[0]),
        .. new[] { 7.7, 10.9 }.Select((near, i) => new PublishedValue(
            $"wedge cantilever, c of mode {i + 2}", "c = z²/4, J₁(z) I₂(z) + I₁(z) J₂(z) = 0", WedgeFactor(near), "-", 1e-4,
            () => 2 * Math.PI * WedgeHz.Value[i + 1], ValueKind.IndependentComputation)),
        .. new[] { 42.650, 148.15, 283.47 }.Select((f, i) => new PublishedValue(
            $"deep simply supported beam, bending {i + 1}", Nafems, f, "Hz", 2e-4, () => DeepBending.Value[i])),
        new("deep simply supported beam, axial", Nafems, 125.00, "Hz", 5e-5, () => DeepBeam(60, Freedoms.X)[0]),
        .. new[] { 71.20, 213.61 }.Select((f, i) => new PublishedValue(
            $"deep simply supported beam, torsion {i + 1}", Nafems, f, "Hz", 1e-4, () => DeepTorsion.Value[i])),
        new("deep simply supported beam, second bending", "exact Timoshenko frequency equation, sine shape",
            ExactDeepBeam(2), "Hz", 5e-5, () => DeepBending.Value[1], ValueKind.IndependentComputation),
        new("taut string of 30 bars, third mode", "exact discrete solution ω² = 6T/(mh²)·(1−cos q)/(2+cos q), q = 3π/30",
            StringHz(30, 3), "Hz", 1e-9, () => TautString(30)[2], ValueKind.IndependentComputation),
        new("taut slender beam, first mode", "closed form ω = (π/L)²√(EI/m)·√(1 + TL²/(π²EI))",
            TautBeamHz, "Hz", 1e-5, TautBeam, ValueKind.IndependentComputation),
    ];

    /// <summary>The shear coefficient is Cowper's for a rectangle, 10(1+ν)/(12+11ν); the torsion constant of a square of
    /// side a is 0.140577 a⁴.</summary>
    private static BeamSection Square =>
        Samples.Rectangle(2, 2, kappa: 13 / 15.3) with { GJ = 200e9 / 2.6 * 0.140577 * 16 };

    private static readonly Lazy<double[]> CantileverHz = new(Cantilever), WedgeHz = new(Wedge);

    private static readonly Lazy<double[]> DeepBending = new(() => DeepBeam(120, InPlane));

    private static readonly Lazy<double[]> DeepTorsion = new(() => DeepBeam(120, Freedoms.RotationX));

    private static double[] Cantilever() =>
        DenseModel.Chain(24, 1, Samples.Slender()).FixEverywhere(OutOfPlane).Fix(0).Frequencies();

    private static double[] Wedge()
    {
        return DenseModel.Chain(80, 1, Section).FixEverywhere(OutOfPlane).Fix(0).Frequencies();

        static BeamSection Section(double xi) => Samples.Slender() with { EIy = Math.Pow(1 - xi, 3), Mass = 1 - xi };
    }

    /// <summary>The deflection of a wedge is (J₁ or I₁)(2√(ωx)) ÷ √x from its point on; no deflection and no slope at its
    /// root give the equation of z.</summary>
    private static double WedgeFactor(double near)
    {
        double z = Brent.FindRoot(Equation, near, near + 0.2);
        return z * z / 4;

        static double Equation(double z) =>
            SpecialFunctions.BesselJ(1, z) * SpecialFunctions.BesselI(2, z) + SpecialFunctions.BesselI(1, z) * SpecialFunctions.BesselJ(2, z);
    }

    private static double[] DeepBeam(int n, Freedoms studied) =>
        DenseModel.Chain(n, 10, Square).FixEverywhere(Freedoms.All & ~studied)
            .Fix(0, Freedoms.Displacements | Freedoms.RotationX).Fix(n, Freedoms.Y | Freedoms.Z).Frequencies();

    /// <summary>The lower root of the frequency equation of a simply supported Timoshenko beam, mode n, from its two
    /// equations of motion with v and θ a sine and a cosine.</summary>
    private static double ExactDeepBeam(int n)
    {
        BeamSection s = Square;
        double q = n * Math.PI / 10;
        double a = s.Mass * s.RotaryY;
        double b = s.Mass * (s.EIy * q * q + s.GAz) + s.RotaryY * s.GAz * q * q;
        double c = s.GAz * s.EIy * Math.Pow(q, 4);
        return Math.Sqrt((b - Math.Sqrt(b * b - 4 * a * c)) / (2 * a)) / (2 * Math.PI);
    }

    private const double Tension = 900;
    private const double StringMass = 0.4;

    private static double StringHz(int n, int mode)
    {
        double h = 10.0 / n, q = mode * Math.PI / n;
        return Math.Sqrt(6 * Tension / (StringMass * h * h) * (1 - Math.Cos(q)) / (2 + Math.Cos(q))) / (2 * Math.PI);
    }

    private static double[] TautString(int n)
    {
        var model = new DenseModel(n + 1);
        for (int i = 0; i < n; i++)
            model.Add(new BarElement(i, new(10.0 * i / n, 0, 0), i + 1, new(10.0 * (i + 1) / n, 0, 0), 1e6, StringMass));
        double[] stretched = [.. Enumerable.Range(0, 6 * (n + 1)).Select(i => i % 6 == 0 ? Tension / 1e6 * 10 * (i / 6) / n : 0)];
        return model.FixEverywhere(Freedoms.All & ~Freedoms.Z).Fix(0).Fix(n).StressedFrequencies(stretched);
    }

    private static double TautBeamHz => Math.PI / 2 * Math.Sqrt(1 + 20 / (Math.PI * Math.PI));

    private static double TautBeam()
    {
        DenseModel model = DenseModel.Chain(10, 1, Samples.Slender()).FixEverywhere(Freedoms.Y | Freedoms.RotationX | Freedoms.RotationZ)
            .Fix(0, Freedoms.Displacements).Fix(10, Freedoms.Z).Load(10, 0, 20);
        return model.StressedFrequencies(model.Solve())[0];
    }
}
