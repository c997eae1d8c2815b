using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// The frames in the levels of lattices: horizontals as beams from leg to leg under their own weight, all that stands on them and the
/// axial forces of the plan, their welds, the members across the plan with their joints; and whether they give little against the
/// standoffs, as the rigid plan of the analysis takes it.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class LevelSheet(StatueModel model, Criteria criteria, SituationDemands demands, FootEnvelope feet, SheetWriter lists)
{
    private static readonly Assumption atOneTime = new("what stands on horizontals", "the most of every standoff in the situation, all at one time; beams on two legs", Source.Assumed("tower"));
    private static readonly Assumption evenly = new("forces in the plan of a level", "what members above, members below, the hub and standoffs push is answered evenly by all legs, and the worst of each is added; pinned joints", Source.Assumed("tower"));
    private static readonly Assumption inBalance = new("braces that meet at the middle of a horizontal", "in balance up and down", Source.Assumed("tower"));

    private static readonly Assumption letGo = new("horizontals and arms on walls of legs", "put only their axial force there: the wall yields before it holds their ends", Source.Assumed("tower"));
    private static readonly Assumption amid = new("feet on flanges of angles", "amid the flange", Source.Assumed("tower"));

    /// <summary>The strength of horizontals.</summary>
    internal static readonly MadeEntry<MemberLoad> BendingEntry = new(
        "levels.bending", "member under axial force, bending, shear and torsion", Nature.Strength, "every horizontal of a described level frame", "section and stability together under the most of all standoffs", "1",
        "no strength situation was given", (load, situation) => MemberChecks.Bending(load.In(situation, "levels"), load.Design));

    /// <summary>The welds at both ends of horizontals, where nothing turns.</summary>
    internal static readonly FormulaEntry<BracketLoad> WeldEntry =
        BracketChecks.WeldsOf("levels.welds", "fillet welds at the ends of a horizontal", "every horizontal of a described level frame", $"{nameof(LevelFrame)}.{nameof(LevelFrame.Throat)}");

    /// <summary>The entries of members across the plan.</summary>
    internal static readonly MemberEntries BracingEntries = MemberEntries.Levels;

    /// <summary>What a level may give: so little that the standoffs on it move by a fifth at most.</summary>
    internal static readonly FormulaEntry<Give> StiffnessEntry = new(
        "levels.stiffness", "give of a level against its standoffs", Nature.Range, "every side of a described level frame", "what its horizontal bends over what its standoffs give", "1/4: with it they take a fifth of the movement",
        "no situation was given")
    {
        Where = (in Give give) => give.Where,
        Rule = (in Give _) => new Source("ENV 1993-1-1:1992", "5.2.5.3 (2), rigid is what takes 80 % of the movement; from memory"),
        Run = (Working? w, in Give give) =>
        {
            double L = w.Given("L", give.Length, Dimension.Length, "from leg to leg"), E = w.Given("E", give.E, Dimension.Stress, "Young's modulus"), I = w.Given("I", give.I, Dimension.AreaMomentOfInertia, "second moment of area of the horizontal");
            w.Given("n", give.Count, Dimension.Number, "standoffs on it");
            double k = w.Given("k", give.Stiffness, Dimension.Stiffness, "of them all");
            double c = w.Given("c", give.Shape, Dimension.Number, "their places: mean movement of the feet, each pushed with its part of k, by k L³/EI");
            return (w.Let("r", c * k * Math.Pow(L, 3) / (E * I), Dimension.Number), 0.25);
        },
    };

    /// <summary>A horizontal with the stiffness of what stands on it.</summary>
    /// <param name="Where">Its name.</param>
    /// <param name="Length">Its length, m.</param>
    /// <param name="E">Young's modulus, Pa.</param>
    /// <param name="I">Its second moment of area, m⁴.</param>
    /// <param name="Count">How many stand on it.</param>
    /// <param name="Stiffness">Their stiffness, bands held, N/m.</param>
    /// <param name="Shape">Mean movement of the feet over k L³/EI.</param>
    internal readonly record struct Give(string Where, double Length, double E, double I, int Count, double Stiffness, double Shape);

    /// <summary>What depends on the description alone, once a statue: how much the levels give.</summary>
    public static void AddAtRest(StatueModel model, SheetWriter lists)
    {
        var places = new FootEnvelope(model);
        foreach (BodyModel body in model.Bodies)
        {
            for (int level = 0; level < body.Levels.Length; level++)
            {
                string name = body.Prefix + body.Tower.Levels[level].Name;
                if (body.Tower.Levels[level].Frame is { } frame)
                    lists.Run(StiffnessEntry, LevelSide.Of(body, level, places).Where(side => side.Feet.Exists(foot => foot.Bar is not null)).SelectMany(side => Gives(body, frame, name, side)));
            }
        }
    }

    private static IEnumerable<Give> Gives(BodyModel body, LevelFrame frame, string name, LevelSide side)
    {
        SectionProperties p = frame.Horizontals.Properties;
        double E = frame.Material.YoungsModulus.Pascals, strong = frame.Horizontals is AngleBar ? p.Iz : p.Iy;
        yield return Of("across", body.Axes.Axes.ToGlobal(side.Across), p.Iz);
        yield return Of("upright", body.Axes.Axes.Z, strong);

        Give Of(string way, Vector3D direction, double I)
        {
            double L = side.Length;
            double[] k = [.. side.Feet.Select(foot => foot.Bar is { } bar ? StiffnessAlong(bar, direction) : 0)];
            double sum = k.Sum(), shape = 0;
            for (int i = 0; i < k.Length; i++)
            {
                for (int j = 0; j < k.Length; j++)
                    shape += k[i] * k[j] * Influence(side.Feet[i].At / L, side.Feet[j].At / L);
            }
            return new Give(Invariant($"{name}, side {side.Leg + 1}, {way}"), L, E, I, k.Length, sum, sum > 0 ? shape / (sum * sum) : 0);
        }
    }

    /// <summary>A level's frame with all that comes into it.</summary>
    /// <param name="Body">The tower or limb.</param>
    /// <param name="Name">Name of the level.</param>
    /// <param name="Level">The level.</param>
    /// <param name="Sides">Its sides with what stands on them.</param>
    /// <param name="InPlan">The most axial force of each of its members, N, as of <see cref="TowerLevel.Members"/>.</param>
    /// <param name="Design">Rules for its metal.</param>
    private readonly record struct LoadedLevel(BodyModel Body, string Name, TowerLevel Level, LevelSide[] Sides, double[] InPlan, BarDesign Design)
    {
        public LevelFrame Frame => Level.Frame!;
    }

    public void Add()
    {
        foreach (LoadedLevel level in Levels())
        {
            int firstCheck = lists.Checks.Count;
            lists.Run(BendingEntry, level.Sides.SelectMany(side => OnSide(level, side)));
            lists.Run(WeldEntry, level.Sides.Select(side => OnWeld(level, side)));
            AddPlanBracing(level);
            bool meetsInMiddle = level.Body.Segments.Any(s => s.Segment is LatticeSegment { Bracing: Bracing.KBrace });
            lists.Assume([atOneTime, evenly, .. meetsInMiddle ? [inBalance] : Array.Empty<Assumption>(), .. MemberSheet.FactorsOf(level.Design, criteria)], firstCheck);
        }
    }

    /// <summary>
    /// What the legs have on their walls: at every level the axial force of the horizontal, or of the arm of a hub, that asks most of
    /// the leg it is welded to. Horizontals are beams on two legs, in balance without moments at their ends; welds bear what a leg that
    /// holds fast would put there, so that the wall may yield and let them go.
    /// </summary>
    public IEnumerable<OnFace> Faces()
    {
        Dictionary<string, BracketLoad[]> arms = new HubSheet(model, criteria, demands, feet, lists).Arms().GroupBy(arm => arm.Level).ToDictionary(arm => arm.Key, arm => arm.Select(at => at.Load).ToArray());
        foreach (LoadedLevel level in Levels())
        {
            BracketChord chord = BracketChord.OfLegs(level.Body, Array.IndexOf([.. level.Body.Tower.Levels], level.Level));
            var worst = new Worst<FaceLoad>(FaceChecks.UnderHorizontals);
            foreach (BracketLoad load in level.Sides.Select(side => OnWeld(level, side)).Concat(arms.GetValueOrDefault(level.Name) ?? []))
                worst.Look(FaceLoad.Of(load with { Foot = (0, 0) }, chord));
            if (worst.TryGet(out FaceLoad onLeg))
                yield return new OnFace(level.Body, level.Name, level.Name, FaceChecks.UnderHorizontals, onLeg, chord.Section is AngleBar ? [letGo, amid] : [letGo]);
        }
    }

    /// <summary>The ends of all horizontals, level by level.</summary>
    public IEnumerable<(string Level, BracketLoad Load)> Welds() => Levels().SelectMany(level => level.Sides.Select(side => (level.Name, OnWeld(level, side))));

    /// <summary>The members across the plans, pulled, level by level.</summary>
    public IEnumerable<(string Level, MemberLoad Load)> PlanBracing() => Levels().SelectMany(level => Across(level).Select(load => (level.Name, load)));

    private IEnumerable<LoadedLevel> Levels()
    {
        double amplification = MemberSheet.Amplification(demands);
        int number = 0;
        foreach (BodyModel body in model.Bodies)
        {
            for (int level = 0; level < body.Levels.Length; level++)
            {
                TowerLevel at = body.Tower.Levels[level];
                if (at.Frame is null)
                    continue;
                LevelSide[] sides = LevelSide.Of(body, level, feet);
                yield return new(body, body.Prefix + at.Name, at, sides, HubSheet.InPlan(model, body, level, number, sides, demands, amplification), MemberSheet.DesignFor(at.Frame.Material, criteria));
            }
            number += body.Segments.Length;
        }
    }

    private double WeightOf(in LoadedLevel level, LevelSide side) =>
        SelfWeight.Gravity * demands.Response.Cases.Max(loadCase => loadCase.WeightFactor) * level.Frame.MassOf(side.From, side.To, level.Frame.Horizontals);

    /// <summary>A horizontal as a beam on two legs, pressed and pulled.</summary>
    private IEnumerable<MemberLoad> OnSide(LoadedLevel level, LevelSide side)
    {
        Section section = level.Frame.Horizontals;
        double L = side.Length, weight = WeightOf(level, side), N = level.InPlan[side.Leg];
        (double up, double across, double V_up, double V_across, double T) = (weight * L / 8, 0, weight / 2, 0, 0);
        foreach ((_, double a, Vector3D F, Vector3D M) in side.Feet)
        {
            double b = L - a, lever = Math.Max(a, b) / L;
            double F_across = LevelSide.Most(F, side.Across), M_across = LevelSide.Most(M, side.Across);
            up += F.Z * a * b / L + M_across;
            across += F_across * a * b / L + M.Z;
            V_up += F.Z * lever + M_across / L;
            V_across += F_across * lever + M.Z / L;
            T += LevelSide.Most(M, side.Along) * lever;
        }
        // An angle's principal axes lie aslant: both take all of the bending.
        bool isAslant = section is AngleBar || section.OutlineDiameter is not null;
        (double strong, double weak) = isAslant ? (double.Hypot(up, across), section is AngleBar ? double.Hypot(up, across) : 0) : (up, across);
        foreach (double sign in new double[] { -1, 1 })
        {
            yield return new MemberLoad(new LoadedMember
            {
                Section = section,
                Material = level.Frame.Material,
                Length = Length.FromMeters(L),
                Axial = Force.FromNewtons(sign * N),
                StrongMoment = Torque.FromNewtonMeters(strong),
                WeakMoment = Torque.FromNewtonMeters(weak),
                Shear = Force.FromNewtons(double.Hypot(V_up, V_across)),
                Torsion = Torque.FromNewtonMeters(T),
                Where = Invariant($"{level.Name}, side {side.Leg + 1}"),
            }, level.Design);
            if (N == 0)
                break;
        }
    }

    /// <summary>The worse end of a horizontal that its legs hold fast: no end of it takes more.</summary>
    private BracketLoad OnWeld(LoadedLevel level, LevelSide side)
    {
        double L = side.Length, weight = WeightOf(level, side), T = 0;
        (double up, double across, double V_up, double V_across) atFrom = (weight * L / 12, 0, weight / 2, 0), atTo = atFrom;
        foreach ((_, double a, Vector3D F, Vector3D M) in side.Feet)
        {
            Put(ref atFrom, a / L, 1 - a / L, F, M);
            Put(ref atTo, 1 - a / L, a / L, F, M);
            T += LevelSide.Most(M, side.Along) * Math.Max(a, L - a) / L;
        }
        (double up, double across, double V_up, double V_across) worst =
            (Math.Max(atFrom.up, atTo.up), Math.Max(atFrom.across, atTo.across), Math.Max(atFrom.V_up, atTo.V_up), Math.Max(atFrom.V_across, atTo.V_across));
        LevelFrame frame = level.Frame;
        return new BracketLoad(
            PlacedBracket.Between(side.From, side.To, new Bracket { Section = frame.Horizontals, Material = frame.Material, TowerFixity = EndFixity.Rigid, Throat = frame.Throat }),
            Invariant($"{level.Name}, side {side.Leg + 1}"), "the most of every force, all at one time", level.Design, frame.Material, level.InPlan[side.Leg], double.Hypot(worst.V_up, worst.V_across), T, (0, 0), (worst.up, worst.across));

        // Roark, 8th ed., Table 8.1, 1d and 3d: forces and moments on a beam with both ends fixed.
        void Put(ref (double up, double across, double V_up, double V_across) end, double near, double far, Vector3D F, Vector3D M)
        {
            double moment = L * near * far * far, turn = far * Math.Abs(2 * near - far), shear = far * far * (3 * near + far), pair = 6 * near * far / L;
            end.up += F.Z * moment + LevelSide.Most(M, side.Across) * turn;
            end.across += LevelSide.Most(F, side.Across) * moment + M.Z * turn;
            end.V_up += F.Z * shear + LevelSide.Most(M, side.Across) * pair;
            end.V_across += LevelSide.Most(F, side.Across) * shear + M.Z * pair;
        }
    }

    /// <summary>The members across the plan of a level, pulled.</summary>
    private static IEnumerable<MemberLoad> Across(LoadedLevel level)
    {
        if (level.Frame.PlanBracing is not { } section)
            yield break;
        LevelMember[] members = [.. level.Level.Members];
        int first = level.Sides.Length, last = members.Length - (level.Level.Hub is null ? 0 : level.Sides.Length);
        for (int i = first; i < last; i++)
        {
            yield return new MemberLoad(new LoadedMember
            {
                Section = section,
                Material = level.Frame.Material,
                Length = Length.FromMeters((members[i].To - members[i].From).Length),
                Axial = Force.FromNewtons(level.InPlan[i]),
                WeakFactor = AreJoined(level) ? LoadedMember.CrossedFactor(section) : 1,
                Ends = level.Frame.PlanBracingJoint?.Ends ?? MemberEnds.OneLeg,
                Connection = level.Frame.PlanBracingJoint,
                Where = Invariant($"{level.Name}, across {i - first + 1}"),
            }, level.Design);
        }
    }

    /// <summary>Two members across four legs are joined where they cross.</summary>
    private static bool AreJoined(in LoadedLevel level) => level.Sides.Length == 4;

    /// <summary>The members across the plan, under axial force as the braces of lattices are.</summary>
    private void AddPlanBracing(LoadedLevel level)
    {
        int firstCheck = lists.Checks.Count;
        MemberLoad[] pulled = [.. Across(level)], pressed = [.. pulled.Select(load => load with { Member = load.Member with { Axial = -load.Member.Axial } })];
        if (pulled.Length == 0)
            return;
        lists.Run(BracingEntries.Compression, pressed);
        lists.Run(BracingEntries.Tension, pulled);
        if (level.Frame.PlanBracingJoint is { } joint)
        {
            lists.Run(BracingEntries.Fasteners, pulled);
            lists.Run(BracingEntries.Distances, pulled.Take(1));
            lists.Run(BracingEntries.Block, pulled);
            PlateSheet.Add(lists, pressed.Concat(pulled), criteria);
            if (joint.Plate is null)
                lists.Missing(PlateSheet.Gussets.Tension, $"gussets are not described ({nameof(LevelFrame.PlanBracingJoint)}.{nameof(MemberConnection.Plate)})", [level.Name]);
        }
        if (AreJoined(level))
            lists.Assume([MemberSheet.Crossings], firstCheck);
    }

    /// <summary>The stiffness of a standoff with its bracket against a movement of its band along a direction, N/m.</summary>
    private static double StiffnessAlong(BarModel bar, Vector3D direction)
    {
        Span<double> k = stackalloc double[36];
        k.Clear();
        bar.Bar.AddTo(k);
        ReadOnlySpan<double> d = [direction.X, direction.Y, direction.Z];
        double sum = 0;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                sum += d[i] * k[6 * i + j] * d[j];
        }
        return Math.Max(0, sum);
    }

    /// <summary>Deflection of a beam on two supports at x under a unit force at a, both as parts of its length, over L³/EI. Roark, 8th ed., Table 8.1, 1e.</summary>
    internal static double Influence(double x, double a)
    {
        (double least, double most) = x <= a ? (x, a) : (a, x);
        double b = 1 - most;
        return b * least * (1 - b * b - least * least) / 6;
    }
}
