namespace StatueFrame.Checks;

/// <summary>The compressive resistance of a member by EN 1993, AISC 360 or allowable stress. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class MemberStrut
{
    public static readonly Source En = Source.En1993_1_1("6.3.1, 6.3.1.4, BB.1.2");
    public static readonly Source Aisc = new("AISC 360-16 and 360-22", "E3, E4, E5, E7; φ = 0.9, Ω = 1.67");
    public static readonly Source RankineGordon = new("Rankine, A Manual of Civil Engineering", "strut formula; for wrought iron with hinged ends 1/9000, from memory");

    private static readonly Source webMembers = Source.En1993_1_1("BB.1.2: angles as web members, two fasteners or more");
    private static readonly Source oneFastener = new("EN 1993-3-1:2006", "Annex G, from memory: one fastener at each end, η = 0.8");
    private static readonly Source twist = new("Timoshenko and Gere, Theory of Elastic Stability", "5.6: flexural-torsional buckling");
    private static readonly Source single = new("AISC 360-16 and 360-22", "E5: effective slenderness of single angles, web members of box or space trusses");

    /// <summary>The resistance, N; null with the reason when the rules do not reach the section.</summary>
    public static (double? Resistance, string Reason) Resistance(Working? w, LoadedMember m, BarDesign design) => design.Code switch
    {
        DesignCode.En1993 => ByEn(w, m, design),
        DesignCode.AllowableStress => (ByRankine(w, m, design), ""),
        _ => ByAisc(w, m, design),
    };

    /// <summary>The curve for a section, unless the design names one.</summary>
    public static BucklingCurve CurveFor(LoadedMember m, BarDesign design) =>
        design.Curve ?? (design.Metal == MetalKind.StainlessSteel ? BucklingCurve.StainlessFlat : m.Section is AngleBar ? BucklingCurve.B : BucklingCurve.C);

    private static (double?, string) ByEn(Working? w, LoadedMember m, BarDesign design)
    {
        if (MemberSlenderness.EffectiveAreaEn(w, m.Section, m.f_y) is not { } A)
            return (null, "the tube is of class 4: EN 1993-1-6 governs");
        BucklingCurve curve = CurveFor(m, design);
        double f_y = w.Given("f_y", m.f_y, Dimension.Stress, "yield or proof strength"), gammaM1 = w.Given("gammaM1", design.GammaM1, Dimension.Number);
        double chi = double.PositiveInfinity;
        foreach ((string axis, double N_cr, double slope, double lift, Source source) in Modes(m))
        {
            using IDisposable? part = w?.Part($"Buckling {axis}");
            w.Given(N_cr, Dimension.Force, "elastic critical force", source);
            w.Given(A, Dimension.SmallArea, "effective area");
            w.Given(f_y, Dimension.Stress, "yield or proof strength");
            double lambda = w.Let("lambda", Math.Sqrt(A * f_y / N_cr), Dimension.Number, En, "slenderness");
            if (lift > 0)
            {
                w.Given(slope, Dimension.Number);
                w.Given(lift, Dimension.Number);
                lambda = w.Let("lambda", slope * lambda + lift, Dimension.Number, m.Ends == MemberEnds.OneLeg ? webMembers : oneFastener, "effective slenderness, joined by one leg");
            }
            chi = Math.Min(chi, curve.Reduction(w, lambda));
        }
        w.Given(chi, Dimension.Number, "least reduction");
        double eta = m.Section is AngleBar && m.Ends == MemberEnds.OneLegOneFastener ? w.Given("eta", 0.8, Dimension.Number, "one fastener at each end", oneFastener) : w.Given("eta", 1, Dimension.Number);
        return (w.Let("N_b", eta * chi * A * f_y / gammaM1, Dimension.Force, En, "resistance to buckling"), "");
    }

    /// <summary>The ways a member can buckle, with their elastic critical forces and, for angles joined by one leg, their effective slenderness.</summary>
    private static IEnumerable<(string Axis, double N_cr, double Slope, double Lift, Source Source)> Modes(LoadedMember m)
    {
        (double slope, double lift, double legLift) = m.Section is not AngleBar ? (1, 0, 0) : m.Ends switch
        {
            MemberEnds.OneLeg => (0.7, 0.35, 0.5),
            MemberEnds.OneLegOneFastener => (0.7, 0.35, 0.58),
            _ => (1.0, 0.0, 0.0),
        };
        double weak = Euler(m, m.p.Iz, m.WeakFactor), strong = Euler(m, InertiaOf(m), m.StrongFactor);
        if (m.CriticalForce is { } given)
        {
            yield return ("as part of the structure", given.Newtons, 1, 0, Source.Assumed("members: from the buckling factor of the whole statue"));
            yield break;
        }
        yield return ("about the weak axis", weak, slope, lift, twist);
        if (m.Section is not AngleBar angle)
        {
            yield return ("about the strong axis", strong, 1, 0, twist);
            yield break;
        }
        yield return ("about the axis along a leg", strong, slope, legLift, twist);
        AngleTwist torsional = AngleTwist.Of(angle, m.E, m.G, m.StrongFactor * m.L, m.WeakFactor * m.L);
        yield return ("by bending and twist", torsional.Least, 1, 0, twist);
    }

    /// <summary>
    /// The inertia that goes with the strong factor, m⁴: about the strong axis, but of an angle about the axis along a leg, as an
    /// angle that is held at mid-length in one plane bends out of that plane, about its leg.
    /// </summary>
    private static double InertiaOf(LoadedMember m)
    {
        if (m.Section is not AngleBar angle)
            return m.p.Iy;
        double c = Math.Cos(angle.PrincipalRotation.Radians), s = Math.Sin(angle.PrincipalRotation.Radians);
        return Math.Min(m.p.Iy * c * c + m.p.Iz * s * s, m.p.Iy * s * s + m.p.Iz * c * c);
    }

    private static double Euler(LoadedMember m, double I, double factor) => Math.PI * Math.PI * m.E * I / (factor * m.L * (factor * m.L));

    private static (double?, string) ByAisc(Working? w, LoadedMember m, BarDesign design)
    {
        double E = w.Given("E", m.E, Dimension.Stress, "Young's modulus"), F_y = w.Given("F_y", m.f_y, Dimension.Stress, "yield strength");
        double F_e = m.CriticalForce is { } given
            ? w.Given("F_e", given.Newtons / m.p.A, Dimension.Stress, "elastic critical stress as part of the structure")
            : ElasticStress(w, m, E, F_y);
        double F_cr = w.Let("F_cr", F_y <= 2.25 * F_e ? Math.Pow(0.658, F_y / F_e) * F_y : 0.877 * F_e, Dimension.Stress, Aisc);
        if (MemberSlenderness.EffectiveAreaAisc(w, m.Section, E, F_y, F_cr) is not { } A_e)
            return (null, "the tube is beyond D/t = 0.45 E/F_y of AISC E7.2");
        double c = w.Given("c", design.Aisc(0.9, 1.67), Dimension.Number, "φ or 1/Ω");
        w.Given(A_e, Dimension.SmallArea, "effective area");
        return (w.Let("P_c", c * F_cr * A_e, Dimension.Force, Aisc, "available strength"), "");
    }

    private static double ElasticStress(Working? w, LoadedMember m, double E, double F_y)
    {
        double r_z = Math.Sqrt(m.p.Iz / m.p.A), r_y = Math.Sqrt(InertiaOf(m) / m.p.A), L = m.L;
        if (m.Section is not AngleBar angle)
        {
            double L_r = w.Given("L_r", Math.Max(m.WeakFactor * L / r_z, m.StrongFactor * L / r_y), Dimension.Number, "L_c/r");
            return w.Let("F_e", Math.PI * Math.PI * E / (L_r * L_r), Dimension.Stress, Aisc);
        }
        double slenderness = m.Ends == MemberEnds.Centered
            ? w.Given("slenderness", Math.Max(m.WeakFactor * L / r_z, m.StrongFactor * L / r_y), Dimension.Number, "L_c/r")
            : w.Given("slenderness", SingleAngle(angle, L), Dimension.Number, "effective L_c/r of a single angle", single);
        double F_e = w.Let("F_e", Math.PI * Math.PI * E / (slenderness * slenderness), Dimension.Stress, Aisc);
        if (angle.LongLeg / angle.Thickness <= 0.71 * Math.Sqrt(E / F_y))
            return F_e;
        double F_eT = w.Given("F_eT", AngleTwist.Of(angle, m.E, m.G, m.StrongFactor * L, m.WeakFactor * L).Least / m.p.A, Dimension.Stress, "bending and twist, (E4-4); slender legs");
        return w.Let("F_e", Math.Min(F_e, F_eT), Dimension.Stress, Aisc);
    }

    /// <summary>AISC E5 (b): joined by the longer leg; r_a about the axis along the joined leg.</summary>
    private static double SingleAngle(AngleBar angle, double L)
    {
        SectionProperties p = angle.Properties;
        double c = Math.Cos(angle.PrincipalRotation.Radians), s = Math.Sin(angle.PrincipalRotation.Radians);
        // The joined, longer leg lies along Z; bending about it has the inertia ∫Y².
        double r_a = Math.Sqrt((p.Iy * s * s + p.Iz * c * c) / p.A), x = L / r_a;
        return x <= 75 ? 60 + 0.8 * x : 45 + x;
    }

    private static double ByRankine(Working? w, LoadedMember m, BarDesign design)
    {
        double r = Math.Sqrt(m.p.Iz / m.p.A), L_c = Math.Max(m.WeakFactor, m.StrongFactor * Math.Sqrt(m.p.Iz / InertiaOf(m))) * m.L;
        double A = w.Given("A", m.p.A, Dimension.SmallArea, "gross area"), f_y = w.Given("f_y", m.f_y, Dimension.Stress, "yield strength");
        double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress");
        double slenderness = w.Given("slenderness", m.CriticalForce is { } given ? Math.PI * Math.Sqrt(m.E * A / given.Newtons) : L_c / r, Dimension.Number, "L_c/r");
        double a = m.Material.Family == MetalFamily.WroughtIron
            ? w.Given("a", 1.0 / 9000, Dimension.Number, "wrought iron, hinged ends", RankineGordon)
            : w.Given("a", f_y / (Math.PI * Math.PI * m.E), Dimension.Number, "f_y/(π² E), to meet Euler's load for slender members");
        return w.Let("N_allow", fraction * f_y * A / (1 + a * slenderness * slenderness), Dimension.Force, RankineGordon, "allowable compression");
    }
}
