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
        if (w is not null && load.When.Length > 0)
            w.Note($"Worst of all states: {load.When}.");
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

    /// <summary>The brackets of one ring and the faces under them: the worst of all states.</summary>
    internal sealed class OfRing
    {
        private readonly BracketChord chord;
        private readonly SafeBox onBending = new(BracketLoad.SizeCount), onWeld = new(BracketLoad.SizeCount);
        private readonly SafeBox[] onFace;
        private readonly Predicate<double[]> isBendingSafe, isWeldSafe, isFaceSafe;
        private Worst<BracketLoad> weld = new(WeldEntry), bending = new(BendingEntry);
        private Worst<FaceLoad> face = new(FaceChecks.UnderBrackets);
        private BracketLoad asked;

        /// <param name="brackets">What the standoffs of the ring stand on, all of one description; null for one that stands on none.</param>
        /// <param name="chord">What the brackets stand on.</param>
        public OfRing(IReadOnlyList<PlacedBracket?> brackets, BracketChord chord)
        {
            this.chord = chord;
            PlacedBracket? longest = brackets.MaxBy(placed => placed?.Length);
            onFace = [.. brackets.Select(_ => new SafeBox(BracketLoad.SizeCount))];
            isBendingSafe = sizes => IsNoWorse(bending, sizes, isPressed: true) && IsNoWorse(bending, sizes, isPressed: false);
            isWeldSafe = sizes => IsNoWorse(weld, sizes, isPressed: true) && IsNoWorse(weld, sizes, isPressed: false);
            isFaceSafe = sizes => face.IsNoWorse(FaceLoad.Of(asked.With(sizes, true), chord)) && face.IsNoWorse(FaceLoad.Of(asked.With(sizes, false), chord));

            // What is safe on the longest bracket is safe on all.
            bool IsNoWorse(in Worst<BracketLoad> entry, double[] sizes, bool isPressed) => entry.IsNoWorse(asked.With(sizes, isPressed) with { Bracket = longest! });
        }

        public Worst<FaceLoad> Face => face;

        /// <summary>Looks at a state of one bracket.</summary>
        /// <param name="index">Index of its standoff.</param>
        /// <param name="load">Its state.</param>
        public void Look(int index, in BracketLoad load)
        {
            Span<double> sizes = stackalloc double[BracketLoad.SizeCount];
            load.SizesTo(sizes);
            bool isAsked = false;
            if (!IsSafe(onWeld, sizes, isWeldSafe, load))
                weld.Look(load);
            if (!IsSafe(onBending, sizes, isBendingSafe, load))
                bending.Look(load);
            if (!IsSafe(onFace[index], sizes, isFaceSafe, load))
                face.Look(FaceLoad.Of(load, chord));

            bool IsSafe(SafeBox box, ReadOnlySpan<double> sizes, Predicate<double[]> isSafe, in BracketLoad load)
            {
                if (box.Holds(sizes))
                    return true;
                if (!isAsked)
                    (asked, isAsked) = (load, true);
                return box.Grow(sizes, isSafe);
            }
        }

        public void Write(SheetWriter lists)
        {
            lists.Add(bending);
            lists.Add(weld);
        }
    }
}
