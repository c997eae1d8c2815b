namespace StatueFrame.Checks;

/// <summary>Nominal strengths of flats by AISC 360-16; 360-22 gives the same. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class Aisc360
{
    private static readonly Source compression = new("AISC 360-16 and 360-22", "E3");
    private static readonly Source flexure = new("AISC 360-16 and 360-22", "F11");

    /// <summary>Critical stress of a strut, E3, Pa.</summary>
    /// <param name="w">Listener.</param>
    /// <param name="slenderness">KL/r.</param>
    /// <param name="E">Young's modulus, Pa.</param>
    /// <param name="F_y">Yield strength, Pa.</param>
    public static double CriticalStress(Working? w, double slenderness, double E, double F_y)
    {
        w.Given(slenderness, Dimension.Number, "KL/r");
        w.Given(E, Dimension.Stress, "Young's modulus");
        w.Given(F_y, Dimension.Stress, "yield strength");
        double F_e = w.Let("F_e", Math.PI * Math.PI * E / (slenderness * slenderness), Dimension.Stress, compression);
        return w.Let("F_cr", F_y <= 2.25 * F_e ? Math.Pow(0.658, F_y / F_e) * F_y : 0.877 * F_e, Dimension.Stress, compression);
    }

    /// <summary>Nominal moment about the strong axis with lateral-torsional buckling, F11.2, N·m.</summary>
    /// <param name="w">Listener.</param>
    /// <param name="d">Depth (the width of the flat), m.</param>
    /// <param name="t">Thickness, m.</param>
    /// <param name="L_b">Unbraced length, m.</param>
    /// <param name="C_b">Moment gradient factor.</param>
    /// <param name="E">Young's modulus, Pa.</param>
    /// <param name="F_y">Yield strength, Pa.</param>
    public static double StrongMoment(Working? w, double d, double t, double L_b, double C_b, double E, double F_y)
    {
        w.Given(E, Dimension.Stress, "Young's modulus");
        w.Given(F_y, Dimension.Stress, "yield strength");
        w.Given(d, Dimension.SmallLength, "depth");
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(L_b, Dimension.Length, "unbraced length");
        w.Given(C_b, Dimension.Number, "moment gradient factor");
        double M_y = w.Let("M_y", F_y * t * d * d / 6, Dimension.Moment, flexure);
        double M_p = w.Let("M_p", 1.5 * M_y, Dimension.Moment, flexure);
        double s = w.Let("s", L_b * d / (t * t), Dimension.Number, flexure);
        if (s <= 0.08 * E / F_y)
            return M_p;
        return s <= 1.9 * E / F_y
            ? w.Let("M_n", Math.Min(M_p, C_b * (1.52 - 0.274 * s * F_y / E) * M_y), Dimension.Moment, flexure)
            : w.Let("M_n", Math.Min(M_p, 1.9 * E * C_b / s * (t * d * d / 6)), Dimension.Moment, flexure);
    }
}
