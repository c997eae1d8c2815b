namespace StatueFrame.Studies;

/// <summary>Sobol's sensitivity indices: which uncertain input matters.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Source: Saltelli et al., Computer Physics Communications 181 (2010), first-order
/// estimator (b) of Table 2; Jansen's total one (f).
/// </remarks>
public static class Sensitivity
{
    private const int Parts = 16;

    /// <summary>Finds the indices; costs count × (inputs + 2) evaluations.</summary>
    /// <param name="inputs">The uncertain inputs, 1 to 32.</param>
    /// <param name="number">The number, as a pure function of the inputs in their order.</param>
    /// <param name="count">Samples, 64 to 10 million; rounded down to a multiple of 16.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="options">How it runs; null for all cores.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of range.</exception>
    /// <exception cref="ArithmeticException">The number is not finite at some sample, which is named.</exception>
    public static ValueList<SensitivityIndex> Of(
        IReadOnlyList<Uncertain> inputs, Func<IReadOnlyList<double>, double> number, int count, ulong seed = 1, StudyOptions? options = null)
    {
        Sampling.CheckInputs(inputs);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(inputs.Count, 32, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 64);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, 10_000_000);
        int n = count / Parts * Parts, d = inputs.Count;
        double[] a = new double[n], b = new double[n];
        double[][] mixed = [.. Enumerable.Range(0, d).Select(_ => new double[n])];
        (options ?? new StudyOptions()).For(n, i =>
        {
            double[] x = new double[d], y = new double[d];
            for (int k = 0; k < d; k++)
                (x[k], y[k]) = (inputs[k].Quantile(RandomStream.Uniform(seed, i, 2 * k)), inputs[k].Quantile(RandomStream.Uniform(seed, i, 2 * k + 1)));
            (a[i], b[i]) = (Sampling.Finite(number(x), x), Sampling.Finite(number(y), y));
            for (int k = 0; k < d; k++)
            {
                double[] z = [.. x];
                z[k] = y[k];
                mixed[k][i] = Sampling.Finite(number(z), z);
            }
        });
        var indices = new SensitivityIndex[d];
        for (int k = 0; k < d; k++)
        {
            (double first, double total) = Indices(a, b, mixed[k], 0, n);
            var parts = new (double First, double Total)[Parts];
            for (int p = 0; p < Parts; p++)
                parts[p] = Indices(a, b, mixed[k], p * (n / Parts), (p + 1) * (n / Parts));
            indices[k] = new SensitivityIndex(inputs[k].Name, first, Error([.. parts.Select(p => p.First)]), total, Error([.. parts.Select(p => p.Total)]));
        }
        return ValueList.Create<SensitivityIndex>(indices);
    }

    private static (double First, double Total) Indices(double[] a, double[] b, double[] mixed, int from, int to)
    {
        double mean = 0, square = 0, first = 0, total = 0;
        int n = to - from;
        for (int i = from; i < to; i++)
            mean += (a[i] + b[i]) / (2 * n);
        for (int i = from; i < to; i++)
        {
            square += ((a[i] - mean) * (a[i] - mean) + (b[i] - mean) * (b[i] - mean)) / (2 * n);
            first += (b[i] - mean) * (mixed[i] - a[i]) / n;
            total += (a[i] - mixed[i]) * (a[i] - mixed[i]) / (2 * n);
        }
        return square > 0 ? (first / square, total / square) : (0, 0);
    }

    /// <summary>Student's t of fifteen degrees of freedom times the standard error of the parts' mean.</summary>
    private static double Error(double[] parts)
    {
        const double Student = 2.131449546;
        double mean = parts.Average();
        return Student * Math.Sqrt(parts.Sum(p => (p - mean) * (p - mean)) / (parts.Length - 1) / parts.Length);
    }
}
