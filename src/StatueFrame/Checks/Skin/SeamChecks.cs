using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Riveted seams of the skin: shear, bearing, tear-out, net section, pull-through, pitch and edges.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. Steel by EN 1993-1-8 or AISC 360; copper, bronze and aluminum by allowable
/// stress, for which no code for riveted copper is known (EN 1999-1-1 has like rules for aluminum, not taken here).
/// </remarks>
public static class SeamChecks
{
    private static readonly Source en = new("EN 1993-1-8:2005", "Table 3.4, rivets");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J3, driven rivets as their metal's 0.6 F_u");
    private static readonly Source allowable = Source.Assumed("seams: allowable stress, shear 0.6 and bearing 1.5 of the allowable tension; common practice, no source");
    private static readonly Source rules = new("EN 1993-1-8:2005", "Table 3.3, least distances 1.2 d₀ and 2.2 d₀");
    private static readonly Source sealing = new("EN 1993-1-8:2005", "Table 3.3, greatest pitch: the lesser of 14 t and 200 mm");

    /// <summary>The rivets in shear.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="forces">What the seam carries.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static Check Shear(RivetedSeam seam, Material sheet, Length thickness, SeamForces forces, BarDesign design, string where = "", string situation = "") =>
        Of(seam, thickness, forces, design, new CheckSubject("seams.shear", "rivets of a seam in shear", where, situation), (w, t, F) =>
        {
            double A = w.Given("A", seam.Rivet.Area, Dimension.SmallArea, "area of the hole, which the rivet fills");
            return (F, Strength(w, design, seam.Rivet.UltimateStrength, seam.Rivet.YieldStrength, 0.6) * A);
        });

    /// <summary>The sheet in bearing and tear-out at a rivet; a countersink takes half its depth.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="forces">What the seam carries.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static Check Bearing(RivetedSeam seam, Material sheet, Length thickness, SeamForces forces, BarDesign design, string where = "", string situation = "") =>
        Of(seam, thickness, forces, design, new CheckSubject("seams.bearing", "sheet of a seam in bearing and tear-out", where, situation), (w, t, F) =>
        {
            double d_0 = w.Given("d_0", seam.Rivet.d_0, Dimension.SmallLength, "hole"), e = w.Given("e", seam.EdgeDistance.Meters, Dimension.SmallLength, "edge distance");
            double sunk = w.Given("sunk", seam.Rivet.IsCountersunk ? Math.Min(t, d_0 / 2) / 2 : 0, Dimension.SmallLength, "half the depth of the countersink");
            double t_b = w.Let("t_b", t - sunk, Dimension.SmallLength);
            double f_u = sheet.UltimateStrength.Pascals, f_y = sheet.YieldStrength.Pascals;
            if (design.Code == DesignCode.AllowableStress)
            {
                double f = w.Given("f", design.AllowableFraction * f_y, Dimension.Stress, "allowable tension of the sheet");
                return (F, w.Let("F_b", Math.Min(1.5 * f * d_0, 1.2 * f * e) * t_b, Dimension.Force, allowable));
            }
            w.Given(f_u, Dimension.Stress, "ultimate strength of the sheet");
            double c = w.Given("c", design.IsAisc ? design.Aisc(0.75, 2) : 1 / design.GammaM2, Dimension.Number, "φ, 1/Ω or 1/γ_M2");
            if (design.IsAisc)
                return (F, w.Let("F_b", c * Math.Min(1.2 * Math.Max(0, e - d_0 / 2) * t_b * f_u, 2.4 * d_0 * t_b * f_u), Dimension.Force, aisc));
            double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch");
            double alpha = w.Let("alpha", Math.Min(1, e / (3 * d_0)), Dimension.Number, en), k_1 = w.Let("k_1", Math.Min(2.5, 1.4 * p / d_0 - 1.7), Dimension.Number, en);
            return (F, w.Let("F_b", Math.Max(0, k_1) * alpha * f_u * d_0 * t_b * c, Dimension.Force, en));
        });

