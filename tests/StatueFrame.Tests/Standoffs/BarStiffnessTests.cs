using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Tests.Standoffs;

public class BarStiffnessTests
{
    private const double E = 200e9, G = 77e9, NoShear = 1e22;
    private const string Roark = "Roark's Formulas for Stress and Strain, 7th ed., Table 8.1";
    private const string FixityFactors = "Monforton and Wu, Matrix analysis of semi-rigidly connected frames, ASCE J. Struct. Div. 89, 1963, fixity factors";
    private static readonly FlatRectangle Flat = new(0.060, 0.008);
    private static readonly EndSprings Half = new(3 * 512, double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>A flat 60×8 mm, 1 m long, E = 200 GPa: EI = 512 N·m² about the weak axis.</summary>
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("flat bar, both ends guided: 12EI/L³", Roark, 6144, "N/m", 1e-9, () => At(Bar(EndSprings.Rigid, EndSprings.Rigid), 1, 1)),
        new("flat bar, skin end pinned: 3EI/L³", Roark, 1536, "N/m", 1e-9, () => At(Bar(EndSprings.Rigid, EndSprings.Pinned), 1, 1)),
        new("flat bar, tower end pinned: 3EI/L³", Roark, 1536, "N/m", 1e-9, () => At(Bar(EndSprings.Pinned, EndSprings.Rigid), 1, 1)),
        new("flat bar alone, tip deflection under 1 kN: PL³/3EI", Roark, 1000.0 / 1536, "m", 1e-9, () => Tip(Bar(EndSprings.Rigid, EndSprings.Rigid))[1]),
        new("flat bar alone, tip rotation under 1 kN: PL²/2EI", Roark, 1000.0 / 1024, "rad", 1e-9, () => Tip(Bar(EndSprings.Rigid, EndSprings.Rigid))[5]),
        new("flat bar 0.3 m, strong axis, both ends guided: 12EI/L³/(1+Φ)", "closed form of a shear-flexible beam, by hand", 11381062.36, "N/m", 1e-8,
            () => At(new BarStiffness(Flat, 0.3, E, G, EndSprings.Rigid, EndSprings.Rigid), 2, 2), ValueKind.IndependentComputation),
        new("semi-rigid bar, far end's stiffness: 12/(4 − r), fixity factor r = 0.5", FixityFactors, 512 * 12 / 3.5, "N·m/rad", 1e-9,
            () => At(Bar(Half, EndSprings.Rigid), 5, 5), ValueKind.FromMemory),
        new("semi-rigid bar, near end's stiffness: 12r/(4 − r), fixity factor r = 0.5", FixityFactors, 512 * 6 / 3.5, "N·m/rad", 1e-9,
            () => At(Bar(EndSprings.Rigid, Half), 5, 5), ValueKind.FromMemory),
    ];

    [Fact]
    public void Agrees_with_a_chain_of_elements_for_any_springs() =>
        Gen.Select(Bars.Section, Gen.Double[0.1, 3], Bars.Springs, Bars.Springs).Sample((section, L, tower, skin) =>
            AssertClose(BarChain.Stiffness(section, L, E, G, tower, skin, Vector3D.Zero), section, L, tower, skin, Vector3D.Zero));

    [Fact]
    public void Agrees_with_a_chain_of_elements_whose_saddle_slides() =>
        Gen.Select(Bars.Section, Gen.Double[0.1, 3], Bars.FirmSprings, Bars.Springs, Bars.Direction)
            .Sample((section, L, tower, skin, s) =>
                AssertClose(BarChain.Stiffness(section, L, E, G, tower, skin, s), section, L, tower, skin, s));

