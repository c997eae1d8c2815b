namespace StatueFrame.Checks;

/// <summary>Strength of a masonry section by EN 1996-1-1. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class MasonryStrength
{
    private static readonly Source capacity = new("EN 1996-1-1:2005", "6.1.2.1 (6.2), 6.1.2.2");
    private static readonly Source initial = new("EN 1996-1-1:2005", "5.5.1.1 (4)");
    private static readonly Source slenderness = new("EN 1996-1-1:2005", "Annex G (G.1) to (G.5)");
    private static readonly Source shear = new("EN 1996-1-1:2005", "3.6.2 (3.5), 6.2 (6.13)");

    /// <summary>Design compressive resistance for a thrust at (ex, ey), N.</summary>
    /// <param name="w">Listener.</param>
    /// <param name="section">The section.</param>
    /// <param name="masonry">Its masonry.</param>
    /// <param name="ex">Place of the thrust, m.</param>
    /// <param name="ey">Place of the thrust, m.</param>
    /// <param name="height">Height that stands free above, m; zero for no slenderness.</param>
    /// <param name="bow">The way in which it bows out.</param>
    public static double Capacity(Working? w, BlockSection section, Masonry masonry, double ex, double ey, double height, in Bow bow)
    {
        double h_ef = w.Given("h_ef", 2 * height, Dimension.Length, "effective height of a cantilever");
        double e_init = w.Let("e_init", h_ef / 450, Dimension.SmallLength, initial);
        double e = w.Given("e", bow.Eccentricity(ex, ey), Dimension.Length, "eccentricity the way it bows out");
        double e_tot = w.Let("e_tot", e + e_init, Dimension.Length, initial);
        (double x, double y) = bow.Moved(ex, ey, e_init);
        double A = w.Given("A", section.Plan.Whole.A, Dimension.Area);
        double A_c = w.Given("A_c", PlasticBlock.AreaOf(section.Plan, x, y), Dimension.Area, "greatest even block with its centroid at the thrust", capacity);
        double f_k = w.Given("f_k", masonry.f_k, Dimension.Stress, "compressive strength", masonry.Source), E = w.Given("E", masonry.E, Dimension.Stress, "short-term modulus");
        double gamma_M = w.Given("gamma_M", masonry.PartialFactor, Dimension.Number);
        double reduction = height > 0 ? Slenderness(w, h_ef, bow.Depth, e_tot, f_k, E) : 1;
        w.Let("Phi", A_c / A * reduction, Dimension.Number, capacity);
        return w.Let("N_Rd", A_c * reduction * f_k / gamma_M, Dimension.Force, capacity);
    }

    /// <summary>exp(−u²/2) of Annex G: the part of Φ_m that slenderness takes, 1 for stocky sections.</summary>
    public static double Slenderness(Working? w, double h_ef, double t, double e_tot, double f_k, double E)
    {
        w.Given(t, Dimension.Length, "depth of the like solid rectangle, √12 i");
        double lambda = w.Let("lambda", h_ef / t * Math.Sqrt(f_k / E), Dimension.Number, slenderness);
        double below = w.Let("below", 0.73 - 1.17 * Math.Min(e_tot / t, 0.5), Dimension.Number, slenderness);
        double u = w.Let("u", Math.Max(0, (lambda - 0.063) / below), Dimension.Number, slenderness);
        return w.Let("reduction", Math.Exp(-u * u / 2), Dimension.Number, slenderness);
    }

    /// <summary>Design shear resistance on the pressed area, N.</summary>
    public static double Shear(Working? w, Masonry masonry, double N, double A_c)
    {
        double f_vk0 = w.Given("f_vk0", masonry.InitialShearStrength.Pascals, Dimension.Stress, "without compression", masonry.Source);
        double mu = w.Given("mu", masonry.JointFriction, Dimension.Number, "joint friction", shear);
        double sigma_d = w.Let("sigma_d", N / A_c, Dimension.Stress, shear, "mean compression of the pressed part");
        double f_vk = w.Let("f_vk", f_vk0 + mu * sigma_d, Dimension.Stress, shear);
        if (masonry.GreatestShearStrength is { } most)
        {
            double f_vlt = w.Given("f_vlt", most.Pascals, Dimension.Stress, "greatest shear strength");
            f_vk = w.Let("f_vk", Math.Min(f_vk, f_vlt), Dimension.Stress, shear);
        }
        double gamma_M = w.Given("gamma_M", masonry.PartialFactor, Dimension.Number);
        return w.Let("V_Rd", f_vk / gamma_M * A_c, Dimension.Force, shear);
    }
}
