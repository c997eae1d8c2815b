using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>What one leg of a lattice, or a mast, puts on its base plate in a situation: the most of each, without sign, as if at one time. SI units.</summary>
/// <param name="Where">The leg, as in "leg 2".</param>
/// <param name="Section">Section of the leg.</param>
/// <param name="Metal">Its metal.</param>
/// <param name="Plate">Its plate.</param>
/// <param name="Bars">The anchor bars that pass through the plate.</param>
/// <param name="Axial">Axial force on the weld.</param>
/// <param name="Uplift">What pulls up; zero when nothing does.</param>
/// <param name="Shear">Horizontal force.</param>
/// <param name="Strong">Moment about the section's strong axis.</param>
/// <param name="Weak">Moment about its weak axis.</param>
/// <param name="Torsion">Torsion.</param>
/// <param name="Design">Rules of the steel.</param>
/// <param name="BaseDesign">Rules of the bars.</param>
internal readonly record struct FootLoad(
    string Where, Section Section, Material Metal, BasePlate Plate, ValueList<AnchorBar> Bars, double Axial, double Uplift, double Shear, double Strong, double Weak, double Torsion,
    BarDesign Design, BaseDesign BaseDesign) : ITraced
{
    /// <summary>What the plate stands on; null when it is not described.</summary>
    public BaseBlock? Bed { get; init; }

    /// <summary>How many times wider a like area of it can be, 1 to 3.</summary>
    public double SpreadRatio { get; init; } = 1;

    /// <summary>How its forces come about: of a mast from the actions, of a leg from the members that end in the foot.</summary>
    public DemandOrigin? Origin { get; init; }
}

