namespace StatueFrame.Checks;

/// <summary>Strength and stability of members of towers and limbs.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Steel by EN 1993 or AISC 360; wrought iron and other metals that no code
/// covers by allowable stress, with the strut formula of Rankine and Gordon.
/// </remarks>
public static class MemberChecks
{
    private static readonly Source tensionEn = new("EN 1993-1-1:2005 6.2.3, EN 1993-1-8:2005 3.10.3", "yield of the gross, rupture of the net section; angles joined by one leg");
    private static readonly Source tensionAisc = new("AISC 360-16 and 360-22", "D2, D3; φ = 0.9 and 0.75, Ω = 1.67 and 2.00");
    private static readonly Source allowable = Source.Assumed("members: allowable stress is a fraction of the yield strength, on the net section in tension");
    private static readonly Source combinedEn = Source.En1993_1_1("6.2.1 (7), 6.2.6, 6.2.7 (9), 6.2.8, 6.3.3 with Annex B");
    private static readonly Source combinedAisc = new("AISC 360-16 and 360-22", "H1.1; H3.2 with torsion");
    private static readonly Source singleAngle = new("AISC 360-16 and 360-22", "H2, from memory");
    private static readonly Source slendernessEn = new("common practice", "slenderness of towers' members: legs 120, braces 180; no source");
    private static readonly Source slendernessAisc = new("AISC 360-16 and 360-22", "E2 and D1 user notes: 200 in compression, 300 in tension");

