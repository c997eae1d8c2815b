namespace StatueFrame.Checks;

/// <summary>Strength of a flat bar's cross-section, at the worse of its two ends.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class BarSectionChecks
{
    private static readonly Source yieldEn = Source.En1993_1_1("6.2.1 (5), (6.1)");
    private static readonly Source yieldAisc = new("AISC 360-16 and 360-22", "H3.3 with yielding of the equivalent stress; φ = 0.9, Ω = 1.67");
    private static readonly Source allowableStress = Source.Assumed("bars: allowable stress is a fraction of the yield or proof strength; no code covers the metal");
    private static readonly Source plastic = Source.En1993_1_1("6.2.9.1 (3) (6.32), (6) (6.41) with α = β = 1; shear 6.2.6 (4), 6.2.8");

    /// <summary>
    /// First yield with torsion and transverse shear: the greatest von Mises stress at corner, face middles and center
    /// against f_y/γ_M0 (EN 1993), 0.9 f_y or f_y/1.67 (AISC), or a fraction of f_y (allowable stress).
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check FirstYield(LoadedBar bar, BarDesign design)
    {
        bar.Validate(design);
        CheckSubject subject = bar.Subject("bars.shear", "first yield of a standoff with torsion and shear");
        Source source = design.Code switch { DesignCode.En1993 => yieldEn, DesignCode.AllowableStress => allowableStress, _ => yieldAisc };
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, source);
        (double b, double t, double f_y) = (bar.b, bar.t, bar.f_y);
        (double wide, double narrow) = (new FlatRectangle(b, t).TorsionW, FlatStresses.NarrowTorsionW(b, t));
        FlatForces f = Worse(bar, (end, b, t) => FlatStresses.Equivalent(null, end, b, t, wide, narrow));
        return Check.Of(subject, Dimension.Stress, source, w => (FlatStresses.Equivalent(w, f, b, t, wide, narrow), Allowed(w, f_y, design, source)));
    }

    /// <summary>
    /// Plastic resistance of the solid rectangle under axial force and both moments by EN 1993-1-1, as a load factor: the
    /// forces over those at which (N/N_pl)² + M_weak/M_pl,weak + M_strong/M_pl,strong reaches 1. Torsion and shear
    /// above half their elastic resistance lower the yield strength.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="design">Rules and factors; <see cref="DesignCode.En1993"/>.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Plastic(LoadedBar bar, BarDesign design)
    {
        bar.Validate(design);
        CheckSubject subject = bar.Subject("bars.plastic", "plastic resistance of a standoff");
        if (design.Code != DesignCode.En1993)
            return Check.NotChecked(subject, "plastic resistance is checked by EN 1993 only; AISC's is in the check of the member", plastic);
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, plastic);
        (double b, double t, double f_y, double gamma) = (bar.b, bar.t, bar.f_y, design.GammaM0);
        FlatForces f = Worse(bar, (end, _, _) =>
        {
            (double demand, double capacity) = Plastic(null, end, b, t, f_y, gamma);
            return capacity > 0 ? demand : double.PositiveInfinity;
        });
        return Check.Of(subject, Dimension.Number, plastic, w => Plastic(w, f, b, t, f_y, gamma));
    }

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

    private static FlatForces Worse(LoadedBar bar, Func<FlatForces, double, double, double> measure)
    {
        FlatForces tower = bar.AtTower.Si(nameof(LoadedBar.AtTower)), skin = bar.AtSkin.Si(nameof(LoadedBar.AtSkin));
        return measure(skin, bar.b, bar.t) > measure(tower, bar.b, bar.t) ? skin : tower;
    }
}