/// <summary>
/// Feet: every leg of a lattice on a plate of its own, a mast on its plate. The weld to the plate; and of a leg's own pull the
/// plate that its bars bend up, and the bars.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FootSheet(StatueModel model, Criteria criteria, SituationDemands demands, SheetWriter lists)
{
    private const string NoPlates = "no hold-down is described (Statue.HoldDown)";
    private static readonly Source line = Source.Assumed("base: a weld on every face of a thin wall has the section's own moduli times its throats over the wall");
    private static readonly Source tStub = new("EN 1993-1-8:2005", "6.2.5, (6.4) and (6.5), under every wall by itself");
    private static readonly Source cantilever = new("AISC Design Guide 1, 2nd ed.", "3.1.2, the plate as a cantilever from the wall, both ways, from memory");
    private static readonly DemandState everyMember = new("what ends in the foot, the most of every member, all at one time");
    private static readonly (string, Dimension)[] foot = [("N", Dimension.Force), ("V", Dimension.Force), ("U", Dimension.Force)];
    private static readonly Assumption atOneTime = new("forces of single feet", "the most of every member that ends in a foot, all at one time", Source.Assumed("base"));

    internal static readonly FormulaEntry<FootLoad> WeldEntry = new(
        "feet.welds", "weld from a leg or mast to its base plate", Nature.Strength, "every foot, every state", "stress of the throat", "strength of the throat", NoPlates)
    {
        Dimension = Dimension.Stress,
        Where = (in FootLoad foot) => foot.Where,
        Rule = (in FootLoad foot) => FilletThroat.Rule(foot.Design),
        Lacks = (in FootLoad foot) => foot.Plate.LegWeld is null ? $"the weld is not described (BasePlate.{nameof(BasePlate.LegWeld)})"
            : foot.Design.Code == DesignCode.AllowableStress ? "welds are checked by EN 1993-1-8 or AISC 360; give one of these codes for a metal they cover"
            : foot.Design.Uncovered,
        Run = (Working? w, in FootLoad foot) => Weld(w, foot),
    };

    internal static readonly FormulaEntry<FootLoad> BearingEntry = new(
        "feet.bearing", "bed under the walls of a leg or mast", Nature.Strength, "every foot, every state", "force of the most pressed wall on its length", "strength of the bed on the width that the plate spreads it to", NoPlates)
    {
        Dimension = Dimension.LineLoad,
        Where = (in FootLoad foot) => foot.Where,
        Rule = (in FootLoad foot) => foot.BaseDesign.IsAmerican ? cantilever : tStub,
        Lacks = (in FootLoad foot) => foot.Bed is null ? "what the plates stand on is not described (Statue.Pedestal, Statue.Foundation)" : null,
        Run = (Working? w, in FootLoad foot) => Bearing(w, foot),
    };

    internal static readonly FormulaEntry<FootLoad> AnchorEntry = new(
        "feet.anchors", "anchor bars of a foot under its leg's own pull", Nature.Strength, "every foot, every state", "uplift of the leg, shared by its bars", "steel of the bars", NoPlates)
    {
        Dimension = Dimension.Force,
        Where = (in FootLoad foot) => foot.Where,
        Rule = (in FootLoad _) => Source.Assumed("base: the bars that pass through a plate share its leg's uplift evenly"),
        Run = (Working? w, in FootLoad foot) =>
        {
            double U = w.Given("U", foot.Uplift, Dimension.Force, "uplift of the leg"), n = w.Given("n", foot.Bars.Count, Dimension.Number, "bars through its plate");
            double T = n == 0 ? U : w.Let("T", U / n, Dimension.Force);
            BaseDesign design = foot.BaseDesign;
            return (T, n == 0 ? 0 : AnchorChecks.TensionResistance(w, foot.Bars.MinBy(bar => AnchorChecks.TensionResistance(null, bar, design))!, design));
        },
    };

    public void Add()
    {
        FootLoad[] feet = [.. Feet()];
        if (feet.Length == 0)
            return;
        int first = lists.Checks.Count;
        lists.Run(WeldEntry, feet);
        lists.Run(BearingEntry, feet);
        if (model.Segments[0].Segment is LatticeSegment)
        {
            lists.Run(PlateUplift.OfFeet, feet.SelectMany(Pulls));
            lists.Run(AnchorEntry, feet);
            lists.Assume([atOneTime], first);
        }
    }

    /// <summary>The feet that can be told apart: legs each on a plate of its own, or a mast on one plate.</summary>
    public IEnumerable<FootLoad> Feet()
    {
        if (model.Statue.HoldDown is not { } holdDown || !holdDown.Plates.Any())
            yield break;
        BaseBlock? bed = BaseBlock.Under(model.Statue);
        double RatioOf(BasePlate plate) => bed is null ? 1 : PlateBearing.SpreadRatio(plate, holdDown.Plates, bed.Section, bed.Height);
        SegmentModel segment = model.Segments[0];
        double k = MemberSheet.Amplification(demands);
        BodyModel trunk = model.Bodies[0];
        if (segment.Segment is MemberSegment { Section: var section, Material: var metal, Roll: var roll } && holdDown.Plates is [{ } only])
        {
            BarDesign rules = MemberSheet.DesignFor(metal, criteria);
            double c = Math.Cos(roll.Radians), s = Math.Sin(roll.Radians);
            foreach (EndForces ends in demands.EndsOf(0))
            {
                SectionForce f = ends.Bottom;
                double M_x = f.MomentX.NewtonMeters, M_y = f.MomentY.NewtonMeters;
                bool round = section.OutlineDiameter is not null;
                yield return new FootLoad(
                    "mast", section, metal, only, holdDown.Bars, Math.Abs(f.Axial.Newtons), Math.Max(0, f.Axial.Newtons), double.Hypot(f.ShearX.Newtons, f.ShearY.Newtons),
                    k * (round ? double.Hypot(M_x, M_y) : Math.Abs(c * M_y - s * M_x)), round ? 0 : k * Math.Abs(c * M_x + s * M_y), Math.Abs(f.Torsion.NewtonMeters), rules, criteria.BaseInUse)
                {
                    Bed = bed,
                    SpreadRatio = RatioOf(only),
                    Origin = DemandOrigin.OfCut(ends, 0, atTop: false),
                };
            }
        }
        if (segment.Segment is not LatticeSegment lattice)
            yield break;
        Vector3D[] legs = trunk.Tower.Levels[0].Legs;
        Vector3D center = trunk.Tower.Levels[0].Center;
        var most = new (double Pull, double Size, double Strong, double Weak, double V)[segment.Members.Count];
        Array.Fill(most, (double.NegativeInfinity, 0, 0, 0, 0));
        demands.Members(0, (int i, in MemberForces f, DemandState _) => most[i] = (
            Math.Max(most[i].Pull, f.N), Math.Max(most[i].Size, Math.Abs(f.N)), Math.Max(most[i].Strong, Math.Abs(f.StrongStart)), Math.Max(most[i].Weak, Math.Abs(f.WeakStart)), Math.Max(most[i].V, f.V)));
        BarDesign design = MemberSheet.DesignFor(lattice.Material, criteria);
        for (int leg = 0; leg < legs.Length; leg++)
        {
            Vector3D at = legs[leg] - center;
            BasePlate? plate = holdDown.Plates.FirstOrDefault(p => Math.Abs(p.X.Meters - at.X) <= 0.5 * p.WidthX.Meters && Math.Abs(p.Y.Meters - at.Y) <= 0.5 * p.WidthY.Meters);
            bool shared = plate is not null && legs.Where((_, other) => other != leg).Any(o => Math.Abs(plate.X.Meters - (o - center).X) <= 0.5 * plate.WidthX.Meters && Math.Abs(plate.Y.Meters - (o - center).Y) <= 0.5 * plate.WidthY.Meters);
            if (plate is null || shared)
                continue;
            (double axial, double uplift, double shear, double strong, double weak) = (0, 0, 0, 0, 0);
            var shares = new List<(string, double[])>();
            for (int i = 0; i < most.Length; i++)
            {
                LatticeMember member = segment.Members[i];
                if ((member.From - legs[leg]).Length > 1e-6 && (member.To - legs[leg]).Length > 1e-6)
                    continue;
                Vector3D d = (member.To - member.From).Normalized();
                bool isLeg = member.Role == LatticeRole.Leg;
                axial += most[i].Size * Math.Abs(d.Z);
                // A member that is always pressed holds the foot down by what it is pressed with at the least.
                uplift += most[i].Pull * Math.Abs(d.Z);
                shear += most[i].Size * double.Hypot(d.X, d.Y) + (isLeg ? most[i].V : 0);
                (strong, weak) = isLeg ? (most[i].Strong, most[i].Weak) : (strong, weak);
                shares.Add((member.Label, [k * most[i].Size * Math.Abs(d.Z), k * (most[i].Size * double.Hypot(d.X, d.Y) + (isLeg ? most[i].V : 0)), k * most[i].Pull * Math.Abs(d.Z)]));
            }
            yield return new FootLoad(
                Invariant($"leg {leg + 1}"), lattice.Legs, lattice.Material, plate, PlateUplift.BarsOf(plate, holdDown), k * axial, k * Math.Max(0, uplift), k * shear, k * strong, k * weak, 0, design, criteria.BaseInUse)
            {
                Bed = bed,
                SpreadRatio = RatioOf(plate),
                Origin = new DemandOrigin(everyMember, foot[..(uplift > 0 ? 3 : 2)], _ => [], uplift > 0 ? [k * axial, k * shear, k * uplift] : [k * axial, k * shear]) { Besides = [.. shares.Select(share => (share.Item1, share.Item2[..(uplift > 0 ? 3 : 2)]))] },
            };
        }
    }

    /// <summary>What the uplift of a leg pulls up its plate with, bar by bar.</summary>
    private static IEnumerable<PlatePull> Pulls(FootLoad foot) => foot.Bars.Select(bar => new PlatePull(
        foot.Where, foot.Plate, bar, foot.Bars, foot.Section.OutlineDiameter is not null, foot.Uplift, foot.Bars.Count, foot.BaseDesign)
    { Origin = foot.Origin });

    /// <summary>
    /// What the most pressed wall of the section puts on the bed, N/m, and what the bed bears under the strip that the plate spreads it to:
    /// a thin plate does not fill what is between the walls.
    /// </summary>
    private static (double Demand, double Capacity) Bearing(Working? w, in FootLoad foot)
    {
        double t_w = w.Given("t_w", ConnectionChecks.Thickness(foot.Section), Dimension.SmallLength, "wall of the section");
        SectionProperties p = foot.Section.Properties;
        double A = w.Given("A", p.A, Dimension.SmallArea), W_y = w.Given("W_y", p.Wy, Dimension.SectionModulus), W_z = w.Given("W_z", p.Wz, Dimension.SectionModulus);
        double N = w.Given("N", foot.Axial, Dimension.Force, "axial force"), M_y = w.Given("M_y", foot.Strong, Dimension.Moment, "strong moment"), M_z = w.Given("M_z", foot.Weak, Dimension.Moment, "weak moment");
        double q = w.Let("q", (N / A + M_y / W_y + M_z / W_z) * t_w, Dimension.LineLoad, meaning: "along the most pressed wall");
        double f = w.Given("f", PlateBearing.Strength(w, foot.Bed!.Material, foot.SpreadRatio, foot.BaseDesign), Dimension.Stress, "strength of the bed");
        double F_y = foot.Plate.Metal.YieldStrength.Pascals, t = foot.Plate.Thickness.Meters;
        double c = foot.BaseDesign.IsAmerican
            ? Cantilever(w, t, F_y, f)
            : PlateBearing.Spread(w, t, F_y, f, foot.BaseDesign.GammaM0);
        double outside = w.Given("outside", Math.Min(foot.Plate.Overhang.X, foot.Plate.Overhang.Y), Dimension.SmallLength, "plate beyond what stands on it");
        bool isHollow = foot.Section is Tube or RectangularTube;
        double inside = w.Given("inside", isHollow ? Math.Max(0, 0.5 * foot.Section.Envelope.Depth - t_w) : c, Dimension.SmallLength, isHollow ? "half of what is between the walls" : "plate on the wall's other side");
        double b = w.Let("b", t_w + Math.Min(c, inside) + Math.Min(c, outside), Dimension.SmallLength, BearingEntry.Rule(foot), "width that bears");
        return (q, w.Let("q_R", f * b, Dimension.LineLoad));
    }

    private static double Cantilever(Working? w, double t, double F_y, double f)
    {
        w.Given(t, Dimension.SmallLength, "thickness");
        w.Given(F_y, Dimension.Stress, "yield strength of the plate");
        return w.Let("c", t * Math.Sqrt(0.9 * F_y / (2 * f)), Dimension.SmallLength, cantilever);
    }

    private static (double Demand, double Capacity) Weld(Working? w, in FootLoad foot)
    {
        double t = w.Given("t", ConnectionChecks.Thickness(foot.Section), Dimension.SmallLength, "wall of the section"), a = w.Given("a", foot.Plate.LegWeld!.Value.Meters, Dimension.SmallLength, "throat");
        double k = w.Given("k", foot.Section is AngleBar or FlatBar ? 2 : 1, Dimension.Number, "faces of the wall that are welded", line);
        SectionProperties p = foot.Section.Properties;
        double A = w.Given("A", p.A, Dimension.SmallArea), W_y = w.Given("W_y", p.Wy, Dimension.SectionModulus), W_z = w.Given("W_z", p.Wz, Dimension.SectionModulus);
        double N = w.Given("N", foot.Axial, Dimension.Force, "axial force"), V = w.Given("V", foot.Shear, Dimension.Force, "shear"), T = w.Given("T", foot.Torsion, Dimension.Moment, "torsion");
        double M_y = w.Given("M_y", foot.Strong, Dimension.Moment, "strong moment"), M_z = w.Given("M_z", foot.Weak, Dimension.Moment, "weak moment");
        (double A_v, double W_t) = MemberSection.ShearAndTorsion(foot.Section);
        w.Given(A_v, Dimension.SmallArea, "shear area");
        w.Given(W_t, Dimension.SectionModulus, "torsion modulus");
        double sigma = w.Let("sigma", (N / A + M_y / W_y + M_z / W_z) * t / (k * a), Dimension.Stress, line, "along the leg, on the throats");
        double tau = w.Let("tau", (V / A_v + T / W_t) * t / (k * a), Dimension.Stress, line, "across it");
        double f_r = w.Let("f_r", Math.Sqrt(sigma * sigma + tau * tau), Dimension.Stress, FilletThroat.Rule(foot.Design), "resultant");
        double ultimate = Math.Min(foot.Metal.For(t).UltimateStrength.Pascals, foot.Plate.Metal.UltimateStrength.Pascals);
        return (f_r, FilletThroat.Strength(w, ultimate, "ultimate strength of the weaker part", foot.Design));
    }
}
