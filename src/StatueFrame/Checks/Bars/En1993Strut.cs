namespace StatueFrame.Checks;

/// <summary>Flats as struts and beam-columns by EN 1993-1-1, 6.3. SI units; compression is positive here.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class En1993Strut
{
    private static readonly Source strut = Source.En1993_1_1("6.3.1.1 (6.47), 6.3.1.3 (6.50)");
    private static readonly Source lateral = Source.En1993_1_1("6.3.2.2, curve d; M_cr = π √(EI GJ)/L of a rectangle (Timoshenko and Gere)");
    private static readonly Source interaction = Source.En1993_1_1("6.3.3 (6.61), (6.62)");
    /// <summary>The rule for stainless steel.</summary>
    public static readonly Source Stainless = new("EN 1993-1-4:2006", "5.5.2 (5.13) to (5.16), from memory");
    private static readonly Source factors = Source.En1993_1_1("Annex B, Tables B.1 to B.3, I-section rows");

    /// <summary>Reduced strength of the strut about one axis, N.</summary>
    public static double Resistance(Working? w, string axis, in StrutAxis a, double E, double f_y, BucklingCurve curve, double gammaM1) =>
        Reduction(w, axis, a, E, f_y, curve).Chi * a.Depth * a.Across * f_y / gammaM1;

    private static (double Chi, double Lambda) Reduction(Working? w, string axis, in StrutAxis a, double E, double f_y, BucklingCurve curve)
    {
        using IDisposable? part = w?.Part($"Buckling about the {axis} axis");
        (double A, double L_cr) = (a.Depth * a.Across, a.EffectiveLength);
        w.Given(A, Dimension.SmallArea, "area");
        w.Given(E, Dimension.Stress, "Young's modulus");
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(L_cr, Dimension.Length, "effective length");
        double I = w.Given("I", a.I, Dimension.AreaMomentOfInertia);
        double N_cr = w.Let("N_cr", Math.PI * Math.PI * E * I / (L_cr * L_cr), Dimension.Force, strut);
        double lambda = w.Let("lambda", Math.Sqrt(A * f_y / N_cr), Dimension.Number, strut, "slenderness");
        return (curve.Reduction(w, lambda), lambda);
    }

    /// <summary>The greater of (6.61) and (6.62), or of the two sums of EN 1993-1-4 for stainless steel.</summary>
    public static double Interaction(
        Working? w, double N, in StrutAxis weak, in StrutAxis strong, double L, bool sway, double E, double G, double f_y, BarDesign design)
    {
        (BucklingCurve curve, double gammaM1) = (design.CurveOrDefault, design.GammaM1);
        double A = weak.Depth * weak.Across;
        (double chi_y, double lambda_y) = Reduction(w, "strong", strong, E, f_y, curve);
        (double chi_z, double lambda_z) = Reduction(w, "weak", weak, E, f_y, curve);
        double chi_LT = LateralReduction(w, weak, strong, L, E, G, f_y);
        using IDisposable? part = w?.Part("Interaction; y is the strong axis, z the weak one");
        (double M_y, double M_z) = (strong.GreatestMoment, weak.GreatestMoment);
        w.Given(N, Dimension.Force, "compression");
        w.Given(M_y, Dimension.Moment, "greatest moment about the strong axis");
        w.Given(M_z, Dimension.Moment, "greatest moment about the weak axis");
        w.Given(chi_y, Dimension.Number);
        w.Given(chi_z, Dimension.Number);
        w.Given(chi_LT, Dimension.Number);
        w.Given(A, Dimension.SmallArea, "area");
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(gammaM1, Dimension.Number);
        double N_Rd = w.Let("N_Rd", A * f_y / gammaM1, Dimension.Force, interaction);
        double W_y = w.Given("W_y", strong.Wpl, Dimension.SectionModulus, "plastic modulus"), W_z = w.Given("W_z", weak.Wpl, Dimension.SectionModulus, "plastic modulus");
        double M_yRd = w.Let("M_yRd", W_y * f_y / gammaM1, Dimension.Moment, interaction);
        double M_zRd = w.Let("M_zRd", W_z * f_y / gammaM1, Dimension.Moment, interaction);
        double n_y = w.Let("n_y", N / (chi_y * N_Rd), Dimension.Number, interaction);
        double n_z = w.Let("n_z", N / (chi_z * N_Rd), Dimension.Number, interaction);
        if (design.Metal == MetalKind.StainlessSteel)
        {
            double k_y = w.Given("k_y", StainlessFactor(lambda_y, n_y), Dimension.Number, "", Stainless);
            double k_z = w.Given("k_z", StainlessFactor(lambda_z, n_z), Dimension.Number, "", Stainless);
            double u_N = w.Let("u_N", Math.Max(n_y, n_z) + k_y * M_y / M_yRd + k_z * M_z / M_zRd, Dimension.Number, Stainless);
            double u_LT = w.Let("u_LT", n_z + M_y / (chi_LT * M_yRd) + k_z * M_z / M_zRd, Dimension.Number, Stainless);
            return w.Let("u", Math.Max(u_N, u_LT), Dimension.Number, Stainless);
        }
        w.Given(lambda_y, Dimension.Number, "slenderness");
        w.Given(lambda_z, Dimension.Number, "slenderness");
        double C_my = w.Given("C_my", MomentFactor(strong.MomentRatio, sway), Dimension.Number, "equivalent uniform moment", factors);
        double C_mz = w.Given("C_mz", MomentFactor(weak.MomentRatio, sway), Dimension.Number, "equivalent uniform moment", factors);
        double k_yy = w.Let("k_yy", C_my * (1 + Math.Min(0.8, Math.Max(0, lambda_y - 0.2)) * n_y), Dimension.Number, factors);
        double k_zz = w.Let("k_zz", C_mz * (1 + Math.Min(1.4, Math.Max(0, 2 * lambda_z - 0.6)) * n_z), Dimension.Number, factors);
        double k_yz = w.Let("k_yz", 0.6 * k_zz, Dimension.Number, factors);
        double k_zy = w.Given("k_zy", Torsional(lambda_z, n_z, C_my), Dimension.Number, "with lateral-torsional deformation", factors);
        double u_61 = w.Let("u_61", n_y + k_yy * M_y / (chi_LT * M_yRd) + k_yz * M_z / M_zRd, Dimension.Number, interaction);
        double u_62 = w.Let("u_62", n_z + k_zy * M_y / (chi_LT * M_yRd) + k_zz * M_z / M_zRd, Dimension.Number, interaction);
        return w.Let("u", Math.Max(u_61, u_62), Dimension.Number, interaction);
    }

    /// <summary>Annex B, Table B.3: 0.6 + 0.4 ψ ≥ 0.4 for linear moments, 0.9 for members that sway.</summary>
    public static double MomentFactor(double psi, bool sway) => sway ? 0.9 : Math.Max(0.4, 0.6 + 0.4 * psi);

    /// <summary>k = 1 + 2(λ̄ − 0.5)n, at least 1.2 and at most 1.2 + 2n; 1 without compression.</summary>
    public static double StainlessFactor(double lambda, double n) => n > 0 ? Math.Clamp(1 + 2 * (lambda - 0.5) * n, 1.2, 1.2 + 2 * n) : 1;

    private static double Torsional(double lambda, double n, double C_mLT)
    {
        double drop = 0.1 * n / (C_mLT - 0.25);
        double k = lambda < 0.4 ? Math.Min(0.6 + lambda, 1 - lambda * drop) : 1 - Math.Min(1, lambda) * drop;
        return Math.Max(0, k);
    }

    private static double LateralReduction(Working? w, in StrutAxis weak, in StrutAxis strong, double L, double E, double G, double f_y)
    {
        using IDisposable? part = w?.Part("Lateral-torsional buckling");
        double I_z = w.Given("I_z", weak.I, Dimension.AreaMomentOfInertia);
        double J = w.Given("J", SolidRectangle.TorsionConstant(weak.Across, weak.Depth), Dimension.AreaMomentOfInertia, "torsion constant");
        double W_pl = w.Given("W_pl", strong.Wpl, Dimension.SectionModulus, "plastic modulus");
        w.Given(E, Dimension.Stress, "Young's modulus");
        w.Given(G, Dimension.Stress, "shear modulus");
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(L, Dimension.Length, "length between points held against twist");
        double M_cr = w.Let("M_cr", Math.PI / L * Math.Sqrt(E * I_z * G * J), Dimension.Moment, lateral);
        double lambda = w.Let("lambda", Math.Sqrt(W_pl * f_y / M_cr), Dimension.Number, lateral);
        return BucklingCurve.D.Reduction(w, lambda);
    }
}
