namespace StatueFrame.Checks;

/// <summary>
/// Buckling of a flat bar as a strut, alone and with bending. Effective lengths come from the end springs by
/// <see cref="EffectiveLength"/>.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BarBucklingChecks
{
    private const string Mechanism = "the bar is a mechanism: it can sway on hinges";

    private static readonly Source strutEn = Source.En1993_1_1("6.3.1; stainless steel EN 1993-1-4:2006, 5.4.2");
    private static readonly Source strutAisc = new("AISC 360-16 and 360-22", "E3; φ = 0.9, Ω = 1.67");
    private static readonly Source euler = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 2, against a safety factor; no code covers the metal");
    private static readonly Source beamColumnEn = Source.En1993_1_1("6.3.3 (6.61), (6.62) with Annex B; solid flats by its rows for I-sections");
    private static readonly Source beamColumnAisc = new("AISC 360-16 and 360-22", "H1.1 with E3, F11 and Appendix 8 (B₁, B₂)");
    private static readonly Source secondOrder = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 1: beam-columns");
    private static readonly Source lateral = new("Timoshenko and Gere, Theory of Elastic Stability", "6.2: M_cr = π √(EI GJ)/L of a narrow rectangle, against a safety factor; straight-line interaction; no code covers the metal");
    private static readonly Source bow = Source.En1993_1_1("6.3.1.2, read as a bow e₀ = α(λ̄ − λ̄₀) W/A");
    private static readonly Source springs = new("Timoshenko and Gere, Theory of Elastic Stability", "chapter 2: struts with end springs");

    internal static readonly FormulaEntry<BarLoad> StrutEntry = new(
        "bars.strut", "buckling of a standoff as a strut", Nature.Strength, "every bar, every state", "axial compression",
        "buckling resistance with the bar's own end springs", "no strength situation was given")
    {
        Dimension = Dimension.Force,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad load) => load.Bar.Design.Code switch { DesignCode.En1993 => strutEn, DesignCode.AllowableStress => euler, _ => strutAisc },
        Lacks = (in BarLoad load) => load.Bar.Design.Uncovered ?? (load.IsMechanism ? Mechanism : null),
        Run = (Working? w, in BarLoad load) =>
        {
            double N = TellStrut(w, load);
            return (N, Resistance(w, load.Weak, load.Strong, load.Bar.E, load.Bar.f_y, load.Bar.Design));
        },
    };

    internal static readonly FormulaEntry<BarLoad> BeamColumnEntry = new(
        "bars.beam-column", "standoff in compression and bending, with lateral-torsional buckling", Nature.Strength, "every bar, every state",
        "interaction of compression and both moments", "1", "no strength situation was given")
    {
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad load) => load.Bar.Design.Code == DesignCode.AllowableStress ? lateral
            : load.Bar.Design.IsAisc ? beamColumnAisc : load.Bar.Design.Metal == MetalKind.StainlessSteel ? En1993Strut.Stainless : beamColumnEn,
        Lacks = (in BarLoad load) => load.Bar.Design.Uncovered ?? (load.IsMechanism ? Mechanism : null),
        Run = (Working? w, in BarLoad load) =>
        {
            double N = TellStrut(w, load);
            CheckedBar bar = load.Bar;
            return bar.Design.Code == DesignCode.AllowableStress ? (ElasticInteraction(w, N, load), 1)
                : bar.Design.IsAisc ? AiscInteraction(w, N, load)
                : (En1993Strut.Interaction(w, N, load.Weak, load.Strong, bar.L, load.Restraint != BarRestraint.Held, bar.E, bar.G, bar.f_y, bar.Design), 1);
        },
    };

    internal static readonly FormulaEntry<BarLoad> SecondOrderEntry = new(
        "bars.second-order", "second-order stress of a standoff", Nature.Strength, "every bar, every state", "stress of the bent and bowed bar in compression",
        "elastic limit", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad _) => secondOrder,
        Lacks = (in BarLoad load) => load.IsMechanism ? Mechanism : null,
        Run = (Working? w, in BarLoad load) =>
        {
            double N = TellStrut(w, load);
            return SecondOrderStress(w, load, N);
        },
    };

    /// <summary>
    /// The compression of the bar against its buckling resistance about the weaker axis. Under allowable stress, the
    /// lesser of the Euler load over a safety factor and the allowable stress times the area.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Strut(LoadedBar bar, BarDesign design) => StrutEntry.With(bar.Load(design), bar.Situation);

    /// <summary>Resistance to buckling about the weaker axis, N.</summary>
    internal static double Resistance(Working? w, in StrutAxis weak, in StrutAxis strong, double E, double f_y, BarDesign design) =>
        Math.Min(Resistance(w, "strong", strong, E, f_y, design), Resistance(w, "weak", weak, E, f_y, design));

    /// <summary>
    /// Compression with bending about both axes and lateral-torsional buckling: EN 1993-1-1, 6.3.3 by method 2 (Annex B),
    /// EN 1993-1-4, 5.5.2 for stainless steel, or AISC H1. Under allowable stress compression and bending add up by straight
    /// lines, bending about the strong axis against the lesser of yield and lateral-torsional buckling, each with its safety.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check BeamColumn(LoadedBar bar, BarDesign design) => BeamColumnEntry.With(bar.Load(design), bar.Situation);

    /// <summary>
    /// The stress at first yield by elastic second-order theory: axial force, amplified end moments, and the moment of the
    /// bow, about the worse axis. With axial force alone it gives the same load as the buckling curve. For any metal.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check SecondOrder(LoadedBar bar, BarDesign design) => SecondOrderEntry.With(bar.Load(design), bar.Situation);

    /// <summary>The second-order stress and what is allowed, Pa, under a compression.</summary>
    internal static (double Demand, double Capacity) SecondOrderStress(Working? w, in BarLoad load, double N)
    {
        CheckedBar bar = load.Bar;
        BarDesign design = bar.Design;
        (StrutAxis weak, StrutAxis strong, bool sway) = (load.Weak, load.Strong, load.Restraint != BarRestraint.Held);
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
        double axial = w.Given("axial", Math.Max(Math.Abs(load.Ends.Tower.N), Math.Abs(load.Ends.Skin.N)), Dimension.Force, "greatest axial force");
        double sigma_N = w.Let("sigma_N", axial / A, Dimension.Stress, secondOrder);
        double sigma_M = w.Let("sigma_M", weakMoment / W_weak + strongMoment / W_strong, Dimension.Stress, secondOrder, "amplified end moments");
        double sigma_0 = w.Let("sigma_0", Math.Max(weakBow / W_weak, strongBow / W_strong), Dimension.Stress, secondOrder, "bow about the worse axis");
        return (w.Let("sigma", sigma_N + sigma_M + sigma_0, Dimension.Stress, secondOrder), allowed);
    }

    private static (double Moment, double Bow) Amplified(
        Working? w, string name, in StrutAxis axis, double N, double safety, bool sway, CheckedBar bar, BarDesign design)
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
        double e_0 = w.Given("e_0", imperfection + bar.InitialBow, Dimension.SmallLength, "bow with its imperfection", bow);
        return (w.Let("M_II", k * M, Dimension.Moment, secondOrder), w.Let("M_0", N * e_0 / (1 - n), Dimension.Moment, secondOrder));
    }

    private static double Resistance(Working? w, string name, in StrutAxis axis, double E, double f_y, BarDesign design)
    {
        if (design.Code == DesignCode.En1993)
            return En1993Strut.Resistance(w, name, axis, E, f_y, design.CurveOrDefault, design.GammaM1);
        using IDisposable? part = w?.Part($"Buckling about the {name} axis");
        double A = w.Given("A", axis.Depth * axis.Across, Dimension.SmallArea, "area");
        if (design.IsAisc)
            return design.Aisc(0.9, 1.67) * A * Aisc360.CriticalStress(w, axis.EffectiveLength * Math.Sqrt(12) / axis.Depth, E, f_y);
        double N_E = w.Given("N_E", axis.CriticalForce(E), Dimension.Force, "Euler load");
        double safety = w.Given("safety", design.BucklingSafety, Dimension.Number);
        double f_allow = w.Given("f_allow", design.AllowableFraction * f_y, Dimension.Stress, "allowable stress");
        return w.Let("N_allow", Math.Min(N_E / safety, f_allow * A), Dimension.Force, euler);
    }

    /// <summary>N/N_allow + M_strong/M_allow + M_weak/M_allow under allowable stress; the compression has its safety in it twice over.</summary>
    private static double ElasticInteraction(Working? w, double N, in BarLoad load)
    {
        CheckedBar bar = load.Bar;
        BarDesign design = bar.Design;
        (StrutAxis weak, StrutAxis strong) = (load.Weak, load.Strong);
        double N_allow = Resistance(w, weak, strong, bar.E, bar.f_y, design);
        double E = w.Given("E", bar.E, Dimension.Stress, "Young's modulus"), G = w.Given("G", bar.G, Dimension.Stress, "shear modulus");
        double I_z = w.Given("I_z", weak.I, Dimension.AreaMomentOfInertia, "about the weak axis");
        double J = w.Given("J", SolidRectangle.TorsionConstant(bar.b, bar.t), Dimension.AreaMomentOfInertia, "torsion constant");
        double L = w.Given("L", bar.L, Dimension.Length, "length between points held against twist");
        double M_cr = w.Let("M_cr", Math.PI / L * Math.Sqrt(E * I_z * G * J), Dimension.Moment, lateral, "lateral-torsional buckling");
        double safety = w.Given("safety", design.BucklingSafety, Dimension.Number), f_allow = w.Given("f_allow", design.AllowableFraction * bar.f_y, Dimension.Stress, "allowable stress");
        double W_y = w.Given("W_y", strong.W, Dimension.SectionModulus), W_z = w.Given("W_z", weak.W, Dimension.SectionModulus);
        double M_y = w.Given("M_y", strong.GreatestMoment, Dimension.Moment, "strong axis"), M_z = w.Given("M_z", weak.GreatestMoment, Dimension.Moment, "weak axis");
        double M_yallow = w.Let("M_yallow", Math.Min(M_cr / safety, f_allow * W_y), Dimension.Moment, lateral);
        w.Given(N, Dimension.Force, "compression");
        w.Given(N_allow, Dimension.Force, "allowable compression");
        return w.Let("u", N / N_allow + M_y / M_yallow + M_z / (f_allow * W_z), Dimension.Number, lateral);
    }

    private static (double Demand, double Capacity) AiscInteraction(Working? w, double P, in BarLoad load)
    {
        CheckedBar bar = load.Bar;
        BarDesign design = bar.Design;
        (StrutAxis weak, StrutAxis strong) = (load.Weak, load.Strong);
        double c = design.Aisc(0.9, 1.67), alpha = design.Code == DesignCode.AiscLrfd ? 1 : 1.6;
        if (alpha * P >= weak.CriticalForce(bar.E) || alpha * P >= strong.CriticalForce(bar.E))
        {
            w?.Note("The compression reaches the elastic critical force.");
            return (1, 0);
        }
        bool sway = load.Restraint != BarRestraint.Held;
        double P_c = Math.Min(Resistance(w, "strong", strong, bar.E, bar.f_y, design), Resistance(w, "weak", weak, bar.E, bar.f_y, design));
        double M_nx = w.Given("M_nx", Aisc360.StrongMoment(w, bar.b, bar.t, bar.L, 1, bar.E, bar.f_y), Dimension.Moment, "nominal strength about the strong axis");
        w.Given(P, Dimension.Force, "compression");
        w.Given(P_c, Dimension.Force, "available compressive strength");
        w.Given(c, Dimension.Number, "φ or 1/Ω");
        double M_cx = w.Let("M_cx", c * M_nx, Dimension.Moment, beamColumnAisc, "strong axis");
        double f_y = w.Given("f_y", bar.f_y, Dimension.Stress, "yield or proof strength"), Z_y = w.Given("Z_y", weak.Wpl, Dimension.SectionModulus, "plastic modulus, weak axis");
        double M_cy = w.Let("M_cy", c * f_y * Z_y, Dimension.Moment, beamColumnAisc, "weak axis");
        double B_x = w.Given("B_x", Magnifier(strong, P, alpha, sway, bar.E), Dimension.Number, sway ? "B₂ = 1/(1 − αP/P_e)" : "B₁ = C_m/(1 − αP/P_e), at least 1", beamColumnAisc), M_x = w.Given("M_x", strong.GreatestMoment, Dimension.Moment, "greatest moment about the strong axis");
        double M_rx = w.Let("M_rx", B_x * M_x, Dimension.Moment, beamColumnAisc);
        double B_y = w.Given("B_y", Magnifier(weak, P, alpha, sway, bar.E), Dimension.Number, "the same about the weak axis", beamColumnAisc), M_y = w.Given("M_y", weak.GreatestMoment, Dimension.Moment, "greatest moment about the weak axis");
        double M_ry = w.Let("M_ry", B_y * M_y, Dimension.Moment, beamColumnAisc);
        double T = w.Given("T", Math.Max(0, Math.Max(load.Ends.Tower.N, load.Ends.Skin.N)), Dimension.Force, "tension");
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

    /// <summary>Tells where the forces come from and how the bar is held; returns its compression, N.</summary>
    private static double TellStrut(Working? w, in BarLoad load)
    {
        double N = load.Compression;
        if (w is null)
            return N;
        load.Tell(w);
        w.Given("L", load.Bar.L, Dimension.Length, "length");
        w.Given("K_weak", load.Bar.EffectiveLengthFactor(true, load.Restraint), Dimension.Number, "effective length factor, weak axis", springs);
        w.Given("K_strong", load.Bar.EffectiveLengthFactor(false, load.Restraint), Dimension.Number, "effective length factor, strong axis", springs);
        w.Note(N > 0 ? $"The bar is in compression; its skin end is {load.Restraint switch { BarRestraint.Held => "held", BarRestraint.Sway => "free to sway", _ => "free" }}." : "The bar is not in compression; tension is not counted in its favor.");
        return N;
    }
}
