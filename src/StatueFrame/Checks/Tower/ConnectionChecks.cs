namespace StatueFrame.Checks;

/// <summary>The joints of lattice members: bolts or rivets in shear and bearing, tearing of a block, and distances.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Every fastener takes an equal share; the eccentricity between the line of
/// fasteners and the centroid is not counted, as is usual for lattice towers (common practice, no source).
/// </remarks>
public static class ConnectionChecks
{
    private const double LongJoint = 15;

    private static readonly Source en = new("EN 1993-1-8:2005", "Table 3.4, 3.8 long joints");
    private static readonly Source blockEn = new("EN 1993-1-8:2005", "3.10.2 (3.9), (3.10)");
    private static readonly Source blockAisc = new("AISC 360-16 and 360-22", "J4.3");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J3.6, J3.10; driven rivets as their metal's 0.6 F_u");
    private static readonly Source allowable = Source.Assumed("connections: allowable stress, shear 0.6 and bearing 1.5 of the allowable tension; common practice, no source");
    private static readonly Source distances = new("EN 1993-1-8:2005", "Table 3.3, least distances");
    private static readonly Source distancesAisc = new("AISC 360-16 and 360-22", "J3.3: 2⅔ d between fasteners; edges near Table J3.4");

    /// <summary>The axial force against the fasteners in shear and the parts in bearing.</summary>
    /// <param name="member">The member, with its connection.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Fasteners(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("connections", "fasteners of a member in shear and bearing");
        Source source = design.Code switch { DesignCode.En1993 => en, DesignCode.AllowableStress => allowable, _ => aisc };
        string? reason = member.Connection is null ? "the joint is not described" : design.Uncovered;
        if (reason is not null)
            return Check.NotChecked(subject, reason, source);
        MemberConnection joint = member.Connection!;
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            double N = w.Given("N", Math.Abs(member.N), Dimension.Force, "axial force");
            double n = w.Given("n", joint.Count, Dimension.Number, "fasteners");
            double F_v = w.Given("F_v", Shear(w, joint, design), Dimension.Force, "a fastener in shear"), F_b = w.Given("F_b", Bearing(w, member, joint, design), Dimension.Force, "the part in bearing");
            double beta = w.Given("beta", 1, Dimension.Number, "no long joint"), length = (joint.InLine - 1) * joint.p_1;
            if (design.Code == DesignCode.En1993 && length > LongJoint * joint.d)
            {
                w.Given(length, Dimension.SmallLength, "length of the joint");
                double d = w.Given("d", joint.d, Dimension.SmallLength, "fastener");
                beta = w.Let("beta", Math.Max(0.75, 1 - (length - 15 * d) / (200 * d)), Dimension.Number, en, "long joint");
            }
            return (N, w.Let("N_j", n * Math.Min(beta * F_v, F_b), Dimension.Force, source, "resistance of the joint"));
        });
    }

    /// <summary>Tearing of a block out of the end of a member in tension: along its fasteners and across to the edge.</summary>
    /// <param name="member">The member, with its connection.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Block(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("block", "tearing of a block at a joint");
        Source source = design.IsAisc ? blockAisc : blockEn;
        string? reason = member.Connection is null ? "the joint is not described" : design.Uncovered;
        if (reason is not null)
            return Check.NotChecked(subject, reason, source);
        MemberConnection joint = member.Connection!;
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            double N = w.Given("N", Math.Max(0, member.N), Dimension.Force, "tension"), t = w.Given("t", Thickness(member.Section), Dimension.SmallLength, "thickness");
            double n = joint.InLine, lines = joint.BothLegs ? 1 : joint.Lines, d_h = joint.d_0 + (design.IsAisc ? 0.0016 : 0);
            double run = w.Given("run", joint.e_1 + (n - 1) * joint.p_1, Dimension.SmallLength, "length in shear");
            double A_gv = w.Let("A_gv", run * t, Dimension.SmallArea, source, "gross area in shear");
            double A_nv = w.Given("A_nv", Math.Max(0, run - (n - 0.5) * d_h) * t, Dimension.SmallArea, "net area in shear", source);
            double A_nt = w.Given("A_nt", Math.Max(0, joint.e_2 + (lines - 1) * joint.p_2 - (lines - 0.5) * d_h) * t, Dimension.SmallArea, "net area in tension", source);
            double f_y = w.Given("f_y", member.f_y, Dimension.Stress, "yield strength"), f_u = w.Given("f_u", member.f_u, Dimension.Stress, "ultimate strength");
            double blocks = w.Given("blocks", joint.BothLegs ? Math.Max(1, joint.Lines) : 1, Dimension.Number, "legs that tear");
            if (design.IsAisc)
            {
                double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
                return (N, w.Let("R_bs", blocks * c * (Math.Min(0.6 * f_u * A_nv, 0.6 * f_y * A_gv) + f_u * A_nt), Dimension.Force, blockAisc));
            }
            if (design.Code == DesignCode.AllowableStress)
            {
                double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress");
                return (N, w.Let("R_bs", blocks * fraction * f_y * (A_nt + 0.6 * A_nv), Dimension.Force, allowable));
            }
            double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number), gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number);
            double share = w.Given("share", member.Section is AngleBar && !joint.BothLegs ? 0.5 : 1, Dimension.Number, "0.5 for an eccentric block, (3.10)", blockEn);
            return (N, w.Let("V_eff", blocks * (share * f_u * A_nt / gammaM2 + f_y * A_nv / (Math.Sqrt(3) * gammaM0)), Dimension.Force, blockEn));
        });
    }

    /// <summary>The least distances between fasteners and to edges, as the worst ratio of needed to given.</summary>
    /// <param name="member">The member, with its connection.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Distances(LoadedMember member, BarDesign design)
    {
        member.Validate(design);
        CheckSubject subject = member.Subject("distances", "distances of fasteners");
        Source source = design.IsAisc ? distancesAisc : distances;
        if (member.Connection is not { } joint)
            return Check.NotChecked(subject, "the joint is not described", source);
        return Check.Of(subject, Dimension.Number, source, w =>
        {
            double d_0 = w.Given("d_0", design.IsAisc ? joint.d : joint.d_0, Dimension.SmallLength, design.IsAisc ? "fastener" : "hole");
            (double edge, double pitch, double gauge) = design.IsAisc ? (1.25, 8.0 / 3, 8.0 / 3) : (1.2, 2.2, 2.4);
            w.Given(edge, Dimension.Number, "holes to an edge at least", source);
            double e = w.Given("e", Math.Min(joint.e_1, joint.e_2), Dimension.SmallLength, "least distance to an end or edge");
            double u = w.Let("u", edge * d_0 / e, Dimension.Number, source, "edges");
            if (joint.InLine > 1)
            {
                double p_1 = w.Given("p_1", joint.p_1, Dimension.SmallLength, "pitch");
                w.Given(pitch, Dimension.Number, "holes between fasteners at least", source);
                u = w.Let("u", Math.Max(u, pitch * d_0 / p_1), Dimension.Number, source, "with the pitch");
            }
            if (joint.Lines > 1 && !joint.BothLegs)
            {
                double p_2 = w.Given("p_2", joint.p_2, Dimension.SmallLength, "gauge");
                w.Given(gauge, Dimension.Number, "holes between lines at least", source);
                u = w.Let("u", Math.Max(u, gauge * d_0 / p_2), Dimension.Number, source, "with the gauge");
            }
            return (u, 1);
        });
    }

    /// <summary>Thickness of the part of a section that fasteners pass through, m.</summary>
    internal static double Thickness(Section section) => section switch
    {
        AngleBar angle => angle.Thickness.Meters,
        FlatBar flat => flat.Thickness.Meters,
        Tube tube => tube.Wall.Meters,
        RectangularTube box => box.Wall.Meters,
        _ => section.Envelope.Depth,
    };

    private static double Shear(Working? w, MemberConnection joint, BarDesign design)
    {
        if (joint.Bolt is { } bolt && design.Code != DesignCode.AllowableStress)
            return BoltStrength.Shear(w, bolt, joint.ShearPlanes, design);
        double m = w.Given("m", joint.ShearPlanes, Dimension.Number, "shear planes");
        double A_0 = w.Given("A_0", joint.Rivet?.Area ?? joint.Bolt!.TensileArea, Dimension.SmallArea, joint.Rivet is null ? "area in the thread" : "area of the hole, which the rivet fills");
        double f_ur = w.Given("f_ur", joint.Rivet?.UltimateStrength.Pascals ?? joint.Bolt!.Grade.UltimateStrength.Pascals, Dimension.Stress, "ultimate strength of the fastener");
        switch (design.Code)
        {
            case DesignCode.En1993:
                double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
                return w.Let("F_v", m * 0.6 * f_ur * A_0 / gammaM2, Dimension.Force, en, "shear of a rivet");
            case DesignCode.AllowableStress:
                double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress");
                double f_yr = w.Given("f_yr", joint.Rivet?.YieldStrength.Pascals ?? 0.6 * f_ur, Dimension.Stress, "yield strength of the fastener");
                return w.Let("F_v", m * 0.6 * fraction * f_yr * A_0, Dimension.Force, allowable, "shear of a fastener");
            default:
                double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
                return w.Let("F_v", c * m * 0.6 * f_ur * A_0, Dimension.Force, aisc, "shear of a rivet");
        }
    }

    private static double Bearing(Working? w, LoadedMember member, MemberConnection joint, BarDesign design)
    {
        (double t, double f_u) = (Thickness(member.Section), member.f_u);
        // The weaker of the two parts.
        if (joint.Plate is { } plate && plate.Thickness.Meters * plate.Strength.UltimateStrength.Pascals < t * f_u)
            (t, f_u) = (plate.Thickness.Meters, plate.Strength.UltimateStrength.Pascals);
        double? p_1 = joint.InLine > 1 ? joint.p_1 : null, p_2 = joint.Lines > 1 && !joint.BothLegs ? joint.p_2 : null;
        using IDisposable? part = w?.Part("Bearing");
        double d = w.Given("d", joint.d, Dimension.SmallLength, "fastener"), d_0 = w.Given("d_0", joint.d_0, Dimension.SmallLength, "hole");
        w.Given(t, Dimension.SmallLength, "the weaker part");
        w.Given(f_u, Dimension.Stress, "ultimate strength of the part");
        double e_1 = w.Given("e_1", joint.e_1, Dimension.SmallLength, "end distance");
        switch (design.Code)
        {
            case DesignCode.En1993:
                double e_2 = w.Given("e_2", joint.e_2, Dimension.SmallLength, "edge distance");
                double f_ub = w.Given("f_ub", joint.Bolt?.Grade.UltimateStrength.Pascals ?? joint.Rivet!.UltimateStrength.Pascals, Dimension.Stress, "ultimate strength of the fastener");
                double alpha = Math.Min(1, Math.Min(e_1 / (3 * d_0), f_ub / f_u)), k_1 = Math.Min(2.5, 2.8 * e_2 / d_0 - 1.7);
                if (p_1 is { } pitch)
                    alpha = Math.Min(alpha, pitch / (3 * d_0) - 0.25);
                if (p_2 is { } gauge)
                    k_1 = Math.Min(k_1, 1.4 * gauge / d_0 - 1.7);
                w.Given(alpha, Dimension.Number, "least of e₁/3d₀, p₁/3d₀ − ¼, f_ub/f_u, 1", en);
                w.Given(k_1, Dimension.Number, "least of 2.8 e₂/d₀ − 1.7, 1.4 p₂/d₀ − 1.7, 2.5", en);
                double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
                double sunk = w.Given("sunk", Sunk(joint), Dimension.SmallLength, "lost to half the depth of countersinks", en);
                return w.Let("F_b", Math.Max(0, k_1) * Math.Max(0, alpha) * f_u * d * Math.Max(0, t - sunk) / gammaM2, Dimension.Force, en, "bearing at a fastener");
            case DesignCode.AllowableStress:
                double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress"), f_y = w.Given("f_y", member.f_y, Dimension.Stress, "yield strength");
                return w.Let("F_b", Math.Min(1.5 * fraction * f_y * d * t, 1.2 * fraction * f_y * e_1 * t), Dimension.Force, allowable, "bearing and tear-out at a fastener");
            default:
                double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
                double l_c = w.Given("l_c", Math.Max(0, Math.Min(e_1 - d_0 / 2, p_1 - d_0 ?? double.PositiveInfinity)), Dimension.SmallLength, "clear distance");
                return w.Let("F_b", c * Math.Min(1.2 * l_c * t * f_u, 2.4 * d * t * f_u), Dimension.Force, aisc, "bearing and tear-out at a fastener");
        }
    }

    /// <summary>Half the depth of a countersink: a head of 2 d at 90° is d/2 deep.</summary>
    private static double Sunk(MemberConnection joint) => joint.Rivet is { IsCountersunk: true } rivet ? rivet.d_0 / 4 : 0;
}
