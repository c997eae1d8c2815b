namespace StatueFrame.Checks;

/// <summary>
/// Checks of a cut through masonry or concrete without tension: thrust line, toe, capacity, shear, overturning. The family
/// is "core" for towers and "pedestal" for bed joints.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class BlockChecks
{
    private static readonly Source elastic = new("elastic theory without tension", "see the theory page on cores");
    private static readonly Source block = new("EN 1996-1-1:2005", "6.1.2.1 and Annex G; the stress block for any section");
    private static readonly Source plain = new("EN 1992-1-1:2004", "12.6.1 (12.2) and 12.6.5.2");
    private static readonly Source plainAci = new("ACI 318-19", "14.5.2 to 14.5.4, from memory");
    private static readonly Source shear = new("EN 1996-1-1:2005", "6.2 and 3.6.2");
    private static readonly Source plainShear = new("EN 1992-1-1:2004", "12.6.3");
    private static readonly Source bars = new("EN 1992-1-1:2004", "6.1 with 3.1.7 and 3.2.7");

    /// <summary>The thrust within the kern: no joint opens. For a solid rectangle 6|e_x|/b + 6|e_y|/h ≤ 1, the middle third. A rule for service.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check Kern(BlockCut cut, string family = "core")
    {
        cut.Validate();
        return Check.Of(cut.Subject($"{family}.kern", "thrust within the kern, no open joint"), Dimension.Number, elastic, w =>
        {
            if (!Thrust(w, cut, out double e_x, out double e_y))
                return (1, 0);
            PlanMoments m = cut.Section.Plan.Whole;
            double A = w.Given("A", m.A, Dimension.Area), I_x = w.Given("I_x", m.YY, Dimension.AreaMomentOfInertia), I_y = w.Given("I_y", m.XX, Dimension.AreaMomentOfInertia);
            (double x, double y) = cut.Section.Plan.Farthest(-e_x / I_y, -e_y / I_x);
            double x_far = w.Given("x_far", Math.Abs(x), Dimension.Length, "far edge"), y_far = w.Given("y_far", Math.Abs(y), Dimension.Length, "far edge");
            return (w.Let("kern", A * (Math.Abs(e_x) * x_far / I_y + Math.Abs(e_y) * y_far / I_x), Dimension.Number, elastic, "1 where the far edge loses its compression"), 1);
        });
    }

    /// <summary>The greatest compressive stress of the cracked section against f_k/γ_M. Stricter than the even block of <see cref="Capacity"/>.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check ToeStress(BlockCut cut, string family = "core")
    {
        cut.Validate();
        return Check.Of(cut.Subject($"{family}.toe-stress", "stress at the toe, no tension"), Dimension.Stress, elastic, w =>
        {
            if (!Thrust(w, cut, out _, out _) || NoTension.Solve(cut.Section.Plan, cut.N, cut.mx, cut.my) is not { } plane)
                return (Math.Max(1, Math.Abs(cut.N)), 0);
            w.Given("A_c", plane.Pressed.A, Dimension.Area, "pressed part, from equilibrium", elastic);
            w.Given("x_toe", plane.Toe.X, Dimension.Length, "toe");
            w.Given("y_toe", plane.Toe.Y, Dimension.Length, "toe");
            double sigma = w.Given("sigma", plane.GreatestPressure, Dimension.Stress, "linear over the pressed part, in balance with N and its place", elastic);
            return (sigma, Design(w, cut));
        });
    }

    /// <summary>
    /// The compressive force against what an even block balances: f_d A_c with its centroid at the thrust, bowed out the way the
    /// thrust pulls it or the way it is thinnest, whichever holds less. Masonry with the
    /// initial eccentricity h_ef/450 and the reduction exp(−u²/2) for slenderness; plain concrete by EN 1992-1-1, 12.6, or by
    /// ACI 318.
    /// </summary>
    /// <param name="cut">The cut.</param>
    /// <param name="design">The rules; null for Eurocode.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check Capacity(BlockCut cut, BaseDesign? design = null, string family = "core")
    {
        cut.Validate();
        bool aci = design?.IsAmerican == true && cut.Material is Concrete;
        CheckSubject subject = cut.Subject($"{family}.capacity", "compression with its eccentricity");
        if (aci)
            return Check.Of(subject, Dimension.Number, plainAci, w => PlainConcrete.Aci(w, cut));
        return Check.Of(subject, Dimension.Force, cut.Material is Concrete ? plain : block, w =>
        {
            if (!Thrust(w, cut, out double e_x, out double e_y))
                return (Math.Max(1, Math.Abs(cut.N)), 0);
            double Resistance(Working? w, in Bow bow) => cut.Material is Concrete concrete
                ? PlainConcrete.Capacity(w, cut.Section, concrete, e_x, e_y, cut.FreeHeight.Meters, bow)
                : MasonryStrength.Capacity(w, cut.Section, (Masonry)cut.Material, e_x, e_y, cut.FreeHeight.Meters, bow);
            return (cut.N, Resistance(w, cut.Bows.MinBy(bow => Resistance(null, bow))));
        });
    }

    /// <summary>
    /// Shear on the pressed part: (f_vk0 A_c + μ N)/γ_M for masonry, with f_vk at most its limit; f_cvd A_c/1.5 for plain
    /// concrete. Shear of reinforced concrete is not checked.
    /// </summary>
    /// <param name="cut">The cut.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check Shear(BlockCut cut, string family = "core")
    {
        cut.Validate();
        string id = family == "pedestal" ? "pedestal.sliding" : $"{family}.shear";
        CheckSubject subject = cut.Subject(id, family == "pedestal" ? "sliding in a bed joint" : "shear on the pressed part");
        if (cut.Reinforcement is not null)
            return Check.NotChecked(subject, "the links of the reinforced section are not described", plainShear);
        return Check.Of(subject, Dimension.Force, cut.Material is Concrete ? plainShear : shear, w =>
        {
            double V = w.Given("V", cut.V, Dimension.Force, "shear, without direction");
            if (!Thrust(w, cut, out _, out _) || NoTension.Solve(cut.Section.Plan, cut.N, cut.mx, cut.my) is not { } plane)
                return (V, 0);
            double A_c = w.Given("A_c", plane.Pressed.A, Dimension.Area, "pressed part, linear stress without tension", elastic);
            return (V, cut.Material is Concrete concrete
                ? PlainConcrete.Shear(w, concrete, cut.N, A_c)
                : MasonryStrength.Shear(w, (Masonry)cut.Material, cut.N, A_c));
        });
    }

    /// <summary>The overturning moment against N times the distance of the edge in its direction.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="design">The margin; null for 1.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check Overturning(BlockCut cut, BaseDesign? design = null, string family = "core")
    {
        cut.Validate();
        return Check.Of(cut.Subject($"{family}.overturning", "overturning about the edge"), Dimension.Moment, elastic, w =>
        {
            double M = w.Given("M", cut.M, Dimension.Moment, "moment about the center, without direction");
            double N = w.Given("N", cut.N, Dimension.Force, "compression");
            double margin = w.Given("margin", design?.OverturningMargin ?? 1, Dimension.Number, "required safety");
            if (N <= 0)
                return (Math.Max(1, M), 0);
            double gauge = cut.Section.Plan.Gauge(cut.mx, cut.my);
            double d = w.Given("d", gauge == 0 ? 0.5 * Math.Min(cut.Section.Widths.X, cut.Section.Widths.Y) : M / gauge, Dimension.Length, "edge in the direction of the thrust");
            return (M, w.Let("M_stable", N * d / margin, Dimension.Moment, elastic));
        });
    }

    /// <summary>A reinforced section under axial force and moments about both axes: the moment against that which it resists in the same direction with the same axial force.</summary>
    /// <param name="cut">The cut, with its bars.</param>
    /// <param name="design">The rules; null for Eurocode.</param>
    /// <param name="family">"core" or "pedestal".</param>
    public static Check Interaction(BlockCut cut, BaseDesign? design = null, string family = "core")
    {
        cut.Validate();
        CheckSubject subject = cut.Subject($"{family}.interaction", "axial force and bending of reinforced concrete");
        if (cut.Material is not Concrete concrete)
            return Check.NotChecked(subject, "bars in masonry are not covered", bars);
        if (cut.Reinforcement is not { } steel)
            return Check.NotChecked(subject, "the bars of the section are not described", bars);
        if (design?.IsAmerican == true)
            return Check.NotChecked(subject, "reinforced sections are checked by EN 1992-1-1 only", bars);
        return Check.Of(subject, Dimension.Number, bars, w =>
        {
            var section = new ConcreteInteraction(cut.Section.Plan, concrete, steel);
            (double compression, double tension) = section.AxialRange;
            double N = w.Given("N", cut.N, Dimension.Force, "compression"), M = w.Given("M", cut.M, Dimension.Moment, "moment, without direction");
            double N_Rd = w.Given("N_Rd", N >= 0 ? compression : tension, Dimension.Force, "axial force alone", bars);
            double n = w.Let("n", N / N_Rd, Dimension.Number, bars);
            if (n >= 1 || M == 0)
                return (n, 1);
            double M_Rd = w.Given("M_Rd", section.MomentAt(N, cut.mx, cut.my), Dimension.Moment, "resisted with N in the moment's direction, at the limit strains", bars);
            return (w.Let("u", Math.Max(n, M / M_Rd), Dimension.Number, bars), 1);
        });
    }

    /// <summary>Tells the thrust and its place; false when nothing presses or the thrust is outside.</summary>
    private static bool Thrust(Working? w, BlockCut cut, out double e_x, out double e_y)
    {
        (e_x, e_y) = (0, 0);
        double N = w.Given("N", cut.N, Dimension.Force, "compression");
        double M_y = w.Given("M_y", cut.mx, Dimension.Moment, "moment about y"), M_x = w.Given("M_x", -cut.my, Dimension.Moment, "moment about x");
        if (N <= 0)
        {
            w?.Note("There is no compression.");
            return false;
        }
        e_x = w.Let("e_x", M_y / N, Dimension.Length, elastic, "place of the thrust");
        e_y = w.Let("e_y", -M_x / N, Dimension.Length, elastic, "place of the thrust");
        if (cut.Section.Plan.Gauge(e_x, e_y) < 1)
            return true;
        w?.Note("The thrust acts outside the section.");
        return false;
    }

    private static double Design(Working? w, BlockCut cut)
    {
        double f_k = w.Given("f_k", cut.Material.f_k, Dimension.Stress, $"compressive strength of {cut.Material.Name}", cut.Material.Source);
        double gamma = w.Given("gamma", cut.Material.Gamma, Dimension.Number, "partial factor");
        return w.Let("f_d", f_k / gamma, Dimension.Stress);
    }
}
