using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Panels of sheet between armature bars: pressure, a foot or a knee, their own weight, and vibration.</summary>
/// <remarks>Stateless; safe to use from many threads. For any metal, by elastic theory against a fraction of the proof strength.</remarks>
public static class SheetChecks
{
    /// <summary>Part of the classical buckling pressure of a curved panel that is counted on.</summary>
    private const double ArchReserve = 0.5;

    private static readonly Source plates = new("Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.", "30, 44 and chapter 13; stretching after von Kármán, one shape");
    private static readonly Source arch = new("Timoshenko and Gere, Theory of Elastic Stability, 2nd ed.", "7.6: hinged arch under pressure, q_cr = D/R³ (π²/α² − 1)");
    private static readonly Source limits = Source.CommonPractice;
    private static readonly Source collapse = new("Johnson and Mellor, Engineering Plasticity", "load at the middle of a plate: 2π M_p supported, 4π M_p clamped, from memory");
    private static readonly Source buckling = new("Timoshenko and Gere, Theory of Elastic Stability, 2nd ed.", "9.2, k = 4 supported, 6.97 clamped; curved part NASA SP-8007");
    private static readonly Source vibration = new("Leissa, Vibration of Plates, NASA SP-160", "rectangular plates; curved after Donnell");

    /// <summary>The greatest stress under pressure and suction, bending and stretching together.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="inward">Greatest pressure, zero or more.</param>
    /// <param name="suction">Greatest suction, zero or more.</param>
    /// <param name="stressFraction">Allowable stress over proof strength, above 0 to 1.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Check PanelBending(SheetPanel panel, Pressure inward, Pressure suction, double stressFraction)
    {
        panel.Validate();
        double q_in = CheckInput.NotNegative(inward.Pascals, nameof(inward)), q_out = CheckInput.NotNegative(suction.Pascals, nameof(suction));
        CheckInput.Within(stressFraction, 0.05, 1, nameof(stressFraction));
        return Check.Of(panel.Subject("sheet.panel-bending", "stress in a panel of sheet"), Dimension.Stress, plates, w =>
        {
            double sigma_in, sigma_out;
            using (w?.Part("Pressure"))
                sigma_in = Stress(w, panel, q_in, true);
            using (w?.Part("Suction"))
                sigma_out = Stress(w, panel, q_out, false);
            w.Given(sigma_in, Dimension.Stress, "under pressure");
            w.Given(sigma_out, Dimension.Stress, "under suction");
            double f_y = w.Given("f_y", panel.f_y, Dimension.Stress, "proof strength"), fraction = w.Given("fraction", stressFraction, Dimension.Number);
            return (w.Let("sigma", Math.Max(sigma_in, sigma_out), Dimension.Stress, plates), w.Let("allowed", fraction * f_y, Dimension.Stress));
        });
    }

    /// <summary>The deflection at the middle under the greater of pressure and suction, over the shorter side.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="inward">Greatest pressure, zero or more.</param>
    /// <param name="suction">Greatest suction, zero or more.</param>
    /// <param name="limit">Greatest deflection over the shorter side, 1e-4 to 0.5.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Check PanelDeflection(SheetPanel panel, Pressure inward, Pressure suction, double limit)
    {
        panel.Validate();
        double q_in = CheckInput.NotNegative(inward.Pascals, nameof(inward)), q_out = CheckInput.NotNegative(suction.Pascals, nameof(suction));
        CheckInput.Within(limit, 1e-4, 0.5, nameof(limit));
        return Check.Of(panel.Subject("sheet.panel-deflection", "deflection of a panel of sheet"), Dimension.SmallLength, limits, w =>
        {
            double w_in, w_out;
            using (w?.Part("Pressure"))
                w_in = Deflection(w, panel, q_in, true);
            using (w?.Part("Suction"))
                w_out = Deflection(w, panel, q_out, false);
            double b = w.Given("b", panel.Short, Dimension.SmallLength, "shorter side"), share = w.Given("share", limit, Dimension.Number);
            w.Given(w_in, Dimension.SmallLength);
            w.Given(w_out, Dimension.SmallLength);
            return (w.Let("w", Math.Max(w_in, w_out), Dimension.SmallLength, plates), w.Let("allowed", share * b, Dimension.SmallLength));
        });
    }

