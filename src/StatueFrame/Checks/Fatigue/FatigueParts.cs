using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>
/// Writes the fatigue of the standoffs and of all that carries them into a sheet: bars, members of lattices at their fasteners, plan bracing, gussets, tubes
/// and their flanges, the ends of brackets, horizontals and hub arms, feet and anchor bars. Each cause is a demand as any other, through
/// the same walks over the parts; the range of a detail is the greatest nominal stress that the cause makes there.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FatigueParts
{
    private const string NoWind = "no service situation has wind";

    /// <summary>Share of a pull that a tightened bolt feels, and what is left of its pre-tension.</summary>
    private const double Share = 0.25, Left = 0.8;

    private static readonly Assumption tightened = new("tightened bolts and anchor bars in fatigue", "feel a quarter of what pulls them, and all that goes beyond four fifths of their pre-tension; edges of flanges pry", new Source("common practice", "VDI 2230 finds less than a quarter for joints that are clamped well; no source"));
    private static readonly Assumption nominal = new("fatigue by nominal stresses", "magnitudes added; details of tower, brackets and base by how parts are joined: clearance holes 50, fitted bolts 80 and 90, rivets 71, weld toes 71, weld roots 36, threads 50, fillets round tubes 40; vortices that shake nothing by 0.02 g left out", new Source("EN 1993-1-9:2005", "Tables 8.1 to 8.5, from memory"));

    internal static readonly CheckEntry
        Standoffs = Entry("bars.fatigue", "fatigue of a standoff", "every bar with a detail"),
        Members = Entry("fatigue.members", "fatigue of a member at its fasteners", "every lattice member and member across a plan"),
        Fasteners = Entry("fatigue.fasteners", "fatigue of fasteners in shear", "every described joint of a lattice member"),
        Gussets = Entry("fatigue.gussets", "fatigue of the weld of a gusset", "every gusset with a weld"),
        Tubes = Entry("fatigue.tubes", "fatigue of a tube at its joint", "both ends of every tube with a joint"),
        FlangeBolts = Entry("fatigue.flange-bolts", "fatigue of the bolts of a flange", "every flange"),
        Brackets = Entry("fatigue.brackets", "fatigue of the weld of a bracket", "every bracket with a weld"),
        Levels = Entry("fatigue.levels", "fatigue of the weld of a horizontal", "every horizontal with a weld"),
        Hubs = Entry("fatigue.hubs", "fatigue of the weld of an arm of a hub", "every arm with a weld"),
        Feet = Entry("fatigue.feet", "fatigue of the weld of a foot", "every foot with a weld"),
        Anchors = Entry("fatigue.anchors", "fatigue of the threads of anchor bars", "the bars of every foot");

    private readonly FatigueCauses causes;
    private readonly StatueModel model;
    private readonly Criteria criteria;
    private readonly SheetWriter lists;
    private readonly Dictionary<(CheckEntry Entry, string Where, DetailCategory Category), Detail> details = [];

    /// <summary>What is there and cannot be worked out, with why and where.</summary>
    private readonly HashSet<(CheckEntry Entry, string Reason, string Where)> lacking = [];

    private FatigueParts(FatigueCauses causes, Criteria criteria, SheetWriter lists) => (this.causes, model, this.criteria, this.lists) = (causes, causes.Model, criteria, lists);

    public static IEnumerable<CheckEntry> All => [Members, Fasteners, Gussets, Tubes, FlangeBolts, Brackets, Levels, Hubs, Feet, Anchors];

    private static CheckEntry Entry(string id, string title, string parts) =>
        new(id, title, Nature.Strength, parts, "damage of gusts, vortices and heat in the design life", "1", NoWind);

    /// <summary>Adds the lines, or why there are none.</summary>
    public static void Add(StatueModel model, FatigueCauses? causes, Criteria criteria, SheetWriter lists)
    {
        if (causes is null)
            lists.Checks.AddRange([.. model.BarCount > 0 ? [Standoffs.NotChecked(NoWind)] : (ReadOnlySpan<Check>)[], Members.NotChecked(NoWind)]);
        else
            new FatigueParts(causes, criteria, lists).Add();
    }

    /// <summary>A detail with the greatest stress that each cause makes there, Pa.</summary>
    private sealed record Detail(CheckEntry Entry, string Group, string Where, DetailCategory Category, Material Metal, double[] Stresses);

    private void Add()
    {
        var found = new FatigueParts[causes.Count];
        ParallelWork.ForEach(found.Length, i =>
        {
            found[i] = new FatigueParts(causes, criteria, lists);
            if (causes.DemandsOf(i) is { } demands)
                found[i].Look(demands, i);
        });
        foreach ((int cause, FatigueParts part) in found.Index())
        {
            lacking.UnionWith(part.lacking);
            foreach (Detail detail in part.details.Values)
                Look(detail.Entry, detail.Group, detail.Where, detail.Category, detail.Metal, detail.Stresses[cause], cause);
        }
        AddUndescribed();
        (double Years, string Where) shortest = (double.PositiveInfinity, "");
        foreach (IGrouping<(CheckEntry Entry, string Group), Detail> group in details.Values.GroupBy(detail => (detail.Entry, detail.Group)))
        {
            Detail[] all = [.. group];
            if (Array.Find(all, detail => detail.Category.IsOfSteel && BarDesign.KindOf(detail.Metal) == MetalKind.Other) is { } uncovered)
            {
                lists.Checks.Add(group.Key.Entry.NotChecked($"EN 1993-1-9 does not cover {uncovered.Metal.Name}; give a category with its own source", uncovered.Where, causes.Situation));
                continue;
            }
            FatigueRanges[] ranges = Array.ConvertAll(all, detail => causes.RangesOf(detail.Stresses));
            int at = causes.Worst([.. all.Select((detail, i) => (ranges[i], detail.Category))]), firstCheck = lists.Checks.Count;
            Detail worst = all[at];
            ValueList<StressBlock> blocks = causes.Blocks(ranges[at]);
            lists.Checks.Add(FatigueChecks.Miner(blocks, causes.Years, worst.Category, causes.GammaMf, group.Key.Entry.Subject(worst.Where, causes.Situation)));
            if (group.Key.Entry == Standoffs)
            {
                lists.Checks.Add(FatigueChecks.RangeLimit(blocks, worst.Metal, worst.Category, worst.Where, causes.Situation));
                double years = causes.Years / (lists.Checks[firstCheck].Demand ?? 0);
                if (Extremes.Exceeds(-years, -shortest.Years) || (double.IsPositiveInfinity(shortest.Years) && double.IsFinite(years)))
                    shortest = (years, worst.Where);
            }
            lists.Assume([.. causes.AssumptionsFor(worst.Metal, worst.Category), nominal, .. group.Key.Entry == FlangeBolts || group.Key.Entry == Anchors ? [tightened] : Array.Empty<Assumption>()], firstCheck);
        }
        if (double.IsFinite(shortest.Years))
            lists.Results.Add(new ResultLine("fatigue", "shortest life of a standoff, years", shortest.Years, Dimension.Number, FormattableString.Invariant($"{shortest.Where}, against a design life of {causes.Years:0.#} years")));
    }

    /// <summary>Goes through all parts under one cause.</summary>
    private void Look(SituationDemands demands, int cause)
    {
        var feet = new FootEnvelope(model);
        for (int number = 0; number < model.Rings.Count; number++)
            LookAtRing(demands, number, feet, cause);
        int segment = 0;
        foreach (BodyModel body in model.Bodies)
        {
            for (int i = 0; i < body.Segments.Length; i++, segment++)
            {
                if (body.Segments[i].Segment is LatticeSegment lattice)
                    LookAtLattice(demands, body.Segments[i], lattice, segment, cause);
                else if (body.Segments[i].Segment is MemberSegment member)
                    LookAtTube(demands, body, i, member, segment, cause);
            }
        }
        var unwritten = new SheetWriter();
        var levels = new LevelSheet(model, criteria, demands, feet, unwritten);
        foreach ((string level, BracketLoad load) in levels.Welds())
            LookAtWeld(Levels, level, load, cause);
        foreach ((string level, MemberLoad load) in levels.PlanBracing())
            LookAtFasteners(level, load.Member, 0, cause);
        foreach ((string level, BracketLoad load) in new HubSheet(model, criteria, demands, feet, unwritten).Arms())
            LookAtWeld(Hubs, level, load, cause);
        foreach (FootLoad foot in new FootSheet(model, criteria, demands, unwritten).Feet())
        {
            if (FootSheet.WeldEntry.Lacks(foot) is { } reason)
                lacking.Add((Feet, reason, foot.Where));
            else
                Look(Feet, "feet", foot.Where, DetailCategory.FilletRoot, foot.Metal, FootSheet.WeldEntry.Run(null, foot).Demand, cause);
            LookAtAnchors(foot, cause);
        }
    }

    /// <summary>The bars of a foot: its uplift evenly, and its moments by their distances from the middle of its plate, both about the softer way.</summary>
    private void LookAtAnchors(in FootLoad foot, int cause)
    {
        if (foot.Bars.Count == 0)
            return;
        double cx = foot.Bars.Average(bar => bar.X.Meters), cy = foot.Bars.Average(bar => bar.Y.Meters);
        double xx = foot.Bars.Sum(bar => Math.Pow(bar.X.Meters - cx, 2)), yy = foot.Bars.Sum(bar => Math.Pow(bar.Y.Meters - cy, 2)), least = Math.Min(xx, yy) > 0 ? Math.Min(xx, yy) : xx + yy;
        foreach (AnchorBar bar in foot.Bars)
        {
            double r = double.Hypot(bar.X.Meters - cx, bar.Y.Meters - cy), pull = foot.Uplift / foot.Bars.Count + (least > 0 ? (foot.Strong + foot.Weak) * r / least : 0);
            Look(Anchors, "anchors", foot.Where, DetailCategory.Thread, bar.Material, Felt(pull, bar.PreTension.Newtons) / bar.A_s, cause);
        }
    }

    private void LookAtRing(SituationDemands demands, int number, FootEnvelope feet, int cause)
    {
        RingElement ring = model.Rings[number].Ring;
        Bracket? first = ring.Bars.Select(bar => bar.Bar.Place.Bracket?.Bracket).FirstOrDefault(found => found is not null);
        BarDesign? design = first is null ? null : MemberSheet.DesignFor(first.Material, criteria);
        DetailCategory?[][] of = Array.ConvertAll(ring.Bars, DetailsOf);
        var ranges = new double?[ring.Bars.Length, 3];
        var rubs = new BarEnds?[ring.Bars.Length, (int)SkinAssumption.Shell + 1];
        var welds = new (BracketLoad Load, double Toe, double Root)?[ring.Bars.Length];
        BarVisitor visit = (BarModel bar, SkinAssumption skin, in BarEnds acting, DemandState _) =>
        {
            BarEnds rubbing = causes.IsHeat(cause) ? rubs[bar.Index, (int)skin] ??= SaddleDrag.InHeat(demands.Response.Cases[0], ring, bar, skin, 2) : default;
            LookAtEnds(bar, acting + rubbing);
            if (rubbing != default)
                LookAtEnds(bar, acting + -1 * rubbing);
        };
        demands.Bars(number, visit);
        if (causes.Locals.ElementAtOrDefault(cause) is { } local)
            BarSheet.VisitLocal(local, demands.Response.Cases[0], ring, model.Rings[number].BandInStatue, visit);
        foreach (BarModel bar in ring.Bars)
        {
            for (int i = 0; i < of[bar.Index].Length; i++)
            {
                if (of[bar.Index][i] is not { } detail)
                    continue;
                if (ranges[bar.Index, i] is { } range)
                    Look(Standoffs, $"{ring.BandName}, {i}", i == 0 ? bar.Where : $"{bar.Where}, {(detail.On == FatigueSection.Throat ? "root" : "toe")} of its welds", detail, bar.Bar.Place.Standoff.Material, range, cause);
                else
                    lacking.Add((Standoffs, "the welds of the detail are not described", bar.Where));
            }
        }
        foreach ((BracketLoad Load, double Toe, double Root)? weld in welds)
        {
            if (weld is { } most)
                LookAtWeld(Brackets, ring.BandName, most.Load, (most.Toe, most.Root), cause);
        }

        void LookAtEnds(BarModel bar, in BarEnds ends)
        {
            feet.Look(bar, ends);
            for (int i = 0; i < of[bar.Index].Length; i++)
            {
                if (of[bar.Index][i] is { } detail && FatigueStress.Range(bar.Bar, ends, detail) is { } range)
                    ranges[bar.Index, i] = Math.Max(ranges[bar.Index, i] ?? 0, range);
            }
            if (bar.Bar.Place.Bracket is null)
                return;
            BracketLoad load = BracketLoad.Of(bar, ends, design!, null);
            if (Lacks(Brackets, ring.BandName, load))
                return;
            (double toe, double root) = StressesOf(load);
            welds[bar.Index] = welds[bar.Index] is { } known ? (load, Math.Max(known.Toe, toe), Math.Max(known.Root, root)) : (load, toe, root);
        }
    }

    /// <summary>What is looked at of a bar: the detail given, and both ways in which a welded end cracks, from the toe and from the root.</summary>
    private static DetailCategory?[] DetailsOf(BarModel bar)
    {
        Standoff standoff = bar.Bar.Place.Standoff;
        if (standoff.FatigueDetail is not { } given)
            return [];
        // Welds of bars that have another detail, and of a metal that the standard covers.
        bool hasWelds = (standoff.TowerFixing is WeldedFixing || standoff.SkinFixing is WeldedFixing) && BarDesign.KindOf(standoff.Material) != MetalKind.Other;
        return [given, .. new[] { DetailCategory.FilletToe, DetailCategory.FilletRoot }.Select(weld => hasWelds && weld != given ? weld : null)];
    }

    private void LookAtWeld(CheckEntry entry, string group, in BracketLoad load, int cause)
    {
        if (!Lacks(entry, group, load))
            LookAtWeld(entry, group, load, StressesOf(load), cause);
    }

    private void LookAtWeld(CheckEntry entry, string group, in BracketLoad load, (double Toe, double Root) stresses, int cause)
    {
        Look(entry, group, $"{load.Where}, toe of its weld", DetailCategory.FilletToe, load.Bracket.Bracket.Material, stresses.Toe, cause);
        Look(entry, group, $"{load.Where}, root of its weld", DetailCategory.FilletRoot, load.Bracket.Bracket.Material, stresses.Root, cause);
    }

    /// <summary>Whether a weld cannot be worked out. One that nobody described is told of once for all parts.</summary>
    private bool Lacks(CheckEntry entry, string group, in BracketLoad load)
    {
        if (BracketChecks.WeldEntry.Lacks(load) is not { } reason)
            return false;
        if (load.Bracket.Bracket.Throat is not null)
            lacking.Add((entry, reason, group));
        return true;
    }

    /// <summary>Both ways in which a weld round an end cracks: from the toe, into the part, and from the root, through the throat. Pa.</summary>
    private static (double Toe, double Root) StressesOf(in BracketLoad load)
    {
        SectionProperties p = load.Bracket.Bracket.Section.Properties;
        return (Math.Abs(load.N) / p.A + load.Foot.Strong / p.Wy + load.Foot.Weak / p.Wz, BracketChecks.WeldEntry.Run(null, load).Demand);
    }

    private void LookAtLattice(SituationDemands demands, SegmentModel segment, LatticeSegment lattice, int number, int cause)
    {
        LoadedMember[] members = [.. segment.Members.Select(member => MemberSheet.Loaded(segment, lattice, member, 1, default, $"{segment.Name}, {member.Label}"))];
        demands.Members(number, (int i, in MemberForces forces, DemandState _) =>
        {
            SectionProperties p = members[i].p;
            LookAtFasteners($"{segment.Name}, {segment.Members[i].Role}", members[i] with { Axial = UnitsNet.Force.FromNewtons(forces.N) }, forces.Strong / p.Wy + forces.Weak / p.Wz, cause);
        });
    }

    /// <summary>A member at the holes of its joint, its fasteners, and the weld of its gusset.</summary>
    private void LookAtFasteners(string group, LoadedMember member, double bending, int cause)
    {
        if (member.Connection is not { } joint)
            return;
        BarDesign design = BarDesign.For(member.Material);
        double A_net = NetSection.Area(null, member, design);
        // What shear lag leaves of an angle that one leg joins, as in its rupture.
        double A_e = member.Section is AngleBar && !joint.BothLegs ? NetSection.RuptureEn(null, member, design, A_net) * design.GammaM2 / member.f_u : A_net;
        Look(Members, group, member.Where, CategoryOf(joint, member.Material), member.Material, Math.Abs(member.N) / A_e + bending * member.p.A / A_net, cause);
        double area = joint.Rivet?.Area ?? joint.Bolt!.TensileArea;
        Look(Fasteners, group, member.Where, DetailCategory.BoltShear, StructuralSteel.S355, Math.Abs(member.N) / (joint.Count * joint.ShearPlanes * area), cause);
        if (!member.IsLeg && joint.Plate is { Throat: not null } plate)
            Look(Gussets, group, member.Where, DetailCategory.FilletRoot, plate.Material, PlateSheet.WeldEntry.Run(null, new MemberLoad(member, design)).Demand, cause);
    }

    /// <summary>The detail of a member at its holes: bolts are fitted when their holes are as wide as they, to a third of a millimeter.</summary>
    private static DetailCategory CategoryOf(MemberConnection joint, Material metal) => joint.Bolt switch
    {
        { } bolt when bolt.d_0 - bolt.d > 0.0003 => DetailCategory.ClearanceBolts,
        not null => joint.ShearPlanes == 2 ? DetailCategory.FittedBoltsBothSides : DetailCategory.FittedBolts,
        null => BarDesign.KindOf(metal) == MetalKind.Other ? DetailCategory.PuddledIron : DetailCategory.Riveted,
    };

    /// <summary>What of a pull a tightened bolt or bar feels: a quarter, until it loosens what it holds together; all of it without.</summary>
    private static double Felt(double pull, double preTension) => Math.Max(Share * pull, pull - Left * preTension);

    private void LookAtTube(SituationDemands demands, BodyModel body, int index, MemberSegment member, int number, int cause)
    {
        SegmentModel segment = body.Segments[index];
        TubeJoint? lower = member.LowerJoint, upper = index + 1 < body.Segments.Length ? (body.Segments[index + 1].Segment as MemberSegment)?.LowerJoint : null;
        foreach (EndForces ends in demands.EndsOf(number))
        {
            if (lower is not null)
                LookAtJoint(lower, MemberSheet.TubeAt(segment, member, ends.Bottom, 0, "bottom"), cause, withBolts: true);
            if (upper is not null)
                LookAtJoint(upper, MemberSheet.TubeAt(segment, member, ends.Top, 1, "top"), cause, withBolts: false);
        }
    }

    private void LookAtJoint(TubeJoint joint, LoadedMember tube, int cause, bool withBolts)
    {
        SectionProperties p = tube.p;
        double N = Math.Abs(tube.N), M = tube.StrongMoment.NewtonMeters, M_weak = tube.WeakMoment.NewtonMeters;
        double wall = N / p.A + M / p.Wy + M_weak / p.Wz;
        WeldedTubeJoint? weld = joint as WeldedTubeJoint ?? (joint as FlangeJoint)?.Weld;
        if (weld is { Throat: null })
        {
            Look(Tubes, tube.Where, tube.Where, DetailCategory.ButtWeldedTube, tube.Material, wall, cause);
        }
        else if (weld is { Throat: { } throat } && tube.Section.OutlineDiameter is { } D)
        {
            Look(Tubes, tube.Where, $"{tube.Where}, toe of its weld", DetailCategory.FilletWeldedTube, tube.Material, wall, cause);
            Look(Tubes, tube.Where, $"{tube.Where}, root of its weld", DetailCategory.FilletRoot, tube.Material, (N / (Math.PI * D) + 4 * (M + M_weak) / (Math.PI * D * D)) / throat.Meters, cause);
        }
        else if (weld is not null)
        {
            lacking.Add((Tubes, "fillets are worked out round round tubes only", tube.Where));
        }
        if (withBolts && joint is FlangeJoint && tube.Section is not Tube)
            lacking.Add((FlangeBolts, "flanges are worked out on round tubes only", tube.Where));
        if (withBolts && joint is FlangeJoint flange && tube.Section is Tube round)
        {
            double d = round.OuterDiameter.Meters - round.Wall.Meters;
            double pull = N / flange.Count + 4 * (M + M_weak) / (flange.Count * d);
            // The edge of the flange pries.
            double m = (flange.BoltCircle.Meters - round.OuterDiameter.Meters) / 2, e = Math.Min((flange.OuterDiameter.Meters - flange.BoltCircle.Meters) / 2, 1.25 * m);
            Look(FlangeBolts, tube.Where, tube.Where, DetailCategory.Thread, StructuralSteel.S355, Felt((1 + m / e) * pull, flange.PreTension.Newtons) / flange.Bolt.TensileArea, cause);
        }
    }

    private void Look(CheckEntry entry, string group, string where, DetailCategory category, Material metal, double stress, int cause)
    {
        if (!details.TryGetValue((entry, where, category), out Detail? detail))
            details[(entry, where, category)] = detail = new Detail(entry, group, where, category, metal, new double[causes.Count]);
        detail.Stresses[cause] = Math.Max(detail.Stresses[cause], stress);
    }

    /// <summary>One line for all parts of a kind that lack the description of a joint.</summary>
    private void AddUndescribed()
    {
        Missing(Standoffs, $"the detail is not described (Standoff.{nameof(Standoff.FatigueDetail)})", model.Rings.Where(r => Array.Exists(r.Ring.Bars, bar => bar.Bar.Place.Standoff.FatigueDetail is null)).Select(r => r.Ring.BandName));
        IEnumerable<(string Name, TowerSegment Segment)> segments = model.Segments.Select(s => (s.Name, s.Segment));
        Missing(Members, "joints of members are not described", segments.Where(s => s.Segment is LatticeSegment { BraceJoint: null } or LatticeSegment { LegSplice: null }).Select(s => s.Name));
        Missing(Gussets, "welds of gussets are not described", segments.Where(s => s.Segment is LatticeSegment { BraceJoint: { Plate: not { IsLegItself: true } and not { Throat: not null } } }).Select(s => s.Name));
        Missing(Tubes, "joints of tubes, or welds of flanges, are not described", segments.Where(s => s.Segment is MemberSegment { LowerJoint: null or FlangeJoint { Weld: null } }).Select(s => s.Name));
        Missing(Brackets, "welds of brackets are not described", model.Rings.Where(r => Array.Exists(r.Ring.Bars, bar => bar.Bar.Place.Bracket is { Bracket.Throat: null })).Select(r => r.Ring.BandName));
        IEnumerable<(string Name, TowerLevel Level)> levels = model.Bodies.SelectMany(body => body.Tower.Levels.Select(level => (body.Prefix + level.Name, level)));
        Missing(Levels, "welds of horizontals are not described", levels.Where(at => at.Level.Frame is { Throat: null }).Select(at => at.Name));
        Missing(Hubs, "welds of arms are not described", levels.Where(at => at.Level.Hub is { Throat: null }).Select(at => at.Name));
        if (model.Segments[0].Segment is LatticeSegment or MemberSegment && !details.Keys.Any(key => key.Entry == Feet) && !lacking.Any(part => part.Entry == Feet))
            lists.Checks.Add(Feet.NotChecked("feet, or their welds, are not described", "", causes.Situation));
        if (model.Segments[0].Segment is MemberSegment && model.Statue.HoldDown is { Bars.Count: > 0 } && !details.Keys.Any(key => key.Entry == Anchors))
            lists.Checks.Add(Anchors.NotChecked("the bars of the feet cannot be told apart", "", causes.Situation));

        foreach (var group in lacking.GroupBy(part => (part.Entry, part.Reason)))
            Missing(group.Key.Entry, group.Key.Reason, group.Select(part => part.Where));

        void Missing(CheckEntry entry, string reason, IEnumerable<string> where)
        {
            string[] all = [.. where];
            if (all.Length > 0)
                lists.Checks.Add(entry.NotChecked(reason, all.Length == 1 ? all[0] : FormattableString.Invariant($"{all[0]} and {all.Length - 1} more"), causes.Situation));
        }
    }
}
