namespace StatueFrame.Checks;

/// <summary>The joints of round tubes end to end: bolted flanges and welds all round.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. A flange is cut into as many equal pieces as it has bolts; each is a T-stub
/// with one side, whose web is the tube's wall. The wall's pull is that of the thin ring under axial force and moment.
/// </remarks>
internal static class TubeJointChecks
{
    private static readonly Source ring = Source.Assumed("members: pull of a thin ring, 4M/(πd²) + N/(πd) a length; common practice, no source");
    private static readonly Source stub = new("EN 1993-1-8:2005", "6.2.4, Table 6.2: T-stub, half of it; the wall may be its weaker hinge");
    private static readonly Source bolts = new("EN 1993-1-8:2005", "Table 3.4, shear and tension together");
    private static readonly Source boltsAisc = new("AISC 360-16 and 360-22", "J3.7 (J3-3): 1.3 less the share of shear");
    private static readonly Source butt = new("EN 1993-1-8:2005", "4.7.1 (1): as strong as the weaker part");
    private static readonly Source fillet = new("EN 1993-1-8:2005", "4.5.3.3, (4.2) to (4.4)");
    private static readonly Source weldAisc = new("AISC 360-16 and 360-22", "J2.4, 0.60 F_EXX; full penetration as the base metal; φ = 0.75 and 0.9, Ω = 2 and 1.67");

    /// <summary>
    /// The joint under axial force, bending, shear and torsion. A flange: the pull on its bolts against the least of three
    /// mechanisms, hinges in flange and wall alone, hinge and bolt with prying, bolt alone; and shear and pull of the bolt
    /// together. A weld: the resultant along its throat, or of full penetration the stress of the tube. Demand is a
    /// utilization, capacity is 1. Contact carries compression.
    /// </summary>
    /// <param name="member">The tube at the joint, with its forces.</param>
    /// <param name="joint">The joint.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check Joint(LoadedMember member, TubeJoint joint, BarDesign design)
    {
        member.Validate(design);
        var v = new Validator();
        joint.Validate(v.At(nameof(Joint)), member.Section);
        v.ThrowIfAny();
        return Of(member, joint, design, member.Subject("tube-joints", joint is FlangeJoint ? "bolted flange of a tube" : "weld round the end of a tube"));
    }

    /// <summary>The weld of a flange to its tube; not checked when it is not described.</summary>
    /// <param name="member">The tube at the joint, on either side, with its forces.</param>
    /// <param name="joint">The flange.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="InvalidStatueException">An input is out of range.</exception>
    public static Check FlangeWeld(LoadedMember member, FlangeJoint joint, BarDesign design)
    {
        member.Validate(design);
        var v = new Validator();
        joint.Weld?.Validate(v.At(nameof(FlangeJoint.Weld)), member.Section);
        v.ThrowIfAny();
        CheckSubject subject = member.Subject("flange-welds", "weld between flange and tube");
        return joint.Weld is { } weld
            ? Of(member, weld, design, subject)
            : Check.NotChecked(subject, $"the weld is not described (FlangeJoint.{nameof(FlangeJoint.Weld)})", fillet);
    }

    private static Check Of(LoadedMember member, TubeJoint joint, BarDesign design, CheckSubject subject)
    {
        string? reason = member.Section is not Tube ? "joints are worked out for round tubes only"
            : design.Code == DesignCode.AllowableStress ? "joints of tubes are checked by EN 1993-1-8 or AISC 360; give one of these codes for a metal they cover"
            : design.Uncovered;
        Source source = joint is FlangeJoint ? stub : design.IsAisc ? weldAisc : joint is WeldedTubeJoint { Throat: null } ? butt : fillet;
        return reason is not null
            ? Check.NotChecked(subject, reason, source)
            : Check.Of(subject, Dimension.Number, source, w => (Utilization(w, member, joint, design), 1));
    }

    /// <summary>The share of its strength that the joint of a round tube uses.</summary>
    internal static double Utilization(Working? w, LoadedMember member, TubeJoint joint, BarDesign design)
    {
        var tube = (Tube)member.Section;
        double D = w.Given("D", tube.OuterDiameter.Meters, Dimension.SmallLength, "tube"), t = w.Given("t", tube.Wall.Meters, Dimension.SmallLength, "its wall");
        double N = w.Given("N", member.N, Dimension.Force, "axial force, tension positive");
        double M_1 = w.Given("M_1", Math.Sqrt(Math.Pow(member.StrongMoment.NewtonMeters, 2) + Math.Pow(member.WeakMoment.NewtonMeters, 2)), Dimension.Moment, "bending moment, first order");
        double k = w.Given("k", member.Amplification, Dimension.Number, "second order");
        double M = w.Let("M", k * M_1, Dimension.Moment);
        double V = w.Given("V", member.Shear.Newtons, Dimension.Force, "shear"), T = w.Given("T", member.Torsion.NewtonMeters, Dimension.Moment, "torsion");
        double d = w.Let("d", D - t, Dimension.SmallLength, meaning: "middle of the wall");
        return joint is FlangeJoint flange
            ? Flange(w, flange, member, design, (D, t, d), (N, M, V, T))
            : Weld(w, (WeldedTubeJoint)joint, member, design, (D, t, d), (N, M, V, T));
    }

