namespace StatueFrame.Checks;

/// <summary>Strength of one bolt and of the flat at its hole. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BoltStrength
{
    private static readonly Source en = new("EN 1993-1-8:2005", "Table 3.4");
    private static readonly Source stainless = new("EN 1993-1-4:2006", "6.1 (2), from memory");
    private static readonly Source shearAisc = new("AISC 360-16 and 360-22", "J3.6, Table J3.2");
    private static readonly Source bearingAisc = new("AISC 360-16 J3.10, 360-22 J3.11", "bearing and tear-out, deformation at service load a consideration");

    /// <summary>Shear of one bolt through all its planes, N.</summary>
    public static double Shear(Working? w, Bolt bolt, int planes, BarDesign design)
    {
        double m = w.Given("m", planes, Dimension.Number, "shear planes");
        double f_ub = bolt.Grade.UltimateStrength.Pascals;
        if (design.IsAisc)
        {
            double F_nv = w.Given("F_nv", (bolt.ThreadsInShearPlane ? bolt.Grade.AiscShearThreads : bolt.Grade.AiscShearShank)?.Pascals
                ?? (bolt.ThreadsInShearPlane ? 0.450 : 0.563) * f_ub, Dimension.Stress, "nominal shear strength", bolt.Grade.Source);
            double A_b = w.Given("A_b", bolt.Shank, Dimension.SmallArea, "nominal area");
            double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
            return w.Let("R_v", c * m * F_nv * A_b, Dimension.Force, shearAisc, "shear of a bolt");
        }
        w.Given(f_ub, Dimension.Stress, $"ultimate strength of grade {bolt.Grade.Name}", bolt.Grade.Source);
        double alpha_v = w.Given("alpha_v", bolt.ThreadsInShearPlane ? bolt.Grade.ThreadShearFactor : 0.6, Dimension.Number, "", en);
        double A_v = w.Given("A_v", bolt.ThreadsInShearPlane ? bolt.TensileArea : bolt.Shank, Dimension.SmallArea, "area in the shear plane");
        double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        return w.Let("R_v", m * alpha_v * f_ub * A_v / gammaM2, Dimension.Force, en, "shear of a bolt");
    }

    /// <summary>Tension of one bolt, N.</summary>
    public static double Tension(Working? w, Bolt bolt, BarDesign design)
    {
        double f_ub = bolt.Grade.UltimateStrength.Pascals;
        if (design.IsAisc)
        {
            double F_nt = w.Given("F_nt", bolt.Grade.AiscTension?.Pascals ?? 0.75 * f_ub, Dimension.Stress, "nominal tensile strength", bolt.Grade.Source);
            double A_b = w.Given("A_b", bolt.Shank, Dimension.SmallArea, "nominal area");
            double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
            return w.Let("R_t", c * F_nt * A_b, Dimension.Force, shearAisc, "tension of a bolt");
        }
        w.Given(f_ub, Dimension.Stress, $"ultimate strength of grade {bolt.Grade.Name}", bolt.Grade.Source);
        double A_s = w.Given("A_s", bolt.TensileArea, Dimension.SmallArea, "tensile stress area");
        double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        return w.Let("R_t", 0.9 * f_ub * A_s / gammaM2, Dimension.Force, en, "tension of a bolt");
    }

    /// <summary>Bearing of the flat at one bolt for a force in any direction, N: the lesser of the two along its axes.</summary>
    public static double Bearing(Working? w, BoltedFixing fixing, double width, double t, double f_y, double f_u, BarDesign design)
    {
        Bolt bolt = fixing.Bolt;
        double e_2 = fixing.e_2(width);
        double? p_1 = fixing.Rows > 1 ? fixing.p_1 : null, p_2 = fixing.Columns > 1 ? fixing.p_2 : null;
        if (design.IsAisc)
            return Math.Min(BearingAisc(w, bolt, fixing.e_1, p_1, t, f_u, design), BearingAisc(w, bolt, e_2, p_2, t, f_u, design));
        if (design.Metal == MetalKind.StainlessSteel)
        {
            w.Given(f_u, Dimension.Stress, "ultimate strength");
            w.Given(f_y, Dimension.Stress, "proof strength");
            f_u = w.Let("f_u", Math.Min(f_u, 0.5 * f_y + 0.6 * f_u), Dimension.Stress, stainless, "reduced for stainless steel");
        }
        return Math.Min(
            BearingEn(w, "along the bar", bolt, fixing.e_1, p_1, e_2, p_2, t, f_u, design.GammaM2),
            BearingEn(w, "across the bar", bolt, e_2, p_2, fixing.e_1, p_1, t, f_u, design.GammaM2));
    }

    /// <summary>EN 1993-1-8, Table 3.4: F_b,Rd = k₁ α_b f_u d t/γ_M2.</summary>
    public static double BearingEn(
        Working? w, string direction, Bolt bolt, double e_1, double? pitch, double e_2, double? gauge, double t, double f_u, double gammaM2)
    {
        using IDisposable? part = w?.Part($"Bearing {direction}");
        (double d, double d_0, double f_ub) = (bolt.d, bolt.d_0, bolt.Grade.UltimateStrength.Pascals);
        w.Given(d, Dimension.SmallLength, "bolt");
        w.Given(d_0, Dimension.SmallLength, "hole");
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(f_u, Dimension.Stress, "ultimate strength of the flat");
        w.Given(f_ub, Dimension.Stress, "ultimate strength of the bolt");
        w.Given(e_1, Dimension.SmallLength, "end distance");
        w.Given(e_2, Dimension.SmallLength, "edge distance");
        double alpha_d = w.Let("alpha_d", e_1 / (3 * d_0), Dimension.Number, en);
        double k_1 = w.Let("k_1", Math.Min(2.5, 2.8 * e_2 / d_0 - 1.7), Dimension.Number, en);
        if (pitch is { } p_1)
        {
            w.Given(p_1, Dimension.SmallLength, "pitch");
            alpha_d = w.Let("alpha_d", Math.Min(alpha_d, p_1 / (3 * d_0) - 0.25), Dimension.Number, en);
        }
        if (gauge is { } p_2)
        {
            w.Given(p_2, Dimension.SmallLength, "gauge");
            k_1 = w.Let("k_1", Math.Min(k_1, 1.4 * p_2 / d_0 - 1.7), Dimension.Number, en);
        }
        double alpha_b = w.Let("alpha_b", Math.Min(1, Math.Min(alpha_d, f_ub / f_u)), Dimension.Number, en);
        w.Given(gammaM2, Dimension.Number);
        return w.Let("F_b", Math.Max(0, k_1) * alpha_b * f_u * d * t / gammaM2, Dimension.Force, en, "bearing of the flat at a bolt");
    }

    private static double BearingAisc(Working? w, Bolt bolt, double e, double? pitch, double t, double F_u, BarDesign design)
    {
        double d = w.Given("d", bolt.d, Dimension.SmallLength, "bolt"), d_h = w.Given("d_h", bolt.d_0, Dimension.SmallLength, "hole");
        double l_c = w.Given("l_c", Math.Max(0, Math.Min(e - d_h / 2, pitch - d_h ?? double.PositiveInfinity)), Dimension.SmallLength, "clear distance");
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(F_u, Dimension.Stress, "ultimate strength of the flat");
        double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
        return w.Let("R_b", c * Math.Min(1.2 * l_c * t * F_u, 2.4 * d * t * F_u), Dimension.Force, bearingAisc, "bearing and tear-out at a bolt");
    }
}
