namespace StatueFrame.Checks;

/// <summary>What the throat of a fillet weld bears, whatever way the force in it points. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FilletThroat
{
    private static readonly Source en = new("EN 1993-1-8:2005", "4.5.3.3, (4.2) to (4.4)");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J2.4, 0.60 F_EXX; φ = 0.75, Ω = 2");

    /// <summary>The rule for a design.</summary>
    public static Source Rule(BarDesign design) => design.IsAisc ? aisc : en;

    /// <summary>Design strength, Pa: f_u/(√3 β_w γ_M2) with β_w at its greatest, or 0.60 F_EXX of the usual electrode.</summary>
    /// <param name="w">Takes the steps.</param>
    /// <param name="ultimate">Ultimate strength of what is joined, Pa.</param>
    /// <param name="part">Whose it is, in words.</param>
    /// <param name="design">The rules.</param>
    public static double Strength(Working? w, double ultimate, string part, BarDesign design)
    {
        if (design.IsAisc)
        {
            double F_EXX = w.Given("F_EXX", WeldedTubeJoint.UsualElectrode.Pascals, Dimension.Stress, "electrode, 70 ksi"), c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
            return w.Let("f_w", c * 0.6 * F_EXX, Dimension.Stress, aisc);
        }
        double f_u = w.Given("f_u", ultimate, Dimension.Stress, part);
        double beta_w = w.Given("beta_w", 1.0, Dimension.Number, "correlation factor, its greatest"), gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        return w.Let("f_vw", f_u / (Math.Sqrt(3) * beta_w * gammaM2), Dimension.Stress, en);
    }
}
