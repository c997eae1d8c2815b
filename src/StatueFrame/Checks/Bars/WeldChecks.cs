using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Fillet welds at one end of a flat bar.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class WeldChecks
{
    private static readonly Source directional = new("EN 1993-1-8:2005", "4.5.3.2, (4.1)");
    private static readonly Source simplified = new("EN 1993-1-8:2005", "4.5.3.3, (4.2) to (4.4)");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J2.4, 0.60 F_EXX without the increase for direction; φ = 0.75, Ω = 2");
    private static readonly Source line = new("Blodgett, Design of Welded Structures, from memory", "welds as lines; elastic theory");

    internal static readonly FormulaEntry<FixingLoad> FilletsEntry = new(
        "bars.welds", "fillet welds of a standoff", Nature.Strength, "both ends of every welded bar, every state", "stress of the throat by elastic theory of lines",
        "strength of the throat", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in FixingLoad load) => load.Where,
        Rule = (in FixingLoad load) => load.Load.Bar.Design.IsAisc ? aisc : load.Welds.Simplified ? simplified : directional,
        Lacks = (in FixingLoad load) => load.Load.Bar.Design.Code == DesignCode.AllowableStress
            ? "welds are checked by EN 1993-1-8 or AISC 360; give one of these codes for a metal they cover" : load.Load.Bar.Design.Uncovered,
        Run = (Working? w, in FixingLoad load) =>
        {
            load.Load.Tell(w);
            CheckedBar bar = load.Load.Bar;
            return Fillets(w, load.Forces, bar.t, bar.JoinedStrength(load.AtSkin), load.Welds, load.Welds.Run(bar.b), bar.Design);
        },
    };

    /// <summary>
    /// The greatest force per length of the two welds by elastic theory of lines, against the strength of the throat. By
    /// the directional method the von Mises stress of the throat at 45° counts, with the worst signs.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fixing">Its welds.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="atSkin">True for the skin end.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Fillets(LoadedBar bar, WeldedFixing fixing, BarDesign design, bool atSkin = false) =>
        FilletsEntry.With(FixingLoad.Of(bar, fixing, design, atSkin), bar.Situation);

    /// <summary>Stress of the throat and its strength, Pa.</summary>
    internal static (double Demand, double Capacity) Fillets(
        Working? w, in FlatForces f, double t, double f_u, WeldedFixing fixing, double l, BarDesign design)
    {
        (double N, double M_weak, double M_strong, double T, double V_t, double V_b) = f;
        double a = w.Given("a", fixing.Throat.Meters, Dimension.SmallLength, "throat");
        w.Given(l, Dimension.SmallLength, "effective length of each weld");
        w.Given(t, Dimension.SmallLength, "thickness, distance of the weld roots");
        w.Given(N, Dimension.Force, "axial force");
        w.Given(M_weak, Dimension.Moment, "weak moment");
        w.Given(M_strong, Dimension.Moment, "strong moment");
        w.Given(T, Dimension.Moment, "torsion");
        w.Given(V_t, Dimension.Force, "shear along the thickness");
        w.Given(V_b, Dimension.Force, "shear along the width");
        double q_n = w.Let("q_n", Math.Abs(N) / (2 * l) + Math.Abs(M_weak) / (t * l) + 3 * Math.Abs(M_strong) / (l * l), Dimension.LineLoad, line, "along the bar");
        double J_w = w.Let("J_w", l * l * l / 6 + l * t * t / 2, Dimension.SectionModulus, line, "polar moment of the two lines");
        double q_p = w.Let("q_p", Math.Abs(V_b) / (2 * l) + Math.Abs(T) * (t / 2) / J_w, Dimension.LineLoad, line, "along the welds");
        double q_t = w.Let("q_t", Math.Abs(V_t) / (2 * l) + Math.Abs(T) * (l / 2) / J_w, Dimension.LineLoad, line, "across the welds, in the plate");
        if (design.IsAisc)
        {
            double f_r = w.Let("f_r", Math.Sqrt(q_n * q_n + q_p * q_p + q_t * q_t) / a, Dimension.Stress, FilletThroat.Rule(design), "resultant on the throat");
            return (f_r, FilletThroat.OfElectrode(w, fixing.ElectrodeStrength, design));
        }
        f_u = FilletThroat.Ultimate(w, f_u, "ultimate strength of the weaker part", fixing.ElectrodeStrength);
        double beta_w = w.Given("beta_w", fixing.CorrelationFactor, Dimension.Number, "correlation factor");
        double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        if (fixing.Simplified)
        {
            double f_r = w.Let("f_r", Math.Sqrt(q_n * q_n + q_p * q_p + q_t * q_t) / a, Dimension.Stress, simplified, "resultant on the throat");
            return (f_r, w.Let("f_vw", f_u / (Math.Sqrt(3) * beta_w * gammaM2), Dimension.Stress, simplified));
        }
        // On the throat σ⊥ = (q_n ± q_t)/(√2 a) and τ⊥ = (q_n ∓ q_t)/(√2 a): σ⊥² + 3τ⊥² is greatest with the signs that add.
        double sigma_w = w.Let("sigma_w", Math.Sqrt(2 * q_n * q_n + 2 * q_t * q_t + 2 * q_n * q_t + 3 * q_p * q_p) / a, Dimension.Stress, directional, "√(σ⊥² + 3τ⊥² + 3τ∥²)");
        double sigma_n = w.Let("sigma_n", (q_n + q_t) / (Math.Sqrt(2) * a), Dimension.Stress, directional, "σ⊥, at most 0.9 f_u/γ_M2");
        double f_w = w.Let("f_w", f_u / (beta_w * gammaM2), Dimension.Stress, directional);
        double f_n = w.Let("f_n", 0.9 * f_u / gammaM2, Dimension.Stress, directional);
        return (w.Let("governing", Math.Max(sigma_w, sigma_n * f_w / f_n), Dimension.Stress, directional), f_w);
    }
}
