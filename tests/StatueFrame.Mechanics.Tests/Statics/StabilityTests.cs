using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Tests.Statics;

public class StabilityTests
{
    private const double EI = 1e5, L = 4;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Buckling load of a pinned column, P L²/(E I)", "closed form π²", Math.PI * Math.PI, "-", 1e-6,
            () => BucklingFactors(Pinned(24), 1)[0], ValueKind.IndependentComputation),
        new("Second buckling load of a pinned column, P L²/(E I)", "closed form 4π²", 4 * Math.PI * Math.PI, "-", 2e-5,
            () => BucklingFactors(Pinned(24), 3)[2], ValueKind.IndependentComputation),
        new("Buckling load of a cantilever, P L²/(E I)", "closed form π²/4", Math.PI * Math.PI / 4, "-", 1e-6,
            () => BucklingFactors(Column(16), 1)[0], ValueKind.IndependentComputation),
        new("Amplification of a cantilever's side sway at P = 0.5 of buckling", "closed form 3(tan u − u)/u³, u = L√(P/EI)",
            SideSway(0.5), "-", 1e-6, () => SecondOrderSway(0.5), ValueKind.IndependentComputation),
        new("Amplification of a cantilever's side sway at P = 0.9 of buckling", "closed form 3(tan u − u)/u³, u = L√(P/EI)",
            SideSway(0.9), "-", 1e-5, () => SecondOrderSway(0.9), ValueKind.IndependentComputation),
        new("Middle deflection / eccentricity of an eccentrically loaded pinned column at P = 0.6 of buckling",
            "secant formula, sec((π/2)√0.6) − 1", 1 / Math.Cos(Math.PI / 2 * Math.Sqrt(0.6)) - 1, "-", 1e-5,
            () => SecantDeflection(0.6), ValueKind.IndependentComputation),
    ];

    private static double SideSway(double share)
    {
        double u = Math.PI / 2 * Math.Sqrt(share);
        return 3 * (Math.Tan(u) - u) / (u * u * u);
    }

    private static Frame Column(int elements) => TestFrames.Cantilever(elements, L, Vector3D.UnitZ, EI, EA: 1e12);

    private static Frame Pinned(int elements)
    {
        var builder = new FrameBuilder();
        int top = TestFrames.AddRow(builder, Vector3D.Zero, L * Vector3D.UnitZ, elements, EI, EA: 1e12);
        return builder.Restrain(0, Freedoms.Displacements | Freedoms.RotationZ).Restrain(top, Freedoms.X | Freedoms.Y).Build();
    }

    private static double[] TopLoads(Frame frame, double P, double H = 0)
    {
        var loads = new double[frame.FreedomCount];
        (loads[^6], loads[^4]) = (H, -P);
        return loads;
    }

    private static double[] BucklingFactors(Frame frame, int count)
    {
        BucklingResult result = LinearBuckling.Solve(frame, new LinearStatics(frame).Solve(TopLoads(frame, EI / (L * L))), count);
        Assert.True(result.MissedNone);
        return result.LoadFactors;
    }

    private static double SecondOrderSway(double share)
    {
        Frame frame = Column(24);
        return SecondOrder.Solve(new LinearStatics(frame), TopLoads(frame, share * Math.PI * Math.PI / 4 * EI / (L * L), 1)).Amplification;
    }

    private static double SecantDeflection(double share)
    {
        Frame frame = Pinned(24);
        double P = share * Math.PI * Math.PI * EI / (L * L), e = 0.01;
        double[] loads = TopLoads(frame, P);
        loads[^2] = P * e;
        loads[4] = -P * e;
        double[] u = SecondOrder.Solve(new LinearStatics(frame), loads).Displacements;
        return Math.Abs(u[6 * 12]) / e;
    }

    [Fact]
    public void Round_column_buckles_in_pairs()
    {
        double[] factors = BucklingFactors(Column(8), 6);
        for (int i = 0; i < 6; i += 2)
            Assert.Equal(factors[i], factors[i + 1], 1e-9 * factors[i]);
        Assert.True(factors[2] > 2 * factors[0]);
    }

    [Fact]
    public void Buckling_factors_of_random_frames_equal_those_of_a_dense_solver()
    {
        for (int seed = 0; seed < 60; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            double[] u = new LinearStatics(frame).Solve(TestFrames.RandomLoads(frame, seed, 1e5));
            BucklingResult result = LinearBuckling.Solve(frame, u, 5);
            double[] theta = TestFrames.DenseEigenvalues(TestFrames.Dense(frame.Stiffness), -TestFrames.Dense(frame.GeometricStiffness(u)));
            double[] expected = [.. theta.Where(t => t > 1e-4).Take(5).Select(t => 1 / t)];
            Assert.True(result.MissedNone, $"seed {seed}");
            Assert.Equal(expected.Length, result.LoadFactors.Length);
            Assert.InRange(result.Error, 0, 1e-8);
            for (int i = 0; i < expected.Length; i++)
                Assert.Equal(expected[i], result.LoadFactors[i], 1e-8 * expected[i]);
        }
    }

    [Fact]
    public void Column_in_tension_never_buckles()
    {
        Frame frame = Column(6);
        BucklingResult result = LinearBuckling.Solve(frame, new LinearStatics(frame).Solve(TopLoads(frame, -1e5)), 3);
        Assert.Empty(result.LoadFactors);
        Assert.True(result.MissedNone);
    }

    [Fact]
    public void Shape_of_a_cantilever_is_a_quarter_wave()
    {
        Frame frame = Column(12);
        BucklingResult result = LinearBuckling.Solve(frame, new LinearStatics(frame).Solve(TopLoads(frame, 1)), 1, limit: 1e6);
        double[] shape = result.Shapes[0];
        double top = Math.Sqrt(shape[^6] * shape[^6] + shape[^5] * shape[^5]);
        double middle = Math.Sqrt(shape[36] * shape[36] + shape[37] * shape[37]);
        Assert.Equal(1 - Math.Cos(Math.PI / 4), middle / top, 1e-5);
        Assert.Equal(1, shape.Max(Math.Abs), 1e-12);
    }

    [Fact]
    public void Load_beyond_buckling_is_reported_with_the_freedom_that_gives_way()
    {
        var builder = new FrameBuilder();
        int top = TestFrames.AddRow(builder, Vector3D.Zero, L * Vector3D.UnitZ, 8, EI, EA: 1e12);
        Frame frame = builder.Restrain(0, Freedoms.All).Restrain(top, Freedoms.Y | Freedoms.RotationX).Build();
        double[] loads = TopLoads(frame, 1.05 * Math.PI * Math.PI / 4 * EI / (L * L), 1);
        UnstableFrameException exception = Assert.Throws<UnstableFrameException>(() => SecondOrder.Solve(new LinearStatics(frame), loads));
        FrameProblem problem = Assert.Single(exception.Problems);
        Assert.Equal((top, Freedoms.X), (problem.Node, problem.Freedoms));
        Assert.Contains("unstable", problem.Message);
    }

    [Fact]
    public void Tension_stiffens_and_compression_softens()
    {
        Frame frame = Column(6);
        var statics = new LinearStatics(frame);
        double P = 0.3 * Math.PI * Math.PI / 4 * EI / (L * L);
        Assert.True(SecondOrder.Solve(statics, TopLoads(frame, P, 1)).Amplification > 1.3);
        Assert.True(SecondOrder.Solve(statics, TopLoads(frame, -P, 1)).Amplification < 0.85);
        SecondOrderResult sideways = SecondOrder.Solve(statics, TopLoads(frame, 0, 1));
        Assert.Equal(1, sideways.Amplification, 1e-9);
        Assert.Equal(1, SecondOrder.Solve(statics, TopLoads(frame, 0)).Amplification);
    }
}
