namespace StatueFrame;

/// <summary>Drag of a long circular cylinder by Reynolds number and roughness.</summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, 7.9.1 (1), 7.9.2, Figure 7.28, Table 7.13.</remarks>
internal static class CylinderDrag
{
    /// <summary>Kinematic viscosity of air, m²/s.</summary>
    public const double Viscosity = 15e-6;

    /// <summary>Equivalent roughness of galvanized steel, m (Table 7.13).</summary>
    public const double GalvanizedSteel = 0.2e-3;

    private const double Subcritical = 1.2;

    /// <summary>Re = b v/ν, (7.15), with the peak wind speed.</summary>
    public static double Reynolds(double b, double gust) => b * gust / Viscosity;

    /// <summary>
    /// c_f,0 of Figure 7.28: the greater of 0.11/(Re/10⁶)^1.4, at most 1.2 and reached near Re 1.8·10⁵, and the rough
    /// branch 1.2 + 0.18 log₁₀(10 k/b)/(1 + 0.4 log₁₀(Re/10⁶)), which holds from where it is at least 0.4.
    /// </summary>
    /// <param name="reynolds">Reynolds number, above zero.</param>
    /// <param name="roughness">Equivalent roughness over diameter k/b, from 10⁻⁵ to 10⁻².</param>
    public static double Coefficient(double reynolds, double roughness)
    {
        double falling = Math.Min(Subcritical, 0.11 / Math.Pow(reynolds / 1e6, 1.4));
        double rising = 0;
        double slope = 1 + 0.4 * Math.Log10(reynolds / 1e6);
        if (slope > 0.5)
            rising = Subcritical + 0.18 * Math.Log10(10 * Math.Clamp(roughness, 1e-5, 1e-2)) / slope;
        return Math.Max(0.4, Math.Max(falling, rising));
    }
}
