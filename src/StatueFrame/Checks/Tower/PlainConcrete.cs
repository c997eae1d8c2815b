namespace StatueFrame.Checks;

/// <summary>Strength of plain concrete. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class PlainConcrete
{

    private static readonly Source strength = new("EN 1992-1-1:2004", "12.3.1, α_cc,pl = α_ct,pl = 0.8");
    private static readonly Source axial = new("EN 1992-1-1:2004", "12.6.1 (12.2)");
    private static readonly Source slender = new("EN 1992-1-1:2004", "12.6.5.2 (12.10), (12.11)");
    private static readonly Source shear = new("EN 1992-1-1:2004", "12.6.3 (12.3) to (12.7)");
    private static readonly Source aci = new("ACI 318-19", "14.5, ϕ = 0.60 (Table 21.2.1), from memory");

    /// <summary>Design compressive resistance for a thrust at (ex, ey), N: the even block, and with slenderness 1.14 A_c − 0.02 (l₀/h) A, at most A_c.</summary>
    public static double Capacity(Working? w, BlockSection section, Concrete concrete, double ex, double ey, double height, in Bow bow)
    {
        double l_0 = w.Given("l_0", 2 * height, Dimension.Length, "effective height of a cantilever");
        double e_i = w.Let("e_i", l_0 / 400, Dimension.SmallLength, slender, "imperfection");
        double e = w.Given("e", bow.Eccentricity(ex, ey), Dimension.Length, "eccentricity the way it bows out");
        w.Let("e_tot", e + e_i, Dimension.Length, slender);
        (double x, double y) = bow.Moved(ex, ey, e_i);
        double A = w.Given("A", section.Plan.Whole.A, Dimension.Area);
        double A_c = w.Given("A_c", PlasticBlock.AreaOf(section.Plan, x, y), Dimension.Area, "greatest even block with its centroid at the thrust", axial);
        double f_cd = Design(w, concrete);
        if (height <= 0)
            return w.Let("N_Rd", A_c * f_cd, Dimension.Force, axial);
        double h = w.Given(bow.Depth, Dimension.Length, "depth of the like solid rectangle, √12 i");
        double Phi = w.Let("Phi", Math.Max(0, Math.Min(A_c / A, 1.14 * A_c / A - 0.02 * l_0 / h)), Dimension.Number, slender);
        return w.Let("N_Rd", A * f_cd * Phi, Dimension.Force, slender);
    }

    /// <summary>Design shear resistance on the pressed area, N: the mean stress may reach f_cvd/1.5.</summary>
    public static double Shear(Working? w, Concrete concrete, double N, double A_c)
    {
        double f_cd = Design(w, concrete);
        double f_ctm = w.Given("f_ctm", concrete.f_ctm, Dimension.Stress, "mean tensile strength", new Source("EN 1992-1-1:2004", "Table 3.1"));
        double gamma_C = concrete.PartialFactor;
        double f_ctd = w.Let("f_ctd", 0.8 * 0.7 * f_ctm / gamma_C, Dimension.Stress, strength);
        double sigma_cp = w.Let("sigma_cp", N / A_c, Dimension.Stress, shear);
        double sigma_lim = w.Let("sigma_lim", f_cd - 2 * Math.Sqrt(f_ctd * (f_ctd + f_cd)), Dimension.Stress, shear);
        double over = w.Let("over", Math.Max(0, sigma_cp - sigma_lim) / 2, Dimension.Stress, shear);
        double f_cvd = w.Let("f_cvd", Math.Sqrt(Math.Max(0, f_ctd * f_ctd + sigma_cp * f_ctd - over * over)), Dimension.Stress, shear);
        return w.Let("V_Rd", f_cvd * A_c / 1.5, Dimension.Force, shear);
    }

    /// <summary>ACI 318: the greater sum of the compression face and of the tension face, and 1.</summary>
    public static (double, double) Aci(Working? w, BlockCut cut)
    {
        const double psi = 6894.757293168;
        double f_c = w.Given("f_c", cut.Material.f_k, Dimension.Stress, "specified strength"), phi = w.Given("phi", 0.60, Dimension.Number, "", aci);
        double N = w.Given("N", cut.N, Dimension.Force, "compression");
        PlanMoments m = cut.Section.Plan.Whole;
        double A_g = w.Given("A_g", m.A, Dimension.Area), h = w.Given("h", cut.Bows.Min(bow => bow.Depth), Dimension.Length, "depth of the like solid rectangle, √12 i");
        double l_c = w.Given("l_c", 2 * cut.FreeHeight.Meters, Dimension.Length, "effective height of a cantilever");
        double bend = w.Given("bend", cut.Section.Plan.Reach(cut.mx / m.XX, cut.my / m.YY), Dimension.Stress, "M/S, both axes");
        double slender = w.Let("slender", Math.Max(0, 1 - l_c / (32 * h) * (l_c / (32 * h))), Dimension.Number, aci);
        double P_n = w.Let("P_n", 0.60 * f_c * A_g * slender, Dimension.Force, aci);
        if (P_n <= 0)
            return (1, 0);
        double f_t = w.Given("f_t", 5 * Math.Sqrt(f_c / psi) * psi, Dimension.Stress, "5 √f′c in psi", aci);
        double pressed = w.Let("pressed", Math.Max(0, N) / (phi * P_n) + bend / (phi * 0.85 * f_c), Dimension.Number, aci, "compression face");
        double pulled = w.Let("pulled", (bend - N / A_g) / (phi * f_t), Dimension.Number, aci, "tension face");
        return (w.Let("u", Math.Max(pressed, pulled), Dimension.Number, aci), 1);
    }

    private static double Design(Working? w, Concrete concrete)
    {
        double f_ck = w.Given("f_ck", concrete.f_k, Dimension.Stress, "cylinder strength", concrete.Source);
        double gamma_C = w.Given("gamma_C", concrete.PartialFactor, Dimension.Number);
        return w.Let("f_cd", 0.8 * f_ck / gamma_C, Dimension.Stress, strength);
    }
}
