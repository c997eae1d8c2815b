namespace StatueFrame.Checks;

/// <summary>
/// The block or mat itself: what sticks out beyond the pedestal is bent up by the ground, or down by its own weight where the ground
/// lets go, and sheared; a thin one is punched. A meter of it, with the greatest pressure over all that sticks out.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. SI units.</remarks>
internal static class FootingChecks
{
    private static readonly Source ground = Source.Assumed("foundations: greatest pressure, without tension and without the block's own weight, over all that sticks out");
    private static readonly Source plain = new("EN 1992-1-1:2004", "12.3.1 and 12.9.3 (12.13), from memory");
    private static readonly Source plainShear = new("EN 1992-1-1:2004", "12.6.3 without compression, a block's thickness from the face, from memory");
    private static readonly Source bending = new("EN 1992-1-1:2004", "3.1.7 (3), 6.1, from memory");
    private static readonly Source shear = new("EN 1992-1-1:2004", "6.2.2 (6.2), from memory");
    private static readonly Source punching = new("EN 1992-1-1:2004", "6.4.4 (6.47) to (6.50), from memory");
    private static readonly Source least = new("EN 1992-1-1:2004", "9.2.1.1 (9.1N), from memory");

    /// <summary>Why the block itself cannot be looked at; null when it can.</summary>
    public static string? Lacks(Statue statue, BaseDesign design) =>
        design.Code == BaseCode.American ? "the block itself is worked out by EN 1992-1-1 only"
        : statue.Pedestal is null ? "no pedestal is described that would tell where the block is loaded (Statue.Pedestal)" : null;

    /// <summary>All checks of the block in one state.</summary>
    /// <param name="footing">The block with what it carries.</param>
    public static IEnumerable<Check> All(Footing footing)
    {
        yield return Bending(footing);
        yield return Shear(footing);
        if (footing.Foundation.Reinforcement is null)
            yield break;
        yield return Punching(footing);
        yield return Reinforcement(footing);
    }

    public static Check Bending(Footing f) => Of(f, f.Subject("bending", "block or mat in bending beyond the pedestal"), Dimension.Number, f.Foundation.Reinforcement is null ? plain : bending, w =>
    {
        (double p, double own, double q_min, double a, double h) = Tell(w, f);
        double M_up = w.Let("M_up", p * a * a / 2, Dimension.Force, ground, "bent up, a meter: N·m/m");
        double earth = w.Given("earth", f.EarthPressure, Dimension.Pressure, "earth on it");
        double M_down = w.Let("M_down", Math.Max(0, own + earth - q_min) * a * a / 2, Dimension.Force, ground, "bent down by its own weight and the earth on it where the ground lets go");
        double bottom = w.Given("bottom", Strength(w, f, f.Foundation.Reinforcement, h), Dimension.Force, "bending strength with the bottom pulled");
        double top = w.Given("top", f.Foundation.Reinforcement is { AtTop: true } ? bottom : Strength(w, f, null, h), Dimension.Force, "with the top pulled");
        return (w.Let("u", Math.Max(M_up / bottom, M_down / top), Dimension.Number), 1);
    });

    public static Check Shear(Footing f) => Of(f, f.Subject("shear", "block or mat in shear beyond the pedestal"), Dimension.LineLoad, f.Foundation.Reinforcement is null ? plainShear : shear, w =>
    {
        (double p, _, _, double a, double h) = Tell(w, f);
        if (f.Foundation.Reinforcement is not { } mesh)
        {
            double V = w.Let("V", p * Math.Max(0, a - h), Dimension.LineLoad, plainShear, "shear a meter");
            double f_ctd = Tension(w, f);
            return (V, w.Let("V_Rd", f_ctd * h / 1.5, Dimension.LineLoad, plainShear));
        }
        double d = w.Given("d", mesh.DepthIn(h), Dimension.Length, "effective depth of the inner layer");
        double V_Ed = w.Let("V_Ed", p * Math.Max(0, a - d), Dimension.LineLoad, shear, "shear a meter, d from the face");
        double v_Rd = Stress(w, f, mesh, d);
        return (V_Ed, w.Let("V_Rd", v_Rd * d, Dimension.LineLoad, shear));
    });

    /// <summary>On perimeters up to 2d from the pedestal, within the block: what the ground pushes outside each.</summary>
    public static Check Punching(Footing f) => Of(f, f.Subject("punching", "block or mat punched by the pedestal"), Dimension.Number, punching, w =>
    {
        (double p, _, _, double a, double h) = Tell(w, f);
        FootingReinforcement mesh = f.Foundation.Reinforcement!;
        double d = w.Given("d", mesh.DepthIn(h), Dimension.Length, "effective depth of the inner layer"), v_Rd = Stress(w, f, mesh, d);
        (double c_x, double c_y) = f.Loaded;
        double B_x = f.Foundation.WidthX.Meters, B_y = f.Foundation.WidthY.Meters, worst = 0, at = 0;
        for (int i = 1; i <= 8; i++)
        {
            double r = 0.25 * i * d;
            if (r >= Math.Min(f.OverhangX, f.OverhangY))
                break;
            double u = 2 * (c_x + c_y) + 2 * Math.PI * r, inside = c_x * c_y + 2 * r * (c_x + c_y) + Math.PI * r * r;
            double use = p * Math.Max(0, B_x * B_y - inside) / (u * d) / (v_Rd * 2 * d / r);
            if (use > worst)
                (worst, at) = (use, r);
        }
        w.Given("r", at, Dimension.Length, "perimeter that is used most, from the face; zero when none lies within the block", punching);
        return (w.Given("u", worst, Dimension.Number, "p (B_x B_y − A_in)/(u d) over v_Rd 2d/r", punching), 1);
    });

