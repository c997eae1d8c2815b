using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>What the throat of a fillet weld bears, whatever way the force in it points. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FilletThroat
{
    private static readonly Source en = new("EN 1993-1-8:2005", "4.5.3.3, (4.2) to (4.4)");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J2.4, 0.60 F_EXX; φ = 0.75, Ω = 2");

    private static readonly Source filler = new("EN 1993-1-8:2005", "4.2 (2): the filler no weaker than what it joins; a weaker one counts in its place");

    /// <summary>What is taken for an electrode under AISC when none is given.</summary>
    public static readonly Pressure UsualElectrode = Pressure.FromKilopoundsForcePerSquareInch(70);

    /// <summary>The rule for a design.</summary>
    public static Source Rule(BarDesign design) => design.IsAisc ? aisc : en;

    /// <summary>Design strength, Pa: f_u/(√3 β_w γ_M2), or 0.60 F_EXX.</summary>
    /// <param name="w">Takes the steps.</param>
    /// <param name="ultimate">Ultimate strength of what is joined, Pa.</param>
    /// <param name="part">Whose it is, in words.</param>
    /// <param name="design">The rules.</param>
    /// <param name="correlation">β_w; its greatest unless given.</param>
    /// <param name="electrode">Strength of the electrode; null as in <see cref="WeldedTubeJoint.ElectrodeStrength"/>.</param>
    public static double Strength(Working? w, double ultimate, string part, BarDesign design, double correlation = 1, Pressure? electrode = null)
    {
        if (design.IsAisc)
            return OfElectrode(w, electrode, design);
        double f_u = Ultimate(w, ultimate, part, electrode);
        double beta_w = w.Given("beta_w", correlation, Dimension.Number, "correlation factor"), gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        return w.Let("f_vw", f_u / (Math.Sqrt(3) * beta_w * gammaM2), Dimension.Stress, en);
    }

    /// <summary>Design strength by AISC, Pa.</summary>
    public static double OfElectrode(Working? w, Pressure? electrode, BarDesign design)
    {
        double F_EXX = w.Given("F_EXX", (electrode ?? UsualElectrode).Pascals, Dimension.Stress, electrode is null ? "electrode, 70 ksi" : "electrode"), c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
        return w.Let("f_w", c * 0.6 * F_EXX, Dimension.Stress, aisc);
    }

    /// <summary>Ultimate strength of what is joined, or of an electrode that is weaker, Pa.</summary>
    public static double Ultimate(Working? w, double ultimate, string part, Pressure? electrode)
    {
        double f_u = w.Given("f_u", ultimate, Dimension.Stress, part);
        if (electrode is not { } given)
            return f_u;
        double f_e = w.Given("f_e", given.Pascals, Dimension.Stress, "electrode");
        return w.Let("f_u", Math.Min(f_u, f_e), Dimension.Stress, filler, "the weaker of the two");
    }
}
