using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Tests.Checks.Heat;

namespace StatueFrame.Tests.Analysis;

/// <summary>The shape of a thin ring with a warm side.</summary>
public class HeatedRingTests
{
    private const int Fine = 720;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("thin ring, R 1 m, strain 1 ‰ cos φ: radial movement at φ = 0, ½ε₁R", "ring equations ε = (u_t′ + u_r)/R, κ ∝ cos φ to close, by hand", 0.5, "mm", 1e-4, () => 1e3 * Circle(Math.Cos).At(0).Move.X, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, strain 1 ‰ cos φ: movement at φ = 90°, u_t = ½ε₁R, u_r = 0", "ring equations, by hand", -0.5, "mm", 1e-4, () => 1e3 * Circle(Math.Cos).At(Math.PI / 2).Move.X, ValueKind.IndependentComputation),
        new("thin ring, strain 1 ‰ cos φ: turn at φ = 90°, ε₁", "ring equations, ψ = (u_t − u_r′)/R, by hand", 1e-3, "rad", 1e-4, () => Circle(Math.Cos).At(Math.PI / 2).Turn, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, strain 1 ‰ cos 2φ: radial movement at φ = 0, −ε₂R/3", "ring that bends no more than it must, u_r″ + u_r = Rε, by hand", -1.0 / 3, "mm", 1e-4, () => 1e3 * Circle(p => Math.Cos(2 * p)).At(0).Move.X, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, strain 1 ‰ cos 4φ: radial movement at φ = 0, −ε₄R/15", "u_r″ + u_r = Rε, by hand", -1.0 / 15, "mm", 1e-3, () => 1e3 * Circle(p => Math.Cos(4 * p)).At(0).Move.X, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, sun 1 ‰ max(0, cos φ): radial movement at φ = 0 beyond the mean R/π", "series of the half cosine, harmonics 1, 2, 4 … by hand", 1e3 * WarmCircle.Under(1e-3, 1, 0).Radial, "mm", 1e-3, () => 1e3 * Sunlit().At(0).Move.X, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, sun: radial movement at φ = 180° beyond the mean", "series of the half cosine, by hand", 1e3 * WarmCircle.Under(1e-3, 1, Math.PI).Radial, "mm", 1e-3, () => -1e3 * Sunlit().At(Math.PI).Move.X, ValueKind.IndependentComputation),
        new("thin ring, R 1 m, sun: tangential movement at φ = 60°", "series of the half cosine, by hand", 1e3 * WarmCircle.Under(1e-3, 1, Math.PI / 3).Tangential, "mm", 1e-3, () => 1e3 * Tangential(Sunlit(), Math.PI / 3), ValueKind.IndependentComputation),
    ];