    /// <summary>
    /// Compression against the resistance to buckling: flexural about each principal axis, torsional and
    /// flexural-torsional for angles, with local buckling. Zero demand for a member in tension.
    /// </summary>
    /// <param name="member">The member.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Compression(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("compression", "buckling of a member in compression");
        Source source = design.Code switch { DesignCode.En1993 => MemberStrut.En, DesignCode.AllowableStress => MemberStrut.RankineGordon, _ => MemberStrut.Aisc };
        if (design.Uncovered is { } uncovered)
            return Check.NotChecked(subject, uncovered, source);
        (double? resistance, string reason) = MemberStrut.Resistance(null, member, design);
        if (resistance is null)
            return Check.NotChecked(subject, reason, source);
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            TellMember(w, member);
            double N = w.Given("N", Math.Max(0, -member.N), Dimension.Force, "compression");
            return (N, MemberStrut.Resistance(w, member, design).Resistance!.Value);
        });
    }

    /// <summary>
    /// Tension against yield of the gross and rupture of the net section, with shear lag of angles joined by one leg.
    /// Without a connection the section is taken without holes. Zero demand for a member in compression.
    /// </summary>
    /// <param name="member">The member.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Tension(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("tension", "member in tension");
        Source source = design.Code switch { DesignCode.En1993 => tensionEn, DesignCode.AllowableStress => allowable, _ => tensionAisc };
        return design.Uncovered is { } uncovered
            ? Check.NotChecked(subject, uncovered, source)
            : Check.Of(subject, Dimension.Force, source, w =>
            {
                if (member.Note.Length > 0)
                    w?.Note(member.Note);
                double N = w.Given("N", Math.Max(0, member.N), Dimension.Force, "tension");
                return (N, TensionResistance(w, member, design));
            });
    }

    /// <summary>
    /// Axial force with bending about both axes, shear and torsion, of a tube, a rectangular tube or a solid bar: section
    /// and stability together. Moments are those of first-order theory; the rule or <see cref="LoadedMember.Amplification"/>
    /// adds what sway does. Single angles bend about their principal axes, by EN 1993 elastically (that they may buckle sideways in
    /// bending between their joints is not counted), by AISC 360 with F10 and H2.
    /// </summary>
    /// <param name="member">The member.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Bending(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("bending", "member under axial force, bending, shear and torsion");
        Source source = design.Code switch { DesignCode.En1993 => combinedEn, DesignCode.AllowableStress => allowable, _ => combinedAisc };
        string? reason = design.Uncovered
            ?? (design.Code == DesignCode.En1993 && MemberSlenderness.Class(member.Section, member.f_y) == 4 ? "the section is of class 4: EN 1993-1-5 and 1-6 govern" : null)
            ?? (design.IsAisc && MemberSection.MomentsAisc(null, member) is null ? "the walls are slenderer than AISC F7 and F8 reach" : null)
            ?? (design.Code != DesignCode.AllowableStress && MemberStrut.Resistance(null, member, design) is (null, var why) ? why : null);
        if (reason is not null)
            return Check.NotChecked(subject, reason, source);
        return Check.Of(subject, Dimension.Number, source, w =>
        {
            TellMember(w, member);
            return design.Code switch
            {
                DesignCode.En1993 => (CombinedEn(w, member, design), 1),
                DesignCode.AllowableStress => (CombinedElastic(w, member, design), 1),
                _ => (CombinedAisc(w, member, design), 1),
            };
        });
    }

    /// <summary>Slenderness L_c/i about the weak axis against what is customary: a warning in the form of a check.</summary>
    /// <param name="member">The member.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Slenderness(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("slenderness", "slenderness of a member");
        double limit = design.IsAisc ? (member.N < 0 ? 200 : 300) : member.IsLeg ? 120 : 180;
        return Check.Of(subject, Dimension.Number, design.IsAisc ? slendernessAisc : slendernessEn, w =>
        {
            double L = w.Given("L", member.L, Dimension.Length, "length"), k = w.Given("k", member.WeakFactor, Dimension.Number, "effective length factor");
            double i = w.Given("i", Math.Sqrt(member.p.Iz / member.p.A), Dimension.SmallLength, "radius of gyration, weak axis");
            return (w.Let("slenderness", k * L / i, Dimension.Number), limit);
        });
    }

    private static void TellMember(Working? w, LoadedMember m)
    {
        if (w is null)
            return;
        if (m.When.Length > 0)
            w.Note($"Worst of all states: {m.When}.");
        if (m.Note.Length > 0)
            w.Note(m.Note);
        w.Note($"{m.Section}, {m.Material}.");
        w.Given("L", m.L, Dimension.Length, "length");
        if (m.CriticalForce is null)
        {
            w.Given("K_weak", m.WeakFactor, Dimension.Number, "effective length factor, weak axis");
            w.Given("K_strong", m.StrongFactor, Dimension.Number, "effective length factor, strong axis");
        }
    }

    private static double TensionResistance(Working? w, LoadedMember m, BarDesign design)
    {
        double A = w.Given("A", m.p.A, Dimension.SmallArea, "gross area"), f_y = w.Given("f_y", m.f_y, Dimension.Stress, "yield strength");
        double A_net = NetSection.Area(w, m, design);
        switch (design.Code)
        {
            case DesignCode.AllowableStress:
                double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress");
                return w.Let("N_allow", fraction * f_y * A_net, Dimension.Force, allowable);
            case DesignCode.En1993:
                double gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number);
                double N_pl = w.Let("N_pl", A * f_y / gammaM0, Dimension.Force, tensionEn, "yield of the gross section");
                if (m.Connection is null)
                    return N_pl;
                double N_u = NetSection.RuptureEn(w, m, design, A_net);
                return w.Let("N_t", Math.Min(N_pl, N_u), Dimension.Force, tensionEn);
            default:
                double c = w.Given("c", design.Aisc(0.9, 1.67), Dimension.Number, "φ or 1/Ω");
                double P_y = w.Let("P_y", c * f_y * A, Dimension.Force, tensionAisc, "yield of the gross section");
                if (m.Connection is null)
                    return P_y;
                double P_u = NetSection.RuptureAisc(w, m, design, A_net);
                return w.Let("P_t", Math.Min(P_y, P_u), Dimension.Force, tensionAisc);
        }
    }

    private static double CombinedEn(Working? w, LoadedMember m, BarDesign design)
    {
        double gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number), gammaM1 = w.Given("gammaM1", design.GammaM1, Dimension.Number);
        (double M_y, double M_z) = MemberSection.MomentsEn(w, m);
        (double A_v, double W_t) = MemberSection.ShearAndTorsion(m.Section);
        double N = w.Given("N", Math.Abs(m.N), Dimension.Force, m.N < 0 ? "compression" : "tension"), A = w.Given("A", m.p.A, Dimension.SmallArea);
        double M_yEd = w.Given("M_yEd", m.StrongMoment.NewtonMeters, Dimension.Moment), M_zEd = w.Given("M_zEd", m.WeakMoment.NewtonMeters, Dimension.Moment);
        double V = w.Given("V", m.Shear.Newtons, Dimension.Force, "shear"), T = w.Given("T", m.Torsion.NewtonMeters, Dimension.Moment, "torsion");
        w.Given(A_v, Dimension.SmallArea, "shear area");
        w.Given(W_t, Dimension.SectionModulus, "torsion modulus");
        double f_y = m.f_y, k_II = w.Given("k_II", m.Amplification, Dimension.Number, "second-order amplification of moments");
        double tau = w.Let("tau", T / W_t, Dimension.Stress, combinedEn, "torsion");
        double f_v = w.Let("f_v", f_y / Math.Sqrt(3) / gammaM0, Dimension.Stress, combinedEn, "yield in shear");
        double v = w.Let("v", V / (A_v * f_v) + tau / f_v, Dimension.Number, combinedEn, "shear and torsion");
        // Shear beyond half its resistance takes from the yield strength that bending finds: 6.2.8 (3).
        double rho = w.Let("rho", v <= 0.5 ? 0 : Math.Min(1, (2 * v - 1) * (2 * v - 1)), Dimension.Number, combinedEn);
        double bent = w.Let("bent", k_II * (M_yEd / M_y + M_zEd / M_z) * gammaM0, Dimension.Number, combinedEn);
        double section = rho < 1 ? w.Let("section", (N * gammaM0 / (A * f_y) + bent) / (1 - rho), Dimension.Number, combinedEn) : w.Let("section", 2 * v, Dimension.Number, combinedEn);
        double u = w.Let("u", Math.Max(v, section), Dimension.Number, combinedEn, "cross-section");
        if (m.N >= 0)
            return u;
        double N_b = MemberStrut.Resistance(w, m, design).Resistance!.Value;
        double n = w.Let("n", N / N_b, Dimension.Number, combinedEn);
        double N_cr = m.CriticalForce?.Newtons ?? Math.PI * Math.PI * m.E * m.p.Iz / Math.Pow(m.WeakFactor * m.L, 2);
        double lambda = w.Given("lambda", Math.Sqrt(A * f_y / N_cr), Dimension.Number, "slenderness about the weaker axis");
        int sectionClass = MemberSlenderness.Class(m.Section, f_y);
        double k = sectionClass <= 2
            ? w.Let("k", 0.9 * (1 + Math.Min(0.8, Math.Max(0, lambda - 0.2)) * n), Dimension.Number, combinedEn, "Annex B, C_m = 0.9 for sway")
            : w.Let("k", 0.9 * (1 + Math.Min(0.6, 0.6 * lambda) * n), Dimension.Number, combinedEn, "Annex B, C_m = 0.9 for sway");
        // No reduction for the second axis: round tubes have one resistance in all directions.
        double member = w.Let("member", n + k * (M_yEd / M_y + M_zEd / M_z) * gammaM1, Dimension.Number, combinedEn, "stability");
        return w.Let("u", Math.Max(u, member), Dimension.Number, combinedEn);
    }

    private static double CombinedAisc(Working? w, LoadedMember m, BarDesign design)
    {
        double c = w.Given("c", design.Aisc(0.9, 1.67), Dimension.Number, "φ or 1/Ω");
        (double M_ny, double M_nz) = MemberSection.MomentsAisc(w, m)!.Value;
        double P_c = m.N < 0 ? MemberStrut.Resistance(w, m, design).Resistance!.Value : w.Given("P_c", c * m.f_y * m.p.A, Dimension.Force, "yield in tension");
        (double A_v, double W_t) = MemberSection.ShearAndTorsion(m.Section);
        double P = w.Given("P", Math.Abs(m.N), Dimension.Force, m.N < 0 ? "compression" : "tension");
        w.Given(P_c, Dimension.Force, "available axial strength");
        double B = w.Given("B", m.Amplification, Dimension.Number, "second-order amplification of moments");
        double M_y = w.Given("M_y", m.StrongMoment.NewtonMeters, Dimension.Moment), M_z = w.Given("M_z", m.WeakMoment.NewtonMeters, Dimension.Moment);
        double V = w.Given("V", m.Shear.Newtons, Dimension.Force, "shear"), T = w.Given("T", m.Torsion.NewtonMeters, Dimension.Moment, "torsion");
        w.Given(A_v, Dimension.SmallArea, "shear area");
        w.Given(W_t, Dimension.SectionModulus, "torsion modulus");
        double p = w.Let("p", P / P_c, Dimension.Number, combinedAisc);
        // AISC adds the moments of round tubes by vector; adding them is safe.
        double bent = w.Let("bent", B * (M_y / (c * M_ny) + M_z / (c * M_nz)), Dimension.Number, combinedAisc);
        double F_v = w.Given("F_v", 0.6 * m.f_y, Dimension.Stress, "shear yield, 0.6 F_y");
        double t = w.Let("t", T / (c * F_v * W_t), Dimension.Number, combinedAisc);
        double s = w.Let("s", V / (c * F_v * A_v), Dimension.Number, combinedAisc);
        double u = m.Section is AngleBar ? w.Let("u", p + bent + t, Dimension.Number, singleAngle, "(H2-1), torsion added")
            : t <= 0.2
            ? w.Let("u", p >= 0.2 ? p + 8.0 / 9 * bent : p / 2 + bent, Dimension.Number, combinedAisc)
            : w.Let("u", p + bent + (s + t) * (s + t), Dimension.Number, combinedAisc, "with torsion, (H3-6)");
        return w.Let("u", Math.Max(u, s + t), Dimension.Number, combinedAisc);
    }

    private static double CombinedElastic(Working? w, LoadedMember m, BarDesign design)
    {
        double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress"), f_y = w.Given("f_y", m.f_y, Dimension.Stress, "yield strength");
        (double A_v, double W_t) = MemberSection.ShearAndTorsion(m.Section);
        double N_allow = m.N < 0 ? MemberStrut.Resistance(w, m, design).Resistance!.Value : fraction * f_y * m.p.A;
        double k_II = w.Given("k_II", m.Amplification, Dimension.Number, "second-order amplification of moments");
        double n = w.Given("n", Math.Abs(m.N) / N_allow, Dimension.Number, "axial force over allowable");
        double W_y = w.Given("W_y", m.p.Wy, Dimension.SectionModulus), W_z = w.Given("W_z", m.p.Wz, Dimension.SectionModulus);
        double M_y = w.Given("M_y", m.StrongMoment.NewtonMeters, Dimension.Moment), M_z = w.Given("M_z", m.WeakMoment.NewtonMeters, Dimension.Moment);
        double sigma = w.Let("sigma", k_II * (M_y / W_y + M_z / W_z), Dimension.Stress, allowable, "bending");
        double tau = w.Given("tau", m.Shear.Newtons / A_v + m.Torsion.NewtonMeters / W_t, Dimension.Stress, "shear and torsion");
        double normal = w.Let("normal", n + sigma / (fraction * f_y), Dimension.Number, allowable);
        return w.Let("u", Math.Sqrt(normal * normal + 3 * (tau / (fraction * f_y)) * (tau / (fraction * f_y))), Dimension.Number, allowable, "von Mises");
    }
}
