namespace StatueFrame.Checks;

/// <summary>Elastic second-order moments of a strut, exact by the theory of the beam-column.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SecondOrderBar
{
    /// <summary>
    /// Greatest moment of a pin-ended beam-column under end moments over its greatest end moment. The moment is
    /// M(ξ) = (M₁ sin u(1 − ξ) + M₂ sin uξ)/sin u, u = π √(N/N_cr); where its slope vanishes within the span it is
    /// √(M₁² + M₂² − 2 M₁M₂ cos u)/sin u (Timoshenko and Gere, chapter 1).
    /// </summary>
    /// <param name="n">N/N_cr, from 0 to below 1.</param>
    /// <param name="psi">Ratio of the smaller to the greater end moment, from −1 (double curvature) to 1 (uniform).</param>
    public static double EndMomentFactor(double n, double psi)
    {
        double u = Math.PI * Math.Sqrt(n);
        // With the greater moment at ξ = 0, the slope there is u(ψ − cos u)/sin u: the peak is inside when it rises.
        return psi > Math.Cos(u) ? Math.Sqrt(1 + psi * psi - 2 * psi * Math.Cos(u)) / Math.Sin(u) : 1;
    }

    /// <summary>Ratio ψ of internal end moments from the moments on the two ends, which oppose each other in uniform bending.</summary>
    public static double MomentRatio(double onTower, double onSkin)
    {
        double greater = Math.Max(Math.Abs(onTower), Math.Abs(onSkin));
        return greater > 0 ? -onTower / greater * (onSkin / greater) : 1;
    }
}