    /// <summary>
    /// The dent that a load at the middle leaves: none up to the plastic collapse load of the plate in bending; above it the
    /// sheet is taken as a membrane that yields, which is an estimate.
    /// </summary>
    /// <param name="panel">The panel.</param>
    /// <param name="load">The load, as 1.5 kN of a person or 0.5 kN of a ladder's foot.</param>
    /// <param name="patch">Radius of what presses, 5 to 500 mm.</param>
    /// <param name="allowedDent">The dent that is tolerated.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Check Denting(SheetPanel panel, Force load, Length patch, Length allowedDent)
    {
        panel.Validate();
        CheckInput.NotNegative(load.Newtons, nameof(load));
        CheckInput.Within(patch.Meters, 0.005, 0.5, nameof(patch));
        CheckInput.Positive(allowedDent.Meters, nameof(allowedDent));
        return Check.Of(panel.Subject("sheet.denting", "dent left by a load on a panel"), Dimension.SmallLength, collapse, w =>
        {
            double P = w.Given("P", load.Newtons, Dimension.Force, "load"), r = w.Given("r", Math.Min(patch.Meters, 0.4 * panel.Short), Dimension.SmallLength, "radius of the patch");
            double f_y = w.Given("f_y", panel.f_y, Dimension.Stress, "proof strength"), t = w.Given("t", panel.t, Dimension.SmallLength, "thickness");
            double R = w.Given("R", panel.Short / 2, Dimension.SmallLength, "half the shorter side");
            double M_p = w.Let("M_p", f_y * t * t / 4, Dimension.Force, collapse, "plastic moment per length");
            double k = w.Given("k", panel.Edges == PanelEdges.Clamped ? 4 * Math.PI : 2 * Math.PI, Dimension.Number, "collapse load over plastic moment", collapse);
            // A patch spreads the load: for a circular plate 1/(1 − 2r/3R).
            double P_0 = w.Let("P_0", k * M_p / (1 - 2 * r / (3 * R)), Dimension.Force, collapse, "collapse load in bending");
            double dent = w.Let("dent", Math.Max(0, P - P_0) * Math.Log(R / r) / (2 * Math.PI * f_y * t), Dimension.SmallLength, collapse, "yielding membrane, an estimate");
            return (dent, allowedDent.Meters);
        });
    }

    /// <summary>The sag of a level panel under its own weight, over the shorter side.</summary>
    /// <param name="panel">The panel; taken as flat.</param>
    /// <param name="limit">Greatest sag over the shorter side, 1e-4 to 0.5.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The limit is out of range.</exception>
    public static Check Sag(SheetPanel panel, double limit)
    {
        panel.Validate();
        CheckInput.Within(limit, 1e-4, 0.5, nameof(limit));
        return Check.Of(panel.Subject("sheet.sag", "sag of a level panel under its own weight"), Dimension.SmallLength, limits, w =>
        {
            double g = w.Given("g", panel.Weight, Dimension.Pressure, "weight of the sheet per area");
            double sag = FlatDeflection(w, panel, g);
            double b = w.Given("b", panel.Short, Dimension.SmallLength, "shorter side"), share = w.Given("share", limit, Dimension.Number);
            return (sag, w.Let("allowed", share * b, Dimension.SmallLength));
        });
    }

    /// <summary>The lowest frequency of the panel, which is to lie above one that is wanted.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="least">The least frequency wanted, above zero.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public static Check PanelFrequency(SheetPanel panel, Frequency least)
    {
        panel.Validate();
        double wanted = CheckInput.Positive(least.Hertz, nameof(least));
        return Check.Of(panel.Subject("sheet.frequency", "lowest frequency of a panel"), Dimension.Frequency, vibration, w =>
            (w.Given("least", wanted, Dimension.Frequency, "least frequency wanted"), NaturalFrequency(w, panel)));
    }

    /// <summary>The lowest natural frequency of a panel, Hz.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    public static Frequency NaturalFrequency(SheetPanel panel)
    {
        panel.Validate();
        return Frequency.FromHertz(NaturalFrequency(null, panel));
    }

