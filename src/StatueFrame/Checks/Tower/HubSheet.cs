using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// The arms of hubs: a stiff middle hands the six forces of the tube that stands on a lattice, and of limbs that start at the level, to
/// hinges at the legs. Arms that are all alike share them by how far each leg moves when the middle does: F_z/n and the moments over the
/// sums of squares up and down, F/n and M_z r/Σr² in plan, as a group of fasteners does.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class HubSheet(StatueModel model, Criteria criteria, SituationDemands demands, FootEnvelope feet, SheetWriter lists)
{
    private static readonly Assumption sharing = new("arms of hubs", "alike, fixed at a stiff middle and hinged at the legs; the most of every force that they take, all at one time", Source.Assumed("tower"));

    /// <summary>The cantilever with all it carries.</summary>
    internal static readonly MadeEntry<BracketLoad> BendingEntry = new(
        "hubs.bending", "member under axial force, bending, shear and torsion", Nature.Strength, "every arm of a hub", "section and stability together", "1", "no strength situation was given",
        (load, situation) => MemberChecks.Bending(load.Member(situation) with { Family = "hubs" }, load.Design));

    internal static readonly FormulaEntry<BracketLoad> WeldEntry =
        BracketChecks.WeldsOf("hubs.welds", "fillet welds at the ends of an arm of a hub", "every arm of a hub", $"{nameof(Hub)}.{nameof(Hub.Throat)}");

    /// <summary>What a hub may turn: so little that the tip of what it carries moves by a fifth more at most.</summary>
    internal static readonly FormulaEntry<Turn> StiffnessEntry = new(
        "hubs.stiffness", "turn of a hub against what it carries", Nature.Range, "every hub, about every axis", "movement of the tip by the turn of the hub over that by its own bending, under a moment", "1/4: with it the hub adds a fifth to the whole", "no situation was given")
    {
        Where = (in Turn turn) => turn.Where,
        Rule = (in Turn _) => new Source("ENV 1993-1-1:1992", "5.2.5.3 (2), rigid is what takes 80 % of the movement; from memory"),
        Lacks = (in Turn turn) => turn.Member is null ? "what stands on the hub is not one member, and its stiffness has to be compared by hand" : null,
        Run = (Working? w, in Turn turn) =>
        {
            double k = w.Given("k", turn.Stiffness, Dimension.RotationalStiffness, "of the hub against a turn: Σ 3EI x²/L³ of its arms"), l = w.Given("l", turn.Length, Dimension.Length, "from the hub to the tip");
            double E = w.Given("E", turn.Member!.Value.E, Dimension.Stress, "Young's modulus of what it carries"), I = w.Given("I", turn.Member.Value.I, Dimension.AreaMomentOfInertia, "its second moment of area at the hub");
            return (w.Let("r", 2 * E * I / (k * l), Dimension.Number), 0.25);
        },
    };

    /// <summary>A hub that turns about an axis.</summary>
    /// <param name="Where">The level, with what it carries and the axis.</param>
    /// <param name="Stiffness">Moment a radian, N·m.</param>
    /// <param name="Length">Length of what it carries, m.</param>
    /// <param name="Member">Its Young's modulus, Pa, and greater second moment of area at the hub, m⁴; null when it is not one member.</param>
    internal readonly record struct Turn(string Where, double Stiffness, double Length, (double E, double I)? Member);

    /// <summary>What stands on a hub: a tube of the same tower, or a limb.</summary>
    /// <param name="Body">The body it belongs to.</param>
    /// <param name="Segment">Its first segment at the hub.</param>
    /// <param name="Number">Number of that segment among all of the statue.</param>
    /// <param name="AtTop">Whether it meets the hub with its top.</param>
    /// <param name="IsLimb">Whether it is a limb.</param>
    private readonly record struct Carried(BodyModel Body, SegmentModel Segment, int Number, bool AtTop, bool IsLimb);

    public void Add()
    {
        foreach ((BodyModel body, int level, Hub hub) in Hubs(model))
        {
            int firstCheck = lists.Checks.Count;
            BracketLoad[] loads = Arms(body, level, hub);
            lists.Run(BendingEntry, loads);
            lists.Run(WeldEntry, loads);
            lists.Assume([sharing, .. MemberSheet.FactorsOf(loads[0].Design, criteria)], firstCheck);
        }
    }

    /// <summary>The arms of all hubs with what they carry.</summary>
    public IEnumerable<(string Level, BracketLoad Load)> Arms() =>
        Hubs(model).SelectMany(hub => Arms(hub.Body, hub.Level, hub.Hub).Select(load => (hub.Body.Prefix + hub.Body.Tower.Levels[hub.Level].Name, load)));

    /// <summary>What depends on the description alone, once a statue.</summary>
    public static void AddAtRest(StatueModel model, SheetWriter lists)
    {
        foreach ((BodyModel body, int level, Hub hub) in Hubs(model))
            lists.Run(StiffnessEntry, On(model, body, level).SelectMany(carried => Turns(body, level, hub, carried)));
    }

    private static IEnumerable<(BodyModel Body, int Level, Hub Hub)> Hubs(StatueModel model) =>
        model.Bodies.SelectMany(body => Enumerable.Range(0, body.Levels.Length).Where(level => body.Tower.Levels[level].Hub is not null).Select(level => (body, level, body.Tower.Levels[level].Hub!)));

    private static IEnumerable<Carried> On(StatueModel model, BodyModel body, int level)
    {
        string name = body.Prefix + body.Tower.Levels[level].Name;
        int first = 0;
        foreach (BodyModel other in model.Bodies)
        {
            if (other == body)
            {
                if (level < body.Segments.Length && body.Segments[level].Segment is not LatticeSegment)
                    yield return new(body, body.Segments[level], first + level, AtTop: false, IsLimb: false);
                if (level > 0 && body.Segments[level - 1].Segment is not LatticeSegment)
                    yield return new(body, body.Segments[level - 1], first + level - 1, AtTop: true, IsLimb: false);
            }
            else if (model.Statue.Limbs.Any(limb => limb.Name == other.Name && limb.From == name))
            {
                yield return new(other, other.Segments[0], first, AtTop: false, IsLimb: true);
            }
            first += other.Segments.Length;
        }
    }

    private BracketLoad[] Arms(BodyModel body, int level, Hub hub)
    {
        string name = body.Prefix + body.Tower.Levels[level].Name;
        Arm[] arms = Arm.Of(body.Tower.Levels[level], Radius(On(model, body, level)));
        double amplification = MemberSheet.Amplification(demands);
        var most = new Vector3D[arms.Length];
        foreach (Carried carried in On(model, body, level))
        {
            var own = new Vector3D[arms.Length];
            foreach (Vector3D[] shares in SharesOf(arms, body, level, carried, demands))
            {
                for (int i = 0; i < own.Length; i++)
                    own[i] = Most(own[i], arms[i].Split(shares[i]));
            }
            for (int i = 0; i < most.Length; i++)
                most[i] += amplification * own[i];
        }
        if (body.Tower.Levels[level].Frame is not null)
        {
            double[] inPlan = InPlan(model, body, level, First(body), LevelSide.Of(body, level, feet), demands, amplification);
            for (int i = 0; i < most.Length; i++)
                most[i] += new Vector3D(inPlan[inPlan.Length - most.Length + i], 0, 0);
        }
        BarDesign design = MemberSheet.DesignFor(hub.Material, criteria);
        Bracket arm = new() { Section = hub.Arms, Material = hub.Material, TowerFixity = EndFixity.Rigid, Throat = hub.Throat };
        return [.. arms.Select((a, i) =>
        {
            // Pressing is worse than pulling; what is up and down bends about the strong axis.
            (double N, double across, double up) = (most[i].X, most[i].Y, most[i].Z);
            return new BracketLoad(
                PlacedBracket.Between(a.Root, a.Leg, arm), Invariant($"{name}, arm {i + 1}"), "the most of every force, all at one time", design, hub.Material, -N, double.Hypot(up, across), 0, (0, 0), (up * a.Length, across * a.Length));
        })];
    }

    /// <summary>The most axial force of every member in the plan of a level, N, those of its frame first, then the arms of its hub.</summary>
    internal static double[] InPlan(StatueModel model, BodyModel body, int level, int first, LevelSide[] sides, SituationDemands demands, double amplification)
    {
        TowerLevel at = body.Tower.Levels[level];
        IEnumerable<Carried> carried = at.Hub is null ? [] : On(model, body, level);
        return new LevelPlane(at, sides).Most(body, level, first, carried.Select(c => SharesOf(Arm.Of(at, 0), body, level, c, demands)), demands, amplification);
    }

    /// <summary>What a hub puts on each leg, N, in the axes of the tower, in every state of what it carries.</summary>
    private static IEnumerable<Vector3D[]> SharesOf(Arm[] arms, BodyModel body, int level, Carried carried, SituationDemands demands)
    {
        Vector3D center = body.Axes.ToGlobal(body.Tower.Levels[level].Center);
        Vector3D at = carried.Body.Axes.ToGlobal(carried.Body.Tower.Levels[carried.AtTop ? level : carried.IsLimb ? 0 : level].Center);
        foreach (EndForces ends in demands.EndsOf(carried.Number))
        {
            SectionForce cut = carried.AtTop ? ends.Top : ends.Bottom;
            Vector3D force = carried.Body.Axes.Axes.ToGlobal(cut.Forces), moment = carried.Body.Axes.Axes.ToGlobal(cut.Moments) + (at - center).Cross(force);
            yield return Share(arms, body.Axes.Axes.ToLocal(force), body.Axes.Axes.ToLocal(moment));
        }
    }

    private int First(BodyModel body) => model.Bodies.TakeWhile(other => other != body).Sum(other => other.Segments.Length);

    private static Vector3D Most(Vector3D a, Vector3D b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));

    /// <summary>The stiffness against a turn about both axes in plan, and of a limb about the upright too.</summary>
    private static IEnumerable<Turn> Turns(BodyModel body, int level, Hub hub, Carried carried)
    {
        Arm[] arms = Arm.Of(body.Tower.Levels[level], Radius([carried]));
        SectionProperties p = hub.Arms.Properties;
        double E = hub.Material.YoungsModulus.Pascals, upright = hub.Arms is AngleBar ? p.Iz : p.Iy, across = p.Iz;
        (double, double)? of = carried.Segment.Segment is MemberSegment member ? (member.Material.YoungsModulus.Pascals, member.SectionAt(carried.AtTop ? 1 : 0).Properties.Iy) : null;
        double length = Span(carried, level);
        string name = body.Prefix + body.Tower.Levels[level].Name, what = carried.IsLimb ? carried.Body.Name : carried.AtTop ? "the tube below" : "the tube above";
        yield return new(Invariant($"{name}, {what}, about x"), arms.Sum(arm => Of(arm, upright, arm.At.Y)), length, of);
        yield return new(Invariant($"{name}, {what}, about y"), arms.Sum(arm => Of(arm, upright, arm.At.X)), length, of);
        if (carried.IsLimb)
            yield return new(Invariant($"{name}, {what}, in plan"), arms.Sum(arm => Of(arm, across, arm.At.Length)), length, of);

        double Of(in Arm arm, double I, double lever) => 3 * E * I / Math.Pow(arm.Length, 3) * lever * lever;
    }

    private static double Span(Carried carried, int level)
    {
        ValueList<TowerLevel> levels = carried.Body.Tower.Levels;
        return carried.IsLimb ? (levels[^1].Center - levels[0].Center).Length
            : carried.AtTop ? (levels[level].Center - levels[0].Center).Length : (levels[^1].Center - levels[level].Center).Length;
    }

    /// <summary>How far the stiff middle reaches: to the wall of a tube that stands on it; a limb has none.</summary>
    private static double Radius(IEnumerable<Carried> carried) => carried
        .Select(c => !c.IsLimb && c.Segment.Segment is MemberSegment member ? (member.SectionAt(c.AtTop ? 1 : 0).OutlineDiameter ?? 0) / 2 : 0).DefaultIfEmpty().Min();

    /// <summary>What the hub puts on each leg, N, in the axes of the tower, for what acts on it at the level's center.</summary>
    internal static Vector3D[] Share(Arm[] arms, Vector3D force, Vector3D moment)
    {
        int n = arms.Length;
        Vector3D middle = Vector3D.Zero;
        foreach (Arm arm in arms)
            middle += 1.0 / n * arm.At;
        double xx = 0, yy = 0, xy = 0;
        foreach (Arm arm in arms)
        {
            Vector3D r = arm.At - middle;
            (xx, yy, xy) = (xx + r.X * r.X, yy + r.Y * r.Y, xy + r.X * r.Y);
        }
        // About the middle of the legs, which the level's own center need not be: up and down b x + c y with Σ R y = M_x, −Σ R x = M_y.
        Vector3D m = moment - middle.Cross(force);
        double det = xx * yy - xy * xy, b = (-m.Y * yy - m.X * xy) / det, c = (m.X * xx + m.Y * xy) / det, turn = m.Z / (xx + yy);
        return Array.ConvertAll(arms, arm =>
        {
            Vector3D r = arm.At - middle;
            return new Vector3D(force.X / n - turn * r.Y, force.Y / n + turn * r.X, force.Z / n + b * r.X + c * r.Y);
        });
    }

    /// <summary>An arm from the middle to a leg, in the axes of its tower.</summary>
    /// <param name="At">The leg from the level's center, m.</param>
    /// <param name="Root">Its end at the stiff middle, m.</param>
    /// <param name="Leg">Its end at the leg, m.</param>
    internal readonly record struct Arm(Vector3D At, Vector3D Root, Vector3D Leg)
    {
        public double Length => (Leg - Root).Length;

        /// <summary>The sizes of a force along the arm, across it in plan, and up and down.</summary>
        public Vector3D Split(Vector3D force)
        {
            Vector3D along = At.Normalized();
            return new(Math.Abs(force.X * along.X + force.Y * along.Y), Math.Abs(force.Y * along.X - force.X * along.Y), Math.Abs(force.Z));
        }

        /// <summary>The arms of a level; a middle that reaches beyond a leg leaves a tenth of the distance.</summary>
        public static Arm[] Of(TowerLevel level, double radius) => Array.ConvertAll(level.Legs, leg =>
        {
            Vector3D at = leg - level.Center;
            return new Arm(at, level.Center + Math.Min(radius / at.Length, 0.9) * at, leg);
        });
    }
}