    private static double Flange(
        Working? w, FlangeJoint flange, LoadedMember member, BarDesign design, (double D, double t, double d) tube, (double N, double M, double V, double T) load)
    {
        (double D, double t, double d) = tube;
        (double N, double M, double V, double T) = load;
        double n = w.Given("n", flange.Count, Dimension.Number, "bolts");
        double F = w.Let("F", Math.Max(0, 4 * M / (n * d) + N / n), Dimension.Force, ring, "pull of the wall on one bolt's piece");

        double F_t = w.Given("F_t", BoltStrength.Tension(w, flange.Bolt, design), Dimension.Force, "strength of a bolt in tension"), F_v = w.Given("F_v", BoltStrength.Shear(w, flange.Bolt, 1, design), Dimension.Force, "in shear");
        double d_b = w.Given("d_b", flange.BoltCircle.Meters, Dimension.SmallLength, "circle of bolts"), D_f = w.Given("D_f", flange.OuterDiameter.Meters, Dimension.SmallLength, "flange");
        double t_f = w.Given("t_f", flange.Thickness.Meters, Dimension.SmallLength, "thickness of the flange");
        double d_0 = w.Given("d_0", flange.Bolt.d_0, Dimension.SmallLength, "hole");
        double strength = design.IsAisc ? design.Aisc(0.9, 1.67) : 1 / design.GammaM0;
        double f_wall = w.Given("f_wall", strength * member.f_y, Dimension.Stress, "design yield strength of the wall");
        double f_flange = w.Given("f_flange", strength * (flange.Material?.For(flange.Thickness.Meters).YieldStrength.Pascals ?? member.f_y), Dimension.Stress, "design yield strength of the flange");
        double m = w.Let("m", (d_b - D) / 2, Dimension.SmallLength, meaning: "wall to bolt");
        double e = w.Let("e", Math.Min((D_f - d_b) / 2, 1.25 * m), Dimension.SmallLength, stub, "bolt to the line of prying");
        double c = w.Let("c", Math.PI * d / n, Dimension.SmallLength, meaning: "piece at the wall"), c_b = w.Let("c_b", Math.PI * d_b / n, Dimension.SmallLength, meaning: "piece at the bolts");
        double M_w = w.Let("M_w", Math.Min(f_flange * c * t_f * t_f / 4, f_wall * c * t * t / 4), Dimension.Moment, stub, "hinge at the wall: in the flange or in the wall");
        double M_b = w.Let("M_b", f_flange * (c_b - d_0) * t_f * t_f / 4, Dimension.Moment, stub, "hinge through the holes");
        double F_1 = w.Let("F_1", (M_w + M_b) / m, Dimension.Force, stub, "both hinges");
        double F_2 = w.Let("F_2", (M_w + e * F_t) / (m + e), Dimension.Force, stub, "hinge at the wall, and the bolt with prying");
        double F_R = w.Let("F_R", Math.Min(F_t, Math.Min(F_1, F_2)), Dimension.Force, stub);

        double F_s = w.Let("F_s", V / n + 2 * T / (n * d_b), Dimension.Force, ring, "shear on a bolt");
        double u_b = design.IsAisc
            ? w.Let("u_b", (F / F_t + F_s / F_v) / 1.3, Dimension.Number, boltsAisc)
            : w.Let("u_b", F_s / F_v + F / (1.4 * F_t), Dimension.Number, bolts);
        return w.Let("u", Math.Max(F / F_R, Math.Max(u_b, F_s / F_v)), Dimension.Number);
    }

    private static double Weld(
        Working? w, WeldedTubeJoint weld, LoadedMember member, BarDesign design, (double D, double t, double d) tube, (double N, double M, double V, double T) load)
    {
        (double D, double t, double d) = tube;
        (double N, double M, double V, double T) = load;
        double c = weld.Throat is null ? w.Let("c", Math.PI * d, Dimension.Length, meaning: "length round the tube") : w.Let("c", Math.PI * D, Dimension.Length, meaning: "length round the tube");
        double r = w.Let("r", c / (2 * Math.PI), Dimension.SmallLength);
        double q_n = w.Let("q_n", Math.Abs(N) / c + M / (Math.PI * r * r), Dimension.LineLoad, ring, "along the tube");
        double q_s = w.Let("q_s", 2 * V / c + T / (2 * Math.PI * r * r), Dimension.LineLoad, ring, "round the tube, shear at its greatest");
        if (weld.Throat is not { } throat)
        {
            double f = w.Given("f", (design.IsAisc ? design.Aisc(0.9, 1.67) : 1 / design.GammaM0) * member.f_y, Dimension.Stress, "design yield strength");
            return w.Let("u", Math.Sqrt(q_n * q_n + 3 * q_s * q_s) / (t * f), Dimension.Number, design.IsAisc ? weldAisc : butt, "von Mises stress of the wall");
        }
        double a = w.Given("a", throat.Meters, Dimension.SmallLength, "throat");
        double strength = w.Given("strength", FilletThroat.Strength(w, member.f_u, "ultimate strength of the tube", design, weld.CorrelationFactor, weld.ElectrodeStrength), Dimension.Stress);
        return w.Let("u", Math.Sqrt(q_n * q_n + q_s * q_s) / (a * strength), Dimension.Number, design.IsAisc ? weldAisc : fillet);
    }
}
