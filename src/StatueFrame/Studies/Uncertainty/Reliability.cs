using MathNet.Numerics.Distributions;

namespace StatueFrame.Studies;

/// <summary>The first-order reliability method (FORM) for a margin g, which fails below zero.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Hasofer–Lind–Rackwitz–Fiessler iteration with a merit function that shortens
/// steps (Zhang and Der Kiureghian 1995); independent inputs, carried to normal space by equal probability; central
/// differences.
/// </remarks>
public static class Reliability
{
    /// <summary>Finds the reliability.</summary>
    /// <param name="inputs">The uncertain inputs, 1 to 64, independent of each other.</param>
    /// <param name="margin">The margin, as 1 − utilization: a pure function of the inputs in their order.</param>
    /// <exception cref="ArithmeticException">The margin is not finite, does not depend on the inputs, or the iteration does not settle.</exception>
    public static ReliabilityResult Form(IReadOnlyList<Uncertain> inputs, Func<IReadOnlyList<double>, double> margin)
    {
        const int Rounds = 500;
        const double Settled = 1e-8, Step = 1e-4;
        Sampling.CheckInputs(inputs);
        int n = inputs.Count, evaluations = 0;
        double[] u = new double[n], gradient = new double[n];
        double G(double[] at)
        {
            var x = new double[n];
            for (int i = 0; i < n; i++)
                x[i] = inputs[i].AtNormal(at[i]);
            evaluations++;
            return Sampling.Finite(margin(x), x);
        }
        double origin = G(u), g = origin, scale = Math.Max(Math.Abs(origin), 1e-300), relaxed = 1, before = double.PositiveInfinity;
        for (int round = 0; round < Rounds; round++)
        {
            for (int i = 0; i < n; i++)
            {
                double keep = u[i];
                u[i] = keep + Step;
                double up = G(u);
                u[i] = keep - Step;
                gradient[i] = (up - G(u)) / (2 * Step);
                u[i] = keep;
            }
            double norm = Norm(gradient);
            if (!(norm > 1e-14 * scale))
                throw new ArithmeticException("The margin does not depend on the inputs where the search stands.");
            double along = (Dot(gradient, u) - g) / (norm * norm);
            double[] target = [.. gradient.Select(d => along * d)];
            double apart = Norm([.. target.Zip(u, (a, b) => a - b)]);
            if (apart <= Settled * (1 + Norm(u)) && Math.Abs(g) <= 1e-7 * scale)
                return Result(inputs, u, [.. gradient.Select(d => -d / norm)], origin, evaluations);
            // A curved limit can throw whole steps to and fro across the design point: then steps get shorter for good.
            relaxed = apart > 0.9 * before ? Math.Max(0.05, 0.7 * relaxed) : relaxed;
            before = apart;
            // The merit ½|u|² + c|g| falls along the step when c exceeds |u|/|∇g|.
            double c = 2 * Math.Max(Norm(u), Norm(target)) / norm + 1e-12, merit = Dot(u, u) / 2 + c * Math.Abs(g), share = relaxed;
            double[] next = target;
            for (int half = 0; half < 30; half++, share /= 2)
            {
                next = [.. u.Zip(target, (from, to) => from + share * (to - from))];
                g = G(next);
                if (Dot(next, next) / 2 + c * Math.Abs(g) <= merit * (1 + 1e-12) || apart <= 1e-6)
                    break;
            }
            u = next;
        }
        throw new ArithmeticException("The search for the design point does not settle; look at the margin by sampling.");
    }

    private static ReliabilityResult Result(IReadOnlyList<Uncertain> inputs, double[] u, double[] direction, double origin, int evaluations)
    {
        double beta = origin >= 0 ? Norm(u) : -Norm(u);
        return new ReliabilityResult
        {
            Beta = beta,
            FailureProbability = Normal.CDF(0, 1, -beta),
            DesignPoint = u.Select((z, i) => inputs[i].AtNormal(z)).ToValueList(),
            Direction = ValueList.Create<double>(direction),
            Evaluations = evaluations,
        };
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static double Norm(double[] a) => Math.Sqrt(Dot(a, a));
}
