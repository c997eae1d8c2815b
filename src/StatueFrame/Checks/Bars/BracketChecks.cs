using System.Runtime.InteropServices;

namespace StatueFrame.Checks;

/// <summary>Brackets under standoffs: their strength and stability as cantilevers, and the weld that holds them.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BracketChecks
{
    private const string NoStrength = "no strength situation was given";
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
        Rule = (in BracketLoad load) => FilletThroat.Rule(load.Design),
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
        double f_r = w.Let("f_r", Math.Sqrt(q_n * q_n + q_v * q_v) / a, Dimension.Stress, FilletThroat.Rule(load.Design), "resultant on the throat");
        double ultimate = Math.Min(load.Bracket.Bracket.Material.UltimateStrength.Pascals, load.Joined?.UltimateStrength.Pascals ?? double.PositiveInfinity);
        return (f_r, FilletThroat.Strength(w, ultimate, "ultimate strength of the weaker part", load.Design));
    }

    /// <summary>The brackets of one ring: the worst of all states.</summary>
    internal sealed class OfRing
    {
        /// <summary>How many boxes are asked to grow before a state is looked at by itself.</summary>
        private const int Grown = 4;

        /// <summary>What is no worse than the worst so far, with all that asks less of every number: states, and the greatest numbers of several put together.</summary>
        private readonly List<BracketLoad> boxes = [];
        private readonly List<BracketLoad.Asked> sizes = [];
        private Worst<BracketLoad> weld = new(WeldEntry), bending = new(BendingEntry);

        public void Look(in BracketLoad load)
        {
            weld.Look(load);
            if (bending.Utilization > 1)
            {
                // Interaction formulas are made for what holds; beyond 1 more force may ask less, as across P_c/5 of AISC H1-1.
                bending.Look(load);
                return;
            }
            BracketLoad.Asked own = load.Sizes;
            foreach (ref readonly BracketLoad.Asked box in CollectionsMarshal.AsSpan(sizes))
            {
                if (own.IsCoveredBy(box))
                    return;
            }
            for (int i = 0, grown = 0; i < sizes.Count && grown < Grown; i++)
            {
                if (sizes[i].IsPressed != own.IsPressed)
                    continue;
                grown++;
                BracketLoad both = boxes[i].Covering(load);
                if (BendingEntry.Utilization(both) <= bending.Utilization)
                {
                    (boxes[i], sizes[i]) = (both, both.Sizes);
                    return;
                }
            }
            bending.Look(load);
            boxes.Add(load);
            sizes.Add(own);
        }

        public void Write(SheetWriter lists)
        {
            lists.Add(bending);
            lists.Add(weld);
        }
    }
}