    /// <summary>The sheet, or the strap, between the rivets.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="forces">What the seam carries.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static Check NetSection(RivetedSeam seam, Material sheet, Length thickness, SeamForces forces, BarDesign design, string where = "", string situation = "") =>
        Of(seam, thickness, forces, design, new CheckSubject("seams.net-section", "net section of a seam", where, situation), (w, t, F) =>
        {
            double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), d_0 = w.Given("d_0", seam.Rivet.d_0, Dimension.SmallLength, "hole");
            double N = w.Given("N", forces.InPlane.NewtonsPerMeter * p, Dimension.Force, "force on one pitch");
            double A_net = w.Let("A_net", (p - d_0) * t, Dimension.SmallArea, design.IsAisc ? aisc : en);
            double f_u = sheet.UltimateStrength.Pascals, f_y = sheet.YieldStrength.Pascals;
            double f = design.Code switch
            {
                DesignCode.AllowableStress => w.Given("f", design.AllowableFraction * f_y, Dimension.Stress, "allowable tension of the sheet"),
                DesignCode.En1993 => w.Given("f", Math.Min(0.9 * f_u / design.GammaM2, f_y / design.GammaM0 * p / (p - d_0)), Dimension.Stress, "lesser of rupture and gross yield, on the net area"),
                _ => w.Given("f", Math.Min(design.Aisc(0.75, 2) * f_u, design.Aisc(0.9, 1.67) * f_y * p / (p - d_0)), Dimension.Stress, "lesser of rupture and gross yield, on the net area"),
            };
            return (N, w.Let("N_net", f * A_net, Dimension.Force));
        });

    /// <summary>The head of a rivet pulled through the sheet, and the rivet in tension, under suction.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="forces">What the seam carries.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static Check PullThrough(RivetedSeam seam, Material sheet, Length thickness, SeamForces forces, BarDesign design, string where = "", string situation = "") =>
        PullThrough(seam, sheet, thickness, forces, design, where, situation, null);

    /// <summary>As the other, where something pries.</summary>
    internal static Check PullThrough(RivetedSeam seam, Material sheet, Length thickness, SeamForces forces, BarDesign design, string where, string situation, Func<Working?, double>? prying) =>
        Of(seam, thickness, forces, design, new CheckSubject("seams.pull-through", "head of a rivet pulled through the sheet", where, situation), (w, t, _) =>
        {
            double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), rows = w.Given("rows", seam.Rows, Dimension.Number);
            double q = w.Given("q", forces.Outward.NewtonsPerMeter, Dimension.LineLoad, "suction on the seam");
            double F_t = w.Let("F_t", q * p / rows, Dimension.Force, design.IsAisc ? aisc : en, "pull on a rivet");
            if (prying?.Invoke(w) is { } k_p)
                F_t = w.Let("F_p", k_p * F_t, Dimension.Force, meaning: "with what pries");
            double d_m = w.Given("d_m", seam.HeadDiameter?.Meters ?? (seam.Rivet.IsCountersunk ? 1.6 : 1.75) * seam.Rivet.d_0, Dimension.SmallLength, "head");
            double f_v = w.Given("f_v", Strength(w, design, sheet.UltimateStrength, sheet.YieldStrength, 0.6), Dimension.Stress, "sheet in shear");
            double grip = w.Given("grip", seam.Rivet.IsCountersunk ? t / 2 : t, Dimension.SmallLength, "thickness round the head");
            double B_p = w.Let("B_p", Math.PI * d_m * grip * f_v, Dimension.Force, design.IsAisc ? aisc : en, "punching of the sheet");
            double A = w.Given("A", seam.Rivet.Area, Dimension.SmallArea, "rivet");
            double f_t = w.Given("f_t", Strength(w, design, seam.Rivet.UltimateStrength, seam.Rivet.YieldStrength, design.IsAisc ? 0.75 : design.Code == DesignCode.En1993 ? 0.6 : 1), Dimension.Stress, "rivet in tension");
            return (F_t, w.Let("F_tR", Math.Min(B_p, f_t * A), Dimension.Force));
        });

    /// <summary>The worst of shear, bearing and net section of a seam by the part of the heat that it holds, and by the sheet that hangs on it.</summary>
    /// <param name="seam">The seam; its <see cref="RivetedSeam.HeatRestraint"/> is the part that is held.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="heat">The temperature of the sheet beyond that at which it would fit what holds it; the sign does not matter.</param>
    /// <param name="hanging">Height of sheet that hangs on the seam.</param>
    /// <param name="design">Rules and factors.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Check Heat(RivetedSeam seam, Material sheet, Length thickness, TemperatureDelta heat, Length hanging, BarDesign design, string where = "", string situation = "")
    {
        Validate(seam, thickness);
        CheckInput.Within(heat.Kelvins, -400, 400, nameof(heat));
        CheckInput.NotNegative(hanging.Meters, nameof(hanging));
        SeamForces forces = SeamForces.Of(Pressure.Zero, Length.Zero, Length.Zero, hanging, sheet, thickness, heat, seam.HeatRestraint);
        Check[] ways = [Shear(seam, sheet, thickness, forces, design, where, situation), Bearing(seam, sheet, thickness, forces, design, where, situation), NetSection(seam, sheet, thickness, forces, design, where, situation)];
        Check worst = ways.MaxBy(way => way.Utilization ?? double.PositiveInfinity)!;
        return worst.About(new CheckSubject("seams.heat", $"heat held back at a seam: {worst.Title}", where, situation));
    }

    /// <summary>Least and greatest pitch and least edge distance, as the worst ratio.</summary>
    /// <param name="seam">The seam.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The seam has problems.</exception>
    public static Check Pitch(RivetedSeam seam, Length thickness, string where = "", string situation = "")
    {
        Validate(seam, thickness);
        return Check.Of(new CheckSubject("seams.pitch", "pitch and edges of a seam", where, situation), Dimension.Number, seam.IsSealed ? sealing : rules, w =>
        {
            double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), e = w.Given("e", seam.EdgeDistance.Meters, Dimension.SmallLength, "edge distance");
            double d_0 = w.Given("d_0", seam.Rivet.d_0, Dimension.SmallLength, "hole"), t = w.Given("t", thickness.Meters, Dimension.SmallLength, "sheet");
            double u = w.Let("u", Math.Max(2.2 * d_0 / p, 1.2 * d_0 / e), Dimension.Number, rules);
            if (!seam.IsSealed)
                return (u, 1);
            double p_max = w.Let("p_max", Math.Min(14 * t, 0.2), Dimension.SmallLength, sealing, "to keep the seam tight");
            return (w.Let("u", Math.Max(u, p / p_max), Dimension.Number, sealing), 1);
        });
    }

    /// <summary>Stress of the sheet, or of the strap, between rivets under a force in its plane, N/m; Pa.</summary>
    internal static double NetStress(Working? w, RivetedSeam seam, double thickness, double n)
    {
        double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), d_0 = w.Given("d_0", seam.Rivet.d_0, Dimension.SmallLength, "hole");
        double t = w.Given("t", ThinnerOf(seam, thickness), Dimension.SmallLength, "thinner of sheet and strap");
        return w.Let("sigma_1", n * p / ((p - d_0) * t), Dimension.Stress, en);
    }

    /// <summary>Stress of a rivet, its shear as it counts in von Mises' equivalent, under forces along and square to the sheet, N/m; Pa.</summary>
    internal static double RivetStress(Working? w, RivetedSeam seam, double n, double q)
    {
        double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), rows = w.Given("rows", seam.Rows, Dimension.Number), A = w.Given("A", seam.Rivet.Area, Dimension.SmallArea, "rivet");
        double sigma_t = w.Let("sigma_t", q * p / (rows * A), Dimension.Stress), tau = w.Let("tau", n * p / (rows * A), Dimension.Stress);
        return w.Let("sigma_1", Math.Sqrt(sigma_t * sigma_t + 3 * tau * tau), Dimension.Stress);
    }

    private static double ThinnerOf(RivetedSeam seam, double thickness) =>
        Math.Min(thickness, seam.Kind == SeamKind.FlushWithStrap ? seam.StrapThickness?.Meters ?? thickness : thickness);

    private static Check Of(RivetedSeam seam, Length thickness, SeamForces forces, BarDesign design, CheckSubject subject, Func<Working?, double, double, (double, double)> check)
    {
        Validate(seam, thickness);
        CheckInput.NotNegative(forces.InPlane.NewtonsPerMeter, nameof(forces));
        CheckInput.NotNegative(forces.Outward.NewtonsPerMeter, nameof(forces));
        Source source = design.Code switch { DesignCode.En1993 => en, DesignCode.AllowableStress => allowable, _ => aisc };
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, source);
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            double n = w.Given("n", forces.InPlane.NewtonsPerMeter, Dimension.LineLoad, "force in the plane of the sheet");
            double p = w.Given("p", seam.Pitch.Meters, Dimension.SmallLength, "pitch"), rows = w.Given("rows", seam.Rows, Dimension.Number);
            double F = w.Let("F", n * p / rows, Dimension.Force, source, "on one rivet");
            double t = ThinnerOf(seam, thickness.Meters);
            w.Given(t, Dimension.SmallLength, "thinner of sheet and strap");
            return check(w, t, F);
        });
    }

    /// <summary>A part of the ultimate strength with its factor, or of the allowable stress.</summary>
    private static double Strength(Working? w, BarDesign design, Pressure ultimate, Pressure yield, double part)
    {
        double k = w.Given("k", part, Dimension.Number, "of the strength in tension");
        if (design.Code == DesignCode.AllowableStress)
        {
            double f = w.Given("f", design.AllowableFraction * yield.Pascals, Dimension.Stress, "allowable tension");
            return w.Let("f_d", k * f, Dimension.Stress, allowable);
        }
        double f_u = w.Given("f_u", ultimate.Pascals, Dimension.Stress, "ultimate strength"), c = w.Given("c", design.IsAisc ? design.Aisc(0.75, 2) : 1 / design.GammaM2, Dimension.Number, "φ, 1/Ω or 1/γ_M2");
        return w.Let("f_d", k * f_u * c, Dimension.Stress, design.IsAisc ? aisc : en);
    }

    private static void Validate(RivetedSeam seam, Length thickness)
    {
        var v = new Validator();
        seam.Validate(v.At(nameof(RivetedSeam)));
        Skin.CheckThickness(v, thickness);
        v.ThrowIfAny();
        if (seam.Pitch.Meters <= seam.Rivet.d_0)
            v.Add(nameof(RivetedSeam.Pitch), "must be more than the hole", "Rivets stand at least 2.2 holes apart.");
        v.ThrowIfAny();
    }
}
