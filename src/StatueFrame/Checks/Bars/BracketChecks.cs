using System.Runtime.InteropServices;

namespace StatueFrame.Checks;

/// <summary>Brackets under standoffs: their strength and stability as cantilevers, and the weld that holds them.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BracketChecks
{
    private const string NoStrength = "no strength situation was given";
    private static readonly Source simplified = new("EN 1993-1-8:2005", "4.5.3.3, (4.2) to (4.4)");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "J2.4, 0.60 F_EXX; φ = 0.75, Ω = 2");
    private static readonly Source flatFace = new("EN 1993-1-8:2005", "Tables 7.11 and 7.14, T joints, face yielding; AISC 360, K3, alike; from memory");
    private static readonly Source roundFace = new("EN 1993-1-8:2005", "Tables 7.2 and 7.5, T joints, face yielding and punching; AISC 360, K3, alike; from memory");
    private static readonly Source line = new("Blodgett, Design of Welded Structures, from memory", "welds as lines; elastic theory");

    /// <summary>The cantilever with all it carries: members' own rules, the moments at tip and foot each at its greater.</summary>
    internal static readonly MadeEntry<BracketLoad> BendingEntry = new(
        "brackets.bending", "member under axial force, bending, shear and torsion", Nature.Strength, "every bracket, every state", "section and stability together", "1", NoStrength,
        (load, situation) => MemberChecks.Bending(load.Member(situation), load.Design));

    internal static readonly FormulaEntry<BracketLoad> WeldEntry = WeldsOf("brackets.welds", "fillet weld round the end of a bracket", "every bracket, every state", $"{nameof(Bracket)}.{nameof(Bracket.Throat)}");

    /// <summary>The entry for fillet welds all round the end of a cantilever.</summary>
    internal static FormulaEntry<BracketLoad> WeldsOf(string id, string title, string parts, string member) => new(
        id, title, Nature.Strength, parts, "stress of the throat by elastic theory of lines", "strength of the throat", NoStrength)
    {
        Dimension = Dimension.Stress,
        Where = (in BracketLoad load) => load.Where,
        Rule = (in BracketLoad load) => load.Design.IsAisc ? aisc : simplified,
        Lacks = (in BracketLoad load) => load.Bracket.Bracket.Throat is null ? $"the weld is not described ({member})"
            : load.Bracket.Bracket.Section is AngleBar ? "a weld all round an angle is not worked out"
            : load.Design.Code == DesignCode.AllowableStress ? "welds are checked by EN 1993-1-8 or AISC 360; give one of these codes for a metal they cover"
            : load.Design.Uncovered,
        Run = (Working? w, in BracketLoad load) => Weld(w, load),
    };

    /// <summary>Stress of the throat and its strength, Pa: the resultant of all that acts along one line round the section.</summary>
    private static (double Demand, double Capacity) Weld(Working? w, in BracketLoad load)
    {
        if (load.When.Length > 0)
            w?.Note($"Worst of all states: {load.When}.");
        double a = w.Given("a", load.Bracket.Bracket.Throat!.Value.Meters, Dimension.SmallLength, "throat");
        double N = w.Given("N", Math.Abs(load.N), Dimension.Force, "axial force"), V = w.Given("V", load.V, Dimension.Force, "shear"), T = w.Given("T", load.T, Dimension.Moment, "torsion");
        double M_y = w.Given("M_y", load.Foot.Strong, Dimension.Moment, "strong moment at the weld"), M_z = w.Given("M_z", load.Foot.Weak, Dimension.Moment, "weak moment at the weld");
        double l, W_y, W_z, W_t;
        if (load.Bracket.Bracket.Section.OutlineDiameter is { } diameter)
        {
            double d = w.Given("d", diameter, Dimension.SmallLength, "diameter");
            l = w.Let("l", Math.PI * d, Dimension.SmallLength, line, "length of the weld");
            W_y = W_z = w.Let("W_y", Math.PI * d * d / 4, Dimension.SmallArea, line, "modulus of the line");
            W_t = w.Let("W_t", Math.PI * d * d / 2, Dimension.SmallArea, line, "modulus for torsion");
        }
        else
        {
            (double width, double depth) = load.Bracket.Bracket.Section.Envelope;
            double h = w.Given("h", width, Dimension.SmallLength, "height"), b = w.Given("b", depth, Dimension.SmallLength, "width");
            l = w.Let("l", 2 * (b + h), Dimension.SmallLength, line, "length of the weld");
            W_y = w.Let("W_y", b * h + h * h / 3, Dimension.SmallArea, line, "modulus of the line, strong axis");
            W_z = w.Let("W_z", b * h + b * b / 3, Dimension.SmallArea, line, "modulus of the line, weak axis");
            W_t = w.Let("W_t", Math.Pow(b + h, 3) / (3 * Math.Sqrt(b * b + h * h)), Dimension.SmallArea, line, "polar modulus of the line at its corners");
        }
        if (load.Bracket.Bracket.Section.OutlineDiameter is not null)
            w.Given("W_z", W_z, Dimension.SmallArea);
        double q_n = w.Let("q_n", N / l + M_y / W_y + M_z / W_z, Dimension.LineLoad, line, "along the member");
        double q_v = w.Let("q_v", V / l + T / W_t, Dimension.LineLoad, line, "across it");
        double f_r = w.Let("f_r", Math.Sqrt(q_n * q_n + q_v * q_v) / a, Dimension.Stress, load.Design.IsAisc ? aisc : simplified, "resultant on the throat");
        if (load.Design.IsAisc)
        {
            double F_EXX = w.Given("F_EXX", WeldedTubeJoint.UsualElectrode.Pascals, Dimension.Stress, "electrode, 70 ksi"), c = w.Given("c", load.Design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
            return (f_r, w.Let("f_w", c * 0.6 * F_EXX, Dimension.Stress, aisc));
        }
        double f_u = w.Given("f_u", Math.Min(load.Bracket.Bracket.Material.UltimateStrength.Pascals, load.Joined?.UltimateStrength.Pascals ?? double.PositiveInfinity), Dimension.Stress, "ultimate strength of the weaker part");
        double beta_w = w.Given("beta_w", 1.0, Dimension.Number, "correlation factor, its greatest"), gammaM2 = w.Given("gammaM2", load.Design.GammaM2, Dimension.Number);
        return (f_r, w.Let("f_vw", f_u / (Math.Sqrt(3) * beta_w * gammaM2), Dimension.Stress, simplified));
    }

    /// <summary>
    /// The face of a hollow section under a bracket, yielding in lines round it, the weaker the more the section is pressed by what else it carries.
    /// </summary>
    internal static readonly FormulaEntry<BracketLoad> FaceEntry = new(
        "brackets.faces", "face of a hollow section under a bracket", Nature.Strength, "every bracket, every state", "axial force and both moments at the foot", "yield lines of the face", NoStrength)
    {
        Where = (in BracketLoad load) => load.Where,
        Rule = (in BracketLoad load) => load.Chord?.Section is Tube ? roundFace : flatFace,
        Lacks = (in BracketLoad load) => load.Chord?.Lacks ?? (load.Chord is null ? "what they stand on is not known" : null) ?? load.Design.Uncovered,
        Run = Face,
    };

    private static (double Demand, double Capacity) Face(Working? w, in BracketLoad load)
    {
        if (load.When.Length > 0)
            w?.Note($"Worst of all states: {load.When}.");
        BracketChord chord = load.Chord!;
        Section bracket = load.Bracket.Bracket.Section;
        (double height, double width) = bracket.Envelope;
        bool isAslant = chord.IsAslant || load.Bracket.Bracket.Roll.Radians != 0;
        // Along the axis of the section under it, and across its face; about axes that are not known the greater of each.
        (double along, double across) = isAslant ? (Math.Min(height, width), Math.Min(height, width)) : chord.IsUpright ? (height, width) : (width, height);
        double both = double.Hypot(load.Foot.Strong, load.Foot.Weak);
        (double inPlane, double outOfPlane) = isAslant ? (both, both) : chord.IsUpright ? (load.Foot.Strong, load.Foot.Weak) : (load.Foot.Weak, load.Foot.Strong);
        double N = w.Given("N", Math.Abs(load.N), Dimension.Force, "axial force"), M_ip = w.Given("M_ip", inPlane, Dimension.Moment, "moment in the plane of the section's axis"), M_op = w.Given("M_op", outOfPlane, Dimension.Moment, "moment out of it");
        double t_0 = w.Given("t_0", ConnectionChecks.Thickness(chord.Section!), Dimension.SmallLength, "wall of the section"), f_y = w.Given("f_y", chord.Material!.For(ConnectionChecks.Thickness(chord.Section!)).YieldStrength.Pascals, Dimension.Stress, "its yield strength");
        double c = w.Given("c", load.Design.IsAisc ? load.Design.Aisc(1, 1.5) : load.Design.Code == DesignCode.AllowableStress ? load.Design.AllowableFraction : 1, Dimension.Number, load.Design.IsAisc ? "φ or 1/Ω" : load.Design.Code == DesignCode.AllowableStress ? "allowable over yield stress" : "1/γ_M5");
        double n = w.Given("n", chord.Pressed, Dimension.Number, "pressed by what else it carries, over its yield");
        double part = w.Given("part", bracket.OutlineDiameter is null ? 1 : Math.PI / 4, Dimension.Number, bracket.OutlineDiameter is null ? "rectangular bracket" : "π/4 for a round bracket");
        if (chord.Section is Tube tube)
        {
            double d_0 = w.Given("d_0", tube.OuterDiameter.Meters, Dimension.SmallLength, "tube"), d = w.Given("d", Math.Min(tube.OuterDiameter.Meters, Math.Min(along, across)), Dimension.SmallLength, "bracket, its lesser side");
            double beta = w.Let("beta", d / d_0, Dimension.Number, roundFace), gamma = w.Let("gamma", d_0 / (2 * t_0), Dimension.Number, roundFace);
            double k_p = w.Let("k_p", 1 - 0.3 * n * (1 + n), Dimension.Number, roundFace);
            double N_R = w.Let("N_R", c * Math.Pow(gamma, 0.2) * k_p * f_y * t_0 * t_0 * (2.8 + 14.2 * beta * beta), Dimension.Force, roundFace);
            double M_ipR = w.Let("M_ipR", c * 4.85 * f_y * t_0 * t_0 * d * Math.Sqrt(gamma) * beta * k_p, Dimension.Moment, roundFace), M_opR = w.Let("M_opR", c * f_y * t_0 * t_0 * d * 2.7 / (1 - 0.81 * beta) * k_p, Dimension.Moment, roundFace);
            double punch = w.Let("punch", f_y / Math.Sqrt(3) * t_0 * c, Dimension.LineLoad, roundFace, "punching of the wall");
            double u_p = w.Let("u_p", (N / (Math.PI * d) + M_ip / (d * d) + M_op / (d * d)) / punch, Dimension.Number, roundFace);
            double u_y = w.Let("u_y", N / N_R + (M_ip / M_ipR) * (M_ip / M_ipR) + M_op / M_opR, Dimension.Number, roundFace);
            return (w.Let("u", Math.Max(u_p, u_y), Dimension.Number), 1);
        }
        (double large, double small) = chord.Section!.Envelope;
        return (FlatFace(w, (chord.IsUpright || isAslant ? Math.Max(large, small) : large, along, across), (N, M_ip, M_op), c * part * f_y * t_0 * t_0, n), 1);
    }

    private static double FlatFace(Working? w, (double Face, double Along, double Across) sizes, (double N, double M_ip, double M_op) forces, double yield, double n)
    {
        (double N, double M_ip, double M_op) = forces;
        double m_0 = w.Given("m_0", yield, Dimension.Force, "f_y t₀² with its factors"), b_0 = w.Given("b_0", sizes.Face, Dimension.SmallLength, "width of the face");
        double h_1 = w.Given("h_1", sizes.Along, Dimension.SmallLength, "bracket along it"), b_1 = w.Given("b_1", Math.Min(sizes.Across, 0.85 * b_0), Dimension.SmallLength, "bracket across it, at most 0.85 of the face");
        double beta = w.Let("beta", b_1 / b_0, Dimension.Number, flatFace), eta = w.Let("eta", h_1 / b_0, Dimension.Number, flatFace);
        double k_n = w.Let("k_n", Math.Min(1, Math.Max(0.1, 1.3 - 0.4 * n / beta)), Dimension.Number, flatFace);
        double N_R = w.Let("N_R", k_n * m_0 * (2 * eta + 4 * Math.Sqrt(1 - beta)) / (1 - beta), Dimension.Force, flatFace);
        double M_ipR = w.Let("M_ipR", k_n * m_0 * h_1 * (1 / (2 * eta) + 2 / Math.Sqrt(1 - beta) + eta / (1 - beta)), Dimension.Moment, flatFace);
        double M_opR = w.Let("M_opR", k_n * m_0 * (h_1 * (1 + beta) / (2 * (1 - beta)) + Math.Sqrt(2 * b_0 * b_1 * (1 + beta) / (1 - beta))), Dimension.Moment, flatFace);
        return w.Let("u", N / N_R + M_ip / M_ipR + M_op / M_opR, Dimension.Number, flatFace);
    }

    /// <summary>The brackets of one ring: of all states those that none other covers, and the worst of the welds.</summary>
    internal sealed class OfRing
    {
        private readonly List<BracketLoad> kept = [];
        private readonly List<BracketLoad.Asked> asked = [];
        private Worst<BracketLoad> weld = new(WeldEntry), face = new(FaceEntry);

        public void Look(in BracketLoad load)
        {
            weld.Look(load);
            face.Look(load);
            BracketLoad.Asked own = load.Sizes;
            Span<BracketLoad.Asked> known = CollectionsMarshal.AsSpan(asked);
            for (int i = 0; i < known.Length; i++)
            {
                if (!own.IsCoveredBy(known[i]))
                    continue;
                // What covers one state often covers the next: it comes forward, to be asked first.
                (asked[i], asked[i / 2], kept[i], kept[i / 2]) = (asked[i / 2], asked[i], kept[i / 2], kept[i]);
                return;
            }
            for (int i = known.Length - 1; i >= 0; i--)
            {
                if (!known[i].IsCoveredBy(own))
                    continue;
                // The last takes its place: their order decides nothing but which of equals is named.
                (asked[i], kept[i]) = (asked[^1], kept[^1]);
                asked.RemoveAt(asked.Count - 1);
                kept.RemoveAt(kept.Count - 1);
            }
            asked.Add(own);
            kept.Add(load);
        }

        public void Write(SheetWriter lists)
        {
            lists.Run(BendingEntry, kept);
            lists.Add(weld);
        }

        /// <summary>The state that asks most of what the brackets stand on.</summary>
        public BracketLoad? OnFace => face.TryGet(out BracketLoad load) ? load : null;
    }
}
