using MathNet.Numerics.LinearAlgebra;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>Fits adjustable numbers of a model to measurements by weighted least squares.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Levenberg–Marquardt in the logarithms of the numbers, which keeps them
/// positive; intervals from the curvature at the best fit; what the data cannot tell from the singular values of the
/// weighted Jacobian: a direction in which a change of 100 % moves the fit by less than one standard error.
/// </remarks>
public static class ModelFit
{
    private const double Confidence = 1.959963984540054;

    /// <summary>Finds the best fit.</summary>
    /// <param name="adjustables">What may be adjusted; at least one.</param>
    /// <param name="measured">What was measured; at least one.</param>
    /// <param name="model">What the model gives for each measurement, in their order: a pure function of the adjustables in theirs.</param>
    /// <param name="options">For cancellation; null for none.</param>
    /// <exception cref="ArgumentException">A list is empty, a range is wrong, or the model gives another number of values.</exception>
    /// <exception cref="ArithmeticException">The model gives a value that is not finite at the start or beside the fit.</exception>
    public static CalibrationResult Of(IReadOnlyList<Adjustable> adjustables, IReadOnlyList<Measured> measured, Func<IReadOnlyList<double>, IReadOnlyList<double>> model, StudyOptions? options = null)
    {
        Validate(adjustables, measured);
        const int Rounds = 100;
        int n = adjustables.Count, m = measured.Count;
        double[] low = [.. adjustables.Select(a => Math.Log(a.Least))], high = [.. adjustables.Select(a => Math.Log(a.Greatest))];
        Vector<double> p = Vector<double>.Build.Dense(n, i => Math.Log(adjustables[i].Start));
        Vector<double> Residuals(Vector<double> at)
        {
            IReadOnlyList<double> values = model([.. at.Select(Math.Exp)]);
            if (values.Count != m)
                throw new ArgumentException($"The model gives {values.Count} values for {m} measurements.", nameof(model));
            return Vector<double>.Build.Dense(m, i => (values[i] - measured[i].Value) / measured[i].StandardError);
        }
        Vector<double> r = Residuals(p);
        if (!r.All(double.IsFinite))
            throw new ArithmeticException("The model gives a value that is not finite at the start.");
        Matrix<double> J = Jacobian(Residuals, p, low, high, m);
        double damping = 1e-3;
        bool converged = false;
        for (int round = 0; round < Rounds && !converged; round++)
        {
            options?.Cancellation.ThrowIfCancellationRequested();
            Matrix<double> normal = J.TransposeThisAndMultiply(J);
            Vector<double> slope = J.TransposeThisAndMultiply(r);
            for (int tries = 0; ; tries++)
            {
                Matrix<double> damped = normal + Matrix<double>.Build.DenseDiagonal(n, n, i => damping * Math.Max(normal[i, i], 1e-12 * normal.Diagonal().Maximum() + 1e-300));
                Vector<double> step = damped.Solve(-slope);
                Vector<double> next = (p + step).MapIndexed((i, v) => Math.Clamp(v, low[i], high[i]));
                Vector<double> then = Residuals(next);
                double gain = r * r - then * then;
                if (then.All(double.IsFinite) && gain >= 0)
                {
                    converged = (next - p).L2Norm() < 1e-9 || gain <= 1e-12 * (1e-12 + r * r);
                    (p, r) = (next, then);
                    damping = Math.Max(1e-12, damping / 5);
                    break;
                }
                damping *= 4;
                if (tries > 40)
                    return Result(adjustables, measured, p, r, J, low, high, IsFlat(slope, p));
            }
            J = Jacobian(Residuals, p, low, high, m);
        }
        return Result(adjustables, measured, p, r, J, low, high, converged);

        // Nothing is left to gain but against a bound.
        bool IsFlat(Vector<double> slope, Vector<double> at) => Enumerable.Range(0, n).All(i =>
            Math.Abs(slope[i]) < 1e-4 * (1 + r * r) || (slope[i] > 0 ? at[i] <= low[i] + 1e-9 : at[i] >= high[i] - 1e-9));
    }