    /// <summary>The ring as a frame of beams under the loads of their own strains, slender enough that only bending closes it.</summary>
    [Theory]
    [InlineData(2, 1.2)]
    [InlineData(3, 3)]
    [InlineData(1, 2.5)]
    public void Any_outline_agrees_with_a_frame_of_heated_beams(double a, double b)
    {
        PlanCurve outline = PlanCurve.Ellipse(a, b, 0.3, -0.2, 0.4, 48);
        double[] strain = [.. Enumerable.Range(0, 48).Select(i => 1e-3 * (Math.Max(0, Math.Cos(0.13 * i - 1)) - 0.2 + 0.1 * Math.Sin(0.7 * i)))];
        var ring = new HeatedRing(outline, strain);

        const double EI = 1, EA = 1e8;
        var frame = new FrameBuilder();
        for (int i = 0; i < 48; i++)
            frame.AddNode(new Vector3D(outline.X[i], outline.Y[i], 0), $"{i}");
        var section = new BeamSection { EA = EA, EIy = EI, EIz = EI, GJ = 1, GAy = double.PositiveInfinity, GAz = double.PositiveInfinity, Mass = 1 };
        frame.Restrain(0, Freedoms.All);
        var loads = new double[48 * 6];
        for (int i = 0; i < 48; i++)
        {
            int j = (i + 1) % 48;
            Vector3D p = new(outline.X[i], outline.Y[i], 0), q = new(outline.X[j], outline.Y[j], 0), t = (q - p).Normalized();
            frame.Add(new BeamElement(i, p, j, q, new BeamDefinition(section)));
            (loads[6 * i], loads[6 * i + 1]) = (loads[6 * i] - EA * strain[i] * t.X, loads[6 * i + 1] - EA * strain[i] * t.Y);
            (loads[6 * j], loads[6 * j + 1]) = (loads[6 * j] + EA * strain[i] * t.X, loads[6 * j + 1] + EA * strain[i] * t.Y);
        }
        double[] u = new LinearStatics(frame.Build()).Solve(loads);

        // The frame stands on its first node: compare after taking off the rigid motion that fits best.
        var x = new List<(Vector3D Ours, Vector3D Theirs, Vector3D At)>();
        double position = 0;
        var turns = new double[48];
        for (int i = 0; i < 48; i++)
        {
            int j = (i + 1) % 48;
            Vector3D at = new(outline.X[i], outline.Y[i], 0);
            turns[i] = ring.At(position).Turn;
            x.Add((ring.At(position).Move, new Vector3D(u[6 * i], u[6 * i + 1], 0), at));
            position += (new Vector3D(outline.X[j], outline.Y[j], 0) - at).Length;
        }
        Vector3D center = x.Aggregate(Vector3D.Zero, (s, v) => s + v.At) / 48, shift = x.Aggregate(Vector3D.Zero, (s, v) => s + v.Ours - v.Theirs) / 48;
        double turn = x.Sum(v => Vector3D.UnitZ.Cross(v.At - center).Dot(v.Ours - v.Theirs)) / x.Sum(v => (v.At - center).Dot(v.At - center));
        double scale = x.Max(v => v.Ours.Length);
        Assert.All(x, v => Assert.True((v.Ours - v.Theirs - shift - turn * Vector3D.UnitZ.Cross(v.At - center)).Length < 1e-4 * scale));
        for (int i = 0; i < 48; i++)
            Assert.Equal(u[6 * i + 5] + turn, turns[i], 1e-4 * turns.Max(Math.Abs));
    }

    [Fact]
    public void An_evenly_warm_ring_only_grows() => Gen.Select(Gen.Double[0.5, 5], Gen.Double[0.5, 5], Gen.Double[-1e-3, 1e-3]).Sample((a, b, strain) =>
    {
        PlanCurve outline = PlanCurve.Ellipse(a, b, 1, 2, 0.3, 60);
        var ring = new HeatedRing(outline, [.. Enumerable.Repeat(strain, 60)]);
        Assert.Equal(strain * (outline.X[0] - 1), ring.At(0).Move.X, 1e-12);
        Assert.Equal(strain * (outline.Y[0] - 2), ring.At(0).Move.Y, 1e-12);
    });

    [Fact]
    public void The_ring_closes_and_does_not_drift() => Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.5, 3], Gen.Double[-1e-3, 1e-3].Array[40]).Sample((a, b, strain) =>
    {
        PlanCurve outline = PlanCurve.Ellipse(a, b, 0, 0, 0, 40);
        var ring = new HeatedRing(outline, strain);
        ((Vector3D before, double turnBefore), (Vector3D start, double turn)) = (ring.At(outline.Perimeter * (1 - 1e-12)), ring.At(0));
        Assert.True((before - start).Length < 1e-9);
        Assert.Equal(turnBefore, turn, 1e-9);
        Vector3D mean = Vector3D.Zero;
        for (int i = 0; i < 4000; i++)
            mean += ring.At((i + 0.5) / 4000 * outline.Perimeter).Move / 4000;
        Assert.True(mean.Length < 1e-7);
    });

    private static HeatedRing Circle(Func<double, double> strain)
    {
        PlanCurve circle = PlanCurve.Ellipse(2, 2, 0, 0, 0, Fine);
        return new HeatedRing(circle, [.. Enumerable.Range(0, Fine).Select(i => 1e-3 * strain(2 * Math.PI * (i + 0.5) / Fine))]);
    }

    private static HeatedRing Sunlit() => Circle(p => Math.Max(0, Math.Cos(p)) - 1 / Math.PI);

    private static double Tangential(HeatedRing ring, double phi)
    {
        Vector3D move = ring.At(phi).Move;
        return move.Y * Math.Cos(phi) - move.X * Math.Sin(phi);
    }
}
