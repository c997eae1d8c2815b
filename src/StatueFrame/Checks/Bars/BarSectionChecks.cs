using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Strength of a flat bar's cross-section, at the worse of its two ends.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class BarSectionChecks
{
    private static readonly Source yieldEn = Source.En1993_1_1("6.2.1 (5), (6.1)");
    private static readonly Source yieldAisc = new("AISC 360-16 and 360-22", "H3.3 with yielding of the equivalent stress; φ = 0.9, Ω = 1.67");
    private static readonly Source allowableStress = Source.Assumed("bars: allowable stress is a fraction of the yield or proof strength; no code covers the metal");
    private static readonly Source plastic = Source.En1993_1_1("6.2.9.1 (3) (6.32), (6) (6.41) with α = β = 1; shear 6.2.6 (4), 6.2.8");

    internal static readonly FormulaEntry<BarLoad> Yield = new(
        "bars.shear", "first yield of a standoff with torsion and shear", Nature.Strength, "every bar, every state",
        "greatest von Mises stress at corner, face middles and center of both ends", "by the code of the criteria", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad load) => load.Bar.Design.Code switch { DesignCode.En1993 => yieldEn, DesignCode.AllowableStress => allowableStress, _ => yieldAisc },
        Lacks = (in BarLoad load) => load.Bar.Design.Uncovered,
        Run = (Working? w, in BarLoad load) =>
        {
            load.Tell(w);
            FlatForces worse = Worse(load, (of, end) => Equivalent(null, of, end));
            return (Equivalent(w, load, worse), Allowed(w, load.Bar.f_y, load.Bar.Design, yieldEn));
        },
    };

    private static readonly FormulaEntry<BarLoad> Reserve = new(
        "bars.plastic", "plastic resistance of a standoff", Nature.Strength, "a bar in a script", "plastic interaction of axial force and both moments", "1", "it is for scripts")
    {
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad _) => plastic,
        Lacks = (in BarLoad load) => load.Bar.Design.Code != DesignCode.En1993
            ? "plastic resistance is checked by EN 1993 only; AISC's is in the check of the member" : load.Bar.Design.Uncovered,
        Run = (Working? w, in BarLoad load) => Plastic(w, Worse(load, PlasticDemand), load.Bar.b, load.Bar.t, load.Bar.f_y, load.Bar.Design.GammaM0),
    };

    /// <summary>
    /// First yield with torsion and transverse shear: the greatest von Mises stress at corner, face middles and center
    /// against f_y/γ_M0 (EN 1993), 0.9 f_y or f_y/1.67 (AISC), or a fraction of f_y (allowable stress).
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check FirstYield(LoadedBar bar, BarDesign design) => Yield.With(bar.Load(design), bar.Situation);

    /// <summary>
    /// Plastic resistance of the solid rectangle under axial force and both moments by EN 1993-1-1, as a load factor: the
    /// forces over those at which (N/N_pl)² + M_weak/M_pl,weak + M_strong/M_pl,strong reaches 1. Torsion and shear
    /// above half their elastic resistance lower the yield strength.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors; <see cref="DesignCode.En1993"/>.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Plastic(LoadedBar bar, BarDesign design) => Reserve.With(bar.Load(design), bar.Situation);

    /// <summary>The stress allowed at first yield, Pa.</summary>
    internal static double Allowed(Working? w, double f_y, BarDesign design, Source source)
    {
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        double factor = design.Code switch
        {
            DesignCode.En1993 => 1 / design.GammaM0,
            DesignCode.AllowableStress => design.AllowableFraction,
            _ => design.Aisc(0.9, 1.67),
        };
        w.Given(factor, Dimension.Number, "1/γ_M0, φ, 1/Ω or the allowable fraction");
        return w.Let("f_d", factor * f_y, Dimension.Stress, source);
    }

    /// <summary>Load factor demand against 1, or against 0 when shear leaves nothing.</summary>
    internal static (double Demand, double Capacity) Plastic(Working? w, in FlatForces f, double b, double t, double f_y, double gammaM0)
    {
        (double N, double M_weak, double M_strong) = (f.N, f.Weak, f.Strong);
        double A = FlatStresses.Section(w, f, b, t);
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(gammaM0, Dimension.Number);
        double tau = FlatStresses.Shear(w, f, b, t);
        double tau_Rd = w.Let("tau_Rd", f_y / (Math.Sqrt(3) * gammaM0), Dimension.Stress, plastic);
        if (tau >= tau_Rd)
        {
            w?.Note("Torsion and shear alone use up the section.");
            return (tau / tau_Rd, 0);
        }
        double rho = w.Let("rho", tau > 0.5 * tau_Rd ? Math.Pow(2 * tau / tau_Rd - 1, 2) : 0, Dimension.Number, plastic);
        double f_d = w.Let("f_d", (1 - rho) * f_y / gammaM0, Dimension.Stress, plastic);
        double n = w.Let("n", Math.Abs(N) / (A * f_d), Dimension.Number, plastic);
        double m_weak = w.Let("m_weak", Math.Abs(M_weak) / (b * t * t / 4 * f_d), Dimension.Number, plastic);
        double m_strong = w.Let("m_strong", Math.Abs(M_strong) / (t * b * b / 4 * f_d), Dimension.Number, plastic);
        double m = w.Let("m", m_weak + m_strong, Dimension.Number, plastic);
        return (w.Let("u", (m + Math.Sqrt(m * m + 4 * n * n)) / 2, Dimension.Number, plastic, "root of n²/u² + m/u = 1"), 1);
    }

    private static FlatForces Worse(in BarLoad load, Func<BarLoad, FlatForces, double> measure) =>
        measure(load, load.Ends.Skin) > measure(load, load.Ends.Tower) ? load.Ends.Skin : load.Ends.Tower;

    private static double Equivalent(Working? w, in BarLoad load, in FlatForces end) =>
        FlatStresses.Equivalent(w, end, load.Bar.b, load.Bar.t, load.Bar.WideTorsionW, load.Bar.NarrowTorsionW);

    private static double PlasticDemand(BarLoad load, FlatForces end)
    {
        (double demand, double capacity) = Plastic(null, end, load.Bar.b, load.Bar.t, load.Bar.f_y, load.Bar.Design.GammaM0);
        return capacity > 0 ? demand : double.PositiveInfinity;
    }
}
