using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class ModalTimeHistoryTests
{
    [Fact]
    public void Force_that_rises_slowly_acts_statically()
    {
        Frame frame = TestFrames.Random(4).Build();
        ModeSet modes = Modes.Solve(frame, frame.EquationCount);
        double[] loads = TestFrames.RandomLoads(frame, 1);
        double h = 1 / modes.Frequency(0);
        double[] ramp = [.. Enumerable.Range(0, 1001).Select(i => Math.Min(1, i / 500.0))];
        double[] u = ModalTimeHistory.Run(modes, 0.1, [new(loads, ramp)], h, 1000).At(1000);
        double[] expected = new LinearStatics(frame).Solve(loads);
        for (int i = 0; i < u.Length; i++)
            Assert.Equal(expected[i], u[i], 1e-6 * expected.Max(Math.Abs));
    }

    [Fact]
    public void Load_shaped_like_the_inertia_of_a_mode_moves_that_mode_alone()
    {
        ModeSet modes = Modes.Solve(TestFrames.Random(4).Build(), 5);
        double[] pattern = modes.Frame.InertiaForces(modes.Shape(2));
        double omega = modes.CircularFrequency(2), h = 0.05 / omega;
        ModalTimeHistory history = ModalTimeHistory.Run(modes, 0, [new(pattern, [.. Enumerable.Repeat(1.0, 201)])], h, 200);
        Assert.Equal((1 - Math.Cos(10)) / (omega * omega), history.Coordinate(2)[200], 1e-10 / (omega * omega));
        Assert.Equal(Math.Sin(10) / omega, history.Coordinate(2, Motion.Velocity)[200], 1e-10 / omega);
        Assert.Equal(Math.Cos(10), history.Coordinate(2, Motion.Acceleration)[200], 1e-10);
        foreach (int other in (int[])[0, 1, 3, 4])
            Assert.Equal(0, history.Coordinate(other)[200], 1e-7 / (omega * omega));
    }

    [Fact]
    public void Equation_of_motion_holds_at_every_sample()
    {
        Frame frame = TestFrames.Random(9).Build();
        ModeSet modes = Modes.Solve(frame, frame.EquationCount);
        double[] loads = TestFrames.RandomLoads(frame, 3), samples = [0, 1, -0.5, 0.25, 0, 0, 2];
        ModalTimeHistory history = ModalTimeHistory.Run(modes, 0, [new(loads, samples)], 0.1 / modes.Frequency(0), 20);
        for (int i = 0; i <= 20; i++)
        {
            double[] inertia = frame.InertiaForces(history.At(i, Motion.Acceleration));
            var elastic = new double[frame.EquationCount];
            frame.Stiffness.Multiply(TestFrames.Reduced(frame, history.At(i)).AsArray(), elastic);
            for (int equation = 0; equation < elastic.Length; equation++)
            {
                int freedom = frame.FreedomOf(equation);
                double force = i < samples.Length ? samples[i] * loads[freedom] : 0;
                Assert.Equal(force, inertia[freedom] + elastic[equation], 1e-5);
            }
        }
    }

    [Fact]
    public void Constant_acceleration_of_the_base_leans_the_frame_as_its_inertia_does()
    {
        Frame frame = TestFrames.Cantilever(5, 3, Vector3D.UnitZ);
        ModeSet modes = Modes.Solve(frame, frame.EquationCount);
        double[] gentle = [.. Enumerable.Range(0, 400).Select(i => 9.81 * Math.Min(1, i / 200.0))];
        ModalTimeHistory history = ModalTimeHistory.Run(modes, 0.2, [ForceHistory.BaseAcceleration(frame, 0, gentle)], 0.05, 399);
        double[] pull = frame.InertiaForces(frame.RigidMotion(0));
        double[] expected = new LinearStatics(frame).Solve([.. pull.Select(f => -9.81 * f)]);
        Assert.Equal(expected[^6], history.Of(frame.FreedomCount - 6)[399], 1e-6 * Math.Abs(expected[^6]));
        Assert.True(expected[^6] < 0);
    }

    [Fact]
    public void Forces_add_up()
    {
        Frame frame = TestFrames.Random(12).Build();
        ModeSet modes = Modes.Solve(frame, 4);
        ForceHistory a = new(TestFrames.RandomLoads(frame, 1), [1, 2, 3]), b = new(TestFrames.RandomLoads(frame, 2), [0, -1, 5, 4]);
        double[] together = ModalTimeHistory.Run(modes, 0.02, [a, b], 0.01, 10).At(10);
        double[] first = ModalTimeHistory.Run(modes, 0.02, [a], 0.01, 10).At(10);
        double[] second = ModalTimeHistory.Run(modes, 0.02, [b], 0.01, 10).At(10);
        for (int i = 0; i < together.Length; i++)
            Assert.Equal(first[i] + second[i], together[i], 1e-12 * together.Max(Math.Abs));
    }

    [Fact]
    public void Arguments_that_do_not_fit_are_refused()
    {
        ModeSet modes = Modes.Solve(TestFrames.Random(1).Build(), 3);
        double[] loads = new double[modes.Frame.FreedomCount];
        Assert.Throws<ArgumentException>(() => ModalTimeHistory.Run(modes, [0.1], [], 0.01, 5));
        Assert.Throws<ArgumentException>(() => ModalTimeHistory.Run(modes, 0.1, [new([1, 2], [1])], 0.01, 5));
        Assert.Throws<ArgumentException>(() => ModalTimeHistory.Run(modes, 0.1, [new(loads, [double.NaN])], 0.01, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ModalTimeHistory.Run(modes, 1.0, [], 0.01, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ModalTimeHistory.Run(modes, 0.1, [], 0, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ModalTimeHistory.Run(modes, 0.1, [], 0.01, 0));
    }
}