    [Fact]
    public void Bar_pinned_at_both_ends_is_purely_axial()
    {
        BarStiffness bar = new(Flat, 1, E, G, EndSprings.Pinned, EndSprings.Pinned);
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 6; j++)
                Assert.Equal((i, j) switch { (0, 0) => E * Flat.A, (3, 3) => G * Flat.J, _ => 0 }, At(bar, i, j), 1e-6);
        }
    }

    [Fact]
    public void Everything_stays_finite_at_the_extremes()
    {
        double[] springs = [0, double.Epsilon, 1e-300, 1, 1e300, double.PositiveInfinity];
        Vector3D[] slides = [Vector3D.Zero, Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ, new(1, 1e-12, 0), new(1e-5, 1, 0)];
        foreach (double k1 in springs)
        {
            foreach (double k2 in springs)
            {
                foreach (Vector3D slide in slides)
                    Assert.True(Square(new BarStiffness(Flat, 1, E, G, new(k1, k2, k1), new(k2, k2, k2), slide)).Enumerate().All(double.IsFinite));
            }
        }
    }

    [Fact]
    public void Slide_direction_carries_no_force() =>
        Gen.Select(Bars.Section, Bars.Springs, Bars.Springs, Bars.Direction, Bars.Vector(0.01), Bars.Vector(0.01)).Sample((section, tower, skin, s, u, r) =>
        {
            double[] f = Forces(new BarStiffness(section, 1, E, G, tower, skin, s), [u.X, u.Y, u.Z, r.X, r.Y, r.Z]);
            Assert.Equal(0, s.Dot(new Vector3D(f[6], f[7], f[8])), 1e-12 * E * section.A);
        });

    [Fact]
    public void Slip_and_deflection_add_up_to_the_motion_and_the_deflection_alone_makes_the_force() =>
        Gen.Select(Bars.Section, Bars.Springs, Bars.Springs, Bars.Direction, Bars.Vector(0.01), Bars.Vector(0.01)).Sample((section, tower, skin, s, u, r) =>
        {
            var sliding = new BarStiffness(section, 1, E, G, tower, skin, s);
            var held = new BarStiffness(section, 1, E, G, tower, skin);
            double[] motion = [u.X, u.Y, u.Z, r.X, r.Y, r.Z], deflection = [.. motion];
            sliding.RemoveSlip(deflection);
            double slip = sliding.Slip(motion), rounding = 1e-12 * (1 + Math.Abs(slip));
            Assert.Equal(u.X, deflection[0] + slip * s.X, rounding);
            Assert.Equal(u.Y, deflection[1] + slip * s.Y, rounding);
            double[] expected = Forces(sliding, motion), actual = Forces(held, deflection);
            for (int i = 0; i < 12; i++)
                Assert.Equal(expected[i], actual[i], rounding * E * section.A);
        });

    [Fact]
    public void Bar_that_resists_nothing_along_the_slide_keeps_its_axial_stiffness()
    {
        var bar = new BarStiffness(Flat, 1, E, G, EndSprings.Pinned, EndSprings.Pinned, new Vector3D(1e-14, 1, 0));
        Assert.Equal(E * Flat.A, At(bar, 0, 0), 1e-6);
        Assert.Equal(0.02, bar.Slip([0.01, 0.02, 0.03, 0, 0, 0]), 1e-15);
    }

    [Fact]
    public void Pinned_end_has_no_moment() => Gen.Select(Bars.Section, Bars.Springs, Bars.Vector(0.01), Bars.Vector(0.01)).Sample((section, other, u, r) =>
    {
        double[] d = [u.X, u.Y, u.Z, r.X, r.Y, r.Z];
        double[] tower = Forces(new BarStiffness(section, 1, E, G, EndSprings.Pinned, other), d);
        double[] skin = Forces(new BarStiffness(section, 1, E, G, other, EndSprings.Pinned), d);
        double least = 1e-13 * E * section.StrongI;
        Assert.Equal((0, 0), (tower[4], tower[5]), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < least);
        Assert.Equal((0, 0), (skin[10], skin[11]));
    });

    [Fact]
    public void End_forces_balance() => Gen.Select(Bars.Section, Bars.Springs, Bars.Springs, Gen.Double[0.2, 2], Bars.Vector(0.01), Bars.Vector(0.01)).Sample((section, tower, skin, L, u, r) =>
    {
        double[] f = Forces(new BarStiffness(section, L, E, G, tower, skin), [u.X, u.Y, u.Z, r.X, r.Y, r.Z]);
        Vector3D force = new(f[6], f[7], f[8]);
        Vector3D moment = new Vector3D(f[3], f[4], f[5]) + new Vector3D(f[9], f[10], f[11]) + new Vector3D(L, 0, 0).Cross(force);
        Assert.Equal(Vector3D.Zero, new Vector3D(f[0], f[1], f[2]) + force);
        Assert.True(moment.Length <= 1e-12 * force.Length * L, $"{moment}");
    });

    [Fact]
    public void Thicker_bar_is_never_softer() =>
        Gen.Select(Bars.Section, Gen.Double[1.01, 2], Bars.Springs, Bars.Springs, Gen.OneOf(Gen.Const(Vector3D.Zero), Bars.Direction)).Sample((thin, by, tower, skin, s) =>
        {
            var thick = new FlatRectangle(thin.b, by * thin.t);
            Matrix<double> gain = Square(new BarStiffness(thick, 1, E, G, tower, skin, s)) - Square(new BarStiffness(thin, 1, E, G, tower, skin, s));
            Assert.True(Bars.LeastEigenvalue(gain) >= -1e-12 * E * thick.A, gain.ToString());
        });

    [Fact]
    public void Stiffer_spring_never_makes_the_bar_softer() =>
        Gen.Select(Bars.Section, Bars.Springs, Gen.Double[1, 100], Bars.Springs).Sample((section, tower, by, skin) =>
        {
            var stiffer = new EndSprings(by * tower.Weak, by * tower.Strong, by * tower.Twist);
            Matrix<double> gain = Square(new BarStiffness(section, 1, E, G, stiffer, skin)) - Square(new BarStiffness(section, 1, E, G, tower, skin));
            Assert.True(Bars.LeastEigenvalue(gain) >= -1e-12 * E * section.A, gain.ToString());
        });

    [Fact]
    public void Cantilever_agrees_with_the_bar_whose_skin_end_is_pinned() =>
        Gen.Select(Bars.Section, Bars.FirmSprings, Gen.Double[0.2, 2], Bars.Vector(1000)).Sample((section, tower, L, force) =>
        {
            double[] f = new double[12], d = new double[6];
            Assert.True(new BarStiffness(section, L, E, G, tower, EndSprings.Rigid).Cantilever(force, f, d));
            double[] expected = Forces(new BarStiffness(section, L, E, G, tower, EndSprings.Pinned), d);
            double[] atTip = Forces(new BarStiffness(section, L, E, G, tower, EndSprings.Rigid), d);
            for (int i = 0; i < 12; i++)
            {
                Assert.Equal(expected[i], f[i], 1e-6 * force.Length);
                Assert.Equal(atTip[i], f[i], 1e-6 * force.Length);
            }
        });

    [Fact]
    public void Bar_on_hinges_at_both_ends_stands_only_under_axial_force()
    {
        var bar = new BarStiffness(Flat, 1, E, G, EndSprings.Pinned, EndSprings.Pinned);
        double[] f = new double[12], d = new double[6];
        Assert.False(bar.Cantilever(new Vector3D(1000, 1, 0), f, d));
        Assert.False(bar.Cantilever(new Vector3D(1000, 0, 1), f, d));
        Assert.All(f, value => Assert.Equal(0, value));
        Assert.True(bar.Cantilever(new Vector3D(-1000, 1e-8, 0), f, d));
        Assert.Equal(-1000, f[6]);
        Assert.Equal(-1000 / (E * Flat.A), d[0], 1e-18);
        var hinge = new EndSprings(0, double.PositiveInfinity, double.PositiveInfinity);
        Assert.True(new BarStiffness(Flat, 1, E, G, hinge, EndSprings.Rigid).Cantilever(new Vector3D(0, 0, 1), f, d));
    }

    [Fact]
    public void Bar_hinged_to_the_tower_stands_on_its_saddle_with_the_moment_of_a_cantilever()
    {
        double[] onTower = new double[12], onSaddle = new double[12], d = new double[6], moved = new double[6];
        Assert.True(new BarStiffness(Flat, 0.5, E, G, EndSprings.Rigid, EndSprings.Pinned).Cantilever(new Vector3D(100, 200, 300), onTower, d));
        Assert.True(new BarStiffness(Flat, 0.5, E, G, EndSprings.Pinned, EndSprings.Rigid).Cantilever(new Vector3D(100, 200, 300), onSaddle, moved));
        Assert.Equal(BarEnds.Of(onTower).NormalStress(0.06, 0.008), BarEnds.Of(onSaddle).NormalStress(0.06, 0.008), 1.0);
        Assert.Equal(0, onSaddle[4], 1e-9);
        Assert.Equal(0, onSaddle[5], 1e-9);
        Assert.Equal(-200 * 0.5, onSaddle[11], 1e-9);
        Assert.Equal(d[1], moved[1], 1e-12);
    }

    [Fact]
    public void Stress_adds_axial_force_and_both_moments_at_the_worse_end()
    {
        double[] f = [-4800, 0, 0, 0, -96, -12.8, 4800, 320, -240, 0.5, 48, 6.4];
        BarEnds ends = BarEnds.Of(f);
        Assert.Equal(10e6 + 20e6 + 20e6, ends.Tower.NormalStress(0.06, 0.008), 1);
        Assert.Equal(10e6 + 10e6 + 10e6, ends.Skin.NormalStress(0.06, 0.008), 1);
        Assert.Equal(ends.Tower.NormalStress(0.06, 0.008), ends.NormalStress(0.06, 0.008));
        Assert.Equal(ends.NormalStress(0.06, 0.008), Enumerable.Range(0, BarEnds.Corners).Max(corner => Math.Abs(ends.AtCorner(Flat, corner))), 1);
    }

    private static BarStiffness Bar(EndSprings tower, EndSprings skin) => new(Flat, 1, E, NoShear, tower, skin);

    private static double At(BarStiffness bar, int i, int j) => Bars.Matrix(bar)[6 * i + j];

    private static double[] Tip(BarStiffness bar)
    {
        double[] f = new double[12], d = new double[6];
        bar.Cantilever(new Vector3D(0, 1000, 0), f, d);
        return d;
    }

    private static double[] Forces(BarStiffness bar, double[] d)
    {
        var f = new double[12];
        bar.Forces(d, f);
        return f;
    }

    private static Matrix<double> Square(BarStiffness bar) => Bars.Square(Bars.Matrix(bar));

    private static void AssertClose(Matrix<double> expected, FlatRectangle section, double L, EndSprings tower, EndSprings skin, Vector3D slide)
    {
        Matrix<double> actual = Square(new BarStiffness(section, L, E, G, tower, skin, slide));
        // Without slide the stiffness of each freedom, held fully, sets the scale of its entries; an oblique slide mixes
        // them, so that the rounding of the axial stiffness spreads to all.
        double[] full = Bars.Matrix(new BarStiffness(section, L, E, G, EndSprings.Rigid, EndSprings.Rigid));
        if (slide != Vector3D.Zero)
            (full[7], full[14]) = (full[0], full[0]);
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 6; j++)
                Assert.Equal(expected[i, j], actual[i, j], 1e-9 * Math.Sqrt(full[7 * i] * full[7 * j]));
        }
    }
}
