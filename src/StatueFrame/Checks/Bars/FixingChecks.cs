using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Bolted fixings at one end of a flat bar: the tower end, or the skin end on request.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FixingChecks
{
    private const string OneBolt = "a single bolt cannot hold the moment in the plane of the flat: the end must be modeled as a hinge";
    private const string NoAllowable = "bolts and welds are checked by EN 1993-1-8 or AISC 360; give one of these codes";

    private static readonly Source boltsEn = new("EN 1993-1-8:2005", "Table 3.4; stainless bolts EN 1993-1-4:2006, 6.2");
    private static readonly Source boltsAisc = new("AISC 360-16 and 360-22", "J3.6 to J3.8; shear with tension J3.7 by straight lines: each at most 1, together at most 1.3");
    private static readonly Source net = new("EN 1993-1-1:2005 6.2.3 and 6.2.5, AISC 360 D2", "yield of the net section, and 0.9 f_u/γ_M2 or 0.75 F_u on it");

    internal static readonly FormulaEntry<FixingLoad> BoltsEntry = new(
        "bars.bolts", "bolts of a standoff", Nature.Strength, "both ends of every bolted bar, every state", "shear and tension of the worst bolt", "bolts by the code of the criteria", "no strength situation was given")
    {
        Dimension = Dimension.Number,
        Where = (in FixingLoad load) => load.Where,
        Rule = (in FixingLoad load) => load.Load.Bar.Design.IsAisc ? boltsAisc : boltsEn,
        Lacks = (in FixingLoad load) => Reason(load),
        Run = (Working? w, in FixingLoad load) =>
        {
            load.Load.Tell(w);
            (FlatForces f, CheckedBar bar, BarDesign design, BoltedFixing fixing) = (load.Forces, load.Load.Bar, load.Load.Bar.Design, load.Bolts);
            Source source = design.IsAisc ? boltsAisc : boltsEn;
            (double F_v, double F_t) = BoltForces.Of(w, fixing, f, bar.b);
            double R_v = BoltStrength.Shear(w, fixing.Bolt, fixing.ShearPlanes, design);
            double R_t = BoltStrength.Tension(w, fixing.Bolt, design);
            double v = w.Let("v", F_v / R_v, Dimension.Number, source), s = w.Let("s", F_t / R_t, Dimension.Number, source);
            double both = design.IsAisc ? w.Let("both", (v + s) / 1.3, Dimension.Number, source) : w.Let("both", v + s / 1.4, Dimension.Number, source);
            return (w.Let("u", Math.Max(Math.Max(v, s), both), Dimension.Number, source), 1);
        },
    };

    internal static readonly FormulaEntry<FixingLoad> BearingEntry = new(
        "bars.bearing", "bearing of a standoff at its bolts", Nature.Strength, "both ends of every bolted bar, every state", "force of the worst bolt", "bearing of the flat", "no strength situation was given")
    {
        Dimension = Dimension.Force,
        Where = (in FixingLoad load) => load.Where,
        Rule = (in FixingLoad load) => load.Load.Bar.Design.IsAisc ? boltsAisc : boltsEn,
        Lacks = (in FixingLoad load) => Reason(load) ?? load.Load.Bar.Design.Uncovered,
        Run = (Working? w, in FixingLoad load) =>
        {
            load.Load.Tell(w);
            (FlatForces f, CheckedBar bar, BarDesign design, BoltedFixing fixing) = (load.Forces, load.Load.Bar, load.Load.Bar.Design, load.Bolts);
            return (BoltForces.Of(w, fixing, f, bar.b).Shear, BoltStrength.Bearing(w, fixing, bar.b, bar.t, bar.f_y, bar.f_u, design));
        },
    };

    internal static readonly FormulaEntry<FixingLoad> TearOutEntry = new(
        "bars.tear-out", "tear-out of a standoff at its bolts", Nature.Strength, "both ends of every bolted bar, every state", "force of the worst bolt, and the axial pull", "tear-out of one bolt, and of a block", "no strength situation was given")
    {
        Dimension = Dimension.Number,
        Where = (in FixingLoad load) => load.Where,
        Rule = (in FixingLoad load) => load.Load.Bar.Design.IsAisc ? TearOutStrength.Aisc : TearOutStrength.En,
        Lacks = (in FixingLoad load) => Reason(load) ?? load.Load.Bar.Design.Uncovered,
        Run = (Working? w, in FixingLoad load) =>
        {
            load.Load.Tell(w);
            (FlatForces f, CheckedBar bar, BarDesign design, BoltedFixing fixing) = (load.Forces, load.Load.Bar, load.Load.Bar.Design, load.Bolts);
            Source source = design.IsAisc ? TearOutStrength.Aisc : TearOutStrength.En;
            double F_v = BoltForces.Of(w, fixing, f, bar.b).Shear, N_t = w.Given("N_t", Math.Max(0, f.N), Dimension.Force, "axial pull");
            double R_1 = w.Given("R_1", TearOutStrength.OneBolt(w, fixing, bar.b, bar.t, bar.f_y, bar.f_u, design), Dimension.Force, "one bolt");
            double R_n = w.Given("R_n", TearOutStrength.Block(w, fixing, bar.b, bar.t, bar.f_y, bar.f_u, TearOutStrength.IsEccentric(f), design), Dimension.Force, "a block");
            return (w.Let("u", Math.Max(F_v / R_1, N_t / R_n), Dimension.Number, source), 1);
        },
    };

    internal static readonly FormulaEntry<FixingLoad> NetSectionEntry = new(
        "bars.net-section", "net section of a standoff at its bolts", Nature.Strength, "both ends of every bolted bar, every state", "stress on the section less its holes", "lesser of yield and rupture", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in FixingLoad load) => load.Where,
        Rule = (in FixingLoad _) => net,
        Lacks = (in FixingLoad load) => load.Load.Bar.Design.Uncovered,
        Run = (Working? w, in FixingLoad load) =>
        {
            load.Load.Tell(w);
            (FlatForces f, CheckedBar bar, BarDesign design, BoltedFixing fixing) = (load.Forces, load.Load.Bar, load.Load.Bar.Design, load.Bolts);
            (double b, double t, double d_0, double holes) = (bar.b, bar.t, fixing.Bolt.d_0, fixing.HoleInertia(bar.t));
            (double N, double M_weak, double M_strong, int n) = (f.N, f.Weak, f.Strong, fixing.Columns);
            w.Given(b, Dimension.SmallLength, "width");
            w.Given(t, Dimension.SmallLength, "thickness");
            w.Given(d_0, Dimension.SmallLength, "hole");
            w.Given(n, Dimension.Number, "holes in a row");
            w.Given(N, Dimension.Force, "axial force");
            w.Given(M_weak, Dimension.Moment, "moment about the weak axis");
            w.Given(M_strong, Dimension.Moment, "moment about the strong axis");
            double A_net = w.Let("A_net", (b - n * d_0) * t, Dimension.SmallArea, net);
            double W_weak = w.Let("W_weak", (b - n * d_0) * t * t / 6, Dimension.SectionModulus, net);
            w.Given(holes, Dimension.AreaMomentOfInertia, "second moment of the holes");
            double W_strong = w.Let("W_strong", (t * b * b * b / 12 - holes) / (b / 2), Dimension.SectionModulus, net);
            double sigma = w.Let("sigma", Math.Abs(N) / A_net + Math.Abs(M_weak) / W_weak + Math.Abs(M_strong) / W_strong, Dimension.Stress, net);
            double f_d = BarSectionChecks.Allowed(w, bar.f_y, design, net);
            double f_u = w.Given("f_u", bar.f_u, Dimension.Stress, "ultimate strength");
            if (design.Code == DesignCode.AllowableStress)
                return (sigma, f_d);
            double c = w.Given("c", design.IsAisc ? design.Aisc(0.75, 2) : 0.9 / design.GammaM2, Dimension.Number, "0.9/γ_M2, φ or 1/Ω");
            return (sigma, w.Let("allowed", Math.Min(f_d, c * f_u), Dimension.Stress, net));
        },
    };

    /// <summary>
    /// Bolts in shear and tension: F_v/F_v,Rd + F_t/(1.4 F_t,Rd) ≤ 1 and F_t ≤ F_t,Rd (EN 1993-1-8); under AISC the
    /// straight lines F_v/R_v + F_t/R_t ≤ 1.3 and each at most 1, in place of an ellipse.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fixing">Its bolts.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="atSkin">True for the skin end.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Bolts(LoadedBar bar, BoltedFixing fixing, BarDesign design, bool atSkin = false) =>
        BoltsEntry.With(FixingLoad.Of(bar, fixing, design, atSkin), bar.Situation);

    /// <summary>The flat in bearing at its worst bolt hole; under AISC with the tear-out of that bolt, as J3.10 has both in one.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fixing">Its bolts.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="atSkin">True for the skin end.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Bearing(LoadedBar bar, BoltedFixing fixing, BarDesign design, bool atSkin = false) =>
        BearingEntry.With(FixingLoad.Of(bar, fixing, design, atSkin), bar.Situation);

    /// <summary>
    /// Tear-out: the worst bolt through the end or an edge of the flat, and all bolts together with a block of the flat by
    /// the axial pull. EN 1993-1-8: two planes from hole to edge at f_y/√3, and (3.9), its part in tension halved (3.10) where a
    /// moment or a shear makes it eccentric. AISC 360: 1.2 l_c t F_u, and block shear with U_bs = 0.5 or 1.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fixing">Its bolts.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="atSkin">True for the skin end.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check TearOut(LoadedBar bar, BoltedFixing fixing, BarDesign design, bool atSkin = false) =>
        TearOutEntry.With(FixingLoad.Of(bar, fixing, design, atSkin), bar.Situation);

    /// <summary>
    /// Elastic stress on the net section through a row of holes, against the lesser of yield and rupture. For any metal;
    /// under allowable stress against the allowed fraction of the yield strength.
    /// </summary>
    /// <param name="bar">The bar.</param>
    /// <param name="fixing">Its bolts.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="atSkin">True for the skin end.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check NetSection(LoadedBar bar, BoltedFixing fixing, BarDesign design, bool atSkin = false) =>
        NetSectionEntry.With(FixingLoad.Of(bar, fixing, design, atSkin), bar.Situation);

    private static string? Reason(in FixingLoad load)
    {
        (BoltedFixing fixing, BarDesign design) = (load.Bolts, load.Load.Bar.Design);
        return design.Code == DesignCode.AllowableStress ? NoAllowable
            : design.Code == DesignCode.En1993 && !fixing.Bolt.Grade.IsEuropean ? $"EN 1993-1-8 does not know bolts of grade {fixing.Bolt.Grade.Name}"
            : BoltForces.Turns(fixing, load.Forces) ? OneBolt
            : null;
    }
}
