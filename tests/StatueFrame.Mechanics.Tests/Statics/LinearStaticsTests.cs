using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Mechanics.Tests.Statics;

public class LinearStaticsTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Tip stiffness k L³/(E I) of a cantilever in a skew direction", "Roark's Formulas for Stress and Strain, 7th ed., Table 8.1",
            3, "-", 1e-9, TipStiffness),
    ];

    private static double TipStiffness()
    {
        Frame frame = TestFrames.Cantilever(7, 3, new(1, 2, 2), EI: 1e5);
        Vector3D across = new Vector3D(2, -1, 0).Normalized();
        double[] loads = TipLoad(frame, across);
        double[] u = new LinearStatics(frame).Solve(loads);
        int tip = frame.FreedomCount - 6;
        return 27 / 1e5 / new Vector3D(u[tip], u[tip + 1], u[tip + 2]).Dot(across);
    }

    private static double[] TipLoad(Frame frame, Vector3D force)
    {
        var loads = new double[frame.FreedomCount];
        (loads[^6], loads[^5], loads[^4]) = (force.X, force.Y, force.Z);
        return loads;
    }

    [Fact]
    public void Displacements_of_200_random_frames_equal_those_of_a_dense_solver()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            double[] loads = TestFrames.RandomLoads(frame, seed);
            double[] u = new LinearStatics(frame).Solve(loads);
            Vector<double> expected = TestFrames.Dense(frame.Stiffness).Solve(TestFrames.Reduced(frame, loads));
            Vector<double> error = TestFrames.Reduced(frame, u) - expected;
            Assert.True(error.InfinityNorm() <= 1e-8 * expected.InfinityNorm(), $"seed {seed}: {error.InfinityNorm() / expected.InfinityNorm()}");
            Assert.InRange(Equilibrium.Residual(frame, u, loads), 0, 1e-12);
        }
    }

    [Fact]
    public void Loads_and_reactions_of_random_frames_are_in_equilibrium()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            double[] loads = TestFrames.RandomLoads(frame, seed + 1);
            double[] reactions = Equilibrium.Reactions(frame, new LinearStatics(frame).Solve(loads), loads);
            var point = new Vector3D(0.3, -1, 2);
            (Vector3D force, Vector3D moment) = Equilibrium.Resultant(frame, [.. loads.Zip(reactions, (f, r) => f + r)], point);
            Assert.InRange(force.Length, 0, 1e-9 * 1000 * frame.FreedomCount);
            Assert.InRange(moment.Length, 0, 1e-9 * 1000 * 10 * frame.FreedomCount);
        }
    }

    [Fact]
    public void Many_load_cases_at_once_give_the_same_as_one_by_one()
    {
        Frame frame = TestFrames.Random(17).Build();
        var statics = new LinearStatics(frame);
        double[] first = TestFrames.RandomLoads(frame, 1), second = TestFrames.RandomLoads(frame, 2);
        double[] together = statics.Solve([.. first, .. second]);
        double[] alone = [.. statics.Solve(first), .. statics.Solve(second)];
        for (int i = 0; i < alone.Length; i++)
            Assert.Equal(alone[i], together[i], 1e-12 * alone.Max(Math.Abs));
    }

    [Fact]
    public void Work_is_reciprocal() =>
        Gen.Int[0, 500].Sample(seed =>
        {
            Frame frame = TestFrames.Random(seed).Build();
            var statics = new LinearStatics(frame);
            double[] f = TestFrames.RandomLoads(frame, seed), g = TestFrames.RandomLoads(frame, seed + 1);
            double fg = Work(f, statics.Solve(g)), gf = Work(g, statics.Solve(f));
            double size = Math.Sqrt(Work(f, statics.Solve(f)) * Work(g, statics.Solve(g)));
            return Math.Abs(fg - gf) <= 1e-10 * size;

            double Work(double[] load, double[] u) =>
                TestFrames.Reduced(frame, load).DotProduct(TestFrames.Reduced(frame, u));
        }, iter: 50);

    [Fact]
    public void Load_at_a_restrained_freedom_goes_straight_into_the_ground()
    {
        Frame frame = TestFrames.Cantilever(3, 2, Vector3D.UnitX);
        var loads = new double[frame.FreedomCount];
        loads[2] = 500;
        double[] u = new LinearStatics(frame).Solve(loads);
        Assert.All(u, value => Assert.Equal(0, value));
        Assert.Equal(-500, Equilibrium.Reactions(frame, u, loads)[2]);
    }

    [Fact]
    public void Mechanism_is_named()
    {
        var builder = new FrameBuilder();
        int tip = TestFrames.AddRow(builder, Vector3D.Zero, new(0, 0, 3), 1);
        builder.Restrain(0, Freedoms.Displacements | Freedoms.RotationZ | Freedoms.RotationX);
        Frame frame = builder.Build();
        FrameProblem problem = Assert.Single(Assert.Throws<FrameException>(() => new LinearStatics(frame)).Problems);
        Assert.Contains("mechanism", problem.Message);
        Assert.Contains(frame.Nodes[problem.Node].ToString(), problem.Message);
        Assert.Contains(problem.Freedoms, (IEnumerable<Freedoms>)[Freedoms.X, Freedoms.RotationY]);
        Assert.InRange(problem.Node, 0, tip);
    }

    private sealed class NegativeSpring(int start, int end, double k) : FrameElement(start, end)
    {
        public override void AddStiffness(Span<double> matrix)
        {
            matrix[13 * 7] -= k;
            matrix[13 * 1] -= k;
            matrix[12 * 7 + 1] += k;
            matrix[12 + 7] += k;
        }
    }

    [Fact]
    public void Negative_stiffness_is_named_where_it_shows()
    {
        var builder = new FrameBuilder();
        int tip = TestFrames.AddRow(builder, Vector3D.Zero, new(0, 0, 3), 1);
        builder.Restrain(0, Freedoms.All).Add(new NegativeSpring(0, tip, 1.01 * 3e5 / 27));
        FrameProblem problem = Assert.Single(Assert.Throws<FrameException>(() => new LinearStatics(builder.Build())).Problems);
        Assert.Contains("negative", problem.Message);
        Assert.Equal((tip, Freedoms.Y), (problem.Node, problem.Freedoms));
    }

    [Fact]
    public void Loads_that_do_not_fit_or_are_not_finite_are_refused()
    {
        var statics = new LinearStatics(TestFrames.Cantilever(1, 1, Vector3D.UnitX));
        Assert.Throws<ArgumentException>(() => statics.Solve(new double[7]));
        Assert.Throws<ArgumentException>(() => statics.Solve([]));
        Assert.Throws<ArgumentException>(() => statics.Solve([.. new double[11], double.PositiveInfinity]));
    }
}