    private static CalibrationResult Result(
        IReadOnlyList<Adjustable> adjustables, IReadOnlyList<Measured> measured, Vector<double> p, Vector<double> r, Matrix<double> J, double[] low, double[] high, bool converged)
    {
        const double NothingMoves = 1;
        int n = adjustables.Count;
        var svd = J.Svd();
        Matrix<double> covariance = Matrix<double>.Build.Dense(n, n);
        var cannot = new List<string>();
        for (int k = 0; k < n; k++)
        {
            double s = k < svd.S.Count ? svd.S[k] : 0;
            Vector<double> direction = svd.VT.Row(k);
            if (s < NothingMoves)
                cannot.Add(Direction(adjustables, direction));
            covariance += direction.OuterProduct(direction) / Math.Max(s * s, 1e-30);
        }
        var values = new AdjustedValue[n];
        for (int i = 0; i < n; i++)
        {
            double half = Confidence * Math.Sqrt(covariance[i, i]);
            values[i] = new AdjustedValue(adjustables[i].Name, Math.Exp(p[i]), Math.Exp(p[i] - half), Math.Exp(p[i] + half), p[i] <= low[i] + 1e-9 || p[i] >= high[i] - 1e-9);
        }
        return new CalibrationResult
        {
            Values = ValueList.Create<AdjustedValue>(values),
            Fitted = measured.Select((x, i) => x.Value + r[i] * x.StandardError).ToValueList(),
            ChiSquare = r * r,
            DegreesOfFreedom = measured.Count - n,
            CannotTell = cannot.ToValueList(),
            Entangled = Pairs(adjustables, covariance).ToValueList(),
            Converged = converged,
        };
    }

    private static IEnumerable<string> Pairs(IReadOnlyList<Adjustable> adjustables, Matrix<double> covariance)
    {
        const double Together = 0.95;
        for (int i = 0; i < adjustables.Count; i++)
        {
            for (int j = i + 1; j < adjustables.Count; j++)
            {
                double correlation = covariance[i, j] / Math.Sqrt(covariance[i, i] * covariance[j, j]);
                if (Math.Abs(correlation) > Together)
                    yield return Invariant($"{adjustables[i].Name} and {adjustables[j].Name}, {correlation:0.000}");
            }
        }
    }

    /// <summary>A direction in words, as in "tower stiffness +71 %, mass +71 %".</summary>
    private static string Direction(IReadOnlyList<Adjustable> adjustables, Vector<double> direction)
    {
        const double Counts = 0.1;
        double sign = direction[direction.AbsoluteMaximumIndex()] < 0 ? -1 : 1;
        return string.Join(", ", adjustables.Select((a, i) => (a.Name, Part: sign * direction[i])).Where(d => Math.Abs(d.Part) > Counts).Select(d => Invariant($"{d.Name} {100 * d.Part:+0;-0} %")));
    }

    /// <summary>By central differences, one-sided at a bound, where the model may not hold beyond.</summary>
    private static Matrix<double> Jacobian(Func<Vector<double>, Vector<double>> residuals, Vector<double> p, double[] low, double[] high, int m)
    {
        const double Step = 1e-5;
        Matrix<double> J = Matrix<double>.Build.Dense(m, p.Count);
        for (int i = 0; i < p.Count; i++)
        {
            Vector<double> up = p.Clone(), down = p.Clone();
            up[i] = Math.Min(p[i] + Step, high[i]);
            down[i] = Math.Max(p[i] - Step, low[i]);
            if (up[i] > down[i])
                J.SetColumn(i, (residuals(up) - residuals(down)) / (up[i] - down[i]));
        }
        return J.Enumerate().All(double.IsFinite) ? J : throw new ArithmeticException("The model gives a value that is not finite beside the fit.");
    }

    private static void Validate(IReadOnlyList<Adjustable> adjustables, IReadOnlyList<Measured> measured)
    {
        if (adjustables.Count == 0 || measured.Count == 0)
            throw new ArgumentException("There must be something to adjust and something measured.");
        foreach (Adjustable a in adjustables)
        {
            if (!(a.Least > 0 && a.Start >= a.Least && a.Greatest >= a.Start && double.IsFinite(a.Greatest)))
                throw new ArgumentException($"The range of {a.Name} must hold its start and lie above zero.", nameof(adjustables));
        }
        foreach (Measured x in measured)
        {
            if (!(double.IsFinite(x.Value) && x.StandardError > 0 && double.IsFinite(x.StandardError)))
                throw new ArgumentException($"{x.Name} needs a finite value and a standard error above zero.", nameof(measured));
        }
    }
}
