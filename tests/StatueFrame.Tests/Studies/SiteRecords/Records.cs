using StatueFrame.Mechanics.Vibration;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.SiteRecords;

/// <summary>Records made up from oscillators whose frequency and damping are known.</summary>
internal static class Records
{
    public static SiteRecord Of(double rate, IEnumerable<double> values) =>
        new() { Name = "tip", SampleRate = rate.Hertz, Values = values.ToValueList() };

    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Free decays of several modes, with white noise of a standard deviation.</summary>
    public static SiteRecord Decay(double rate, double seconds, double noise, int seed, params (double F, double Zeta, double Size)[] modes)
    {
        var random = new Random(seed);
        return Of(rate, Enumerable.Range(0, (int)(rate * seconds)).Select(i =>
        {
            double t = i / rate, sum = noise * Normal(random);
            foreach ((double f, double zeta, double size) in modes)
            {
                double w = 2 * Math.PI * f;
                sum += size * Math.Exp(-zeta * w * t) * Math.Cos(w * Math.Sqrt(1 - zeta * zeta) * t + 0.4);
            }
            return sum;
        }));
    }

    /// <summary>Oscillators that white noise shakes: their accelerations, or those of their springs and dampers alone.</summary>
    public static SiteRecord Ambient(double rate, double seconds, int seed, bool springs, params (double F, double Zeta)[] modes)
    {
        var random = new Random(seed);
        int count = (int)(rate * seconds);
        double[] force = [.. Enumerable.Range(0, count).Select(_ => Normal(random))], sum = new double[count];
        foreach ((double f, double zeta) in modes)
        {
            var oscillator = new PiecewiseLinearOscillator(2 * Math.PI * f, zeta, 1 / rate);
            double u = 0, v = 0;
            for (int i = 1; i < count; i++)
            {
                oscillator.Step(ref u, ref v, force[i - 1], force[i]);
                sum[i] += oscillator.Acceleration(u, v, springs ? 0 : force[i]);
            }
        }
        return Of(rate, sum);
    }
}
