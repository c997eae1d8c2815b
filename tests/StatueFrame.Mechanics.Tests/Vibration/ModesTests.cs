using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class ModesTests
{
    private const string Blevins = "Blevins, Formulas for Natural Frequency and Mode Shape, 1979, Table 8-1";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Uniform cantilever, first λ", Blevins, 1.8751, "-", 3e-5, () => Lambda(0)),
        new("Uniform cantilever, second λ", Blevins, 4.6941, "-", 3e-5, () => Lambda(2)),
        new("Uniform cantilever, third λ", Blevins, 7.8548, "-", 3e-5, () => Lambda(4)),
        new("Free beam, first elastic λ, solution of cos λ cosh λ = 1", "closed form", 4.7300407, "-", 1e-6, FreeLambda,
            ValueKind.IndependentComputation),
    ];

    private static double Lambda(int mode)
    {
        const double EI = 1e5, m = 20, L = 5;
        ModeSet modes = Modes.Solve(TestFrames.Cantilever(24, L, new(1, 1, 3), EI, 1e10, m), 6);
        return Math.Pow(modes.CircularFrequency(mode) * modes.CircularFrequency(mode) * m * L * L * L * L / EI, 0.25);
    }

    private static double FreeLambda()
    {
        const double EI = 1e5, m = 20, L = 5;
        Frame frame = TestFrames.Cantilever(24, L, Vector3D.UnitY, EI, 1e10, m, supported: false);
        ModeSet modes = Modes.Solve(frame, 8, new ModeOptions { Shift = 5000 });
        return Math.Pow(modes.CircularFrequency(6) * modes.CircularFrequency(6) * m * L * L * L * L / EI, 0.25);
    }

    private static double[] DenseFrequencies(Frame frame, int count) =>
        [.. TestFrames.DenseEigenvalues(TestFrames.Dense(frame.Stiffness), TestFrames.Dense(frame.Mass)).Take(count)
            .Select(theta => Math.Sqrt(1 / theta) / (2 * Math.PI))];

    private static void AssertIsComplete(ModeSet modes, double[] expected)
    {
        Assert.True(modes.MissedNone);
        Assert.Equal(expected.Length, modes.Count);
        Assert.InRange(modes.Error, 0, 1e-8);
        for (int i = 0; i < modes.Count; i++)
            Assert.Equal(expected[i], modes.Frequency(i), 1e-8 * expected[i]);
        for (int i = 0; i < modes.Count; i++)
        {
            double[] inertia = modes.Frame.InertiaForces(modes.Shape(i));
            for (int j = 0; j <= i; j++)
                Assert.Equal(i == j ? 1 : 0, modes.ModalForce(j, inertia), 1e-10);
        }
    }

    [Fact]
    public void Lowest_modes_of_200_random_frames_equal_those_of_a_dense_solver()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            int count = Math.Min(8, frame.EquationCount);
            AssertIsComplete(Modes.Solve(frame, count), DenseFrequencies(frame, count));
        }
    }

    [Fact]
    public void All_modes_of_a_frame_are_orthonormal_in_its_mass()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            ModeSet modes = Modes.Solve(frame, frame.EquationCount);
            for (int i = 0; i < modes.Count; i++)
            {
                double[] inertia = frame.InertiaForces(modes.Shape(i));
                for (int j = 0; j <= i; j++)
                    Assert.Equal(i == j ? 1 : 0, modes.ModalForce(j, inertia), 1e-8);
            }
        }
    }

    [Fact]
    public void Square_frame_has_its_sway_modes_twice()
    {
        var builder = new FrameBuilder();
        Vector3D[] corners = [new(1, 1, 0), new(-1, 1, 0), new(-1, -1, 0), new(1, -1, 0)];
        foreach (Vector3D corner in corners)
        {
            int foot = builder.NodeCount;
            TestFrames.AddRow(builder, corner, corner + new Vector3D(0, 0, 3), 3);
            builder.Restrain(foot, Freedoms.All);
        }
        for (int i = 0; i < 4; i++)
        {
            int a = 4 * i + 3, b = 4 * ((i + 1) % 4) + 3;
            builder.Add(new UniformBeam(a, b, corners[i], corners[(i + 1) % 4]));
        }
        Frame frame = builder.Build();
        ModeSet modes = Modes.Solve(frame, 12);
        AssertIsComplete(modes, DenseFrequencies(frame, 12));
        Assert.Equal(modes.Frequency(0), modes.Frequency(1), 1e-9 * modes.Frequency(0));
        double sway = modes.EffectiveMass(0, 0) + modes.EffectiveMass(1, 0);
        Assert.Equal(sway, modes.EffectiveMass(0, 1) + modes.EffectiveMass(1, 1), 1e-8 * sway);
    }

    [Theory, InlineData(10), InlineData(7), InlineData(13)]
    public void Frequency_that_occurs_ten_times_is_found_as_often(int count)
    {
        var builder = new FrameBuilder();
        for (int i = 0; i < 5; i++)
        {
            int foot = builder.NodeCount;
            TestFrames.AddRow(builder, new(i, 0, 0), new Vector3D(i, 0, 0) + 2 * new Vector3D(Math.Cos(i), Math.Sin(i), 1).Normalized(), 4);
            builder.Restrain(foot, Freedoms.All);
        }
        Frame frame = builder.Build();
        ModeSet modes = Modes.Solve(frame, count);
        AssertIsComplete(modes, DenseFrequencies(frame, count));
        Assert.Equal(count <= 10 ? 10 : 20, modes.CountedByPivots);
    }

    [Fact]
    public void Effective_masses_of_all_modes_add_up_to_the_moving_mass()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            ModeSet modes = Modes.Solve(frame, frame.EquationCount, new ModeOptions { Point = new(1, 2, -0.5) });
            Assert.Equal(frame.EquationCount, modes.Count);
            for (int direction = 0; direction < 6; direction++)
            {
                double sum = Enumerable.Range(0, modes.Count).Sum(mode => modes.EffectiveMass(mode, direction));
                Assert.Equal(modes.MovingMass(direction), sum, 1e-10 * modes.MovingMass(direction));
            }
        }
    }

    [Fact]
    public void Only_freedoms_with_mass_have_modes()
    {
        var builder = new FrameBuilder();
        int tip = TestFrames.AddRow(builder, Vector3D.Zero, new(0, 0, 3), 4, mass: 0);
        var mass = new double[36];
        (mass[0], mass[7], mass[14]) = (50, 50, 50);
        builder.Restrain(0, Freedoms.All).AddMass(tip, mass);
        Frame frame = builder.Build();
        ModeSet modes = Modes.Solve(frame, 20);
        Assert.InRange(modes.Count, 3, 7);
        Assert.Equal(Math.Sqrt(3 * 1e5 / 27 / 50) / (2 * Math.PI), modes.Frequency(0), 1e-8);
        Assert.Equal(Math.Sqrt(3 * 1e5 / 27 / 50) / (2 * Math.PI), modes.Frequency(1), 1e-8);
        Assert.Equal(50, modes.EffectiveMass(0, 0) + modes.EffectiveMass(1, 0), 1e-8);
    }

    [Fact]
    public void Frame_without_mass_is_refused()
    {
        var builder = new FrameBuilder();
        builder.AddNode(Vector3D.Zero);
        builder.AddStiffness(0, TestFrames.PositiveMatrix(new Random(1), 1));
        Assert.Contains("no modes", Assert.Throws<FrameException>(() => Modes.Solve(builder.Build(), 3)).Message);
    }

    [Fact]
    public void Unsupported_frame_has_six_rigid_modes()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            Frame frame = TestFrames.Random(seed, supported: false).Build();
            Assert.Throws<FrameException>(() => Modes.Solve(frame, 8));
            ModeSet modes = Modes.Solve(frame, 8, new ModeOptions { Shift = 100 });
            Assert.True(modes.MissedNone);
            Assert.InRange(modes.Frequency(5), 0, 1e-3 * modes.Frequency(6));
            for (int direction = 0; direction < 6; direction++)
            {
                double sum = Enumerable.Range(0, 6).Sum(mode => modes.EffectiveMass(mode, direction));
                Assert.Equal(modes.MovingMass(direction), sum, 1e-6 * modes.MovingMass(direction));
            }
        }
    }

    /// <summary>
    /// Three masses on a chain whose middle link is far stiffer than the others: but for what it gives, two masses on a chain of
    /// two equal links. The bound lies above the error when rounding takes the digits.
    /// </summary>
    [Theory]
    [InlineData(1e4)]
    [InlineData(1e8)]
    [InlineData(1e11)]
    public void The_bound_lies_above_the_error_of_modes(double ratio)
    {
        const double k = 1000, m = 10;
        var mass = new double[36];
        mass[0] = m;
        var builder = new FrameBuilder();
        int last = builder.AddNode(Vector3D.Zero);
        builder.Restrain(last, Freedoms.All);
        foreach ((double stiffness, int at) in new[] { (k, 1), (k * ratio, 2), (k, 3) })
        {
            int next = builder.AddNode(at * Vector3D.UnitX);
            builder.Restrain(next, Freedoms.All & ~Freedoms.X);
            builder.Add(new BarElement(last, (at - 1) * Vector3D.UnitX, next, at * Vector3D.UnitX, stiffness)).AddMass(next, mass);
            last = next;
        }
        ModeSet modes = Modes.Solve(builder.Build(), 1);
        double exact = k / m * (1 - Math.Sqrt(0.5));
        Assert.InRange(Math.Abs(modes.CircularFrequency(0) * modes.CircularFrequency(0) / exact - 1), 0, modes.Error + 2 / ratio);
    }

    [Fact]
    public void Shift_does_not_change_the_modes()
    {
        Frame frame = TestFrames.Random(8).Build();
        ModeSet plain = Modes.Solve(frame, 6);
        ModeSet shifted = Modes.Solve(frame, 6, new ModeOptions { Shift = Math.Pow(plain.CircularFrequency(0), 2) });
        for (int i = 0; i < 6; i++)
            Assert.Equal(plain.Frequency(i), shifted.Frequency(i), 1e-9 * plain.Frequency(i));
    }

    [Fact]
    public void Largest_component_is_positive_and_bits_repeat()
    {
        Frame frame = TestFrames.Random(21).Build();
        ModeSet first = Modes.Solve(frame, 8), second = Modes.Solve(TestFrames.Random(21).Build(), 8);
        for (int mode = 0; mode < 8; mode++)
        {
            double[] shape = first.Shape(mode).ToArray();
            Assert.Equal(shape, second.Shape(mode).ToArray());
            Assert.Equal(shape.Max(Math.Abs), shape.Max(), 1e-5 * shape.Max(Math.Abs));
        }
    }

    [Fact]
    public void Threads_share_a_frame_and_get_equal_bits()
    {
        Frame frame = TestFrames.Cantilever(12, 4, new(1, 0.2, 2));
        double[] expected = Modes.Solve(frame, 6).Shape(5).ToArray();
        var results = new double[8][];
        Parallel.For(0, 8, i => results[i] = Modes.Solve(frame, 6).Shape(5).ToArray());
        Assert.All(results, shape => Assert.Equal(expected, shape));
    }

    [Fact]
    public void Added_mass_never_raises_a_frequency_and_added_stiffness_never_lowers_one()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            Frame heavier = TestFrames.Random(seed).AddMass(0, TestFrames.PositiveMatrix(new Random(seed), 20))
                .AddMass(1, TestFrames.PositiveMatrix(new Random(seed), 20)).Build();
            Frame stiffer = TestFrames.Random(seed).AddStiffness(1, TestFrames.PositiveMatrix(new Random(seed), 1e6)).Build();
            int count = Math.Min(5, frame.EquationCount);
            ModeSet modes = Modes.Solve(frame, count), slow = Modes.Solve(heavier, count), fast = Modes.Solve(stiffer, count);
            for (int i = 0; i < count; i++)
            {
                Assert.True(slow.Frequency(i) <= modes.Frequency(i) * (1 + 1e-9));
                Assert.True(fast.Frequency(i) >= modes.Frequency(i) * (1 - 1e-9));
            }
        }
    }
}
