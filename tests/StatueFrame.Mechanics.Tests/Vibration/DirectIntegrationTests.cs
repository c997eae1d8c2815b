using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class DirectIntegrationTests
{
    private const string Chopra = "Chopra, Dynamics of Structures, 4th ed., {0}, as quoted in a public test of an open program";

    /// <summary>m = 0.2533 kip·s²/in, k = 10 kip/in, c = 0.1592 kip·s/in (ζ = 0.05), half a sine of 10 kip in 0.6 s, steps of 0.1 s; the table carries four decimals from step to step.</summary>
    private static readonly Lazy<double[][]> average = new(() => Run(0.25, double.PositiveInfinity)), linear = new(() => Run(1.0 / 6, double.PositiveInfinity)), yielding = new(() => Run(0.25, 0.75));

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. At("Mean acceleration, displacement", "Example 5.3", "in", average, 0, 1e-4, (1, 0.0437), (3, 0.6121), (5, 1.4309), (7, 0.9622), (10, -1.1442)),
        .. At("Mean acceleration, acceleration", "Example 5.3", "in/s²", average, 1, 5e-4, (1, 17.4666), (6, -54.6722), (10, 47.3701)),
        .. At("Linear acceleration, displacement", "Example 5.4", "in", linear, 0, 1e-4, (1, 0.0300), (3, 0.6166), (5, 1.4782), (8, 0.1273), (10, -1.2208)),
        .. At("Mean acceleration with yielding at 7.5 kip, displacement", "Example 5.5", "in", yielding, 0, 3e-4, (4, 1.1143), (5, 1.6214), (6, 1.9891), (7, 2.0951), (9, 1.5602)),
    ];

    private static IEnumerable<PublishedValue> At(
        string what, string example, string unit, Lazy<double[][]> run, int motion, double digits, params (int Step, double Value)[] values) =>
        values.Select(v => new PublishedValue(
            FormattableString.Invariant($"{what} after {0.1 * v.Step:0.0} s"), string.Format(System.Globalization.CultureInfo.InvariantCulture, Chopra, example), v.Value, unit,
            digits / Math.Abs(v.Value), () => run.Value[v.Step][motion]));

    private static double[][] Run(double beta, double yieldDisplacement)
    {
        const double m = 0.2533, k = 10;
        double a = 0.1592 / m;
        Frame frame = OneMass(m, k);
        var spring = new PlasticSpring(k, yieldDisplacement);
        var integration = new DirectIntegration(frame, a, 0, 0.1, double.IsInfinity(yieldDisplacement) ? null : spring, beta);
        integration.Start([], [], []);
        double[] load = new double[6], u = new double[6], acceleration = new double[6];
        var states = new List<double[]> { new double[2] };
        for (int i = 1; i <= 10; i++)
        {
            load[0] = i <= 6 ? 10 * Math.Sin(Math.PI * i / 6) : 0;
            integration.Step(load);
            integration.CopyTo(u);
            integration.CopyTo(acceleration, Motion.Acceleration);
            states.Add([u[0], acceleration[0]]);
        }
        return [.. states];
    }

    private static Frame OneMass(double m, double k)
    {
        var builder = new FrameBuilder();
        int node = builder.AddNode(Vector3D.Zero);
        double[] stiffness = new double[36], mass = new double[36];
        (stiffness[0], mass[0]) = (k, m);
        builder.Restrain(node, Freedoms.All & ~Freedoms.X);
        return builder.AddAtNode(node, stiffness, mass).Build();
    }

    /// <summary>An elastic–perfectly plastic spring along the one freedom.</summary>
    private sealed class PlasticSpring(double k, double limit) : IYieldingPart
    {
        private double plastic, last, force;

        public double StrainCorrection => 0.5 * k * (last - plastic) * (last - plastic) - 0.5 * k * last * last;

        public double PlasticWork { get; private set; }

        public void AddRelief(ReadOnlySpan<double> u, Span<double> relief) => relief[0] += k * u[0] - Force(u[0]);

        public void Accept(ReadOnlySpan<double> u)
        {
            double now = Force(u[0]), slipped = u[0] - now / k - plastic;
            PlasticWork += 0.5 * (force + now) * slipped;
            (plastic, last, force) = (plastic + slipped, u[0], now);
        }

        private double Force(double u) => Math.Clamp(k * (u - plastic), -k * limit, k * limit);
    }

    [Fact]
    public void Yielding_run_agrees_with_events_found_exactly()
    {
        const double m = 2, k = 500, limit = 0.01, h = 2e-4;
        double omega = Math.Sqrt(k / m), damping = 0.03;
        var integration = new DirectIntegration(OneMass(m, k), 2 * damping * omega, 0, h, new PlasticSpring(k, limit));
        var exact = new ElastoplasticOscillator(omega, damping, k * limit / m);
        integration.Start([], [], []);
        double[] load = new double[6], u = new double[6];
        double before = 0;
        for (int i = 1; i <= 10_000; i++)
        {
            load[0] = i * h < 0.3 ? 12 * Math.Sin(Math.PI * i * h / 0.3) : 0;
            integration.Step(load);
            exact.Advance(before / m, load[0] / m, h);
            before = load[0];
        }
        integration.CopyTo(u);
        Assert.True(exact.Ductility > 2);
        Assert.Equal(exact.Displacement, u[0], 1e-4 * exact.Peak);
    }

    [Fact]
    public void Linear_run_converges_to_the_modes_with_the_square_of_the_step()
    {
        Frame frame = TestFrames.Cantilever(4, 6, Vector3D.UnitZ);
        const double a = 0.4, b = 2e-3;
        ModeSet modes = Modes.Solve(frame, frame.EquationCount);
        double[] omega = [.. Enumerable.Range(0, modes.Count).Select(modes.CircularFrequency)];
        int tip = Frame.NodeSize * 4;
        double coarse = Error(4e-3), fine = Error(2e-3);
        Assert.InRange(coarse / fine, 3.5, 4.5);

        double Error(double h)
        {
            double[] ratios = [.. omega.Select(w => Math.Min(0.999, a / (2 * w) + 0.5 * b * w))];
            int steps = (int)Math.Round(0.4 / h);
            var pattern = new double[frame.FreedomCount];
            pattern[tip] = 1000;
            double[] samples = [.. Enumerable.Range(0, steps + 1).Select(i => Math.Sin(Math.PI * i * h / 0.4))];
            ModalTimeHistory exact = ModalTimeHistory.Run(modes, ratios, [new ForceHistory(pattern, samples)], h, steps);
            var integration = new DirectIntegration(frame, a, b, h);
            integration.Start([], [], []);
            double[] load = new double[pattern.Length], u = new double[pattern.Length];
            for (int i = 1; i <= steps; i++)
            {
                for (int k = 0; k < load.Length; k++)
                    load[k] = pattern[k] * samples[i];
                integration.Step(load);
            }
            integration.CopyTo(u);
            return Math.Abs(u[tip] - exact.Of(tip)[steps]);
        }
    }

    [Fact]
    public void Energies_of_a_linear_frame_balance_to_rounding()
    {
        Frame frame = TestFrames.Cantilever(5, 7, new Vector3D(1, 2, 3));
        var integration = new DirectIntegration(frame, 0.3, 1e-3, 5e-3);
        double[] load = new double[frame.FreedomCount], velocity = new double[frame.FreedomCount];
        velocity[6 * 5 + 1] = 0.4;
        integration.Start([], velocity, load);
        double start = integration.Kinetic;
        for (int i = 0; i < 400; i++)
        {
            load[6 * 5] = 300 * Math.Sin(i);
            load[6 * 3 + 2] = i % 7 * 100;
            integration.Step(load);
            Assert.Equal(start + integration.Work, integration.Kinetic + integration.Strain + integration.Damped, 1e-6 * (start + Math.Abs(integration.Work)));
        }
        Assert.True(integration.Damped > 0.01 * start);
    }

    [Fact]
    public void Parameters_out_of_range_are_refused()
    {
        Frame frame = OneMass(1, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => new DirectIntegration(frame, -1, 0, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DirectIntegration(frame, 0, double.NaN, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DirectIntegration(frame, 0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DirectIntegration(frame, 0, 0, 0.1, null, 0));
    }
}
