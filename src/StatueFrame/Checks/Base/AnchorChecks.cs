using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Checks of anchor bars: steel, cone, head, bond and girder.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class AnchorChecks
{
    private static readonly Source steelEn = new("EN 1993-1-8:2005 Table 3.4, EN 1992-4:2018 7.2.1.3", "the lesser");
    private static readonly Source steelAci = new("ACI 318-19", "17.6.1 (17.6.1.2), ϕ = 0.75");
    private static readonly Source shearEn = new("EN 1993-1-8:2005", "6.2.2 (7) and Table 3.4");
    private static readonly Source shearAci = new("ACI 318-19", "17.7.1 (17.7.1.2b), ϕ = 0.65, 0.8 on grout");
    private static readonly Source bothEn = new("EN 1992-4:2018", "Table 7.3, steel: exponents 2");
    private static readonly Source bothAci = new("ACI 318-19", "17.8");
    private static readonly Source coneEn = new("EN 1992-4:2018", "7.2.1.4");
    private static readonly Source coneAci = new("ACI 318-19", "17.6.2, ϕ of the design");
    private static readonly Source headEn = new("EN 1992-4:2018", "7.2.1.5 (7.11)");
    private static readonly Source headAci = new("ACI 318-19", "17.6.3 (17.6.3.2.2a)");
    private static readonly Source headMasonry = new("EN 1996-1-1:2005", "6.1.3, without enhancement");
    private static readonly Source bond = new("EN 1992-1-1:2004", "8.4.2 (8.2), other than good bond taken");
    private static readonly Source girder = new("statics of a beam under even bearing", "theory page on the base");

    /// <summary>Tension in the steel of a bar.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="tension">Its force, pre-tension included.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Which bar.</param>
    /// <param name="situation">The situation.</param>
    public static Check Tension(AnchorBar bar, Force tension, BaseDesign? design = null, string where = "", string situation = "")
    {
        design = Valid(bar, design);
        double T = CheckInput.Finite(tension.Newtons, nameof(tension));
        return Check.Of(new CheckSubject("base.anchor-tension", "tension in an anchor bar", where, situation), Dimension.Force, design.IsAmerican ? steelAci : steelEn,
            w => (w.Given("T", Math.Max(0, T), Dimension.Force, "force in the bar"), TensionResistance(w, bar, design)));
    }

    /// <summary>Shear in the steel of a bar.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="shear">Its force.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Which bar.</param>
    /// <param name="situation">The situation.</param>
    public static Check Shear(AnchorBar bar, Force shear, BaseDesign? design = null, string where = "", string situation = "")
    {
        design = Valid(bar, design);
        double V = Math.Abs(CheckInput.Finite(shear.Newtons, nameof(shear)));
        return Check.Of(new CheckSubject("base.anchor-shear", "shear in an anchor bar", where, situation), Dimension.Force, design.IsAmerican ? shearAci : shearEn,
            w => (w.Given("V", V, Dimension.Force, "force across the bar"), ShearResistance(w, bar, design)));
    }

    /// <summary>Tension and shear together: (T/T_R)² + (V/V_R)² ≤ 1, or under ACI T/T_R + V/V_R ≤ 1.2 and each at most 1.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="tension">Force along it.</param>
    /// <param name="shear">Force across it.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Which bar.</param>
    /// <param name="situation">The situation.</param>
    public static Check Interaction(AnchorBar bar, Force tension, Force shear, BaseDesign? design = null, string where = "", string situation = "")
    {
        design = Valid(bar, design);
        double T = Math.Max(0, CheckInput.Finite(tension.Newtons, nameof(tension))), V = Math.Abs(CheckInput.Finite(shear.Newtons, nameof(shear)));
        return Check.Of(new CheckSubject("base.anchor-interaction", "tension with shear in an anchor bar", where, situation), Dimension.Number, design.IsAmerican ? bothAci : bothEn, w =>
        {
            w.Given(T, Dimension.Force, "force along the bar");
            w.Given(V, Dimension.Force, "force across the bar");
            double T_R = TensionResistance(w, bar, design), V_R = ShearResistance(w, bar, design);
            double t = w.Let("t", T / T_R, Dimension.Number), v = w.Let("v", V / V_R, Dimension.Number);
            return (design.IsAmerican
                ? w.Let("u", Math.Max(Math.Max(t, v), t > 0.2 && v > 0.2 ? (t + v) / 1.2 : 0), Dimension.Number, bothAci)
                : w.Let("u", t * t + v * v, Dimension.Number, bothEn), 1);
        });
    }

    /// <summary>The cone of concrete that the bars in tension pull out of their block, as a group.</summary>
    /// <param name="bars">The bars.</param>
    /// <param name="tensions">The pull on each from the outer actions, without pre-tension: pre-tension is held by the plate on top of the cone.</param>
    /// <param name="block">Plan of the block.</param>
    /// <param name="concrete">Its concrete.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check Breakout(IReadOnlyList<AnchorBar> bars, IReadOnlyList<Force> tensions, BlockSection block, Concrete concrete, BaseDesign? design = null, string where = "", string situation = "")
    {
        design ??= new BaseDesign();
        if (bars.Count != tensions.Count)
            throw new ArgumentException("There must be a tension for every bar.", nameof(tensions));
        var pulled = new List<(double X, double Y, double Force)>();
        double embedment = double.PositiveInfinity;
        for (int i = 0; i < bars.Count; i++)
        {
            Valid(bars[i], design);
            double force = CheckInput.Finite(tensions[i].Newtons, nameof(tensions));
            if (force <= 0)
                continue;
            pulled.Add((bars[i].X.Meters, bars[i].Y.Meters, force));
            embedment = Math.Min(embedment, bars[i].Embedment.Meters);
        }
        var subject = new CheckSubject("base.breakout", "concrete cone of the anchor bars in tension", where, situation);
        Source source = design.IsAmerican ? coneAci : coneEn;
        if (pulled.Count == 0)
            return Check.Of(subject, Dimension.Force, source, w => (w.Given("T", 0, Dimension.Force, "no bar is pulled"), 1));
        var cone = new ConcreteBreakout(block, [.. pulled], embedment);
        if (cone.LeastEdge <= 0)
            return Check.Of(subject, Dimension.Force, source, w => (w.Given("T", cone.Tension, Dimension.Force, "a bar lies outside the block"), 0));
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            double T = w.Given("T", cone.Tension, Dimension.Force, "sum of the bars in tension");
            if (!design.IsAmerican)
                return (T, cone.Eurocode(w, concrete.f_k, concrete.Cracked, design.GammaMc));
            double phi = w.Given("phi", design.PhiConcrete, Dimension.Number, "", coneAci), N_cbg = cone.American(w, concrete.f_k, concrete.Cracked);
            return (T, w.Let("N_R", phi * N_cbg, Dimension.Force, coneAci));
        });
    }

    /// <summary>The head or anchor plate bearing on what it is set in; a bar without a head by bond over its bonded length.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="tension">Its force, pre-tension included.</param>
    /// <param name="block">What it is set in.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Which bar.</param>
    /// <param name="situation">The situation.</param>
    public static Check PullOut(AnchorBar bar, Force tension, BlockMaterial block, BaseDesign? design = null, string where = "", string situation = "")
    {
        design = Valid(bar, design);
        double T = Math.Max(0, CheckInput.Finite(tension.Newtons, nameof(tension)));
        if (bar.HeadArea is not { } head)
            return Bond(bar, T, block, new CheckSubject("base.bond", "bond of an anchor bar", where, situation));
        var subject = new CheckSubject("base.pull-out", "bearing of an anchor bar's head", where, situation);
        Source source = block is Masonry ? headMasonry : design.IsAmerican ? headAci : headEn;
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            w.Given(T, Dimension.Force, "force in the bar");
            double A_h = w.Given("A_h", head, Dimension.SmallArea, "bearing area of the head"), f_k = w.Given("f_k", block.f_k, Dimension.Stress, $"strength of {block.Name}", block.Source);
            if (block is not Concrete concrete)
            {
                double gamma = w.Given("gamma", block.Gamma, Dimension.Number);
                return (T, w.Let("N_Rd", A_h * f_k / gamma, Dimension.Force, source));
            }
            if (design.IsAmerican)
            {
                double phi = w.Given("phi", design.PhiConcrete, Dimension.Number), psi_cP = w.Given("psi_cP", concrete.Cracked ? 1 : 1.4, Dimension.Number, "cracking", source);
                return (T, w.Let("N_R", phi * psi_cP * 8 * A_h * f_k, Dimension.Force, source));
            }
            double k_2 = w.Given("k_2", concrete.Cracked ? 7.5 : 10.5, Dimension.Number, concrete.Cracked ? "cracked" : "uncracked", source), gammaMc = w.Given("gammaMc", design.GammaMc, Dimension.Number);
            return (T, w.Let("N_Rd", k_2 * A_h * f_k / gammaMc, Dimension.Force, source));
        });
    }

    private static Check Bond(AnchorBar bar, double T, BlockMaterial block, CheckSubject subject)
    {
        double l = bar.BondLength.Meters;
        if (l == 0)
            return Check.NotChecked(subject, "neither a head nor a bonded length is described", bond);
        if (block is not Concrete concrete)
            return Check.NotChecked(subject, "bond in masonry needs tests", bond);
        if (!bar.Ribbed)
            return Check.NotChecked(subject, "bond of a plain bar is not covered; give it a head", bond);
        return Check.Of(subject, Dimension.Force, bond, w =>
        {
            w.Given(T, Dimension.Force, "force in the bar");
            double d = w.Given("d", bar.Diameter.Meters, Dimension.SmallLength, "diameter");
            w.Given(l, Dimension.SmallLength, "bonded length");
            double f_ctm = w.Given("f_ctm", Math.Min(concrete.f_ctm, 4.1e6), Dimension.Stress, "mean tensile strength, at most that of C60", bond), gamma_C = concrete.PartialFactor;
            double eta = w.Given("eta", 0.7 * Math.Min(1, (0.132 - d) / 0.1), Dimension.Number, "η₁ η₂: poor bond, thick bars", bond);
            double f_bd = w.Let("f_bd", 2.25 * eta * 0.7 * f_ctm / gamma_C, Dimension.Stress, bond);
            return (T, w.Let("N_Rd", Math.Max(0, f_bd) * Math.PI * d * l, Dimension.Force, bond));
        });
    }

    /// <summary>A girder that two like bars pull up against, bent under the even bearing of the block above it, and its shear.</summary>
    /// <param name="beam">The girder.</param>
    /// <param name="tension">Force of each of the two bars, pre-tension included.</param>
    /// <param name="design">Rules; null for Eurocode.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check GirderBending(AnchorGirder beam, Force tension, BaseDesign? design = null, string where = "", string situation = "")
    {
        design = Valid(beam, design);
        double T = Math.Max(0, CheckInput.Finite(tension.Newtons, nameof(tension)));
        return Check.Of(new CheckSubject("base.girder-bending", "anchor girder in bending and shear", where, situation), Dimension.Stress, girder, w =>
        {
            w.Given(T, Dimension.Force, "force of each bar");
            double L = w.Given("L", beam.Length.Meters, Dimension.Length, "length"), s = w.Given("s", beam.BarDistance.Meters, Dimension.Length, "distance of the bars");
            double q = w.Let("q", 2 * T / L, Dimension.LineLoad, girder, "even bearing"), o = w.Let("o", (L - s) / 2, Dimension.Length, girder, "beyond the bars");
            double M = w.Let("M", Math.Max(q * o * o / 2, Math.Abs(q * L * L / 8 - T * s / 2)), Dimension.Moment, girder, "at the bars or in the middle");
            double V = w.Let("V", Math.Max(q * o, T - q * o), Dimension.Force, girder);
            double W = w.Given("W", beam.SectionModulus.CubicMeters, Dimension.SectionModulus), A_v = w.Given("A_v", beam.ShearArea.SquareMeters, Dimension.SmallArea);
            double f_y = w.Given("f_y", beam.Material.YieldStrength.Pascals, Dimension.Stress, "yield strength", beam.Material.Source);
            double sigma = w.Let("sigma", Math.Max(M / W, Math.Sqrt(3) * V / A_v), Dimension.Stress, girder, "bending stress, or √3 times the shear stress");
            if (design.IsAmerican)
                return (sigma, w.Let("f_R", 0.9 * f_y, Dimension.Stress));
            double gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number);
            return (sigma, w.Let("f_R", f_y / gammaM0, Dimension.Stress));
        });
    }

    /// <summary>The bearing of the block on the girder.</summary>
    /// <param name="beam">The girder.</param>
    /// <param name="tension">Force of each of the two bars, pre-tension included.</param>
    /// <param name="block">What it is laid in.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public static Check GirderBearing(AnchorGirder beam, Force tension, BlockMaterial block, string where = "", string situation = "")
    {
        Valid(beam, null);
        double T = Math.Max(0, CheckInput.Finite(tension.Newtons, nameof(tension)));
        return Check.Of(new CheckSubject("base.girder-bearing", "bearing of the block on the anchor girder", where, situation), Dimension.Stress, girder, w =>
        {
            w.Given(T, Dimension.Force, "force of each bar");
            double L = w.Given("L", beam.Length.Meters, Dimension.Length, "length"), b = w.Given("b", beam.Width.Meters, Dimension.SmallLength, "width");
            double sigma = w.Let("sigma", 2 * T / (L * b), Dimension.Stress, girder);
            double f_k = w.Given("f_k", block.f_k, Dimension.Stress, $"strength of {block.Name}", block.Source), gamma = w.Given("gamma", block.Gamma, Dimension.Number);
            return (sigma, w.Let("f_d", f_k / gamma, Dimension.Stress));
        });
    }

    internal static double TensionResistance(Working? w, AnchorBar bar, BaseDesign design)
    {
        double A_s = w.Given("A_s", bar.A_s, Dimension.SmallArea, "stress area"), f_u = w.Given("f_u", bar.Metal.UltimateStrength.Pascals, Dimension.Stress, "ultimate strength", bar.Material.Source);
        double f_y = w.Given("f_y", bar.Metal.YieldStrength.Pascals, Dimension.Stress, "yield strength");
        if (design.IsAmerican)
        {
            double f_most = w.Given("f_most", 860e6, Dimension.Stress, "125 000 psi", steelAci);
            return w.Let("T_R", 0.75 * A_s * Math.Min(f_u, Math.Min(1.9 * f_y, f_most)), Dimension.Force, steelAci);
        }
        double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        double gammaMs = w.Let("gammaMs", Math.Max(1.4, 1.2 * f_u / f_y), Dimension.Number, new Source("EN 1992-4:2018", "Table 4.1"));
        return w.Let("T_R", Math.Min(0.9 * A_s * f_u / gammaM2, A_s * f_u / gammaMs), Dimension.Force, steelEn);
    }

    internal static double ShearResistance(Working? w, AnchorBar bar, BaseDesign design)
    {
        double A_s = w.Given("A_s", bar.A_s, Dimension.SmallArea, "stress area"), f_u = w.Given("f_u", bar.Metal.UltimateStrength.Pascals, Dimension.Stress, "ultimate strength", bar.Material.Source);
        double f_y = w.Given("f_y", bar.Metal.YieldStrength.Pascals, Dimension.Stress, "yield strength");
        if (design.IsAmerican)
        {
            double f_most = w.Given("f_most", 860e6, Dimension.Stress, "125 000 psi", shearAci);
            return w.Let("V_R", 0.65 * 0.8 * 0.6 * A_s * Math.Min(f_u, Math.Min(1.9 * f_y, f_most)), Dimension.Force, shearAci);
        }
        double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
        double per = w.Given("per", 3e-10, Dimension.Number, "0.0003 per MPa", shearEn);
        double alpha_b = w.Let("alpha_b", 0.44 - per * Math.Clamp(f_y, 235e6, 640e6), Dimension.Number, shearEn);
        double alpha_v = w.Given("alpha_v", f_u <= 850e6 ? 0.6 : 0.5, Dimension.Number, "", new Source("EN 1993-1-8:2005", "Table 3.4"));
        return w.Let("V_R", Math.Min(alpha_b, alpha_v) * f_u * A_s / gammaM2, Dimension.Force, shearEn);
    }

    private static BaseDesign Valid(AnchorBar bar, BaseDesign? design)
    {
        ArgumentNullException.ThrowIfNull(bar);
        var v = new Validator();
        bar.Validate(v);
        v.ThrowIfAny();
        return design ?? new BaseDesign();
    }

    private static BaseDesign Valid(AnchorGirder beam, BaseDesign? design)
    {
        ArgumentNullException.ThrowIfNull(beam);
        var v = new Validator();
        beam.Validate(v);
        v.ThrowIfAny();
        return design ?? new BaseDesign();
    }
}
