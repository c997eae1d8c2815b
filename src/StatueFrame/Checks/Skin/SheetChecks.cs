using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Panels of sheet between armature bars: pressure, a foot or a knee, their own weight, and vibration.</summary>
/// <remarks>Stateless; safe to use from many threads. For any metal, by elastic theory against a fraction of the proof strength.</remarks>
public static class SheetChecks
{
    /// <summary>Part of the classical buckling pressure of a curved panel that is counted on.</summary>
    private const double ArchReserve = 0.5;

    /// <summary>Deflection over thickness up to which stress is known to a few percent everywhere.</summary>
    private const double Assured = 4;

    private static readonly Source plates = new("Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.", "30, 44");
    private static readonly Source large = new("von Kármán's equations with Airy's function by cosines, as Levy, NACA Report 737", "see the theory page on sheets");
    private static readonly Source arch = new("Timoshenko and Gere, Theory of Elastic Stability, 2nd ed.", "7.6: hinged arch under pressure, q_cr = D/R³ (π²/α² − 1)");
    private static readonly Source snap = new("shallow arch between hinges, exact path", "see the theory page on sheets");
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
            double sigma = Stress(w, panel, q_in, q_out);
            w.Given(sigma, Dimension.Stress, "greatest stress");
            double f_y = w.Given("f_y", panel.f_y, Dimension.Stress, "proof strength"), fraction = w.Given("fraction", stressFraction, Dimension.Number);
            return (sigma, w.Let("allowed", fraction * f_y, Dimension.Stress));
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
            double deflection = Greatest(w, panel, q_in, q_out, Deflection);
            w.Given(deflection, Dimension.SmallLength, "greatest deflection");
            double b = w.Given("b", panel.Short, Dimension.SmallLength, "shorter side"), share = w.Given("share", limit, Dimension.Number);
            return (deflection, w.Let("allowed", share * b, Dimension.SmallLength));
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
            double sigma_cr = w.Let("sigma_cr", k * Math.PI * Math.PI * E / (12 * (1 - nu * nu)) * (t / b) * (t / b), Dimension.Stress, buckling, "flat plate");
            if (panel.Radius is { } radius)
            {
                double R = w.Given("R", radius.Meters, Dimension.Length, "radius");
                double gamma = w.Let("gamma", 1 - 0.901 * (1 - Math.Exp(-Math.Sqrt(R / t) / 16)), Dimension.Number, buckling, "knock-down of SP-8007");
                double curved = w.Let("curved", gamma * E * t / (R * Math.Sqrt(3 * (1 - nu * nu))), Dimension.Stress, buckling, "cylinder");
                sigma_cr = w.Let("sigma_cr", Math.Max(sigma_cr, curved), Dimension.Stress, buckling);
            }
            return (w.Let("sigma", rho_g * h, Dimension.Stress), w.Let("allowed", sigma_cr / s, Dimension.Stress));
        });
    }

    /// <summary>The deflection of a flat panel under pressure, m.</summary>
    internal static double FlatDeflection(Working? w, SheetPanel panel, double q)
    {
        double t = panel.t, W = Large(w, panel, q).Deflection;
        w.Given(W, Dimension.Number, "greatest deflection over t", large);
        return w.Let("w", W * t, Dimension.SmallLength, large, "bending and stretching");
    }

    private static double FlatStress(Working? w, SheetPanel panel, double q)
    {
        (double W, double S) = Large(w, panel, q);
        (double E, double b, double t) = (panel.E, panel.Short, panel.t);
        double m = w.Given("m", Math.Max(panel.Bending.MiddleShort, panel.Bending.LongEdge), Dimension.Number, "greatest moment factor by bending alone", plates);
        w.Let("sigma_1", 6 * m * q * b * b / (t * t), Dimension.Stress, plates, "by bending alone; not used");
        w.Given(S, Dimension.Number, "greatest principal stress over E t²/b²", large);
        if (W > Assured)
            w?.Note($"Beyond {Assured} thicknesses stress near the corners is known to 15 % only.");
        return w.Let("stress", S * E * t * t / (b * b), Dimension.Stress, large, "bending and stretching");
    }

    private static (double Deflection, double Stress) Large(Working? w, SheetPanel panel, double q)
    {
        Tell(w, panel, q);
        (double b, double t, double E, double D) = (panel.Short, panel.t, panel.E, panel.D);
        double Q = w.Let("Q", q * b * b * b * b / (E * t * t * t * t), Dimension.Number, large, "load number"), C = w.Given("C", panel.Bending.Deflection, Dimension.Number, "deflection factor", plates);
        w.Let("w_1", C * q * b * b * b * b / D, Dimension.SmallLength, plates, "by bending alone; not used");
        return panel.Bending.Large(panel.EdgesHeldInPlane).Under(Q);
    }

    /// <summary>The greatest stress under pressure and suction, Pa.</summary>
    internal static double Stress(Working? w, SheetPanel panel, double inward, double suction) => Greatest(w, panel, inward, suction, Stress);

    /// <summary>What is greater of pressure and suction; a flat panel does not tell them apart.</summary>
    private static double Greatest(Working? w, SheetPanel panel, double inward, double suction, Func<Working?, SheetPanel, double, bool, double> of)
    {
        if (!MayActAsShell(panel))
        {
            using (w?.Part(inward >= suction ? "Pressure" : "Suction"))
                return of(w, panel, Math.Max(inward, suction), inward >= suction);
        }
        double found;
        using (w?.Part("Pressure"))
            found = of(w, panel, inward, true);
        using (w?.Part("Suction"))
            return Math.Max(found, of(w, panel, suction, false));
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

    private static bool MayActAsShell(SheetPanel panel) => panel.Radius is not null && panel.EdgesHeldInPlane;

    /// <summary>True when curvature carries: edges held in plane, and inward pressure well below that at which the arch gives way.</summary>
    private static bool ActsAsShell(Working? w, SheetPanel panel, double q, bool isInward)
    {
        if (!MayActAsShell(panel) || !isInward)
            return MayActAsShell(panel);
        (double E, double t) = (panel.E, panel.t);
        double R = w.Given("R", panel.Radius!.Value.Meters, Dimension.Length, "radius"), D = panel.D, b = w.Given("b", panel.Width.Meters, Dimension.SmallLength, "arc");
        double alpha = w.Given("alpha", b / (2 * R), Dimension.Angle, "half the angle of the panel");
        double q_cr = w.Let("q_cr", D / (R * R * R) * Math.Max(0, Math.PI * Math.PI / (alpha * alpha) - 1), Dimension.Pressure, arch, "the arch sways");
        double snaps = ArchSnap.Pressure(b * b / (R * t), panel.nu);
        if (double.IsPositiveInfinity(snaps))
        {
            w?.Note("Too flat an arch to snap through: taken as flat.");
            return false;
        }
        w.Given(snaps, Dimension.Number, "pressure over E t⁴/b⁴ at which the shallow arch snaps through or sways", snap);
        q_cr = w.Let("q_cr", Math.Min(q_cr, snaps * E * t * t * t * t / (b * b * b * b)), Dimension.Pressure, snap);
        double reserve = w.Given("reserve", ArchReserve, Dimension.Number, "part of it that is counted on", limits);
        return q <= reserve * q_cr;
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
