using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;
using Complex = System.Numerics.Complex;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class HarmonicResponseTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        .. from damping in (double[])[0.05, 0.1, 0.25]
           from ratio in (double[])[0.5, 1, Math.Sqrt(2), 3]
           select new PublishedValue($"Transmissibility at ζ = {damping}, r = {ratio:f3}",
               "closed form √((1+(2ζr)²)/((1−r²)²+(2ζr)²))",
               Math.Sqrt((1 + 4 * damping * damping * ratio * ratio)
                   / (Math.Pow(1 - ratio * ratio, 2) + 4 * damping * damping * ratio * ratio)),
               "-", 1e-9, () => Transmissibility(damping, ratio), ValueKind.IndependentComputation),
    ];

    /// <summary>Motion of a mass on a spring divided by that of its foundation.</summary>
    private static double Transmissibility(double damping, double ratio)
    {
        const double k = 4000, m = 10;
        var builder = new FrameBuilder();
        var spring = new double[36];
        var mass = new double[36];
        (spring[14], mass[14]) = (k, m);
        builder.AddNode(Vector3D.Zero);
        Frame frame = builder.Restrain(0, Freedoms.All & ~Freedoms.Z).AddAtNode(0, spring, mass).Build();
        double driven = ratio * Math.Sqrt(k / m);
        double[] inertia = frame.InertiaForces(frame.RigidMotion(2));
        double[] loads = [.. inertia.Select(f => driven * driven * f)];
        var response = new HarmonicResponse(new LinearStatics(frame), Modes.Solve(frame, 1), damping, loads);
        return (1 + response.Of(2, driven / (2 * Math.PI))).Magnitude;
    }

    [Fact]
    public void All_modes_without_damping_equal_the_direct_solution()
    {
        Frame frame = TestFrames.Random(14).Build();
        ModeSet modes = Modes.Solve(frame, frame.EquationCount);
        double[] loads = TestFrames.RandomLoads(frame, 1);
        double frequency = 0.5 * (modes.Frequency(1) + modes.Frequency(2));
        Complex[] u = new HarmonicResponse(new LinearStatics(frame), modes, 0, loads).At(frequency);
        Vector<double> expected = Direct(frame, loads, frequency);
        for (int i = 0; i < frame.EquationCount; i++)
            Assert.Equal(expected[i], u[frame.FreedomOf(i)].Real, 1e-7 * expected.InfinityNorm());
    }

    [Fact]
    public void Static_correction_makes_up_for_missing_modes()
    {
        for (int seed = 10; seed < 20; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            ModeSet modes = Modes.Solve(frame, 3);
            double[] loads = TestFrames.RandomLoads(frame, 1);
            double frequency = 0.3 * modes.Frequency(0);
            Vector<double> expected = Direct(frame, loads, frequency);
            double with = Error(new LinearStatics(frame)), without = Error(null);
            Assert.True(with < 0.3 * without, $"seed {seed}: {with} against {without}");

            double Error(LinearStatics? statics)
            {
                Complex[] u = new HarmonicResponse(statics, modes, 0, loads).At(frequency);
                return Enumerable.Range(0, frame.EquationCount).Max(i => Math.Abs(expected[i] - u[frame.FreedomOf(i)].Real));
            }
        }
    }

    [Fact]
    public void At_frequency_zero_the_response_is_static()
    {
        Frame frame = TestFrames.Random(15).Build();
        var statics = new LinearStatics(frame);
        double[] loads = TestFrames.RandomLoads(frame, 1), expected = statics.Solve(loads);
        var response = new HarmonicResponse(statics, Modes.Solve(frame, 2), 0.03, loads);
        for (int freedom = 0; freedom < expected.Length; freedom++)
        {
            Assert.Equal(expected[freedom], response.Of(freedom, 0).Real, 1e-10 * expected.Max(Math.Abs));
            Assert.Equal(0, response.Of(freedom, 0).Imaginary);
        }
    }

    [Fact]
    public void Arguments_that_do_not_fit_are_refused()
    {
        Frame frame = TestFrames.Random(1).Build();
        ModeSet modes = Modes.Solve(frame, 2);
        double[] loads = TestFrames.RandomLoads(frame, 1);
        Assert.Throws<ArgumentException>(() => new HarmonicResponse(new LinearStatics(TestFrames.Random(1).Build()), modes, 0.1, loads));
        Assert.Throws<ArgumentException>(() => new HarmonicResponse(null, modes, [0.1], loads));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HarmonicResponse(null, modes, 1.0, loads));
        var response = new HarmonicResponse(null, modes, 0, loads);
        Assert.Throws<ArgumentOutOfRangeException>(() => response.Of(0, double.NaN));
    }

    private static Vector<double> Direct(Frame frame, double[] loads, double frequency)
    {
        Matrix<double> dynamic = TestFrames.Dense(frame.Stiffness)
            - Math.Pow(2 * Math.PI * frequency, 2) * TestFrames.Dense(frame.Mass);
        return dynamic.Solve(TestFrames.Reduced(frame, loads));
    }
}