    /// <summary>The sheet as it carries the weight of the sheet above it, against plate buckling.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="above">Height of sheet that stands on it.</param>
    /// <param name="safety">Safety against buckling, 1 to 10.</param>
    /// <exception cref="InvalidStatueException">The panel has problems.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Check Buckling(SheetPanel panel, Length above, double safety)
    {
        panel.Validate();
        CheckInput.NotNegative(above.Meters, nameof(above));
        CheckInput.Within(safety, 1, 10, nameof(safety));
        return Check.Of(panel.Subject("sheet.buckling", "buckling of sheet under its own weight"), Dimension.Stress, buckling, w =>
        {
            double rho_g = w.Given("rho_g", panel.Weight / panel.t, Dimension.Pressure, "weight per volume, over 1 m");
            double h = w.Given("h", above.Meters, Dimension.Length, "height of sheet above"), s = w.Given("s", safety, Dimension.Number, "safety");
            double E = w.Given("E", panel.E, Dimension.Stress, "Young's modulus"), nu = w.Given("nu", panel.nu, Dimension.Number, "Poisson's ratio");
            double t = w.Given("t", panel.t, Dimension.SmallLength, "thickness"), b = w.Given("b", panel.Short, Dimension.SmallLength, "width of the panel");
            double k = w.Given("k", panel.Edges == PanelEdges.Clamped ? 6.97 : 4, Dimension.Number, "", buckling);
            double critical = w.Let("sigma_cr", k * Math.PI * Math.PI * E / (12 * (1 - nu * nu)) * (t / b) * (t / b), Dimension.Stress, buckling, "flat plate");
            if (panel.Radius is { } radius)
            {
                double R = w.Given("R", radius.Meters, Dimension.Length, "radius");
                double gamma = w.Let("gamma", 1 - 0.901 * (1 - Math.Exp(-Math.Sqrt(R / t) / 16)), Dimension.Number, buckling, "knock-down of SP-8007");
                double curved = w.Let("curved", gamma * E * t / (R * Math.Sqrt(3 * (1 - nu * nu))), Dimension.Stress, buckling, "cylinder");
                critical = w.Let("sigma_cr", Math.Max(critical, curved), Dimension.Stress, buckling);
            }
            return (w.Let("sigma", rho_g * h, Dimension.Stress), w.Let("allowed", critical / s, Dimension.Stress));
        });
    }

    /// <summary>The deflection of a flat panel under pressure, m.</summary>
    internal static double FlatDeflection(Working? w, SheetPanel panel, double q)
    {
        Tell(w, panel, q);
        double C = w.Given("C", panel.Bending.Deflection, Dimension.Number, "deflection factor", plates), b = panel.Short, D = panel.D;
        double w_1 = w.Let("w_1", C * q * b * b * b * b / D, Dimension.SmallLength, plates, "by bending alone");
        double deflection = q == 0 ? 0 : PlateStretching.Deflection(q / w_1, panel.Stretching.Cubic, q);
        return w.Given("w", deflection, Dimension.SmallLength, "with stretching: root of q w/w₁ + k₃ w³ = q", plates);
    }

    private static double FlatStress(Working? w, SheetPanel panel, double q)
    {
        double deflection = FlatDeflection(w, panel, q), b = panel.Short, t = panel.t;
        double q_b = w.Given("q_b", deflection * panel.D / (panel.Bending.Deflection * b * b * b * b), Dimension.Pressure, "part of the pressure carried by bending");
        double m = w.Given("m", panel.Bending.MiddleShort, Dimension.Number, "moment factor at the middle", plates);
        double S = w.Given("S", panel.Stretching.MiddleStress * deflection * deflection, Dimension.Stress, "stretching at the middle");
        double middle = w.Let("middle", 6 * m * q_b * b * b / (t * t) + S, Dimension.Stress, plates);
        if (panel.Edges == PanelEdges.Supported)
            return middle;
        double m_e = w.Given("m_e", panel.Bending.LongEdge, Dimension.Number, "moment factor at the longer edge", plates);
        double S_e = w.Given("S_e", Math.Max(0, panel.Stretching.EdgeStress * deflection * deflection), Dimension.Stress, "stretching at the edge");
        return w.Let("stress", Math.Max(middle, 6 * m_e * q_b * b * b / (t * t) + S_e), Dimension.Stress, plates);
    }

