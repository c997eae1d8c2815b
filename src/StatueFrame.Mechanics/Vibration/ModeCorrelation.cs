using static System.FormattableString;

namespace StatueFrame.Mechanics.Vibration;

/// <summary>
/// How the peaks of modes that a wide-band ground motion shakes belong together: the complete quadratic combination
/// R² = Σᵢ Σⱼ ρᵢⱼ rᵢ rⱼ of signed modal peaks r.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class ModeCorrelation
{
    /// <summary>
    /// The correlation coefficient of two modes, with r = ω_j/ω_i:
    /// ρ = 8√(ζᵢζⱼ) (ζᵢ + rζⱼ) r^1.5 / ((1 − r²)² + 4ζᵢζⱼ r(1 + r²) + 4(ζᵢ² + ζⱼ²) r²).
    /// </summary>
    /// <param name="omegaI">Circular frequency of one mode, above zero.</param>
    /// <param name="omegaJ">Circular frequency of the other, above zero.</param>
    /// <param name="zetaI">Damping ratio of one mode; 0 ≤ ζ &lt; 1.</param>
    /// <param name="zetaJ">Damping ratio of the other.</param>
    /// <returns>From 0 to 1; 1 for a mode with itself, and 0 for two undamped modes of different frequency.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    /// <remarks>
    /// Source: Der Kiureghian 1981, Earthquake Engineering and Structural Dynamics 9, 419–435; equal damping: Wilson,
    /// Der Kiureghian and Bayo 1981, the same 9, 187–194.
    /// </remarks>
    public static double Coefficient(double omegaI, double omegaJ, double zetaI, double zetaJ)
    {
        RequireFrequency(omegaI, nameof(omegaI));
        RequireFrequency(omegaJ, nameof(omegaJ));
        RequireRatio(zetaI, nameof(zetaI));
        RequireRatio(zetaJ, nameof(zetaJ));
        if (omegaI == omegaJ && zetaI == zetaJ)
            return 1;
        // By symmetry the ratio can be taken at most 1, so that nothing overflows.
        (double r, double a, double b) = omegaJ <= omegaI ? (omegaJ / omegaI, zetaI, zetaJ) : (omegaI / omegaJ, zetaJ, zetaI);
        double apart = (1 - r) * (1 + r);
        double below = apart * apart + 4 * a * b * r * (1 + r * r) + 4 * (a * a + b * b) * r * r;
        return below == 0 ? 0 : Math.Min(1, 8 * Math.Sqrt(a * b) * (a + r * b) * r * Math.Sqrt(r) / below);
    }

    /// <summary>The coefficients of all pairs of modes, row-major.</summary>
    /// <param name="omega">Circular frequencies, above zero.</param>
    /// <param name="zeta">Damping ratios, one a mode; 0 ≤ ζ &lt; 1.</param>
    /// <exception cref="ArgumentException">The lengths differ, or a value lies outside its range.</exception>
    public static double[] Matrix(ReadOnlySpan<double> omega, ReadOnlySpan<double> zeta)
    {
        int n = omega.Length;
        if (zeta.Length != n)
            throw new ArgumentException($"Expected {n} damping ratios, one a mode, not {zeta.Length}.", nameof(zeta));
        var rho = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
                rho[i * n + j] = rho[j * n + i] = i == j ? 1 : Coefficient(omega[i], omega[j], zeta[i], zeta[j]);
        }
        return rho;
    }

    /// <summary>Combines signed modal peaks: √(Σᵢ Σⱼ ρᵢⱼ rᵢ rⱼ), zero or more.</summary>
    /// <param name="rho">The correlation matrix, row-major.</param>
    /// <param name="peaks">The peak of each mode, with the sign of its shape and participation.</param>
    /// <exception cref="ArgumentException">The lengths do not fit.</exception>
    public static double Combine(ReadOnlySpan<double> rho, ReadOnlySpan<double> peaks) =>
        Math.Sqrt(Math.Max(0, Product(rho, peaks, peaks)));

    /// <summary>Σᵢ Σⱼ ρᵢⱼ aᵢ bⱼ: the covariance of two quantities.</summary>
    /// <exception cref="ArgumentException">The lengths do not fit.</exception>
    public static double Product(ReadOnlySpan<double> rho, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int n = a.Length;
        if (b.Length != n || rho.Length != n * n)
            throw new ArgumentException($"Expected {n} by {n} coefficients for {n} and {b.Length} peaks, not {rho.Length}.", nameof(rho));
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            if (a[i] != 0)
                sum += a[i] * Statics.DenseVector.Dot(rho.Slice(i * n, n), b);
        }
        return sum;
    }

    private static void RequireFrequency(double omega, string name)
    {
        if (!(omega > 0 && double.IsFinite(omega)))
            throw new ArgumentOutOfRangeException(name, Invariant($"A frequency must be above zero, is {omega}."));
    }

    private static void RequireRatio(double zeta, string name)
    {
        if (!(zeta >= 0 && zeta < 1))
            throw new ArgumentOutOfRangeException(name, Invariant($"A damping ratio must lie in 0 ≤ ζ < 1, is {zeta}."));
    }
}
