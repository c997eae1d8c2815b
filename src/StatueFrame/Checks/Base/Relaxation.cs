namespace StatueFrame.Checks;

/// <summary>Relaxation of pre-tensioned steel by EN 1992-1-1, 3.3.2 (7): the part of the force that is lost.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class Relaxation
{
    /// <summary>Class 1, wire and strand of ordinary relaxation: 5.39 ρ₁₀₀₀ e^(6.7μ) (t/1000)^(0.75(1−μ)) 10⁻⁵, ρ₁₀₀₀ in percent.</summary>
    /// <param name="rho1000">ρ₁₀₀₀, part lost after 1000 hours at 20 °C, as 0.08.</param>
    /// <param name="mu">μ, initial stress over f_pk, 0 to 1.</param>
    /// <param name="hours">t; 500 000 for the final value.</param>
    public static double Class1(double rho1000, double mu, double hours = 500_000) => Part(5.39, 6.7, rho1000, mu, hours);

    /// <summary>Class 2, wire and strand of low relaxation: 0.66 ρ₁₀₀₀ e^(9.1μ) (t/1000)^(0.75(1−μ)) 10⁻⁵.</summary>
    /// <param name="rho1000">ρ₁₀₀₀, part lost after 1000 hours at 20 °C, as 0.025.</param>
    /// <param name="mu">μ, initial stress over f_pk, 0 to 1.</param>
    /// <param name="hours">t; 500 000 for the final value.</param>
    public static double Class2(double rho1000, double mu, double hours = 500_000) => Part(0.66, 9.1, rho1000, mu, hours);

    /// <summary>Class 3, hot-rolled and processed bars: 1.98 ρ₁₀₀₀ e^(8μ) (t/1000)^(0.75(1−μ)) 10⁻⁵.</summary>
    /// <param name="rho1000">ρ₁₀₀₀, part lost after 1000 hours at 20 °C, as 0.04.</param>
    /// <param name="mu">μ, initial stress over f_pk, 0 to 1.</param>
    /// <param name="hours">t; 500 000 for the final value.</param>
    public static double Class3(double rho1000, double mu, double hours = 500_000) => Part(1.98, 8, rho1000, mu, hours);

    private static double Part(double factor, double rate, double rho1000, double mu, double hours)
    {
        CheckInput.Within(rho1000, 0, 1, nameof(rho1000));
        CheckInput.Within(mu, 0, 1, nameof(mu));
        CheckInput.NotNegative(hours, nameof(hours));
        return Math.Min(1, factor * 100 * rho1000 * Math.Exp(rate * mu) * Math.Pow(hours / 1000, 0.75 * (1 - mu)) * 1e-5);
    }
}
