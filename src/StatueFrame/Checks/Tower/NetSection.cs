namespace StatueFrame.Checks;

/// <summary>What holes leave of a member in tension. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class NetSection
{
    private static readonly Source en = new("EN 1993-1-1:2005 6.2.2.2 and 6.2.3, EN 1993-1-8:2005 3.10.3 (3.11) to (3.13)");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "B4.3b, D2, D3, Table D3.1 cases 2 and 8");

    /// <summary>Net area across the line of holes, m².</summary>
    public static double Area(Working? w, LoadedMember m, BarDesign design)
    {
        double A = m.p.A;
        if (m.Connection is not { } joint)
            return A;
        double d_h = design.IsAisc
            ? w.Given("d_h", joint.d_0 + 0.0016, Dimension.SmallLength, "hole and 1/16 in", aisc)
            : w.Given("d_h", joint.d_0, Dimension.SmallLength, "hole", en);
        double n_h = w.Given("n_h", joint.Lines, Dimension.Number, "holes across"), t = w.Given("t", ConnectionChecks.Thickness(m.Section), Dimension.SmallLength, "thickness at the holes");
        return w.Let("A_net", Math.Max(0, A - n_h * d_h * t), Dimension.SmallArea, design.IsAisc ? aisc : en, "net area");
    }

    /// <summary>Rupture by EN 1993, N.</summary>
    public static double RuptureEn(Working? w, LoadedMember m, BarDesign design, double A_net)
    {
        MemberConnection joint = m.Connection!;
        double f_u = w.Given("f_u", m.f_u, Dimension.Stress, "ultimate strength"), gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        if (m.Section is not AngleBar angle || joint.BothLegs)
            return w.Let("N_u", 0.9 * A_net * f_u / gammaM2, Dimension.Force, en, "rupture of the net section");
        double d_0 = w.Given("d_0", joint.d_0, Dimension.SmallLength, "hole"), t = angle.Thickness.Meters;
        if (joint.InLine == 1)
        {
            double e_2 = w.Given("e_2", joint.e_2, Dimension.SmallLength, "edge distance");
            return w.Let("N_u", Math.Max(0, 2 * (e_2 - 0.5 * d_0) * t * f_u / gammaM2), Dimension.Force, en, "one fastener in one leg, (3.11)");
        }
        double p_1 = w.Given("p_1", joint.p_1, Dimension.SmallLength, "pitch");
        double x = Math.Clamp((p_1 / d_0 - 2.5) / 2.5, 0, 1);
        double beta = joint.InLine == 2
            ? w.Given("beta", 0.4 + 0.3 * x, Dimension.Number, "two fasteners, Table 3.8", en)
            : w.Given("beta", 0.5 + 0.2 * x, Dimension.Number, "three fasteners or more, Table 3.8", en);
        return w.Let("N_u", beta * A_net * f_u / gammaM2, Dimension.Force, en, "one leg, (3.12), (3.13)");
    }

    /// <summary>Rupture by AISC 360, N.</summary>
    public static double RuptureAisc(Working? w, LoadedMember m, BarDesign design, double A_net)
    {
        MemberConnection joint = m.Connection!;
        double c_u = w.Given("c_u", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω of rupture"), F_u = w.Given("F_u", m.f_u, Dimension.Stress, "ultimate strength");
        double U = w.Given("U", 1, Dimension.Number, "shear lag: none");
        if (m.Section is AngleBar angle && !joint.BothLegs)
        {
            double x = w.Given("x", angle.CentroidAlongShortLeg.Meters, Dimension.SmallLength, "centroid off the joined, longer leg");
            double l = w.Given("l", (joint.InLine - 1) * joint.p_1, Dimension.SmallLength, "length of the joint");
            double case8 = w.Given("case8", joint.InLine >= 4 ? 0.80 : joint.InLine == 3 ? 0.60 : 0, Dimension.Number, "Table D3.1, case 8", aisc);
            U = l > 0 ? w.Let("U", Math.Max(case8, Math.Max(0, 1 - x / l)), Dimension.Number, aisc, "shear lag")
                : w.Given("U", OutstandShare(angle), Dimension.Number, "one fastener: the share of the joined leg", aisc);
        }
        return w.Let("P_u", c_u * F_u * U * A_net, Dimension.Force, aisc, "rupture of the net section");
    }

    private static double OutstandShare(AngleBar angle)
    {
        double a = angle.LongLeg.Meters, b = angle.ShortLeg.Meters, t = angle.Thickness.Meters;
        return a * t / ((a + b - t) * t);
    }
}