    private static double Stress(Working? w, SheetPanel panel, double q, bool isInward)
    {
        double flat = FlatStress(w, panel, q);
        if (!ActsAsShell(w, panel, q, isInward))
            return flat;
        double R = w.Given("R", panel.Radius!.Value.Meters, Dimension.Length, "radius"), t = panel.t;
        double ring = w.Let("ring", q * R / t, Dimension.Stress, arch, "membrane of the curved sheet");
        return w.Let("stress", Math.Min(flat, ring), Dimension.Stress, arch, "the way that carries more");
    }

    private static double Deflection(Working? w, SheetPanel panel, double q, bool isInward)
    {
        double flat = FlatDeflection(w, panel, q);
        if (!ActsAsShell(w, panel, q, isInward))
            return flat;
        double R = w.Given("R", panel.Radius!.Value.Meters, Dimension.Length, "radius"), t = panel.t, E = panel.E;
        return w.Let("w", Math.Min(flat, q * R * R / (E * t)), Dimension.SmallLength, arch, "membrane of the curved sheet");
    }

    /// <summary>True when curvature carries: edges held in plane, and inward pressure well below that at which the arch gives way.</summary>
    private static bool ActsAsShell(Working? w, SheetPanel panel, double q, bool isInward)
    {
        if (panel.Radius is not { } radius || !panel.EdgesHeldInPlane)
            return false;
        if (!isInward)
            return true;
        double R = w.Given("R", radius.Meters, Dimension.Length, "radius"), D = panel.D;
        double alpha = w.Given("alpha", panel.Width.Meters / (2 * R), Dimension.Angle, "half the angle of the panel");
        double q_cr = w.Let("q_cr", D / (R * R * R) * Math.Max(0, Math.PI * Math.PI / (alpha * alpha) - 1), Dimension.Pressure, arch);
        double reserve = w.Given("reserve", ArchReserve, Dimension.Number, "part of it that is counted on", limits);
        // A rise below the thickness is no arch.
        return q <= reserve * q_cr && panel.Width.Meters * panel.Width.Meters / (8 * R) > panel.t;
    }

    private static double NaturalFrequency(Working? w, SheetPanel panel)
    {
        Tell(w, panel, null);
        double lambda = w.Given("lambda", panel.Bending.Frequency, Dimension.Number, "frequency factor ω b² √(ρt/D)", vibration), b = panel.Short, D = panel.D;
        double mass = w.Given("mass", panel.Weight / SelfWeight.Gravity, Dimension.AreaDensity, "mass per area");
        double flat = w.Let("f_flat", lambda / (2 * Math.PI * b * b) * Math.Sqrt(D / mass), Dimension.Frequency, vibration);
        if (panel.Radius is not { } radius)
            return flat;
        double R = w.Given("R", radius.Meters, Dimension.Length, "radius"), l = w.Given("l", panel.Length.Meters, Dimension.SmallLength, "along the axis"), c = w.Given("c", panel.Width.Meters, Dimension.SmallLength, "curved side");
        double E = panel.E, t = panel.t;
        double part = w.Let("part", Math.Pow(1 / (l * l) / (1 / (l * l) + 1 / (c * c)), 2), Dimension.Number, vibration, "of the ring stiffness");
        double shell = w.Let("f_ring", Math.Sqrt(part * E * t / (mass * R * R)) / (2 * Math.PI), Dimension.Frequency, vibration);
        return w.Let("f", Math.Sqrt(flat * flat + shell * shell), Dimension.Frequency, vibration);
    }

    private static void Tell(Working? w, SheetPanel panel, double? q)
    {
        if (w is null)
            return;
        w.Given("a", panel.Long, Dimension.SmallLength, "longer side");
        w.Given("b", panel.Short, Dimension.SmallLength, "shorter side");
        w.Given("t", panel.t, Dimension.SmallLength, "thickness");
        w.Given("E", panel.E, Dimension.Stress, "Young's modulus");
        w.Given("D", panel.D, Dimension.Moment, "E t³/12(1 − ν²), per length");
        if (q is { } pressure)
            w.Given("q", pressure, Dimension.Pressure);
        w.Note($"Edges {(panel.Edges == PanelEdges.Clamped ? "clamped" : "supported")}, {(panel.EdgesHeldInPlane ? "held in plane" : "free to draw in")}.");
    }
}
