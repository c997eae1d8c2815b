using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Gussets and splice plates: the strip over which the force of a member spreads, 30° to either side from the first fasteners to the
/// last, as a member of its own in tension and compression; the block that tears out of it; the weld of a gusset under a force off its
/// middle; and the plates of a splice bent by a force off their centroid.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class PlateSheet
{
    private static readonly Source spread = new("Whitmore, Experimental investigation of stresses in gusset plates (1952), from memory", "30° from the first fastener to the last");
    private static readonly Source buckling = new("Dowswell, Effective length factors for gusset plate buckling (2006), from memory", "K = 1.2, held along one edge");
    private static readonly Source blockEn = new("EN 1993-1-8:2005", "3.10.2 (3.9)");
    private static readonly Source blockAisc = new("AISC 360-16 and 360-22", "J4.3");
    private static readonly Source line = new("Blodgett, Design of Welded Structures, from memory", "welds as lines; elastic theory");
    private static readonly Assumption flat = new("gussets", "force in the middle of their thickness; K = 1.2 as held along one edge", Source.CommonPractice);
    private static readonly Assumption stiff = new("plates of splices", "take all of the moment of a force off their centroid, as legs bend more easily than short plates", Source.CommonPractice);

    /// <summary>How a force spreads to either side.</summary>
    private static readonly double tan30 = 1 / Math.Sqrt(3);

    internal static readonly MemberEntries Gussets = MemberEntries.Gussets, Splices = MemberEntries.Splices;

    internal static readonly FormulaEntry<MemberLoad> GussetBlock = Block("gussets.block", "every described gusset"), SpliceBlock = Block("splices.block", "every described splice");

    internal static readonly FormulaEntry<MemberLoad> WeldEntry = new(
        "gussets.welds", "fillet welds that hold a gusset", Nature.Strength, "every described gusset", "stress of the throat by elastic theory of lines", "strength of the throat", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in MemberLoad load) => load.Member.Where,
        Rule = (in MemberLoad load) => FilletThroat.Rule(load.Design),
        Lacks = (in MemberLoad load) => load.Member.Connection!.Plate!.Throat is null ? $"the weld is not described ({nameof(JointPlate)}.{nameof(JointPlate.Throat)})"
            : load.Design.Code == DesignCode.AllowableStress ? "welds are checked by EN 1993-1-8 or AISC 360; give one of these codes for a metal they cover"
            : load.Design.Uncovered,
        Run = Weld,
    };

    /// <summary>All entries, for the catalogue.</summary>
    public static IEnumerable<CheckEntry> All => [Gussets.Compression, Gussets.Tension, GussetBlock, WeldEntry, Splices.Compression, Splices.Tension, SpliceBlock, Splices.Bending];

    /// <summary>Checks the plates at the ends of members, whose connection has one.</summary>
    /// <param name="lists">Takes the checks.</param>
    /// <param name="loads">Members of one kind at their least and greatest force.</param>
    /// <param name="criteria">Where the rules come from.</param>
    public static void Add(SheetWriter lists, IEnumerable<MemberLoad> loads, Criteria criteria)
    {
        MemberLoad[] all = [.. loads.Where(load => load.Member.Connection?.Plate is not null)];
        if (all.Length == 0)
            return;
        int firstCheck = lists.Checks.Count;
        bool isSplice = all[0].Member.IsLeg;
        MemberEntries entries = isSplice ? Splices : Gussets;
        JointPlate plate = all[0].Member.Connection!.Plate!;
        if (Strip(all[0].Member.Connection!).Width < 1e-3)
        {
            lists.Checks.Add(entries.Tension.NotChecked("one fastener in a line does not spread its force; give two along the force", all[0].Member.Where, lists.Situation));
            return;
        }
        BarDesign design = MemberSheet.DesignFor(plate.Material, criteria);
        MemberLoad[] strips = [.. all.Select(load => new MemberLoad(StripOf(load.Member), design, Origin: load.Origin))];
        lists.Run(entries.Compression, strips.Where(strip => strip.Member.N < 0));
        lists.Run(entries.Tension, strips.Where(strip => strip.Member.N > 0));
        lists.Run(isSplice ? SpliceBlock : GussetBlock, strips.Where(strip => strip.Member.N > 0));
        if (isSplice)
            lists.Run(entries.Bending, strips.Select(Bent));
        else if (!plate.IsLegItself)
            lists.Run(WeldEntry, strips);
        lists.Assume([isSplice ? stiff : flat, .. MemberSheet.FactorsOf(design, criteria)], firstCheck);
    }

    /// <summary>The width of the strip, m, and how it comes about.</summary>
    private static (double Width, string Words) Strip(MemberConnection joint)
    {
        int plates = joint.BothLegs ? 2 : 1;
        double lines = Math.Max(1, joint.Lines / plates), width = joint.Plate!.Width.Meters;
        double spreads = plates * ((lines - 1) * joint.p_2 + 2 * (joint.InLine - 1) * joint.p_1 * tan30);
        return (Math.Min(width, spreads), Invariant($"Strip of the plate: least of its width, {1000 * width:0} mm, and what {joint.InLine} fasteners in {lines:0} line{(lines > 1 ? "s" : "")}{(plates > 1 ? " on each of two plates" : "")} spread the force to at 30° to either side, {1000 * spreads:0} mm [{spread}]; buckling: {buckling}."));
    }

    /// <summary>The strip as a flat that carries the member's force over its free length.</summary>
    private static LoadedMember StripOf(LoadedMember member)
    {
        MemberConnection joint = member.Connection!;
        JointPlate plate = joint.Plate!;
        (double width, string words) = Strip(joint);
        double t = plate.Thickness.Meters;
        return new LoadedMember
        {
            Section = new FlatBar(Length.FromMeters(Math.Max(width, t)), Length.FromMeters(Math.Min(width, t))),
            Material = plate.Material,
            Length = Length.FromMeters(Math.Max(0.01, plate.FreeLength.Meters)),
            Axial = member.Axial,
            WeakFactor = 1.2,
            StrongFactor = 1.2,
            IsLeg = member.IsLeg,
            Connection = joint,
            Where = member.Where,
            Note = words,
        };
    }

    /// <summary>The plates of a splice with the moment of the force about their centroid; on both legs of an angle they bend as an angle.</summary>
    private static MemberLoad Bent(MemberLoad strip)
    {
        MemberConnection joint = strip.Member.Connection!;
        JointPlate plate = joint.Plate!;
        return strip with
        {
            Member = strip.Member with
            {
                Section = joint.BothLegs && plate.Width > 2.5 * plate.Thickness ? new AngleBar(0.5 * plate.Width, plate.Thickness) : strip.Member.Section,
                WeakMoment = Torque.FromNewtonMeters(Math.Abs(strip.Member.N) * plate.Eccentricity.Meters),
                Note = "The plates whole, bent by the force times its distance from their centroid.",
            },
        };
    }

    private static FormulaEntry<MemberLoad> Block(string id, string parts) => new(
        id, "tearing of a block out of a plate", Nature.Strength, parts, "axial tension", "both sides of the fasteners in shear, and what is between their lines in tension", "no strength situation was given")
    {
        Dimension = Dimension.Force,
        Where = (in MemberLoad load) => load.Member.Where,
        Rule = (in MemberLoad load) => load.Design.IsAisc ? blockAisc : blockEn,
        Lacks = (in MemberLoad load) => load.Design.Uncovered,
        Run = Torn,
    };

    private static (double Demand, double Capacity) Torn(Working? w, in MemberLoad load)
    {
        MemberConnection joint = load.Member.Connection!;
        BarDesign design = load.Design;
        Source source = design.IsAisc ? blockAisc : blockEn;
        double N = w.Given("N", Math.Max(0, load.Member.N), Dimension.Force, "tension"), t = w.Given("t", joint.Plate!.Thickness.Meters, Dimension.SmallLength, "thickness of the plate");
        double plates = w.Given("plates", joint.BothLegs ? 2 : 1, Dimension.Number), lines = w.Given("lines", Math.Max(1, joint.Lines / (joint.BothLegs ? 2 : 1)), Dimension.Number, "of fasteners in each");
        double n = w.Given("n", joint.InLine, Dimension.Number, "fasteners in a line"), d_h = w.Given("d_h", joint.d_0 + (design.IsAisc ? 0.0016 : 0), Dimension.SmallLength, design.IsAisc ? "hole and 1/16 in" : "hole");
        double e_1 = w.Given("e_1", joint.e_1, Dimension.SmallLength, "end distance"), p_1 = w.Given("p_1", joint.p_1, Dimension.SmallLength, "pitch"), p_2 = w.Given("p_2", joint.p_2, Dimension.SmallLength, "distance of lines");
        double A_gv = w.Let("A_gv", 2 * (e_1 + (n - 1) * p_1) * t, Dimension.SmallArea, source, "gross area in shear, both sides");
        double A_nv = w.Let("A_nv", Math.Max(0, A_gv - 2 * (n - 0.5) * d_h * t), Dimension.SmallArea, source, "net area in shear");
        double A_nt = w.Let("A_nt", Math.Max(0, (lines - 1) * (p_2 - d_h) * t), Dimension.SmallArea, source, "net area in tension between the lines");
        double f_y = w.Given("f_y", load.Member.f_y, Dimension.Stress, "yield strength"), f_u = w.Given("f_u", load.Member.f_u, Dimension.Stress, "ultimate strength");
        switch (design.Code)
        {
            case DesignCode.En1993:
                double gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number), gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number);
                return (N, w.Let("V_eff", plates * (f_u * A_nt / gammaM2 + f_y * A_nv / (Math.Sqrt(3) * gammaM0)), Dimension.Force, blockEn));
            case DesignCode.AllowableStress:
                double fraction = w.Given("fraction", design.AllowableFraction, Dimension.Number, "allowable over yield stress");
                return (N, w.Let("R_bs", plates * fraction * f_y * (A_nt + 0.6 * A_nv), Dimension.Force, Source.CommonPractice));
            default:
                double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
                return (N, w.Let("R_bs", plates * c * (Math.Min(0.6 * f_u * A_nv, 0.6 * f_y * A_gv) + f_u * A_nt), Dimension.Force, blockAisc));
        }
    }

    private static (double Demand, double Capacity) Weld(Working? w, in MemberLoad load)
    {
        JointPlate plate = load.Member.Connection!.Plate!;
        double N = w.Given("N", Math.Abs(load.Member.N), Dimension.Force, "force of the member"), e = w.Given("e", plate.Eccentricity.Meters, Dimension.SmallLength, "from its line to the middle of the weld");
        double l = w.Given("l", plate.WeldLength.Meters, Dimension.SmallLength, "length of the weld on each of two faces"), a = w.Given("a", plate.Throat!.Value.Meters, Dimension.SmallLength, "throat");
        double q = w.Let("q", N / (2 * l) + 3 * N * e / (l * l), Dimension.LineLoad, line, "of the force and of its moment, as if along one line");
        double f_r = w.Let("f_r", q / a, Dimension.Stress, line, "resultant on the throat");
        return (f_r, FilletThroat.Strength(w, load.Member.f_u, "ultimate strength of the plate", load.Design));
    }
}