    public static Check Reinforcement(Footing f) => Check.Of(f.Subject("reinforcement", "least reinforcement of the block or mat"), Dimension.Number, least, w =>
    {
        FootingReinforcement mesh = f.Foundation.Reinforcement!;
        double d = w.Given("d", mesh.DepthIn(f.Foundation.Thickness.Meters), Dimension.Length, "effective depth of the inner layer"), f_ctm = w.Given("f_ctm", f.Foundation.Material.f_ctm, Dimension.Stress, "mean tensile strength");
        double f_yk = w.Given("f_yk", mesh.YieldStrength.Pascals, Dimension.Stress), A_s = w.Given("A_s", mesh.A_s, Dimension.Length, "steel a width");
        double A_min = w.Let("A_min", Math.Max(0.26 * f_ctm / f_yk, 0.0013) * d, Dimension.Length, least, "least steel a width");
        return (w.Let("u", A_min / A_s, Dimension.Number), 1);
    });

    /// <summary>A check that fails where nothing balances the load.</summary>
    private static Check Of(Footing f, CheckSubject subject, Dimension dimension, Source source, Func<Working?, (double, double)> calculation) =>
        Check.Of(subject, dimension, source, w => double.IsInfinity(f.Greatest) ? (1, 0) : calculation(w));

    private static (double p, double own, double q_min, double a, double h) Tell(Working? w, Footing f)
    {
        double h = w.Given("h", f.Foundation.Thickness.Meters, Dimension.Length, "thickness"), a = w.Given("a", Math.Max(f.OverhangX, f.OverhangY), Dimension.Length, "sticks out beyond the pedestal");
        double own = w.Given("own", f.OwnPressure, Dimension.Pressure, "the block's own weight"), q = w.Given("q", f.Greatest, Dimension.Pressure, "greatest pressure on the ground", ground), q_min = w.Given("q_min", f.Least, Dimension.Pressure, "least pressure on the ground", ground);
        return (w.Let("p", Math.Max(0, q - own), Dimension.Pressure, ground), own, q_min, a, h);
    }

    /// <summary>Bending resistance a width, N: of the mesh, or of plain concrete.</summary>
    private static double Strength(Working? w, Footing f, FootingReinforcement? mesh, double h)
    {
        if (mesh is null)
        {
            double f_ctd = Tension(w, f);
            return w.Let("M_c", f_ctd * (0.85 * h) * (0.85 * h) / 6, Dimension.Force, plain, "plain concrete, a meter: N·m/m");
        }
        double d = w.Given("d", mesh.DepthIn(h), Dimension.Length, "effective depth of the inner layer"), A_s = w.Given("A_s", mesh.A_s, Dimension.Length, "steel a width");
        double f_yd = w.Given("f_yd", mesh.YieldStrength.Pascals / mesh.PartialFactor, Dimension.Stress, "design strength of the bars"), f_cd = w.Given("f_cd", f.Foundation.Material.f_k / f.Foundation.Material.PartialFactor, Dimension.Stress, "design strength of the concrete");
        return w.Let("M_Rd", A_s * f_yd * (d - A_s * f_yd / (2 * f_cd)), Dimension.Force, bending, "a meter: N·m/m");
    }

    private static double Tension(Working? w, Footing f)
    {
        double f_ctm = w.Given("f_ctm", f.Foundation.Material.f_ctm, Dimension.Stress, "mean tensile strength"), gamma_C = w.Given("gamma_C", f.Foundation.Material.PartialFactor, Dimension.Number);
        return w.Let("f_ctd", 0.8 * 0.7 * f_ctm / gamma_C, Dimension.Stress, plain);
    }

    /// <summary>v_Rd,c, Pa.</summary>
    private static double Stress(Working? w, Footing f, FootingReinforcement mesh, double d)
    {
        double f_ck = w.Given("f_ck", 1e-6 * f.Foundation.Material.f_k, Dimension.Number, "cylinder strength in MPa"), gamma_C = w.Given("gamma_C", f.Foundation.Material.PartialFactor, Dimension.Number);
        double k = w.Let("k", Math.Min(2, 1 + Math.Sqrt(0.2 / d)), Dimension.Number, shear, "√(0.2 m/d)"), A_s = w.Given("A_s", mesh.A_s, Dimension.Length, "steel a width");
        double rho = w.Let("rho", Math.Min(0.02, A_s / d), Dimension.Number, shear);
        double v_MPa = w.Let("v_MPa", Math.Max(0.18 / gamma_C * k * Math.Cbrt(100 * rho * f_ck), 0.035 * Math.Sqrt(k * k * k * f_ck)), Dimension.Number, shear, "in MPa");
        return w.Given("v_Rd", 1e6 * v_MPa, Dimension.Stress, "shear strength without links", shear);
    }
}
