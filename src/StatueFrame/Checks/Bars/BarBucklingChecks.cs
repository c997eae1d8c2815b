namespace StatueFrame.Checks;

/// <summary>
/// Buckling of a flat bar as a strut, alone and with bending. Effective lengths come from the end springs by
/// <see cref="EffectiveLength"/>.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class BarBucklingChecks
{
    private const string Mechanism = "the bar is a mechanism: it can sway on hinges";

    private static readonly Source strutEn = Source.En1993_1_1("6.3.1; stainless steel EN 1993-1-4:2006, 5.4.2");
    private static readonly Source strutAisc = new("AISC 360-16 and 360-22", "E3; φ = 0.9, Ω = 1.67");
    private static readonly Source euler = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 2, against a safety factor; no code covers the metal");
    private static readonly Source beamColumnEn = Source.En1993_1_1("6.3.3 (6.61), (6.62) with Annex B; solid flats by its rows for I-sections");
    private static readonly Source beamColumnAisc = new("AISC 360-16 and 360-22", "H1.1 with E3, F11 and Appendix 8 (B₁, B₂)");
    private static readonly Source secondOrder = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 1: beam-columns");
    private static readonly Source bow = Source.En1993_1_1("6.3.1.2, read as a bow e₀ = α(λ̄ − λ̄₀) W/A");
    private static readonly Source springs = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 2: struts with end springs");

    /// <summary>
    /// The compression of the bar against its buckling resistance about the weaker axis. Under allowable stress, the
    /// lesser of the Euler load over a safety factor and the allowable stress times the area.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Strut(LoadedBar bar, BarDesign design)
    {
        bar.Validate(design);
        CheckSubject subject = bar.Subject("bars.strut", "buckling of a standoff as a strut");
        Source source = design.Code switch { DesignCode.En1993 => strutEn, DesignCode.AllowableStress => euler, _ => strutAisc };
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, source);
        double N = Compression(bar);
        StrutAxis weak = StrutAxis.Of(bar, true), strong = StrutAxis.Of(bar, false);
        if (!double.IsFinite(weak.EffectiveLength) || !double.IsFinite(strong.EffectiveLength))
            return Check.NotChecked(subject, Mechanism, source);
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            TellStrut(w, bar, N);
            return (N, Resistance(w, weak, strong, bar.E, bar.f_y, design));
        });
    }

    /// <summary>Resistance to buckling about the weaker axis, N.</summary>
    internal static double Resistance(Working? w, in StrutAxis weak, in StrutAxis strong, double E, double f_y, BarDesign design) =>
        Math.Min(Resistance(w, "strong", strong, E, f_y, design), Resistance(w, "weak", weak, E, f_y, design));

    /// <summary>
    /// Compression with bending about both axes and lateral-torsional buckling: EN 1993-1-1, 6.3.3 by method 2 (Annex B),
    /// EN 1993-1-4, 5.5.2 for stainless steel, or AISC H1. Under allowable stress take <see cref="SecondOrder"/>.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check BeamColumn(LoadedBar bar, BarDesign design)
    {
        bar.Validate(design);
        CheckSubject subject = bar.Subject("bars.beam-column", "standoff in compression and bending");
        Source source = design.IsAisc ? beamColumnAisc : design.Metal == MetalKind.StainlessSteel ? En1993Strut.Stainless : beamColumnEn;
        if (design.Code == DesignCode.AllowableStress)
            return Check.NotChecked(subject, "no code covers the metal; the second-order stress is checked instead", secondOrder);
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, source);
        double N = Compression(bar);
        StrutAxis weak = StrutAxis.Of(bar, true), strong = StrutAxis.Of(bar, false);
        if (!double.IsFinite(weak.EffectiveLength) || !double.IsFinite(strong.EffectiveLength))
            return Check.NotChecked(subject, Mechanism, source);
        bool sway = bar.Restraint != BarRestraint.Held;
        return Check.Of(subject, Dimension.Number, source, w =>
        {
            TellStrut(w, bar, N);
            return design.IsAisc
                ? AiscInteraction(w, N, weak, strong, bar, design)
                : (En1993Strut.Interaction(w, N, weak, strong, bar.L, sway, bar.E, bar.G, bar.f_y, design), 1);
        });
    }

    /// <summary>
    /// The stress at first yield by elastic second-order theory: axial force, amplified end moments, and the moment of the
    /// bow, about the worse axis. With axial force alone it gives the same load as the buckling curve. For any metal.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check SecondOrder(LoadedBar bar, BarDesign design)
    {
        bar.Validate(design);
        CheckSubject subject = bar.Subject("bars.second-order", "second-order stress of a standoff");
        double N = Compression(bar);
        StrutAxis weak = StrutAxis.Of(bar, true), strong = StrutAxis.Of(bar, false);
        if (!double.IsFinite(weak.EffectiveLength) || !double.IsFinite(strong.EffectiveLength))
            return Check.NotChecked(subject, Mechanism, secondOrder);
        return Check.Of(subject, Dimension.Stress, secondOrder, w =>
        {
            TellStrut(w, bar, N);
            return SecondOrderStress(w, bar, N, weak, strong, design);
        });
    }

    /// <summary>The second-order stress and what is allowed, Pa, under a compression.</summary>
    internal static (double Demand, double Capacity) SecondOrderStress(Working? w, LoadedBar bar, double N, in StrutAxis weak, in StrutAxis strong, BarDesign design)
    {
        bool sway = bar.Restraint != BarRestraint.Held;
        double demandFactor = design.Code == DesignCode.AiscAsd ? 1.6 : design.Code == DesignCode.AllowableStress ? design.BucklingSafety : 1;
        double allowed = w.Given("f_d", design.Code switch
        {
            DesignCode.En1993 => bar.f_y / design.GammaM1,
            DesignCode.AllowableStress => design.AllowableFraction * bar.f_y,
            _ => design.Aisc(0.9, 1.67) * bar.f_y,
        }, Dimension.Stress, "allowed stress");
        if (demandFactor * N >= weak.CriticalForce(bar.E) || demandFactor * N >= strong.CriticalForce(bar.E))
        {
            w?.Note("The compression with its safety reaches the elastic critical force.");
            return (allowed, 0);
        }
        (double weakMoment, double weakBow) = Amplified(w, "weak", weak, N, demandFactor, sway, bar, design);
        (double strongMoment, double strongBow) = Amplified(w, "strong", strong, N, demandFactor, sway, bar, design);
        double A = bar.b * bar.t, W_weak = weak.W, W_strong = strong.W;
        w.Given(A, Dimension.SmallArea, "area");
        w.Given(W_weak, Dimension.SectionModulus);
        w.Given(W_strong, Dimension.SectionModulus);
        w.Given(weakMoment, Dimension.Moment);
        w.Given(strongMoment, Dimension.Moment);
        w.Given(weakBow, Dimension.Moment);
        w.Given(strongBow, Dimension.Moment);
        double axial = w.Given("axial", Math.Max(Math.Abs(bar.AtTower.Axial.Newtons), Math.Abs(bar.AtSkin.Axial.Newtons)), Dimension.Force, "greatest axial force");
        double sigma_N = w.Let("sigma_N", axial / A, Dimension.Stress, secondOrder);
        double sigma_M = w.Let("sigma_M", weakMoment / W_weak + strongMoment / W_strong, Dimension.Stress, secondOrder, "amplified end moments");
        double sigma_0 = w.Let("sigma_0", Math.Max(weakBow / W_weak, strongBow / W_strong), Dimension.Stress, secondOrder, "bow about the worse axis");
        return (w.Let("sigma", sigma_N + sigma_M + sigma_0, Dimension.Stress, secondOrder), allowed);
    }

    private static (double Moment, double Bow) Amplified(
        Working? w, string name, in StrutAxis axis, double N, double safety, bool sway, LoadedBar bar, BarDesign design)
    {
        using IDisposable? part = w?.Part($"Amplification about the {name} axis");
        w.Given(N, Dimension.Force, "compression");
        w.Given(safety, Dimension.Number, "on the compression in the amplification");
        double N_cr = w.Given("N_cr", axis.CriticalForce(bar.E), Dimension.Force, "elastic critical force");
        double n = w.Let("n", safety * N / N_cr, Dimension.Number);
        double M = w.Given("M", axis.GreatestMoment, Dimension.Moment, "greatest end moment");
        double k = sway ? w.Let("k", 1 / (1 - n), Dimension.Number, secondOrder, "sway")
            : w.Given("k", SecondOrderBar.EndMomentFactor(n, axis.MomentRatio), Dimension.Number, "ends held, exact", secondOrder);
        double lambda = Math.Sqrt(axis.Depth * axis.Across * bar.f_y / N_cr);
        BucklingCurve curve = design.CurveOrDefault;
        double imperfection = Math.Max(0, curve.Alpha * (lambda - curve.Plateau)) * axis.Depth / 6;
        double e_0 = w.Given("e_0", imperfection + bar.InitialBow.Meters, Dimension.SmallLength, "bow with its imperfection", bow);
        return (w.Let("M_II", k * M, Dimension.Moment, secondOrder), w.Let("M_0", N * e_0 / (1 - n), Dimension.Moment, secondOrder));
    }

    private static double Resistance(Working? w, string name, in StrutAxis axis, double E, double f_y, BarDesign design)
    {
        if (design.Code == DesignCode.En1993)
            return En1993Strut.Resistance(w, name, axis, E, f_y, design.CurveOrDefault, design.GammaM1);
        using IDisposable? part = w?.Part($"Buckling about the {name} axis");
        double A = axis.Depth * axis.Across;
        if (design.IsAisc)
            return design.Aisc(0.9, 1.67) * A * Aisc360.CriticalStress(w, axis.EffectiveLength * Math.Sqrt(12) / axis.Depth, E, f_y);
        double N_E = w.Given("N_E", axis.CriticalForce(E), Dimension.Force, "Euler load");
        double safety = w.Given("safety", design.BucklingSafety, Dimension.Number);
        double f_allow = w.Given("f_allow", design.AllowableFraction * f_y, Dimension.Stress, "allowable stress");
        return w.Let("N_allow", Math.Min(N_E / safety, f_allow * A), Dimension.Force, euler);
    }

    private static (double Demand, double Capacity) AiscInteraction(
        Working? w, double P, in StrutAxis weak, in StrutAxis strong, LoadedBar bar, BarDesign design)
    {
        double c = design.Aisc(0.9, 1.67), alpha = design.Code == DesignCode.AiscLrfd ? 1 : 1.6;
        if (alpha * P >= weak.CriticalForce(bar.E) || alpha * P >= strong.CriticalForce(bar.E))
        {
            w?.Note("The compression reaches the elastic critical force.");
            return (1, 0);
        }
        bool sway = bar.Restraint != BarRestraint.Held;
        double P_c = Math.Min(Resistance(w, "strong", strong, bar.E, bar.f_y, design), Resistance(w, "weak", weak, bar.E, bar.f_y, design));
        double M_nx = Aisc360.StrongMoment(w, bar.b, bar.t, bar.L, 1, bar.E, bar.f_y);
        w.Given(P, Dimension.Force, "compression");
        w.Given(P_c, Dimension.Force, "available compressive strength");
        w.Given(c, Dimension.Number, "φ or 1/Ω");
        double M_cx = w.Let("M_cx", c * M_nx, Dimension.Moment, beamColumnAisc, "strong axis");
        double M_cy = w.Let("M_cy", c * bar.f_y * weak.Wpl, Dimension.Moment, beamColumnAisc, "weak axis");
        double M_rx = w.Let("M_rx", Magnifier(strong, P, alpha, sway, bar.E) * strong.GreatestMoment, Dimension.Moment, beamColumnAisc);
        double M_ry = w.Let("M_ry", Magnifier(weak, P, alpha, sway, bar.E) * weak.GreatestMoment, Dimension.Moment, beamColumnAisc);
        double T = w.Given("T", Math.Max(0, Math.Max(bar.AtTower.Axial.Newtons, bar.AtSkin.Axial.Newtons)), Dimension.Force, "tension");
        double T_c = w.Given("T_c", c * bar.f_y * bar.b * bar.t, Dimension.Force, "available tensile strength in yielding, D2");
        double p = w.Let("p", Math.Max(P / P_c, T / T_c), Dimension.Number, beamColumnAisc);
        double m = w.Let("m", M_rx / M_cx + M_ry / M_cy, Dimension.Number, beamColumnAisc);
        return (w.Let("u", p >= 0.2 ? p + 8.0 / 9 * m : p / 2 + m, Dimension.Number, beamColumnAisc), 1);
    }

    /// <summary>B₁ = C_m/(1 − αP/P_e) ≥ 1 with C_m = 0.6 + 0.4 ψ, or B₂ = 1/(1 − αP/P_e) for a bar that sways.</summary>
    private static double Magnifier(in StrutAxis axis, double P, double alpha, bool sway, double E)
    {
        double rest = 1 - alpha * P / axis.CriticalForce(E);
        return sway ? 1 / rest : Math.Max(1, (0.6 + 0.4 * axis.MomentRatio) / rest);
    }

    internal static double Compression(LoadedBar bar) => Math.Max(0, -Math.Min(bar.AtTower.Axial.Newtons, bar.AtSkin.Axial.Newtons));

    private static void TellStrut(Working? w, LoadedBar bar, double N)
    {
        if (w is null)
            return;
        w.Given("L", bar.L, Dimension.Length, "length");
        w.Given("K_weak", bar.EffectiveLengthFactor(true), Dimension.Number, "effective length factor, weak axis", springs);
        w.Given("K_strong", bar.EffectiveLengthFactor(false), Dimension.Number, "effective length factor, strong axis", springs);
        w.Note(N > 0 ? $"The bar is in compression; its skin end is {bar.Restraint switch { BarRestraint.Held => "held", BarRestraint.Sway => "free to sway", _ => "free" }}." : "The bar is not in compression; tension is not counted in its favor.");
    }
}
