using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// The way a force takes from the sheet to the ground, link by link, with the entries of the catalogue that hold each. A link
/// that the statue has and no check holds is open, whether it is not described or the library has no method for it.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class LoadPath
{
    /// <summary>What of a link has to hold.</summary>
    /// <param name="Link">The link.</param>
    /// <param name="What">What of it.</param>
    /// <param name="Ids">The entries that hold it; empty where there is no method.</param>
    /// <param name="Reason">Why nothing holds it when none of them is on the sheet.</param>
    /// <param name="Parts">The parts that it is about; null for all that the entries are run over.</param>
    private readonly record struct Aspect(string Link, string What, string[] Ids, string Reason = "it is not described, or no situation asks for it", HashSet<string>? Parts = null);

    private const string NoMethod = "there is no method for it in this library";

    /// <summary>The links of a statue with what the checks of its sheet say of them.</summary>
    public static ValueList<PathLink> Of(StatueModel model, Criteria criteria, IReadOnlyList<Check> checks)
    {
        ILookup<string, Check> byId = checks.ToLookup(check => check.Id);
        return Aspects(model, criteria).Select(aspect => Judge(aspect, byId)).ToValueList();
    }

    private static PathLink Judge(in Aspect aspect, ILookup<string, Check> byId)
    {
        HashSet<string>? parts = aspect.Parts;
        Check[] all = [.. aspect.Ids.SelectMany(id => byId[id]).Where(check => parts is null || parts.Contains(check.Subject.Part))];
        Check? worst = all.Where(check => check.Utilization is not null).MinBy(check => check, CheckOrder.WorstFirst);
        ValueList<string> ids = ValueList.Create<string>(aspect.Ids);
        if (Array.Exists(all, check => check.Verdict == Verdict.Fail))
            return new PathLink(aspect.Link, aspect.What, LinkState.Fails, ids, worst, "");
        Check? notDone = Array.Find(all, check => check.Verdict == Verdict.NotChecked);
        if (notDone is not null)
            return new PathLink(aspect.Link, aspect.What, LinkState.Open, ids, worst, notDone.Where.Length > 0 ? $"{notDone.Where}: {notDone.Reason}" : notDone.Reason);
        return worst is null
            ? new PathLink(aspect.Link, aspect.What, LinkState.Open, ids, null, aspect.Reason)
            : new PathLink(aspect.Link, aspect.What, LinkState.Holds, ids, worst, "");
    }

    private static IEnumerable<Aspect> Aspects(StatueModel model, Criteria criteria) =>
        [.. OfSkin(model), .. OfBars(model, criteria), .. OfTower(model), .. OfLimbs(model), .. OfFittings(model), .. OfBase(model), .. OfLife(model, criteria)];

    private static IEnumerable<Aspect> OfSkin(StatueModel model)
    {
        if (model.BandCount == 0)
            yield break;
        yield return new("sheet", "panels between armature bars", ["sheet.panel-bending", "sheet.buckling"], "the skin's armature is not described, or no strength situation has wind");
        yield return new("seams", "rivets and sheet", ["seams.shear", "seams.bearing", "seams.net-section", "seams.pull-through"], "the skin's seams are not described, or no strength situation has wind");
        yield return new("armature", "bars between standoffs", ["armature.bending", "armature.span"], "the skin's armature is not described, or no strength situation has wind");
        string[] loose = [.. model.Bodies.Where(body => body.Bands.Length > 0 && body.Skin!.Armature?.Straps is null).Select(body => body.Name)];
        if (loose.Length > 0)
            yield return new("saddles", $"straps over the armature of {string.Join(", ", loose)}, their rivets and pull-off", [], $"they are not described (Armature.{nameof(Armature.Straps)})");
        if (model.Bodies.Any(body => body.Bands.Length > 0 && body.Skin!.Armature?.Straps is not null))
            yield return new("saddles", "straps over the armature, their rivets and pull-off", ["straps.pull-off", "straps.shear", "straps.bearing", "straps.distances", "straps.bending"]);
    }

    private static IEnumerable<Aspect> OfBars(StatueModel model, Criteria criteria)
    {
        BarModel[] bars = [.. model.Rings.SelectMany(r => r.Ring.Bars)];
        if (bars.Length == 0)
            yield break;
        if (Array.Exists(bars, bar => bar.Bar.Place.Slide == Mechanics.Vector3D.Zero))
            yield return new("saddles", "grip of those that hold", ["bars.saddle-slip"]);
        if (Array.Exists(bars, SlidesAlongItself))
            yield return new("saddles", "what holds suction on those that slide along their bar", ["bars.saddle-hold"]);
        yield return new("standoffs", "strength and buckling", ["bars.bending", "bars.shear", "bars.strut", "bars.beam-column", "bars.second-order", "bars.local"]);
        string[] bare = criteria.Fine is not null ? [] : [.. model.Bodies.Where(body => body.Rings.Length > 0 && body.Skin!.Armature is null).Select(body => body.Name)];
        if (bare.Length > 0)
            yield return new("standoffs", $"what each carries behind bare sheet of {string.Join(", ", bare)}", [], $"without an armature the bounds on the skin are none; describe it, or run the fine model (Criteria.{nameof(Criteria.Fine)})");
        yield return new("standoffs", "bolts or welds at both ends", ["bars.bolts", "bars.bearing", "bars.tear-out", "bars.net-section", "bars.welds", "bars.fixings"]);
        yield return new("standoffs", "fatigue", ["bars.fatigue"]);
        if (Array.Exists(bars, bar => bar.Bar.Place.Bracket is null))
            yield return new("standoffs", "what they stand on without a bracket", ["bars.faces"]);
        double[] missing = [.. model.Bodies.SelectMany(BracketsMissing).Where(length => length > Bracket.LeastLength)];
        if (missing.Length > 0)
            yield return new("brackets", Invariant($"{missing.Length} that are not described, mean {missing.Average():0.00} m, longest {missing.Max():0.00} m"), [], $"they are taken as rigid and weigh nothing (StandoffRing.{nameof(StandoffRing.Bracket)})");
        double[] there = [.. bars.Where(bar => bar.Bar.Place.Bracket is not null).Select(bar => bar.Bar.Place.Bracket!.Length)];
        if (there.Length == 0)
            yield break;
        yield return new("brackets", Invariant($"strength and stability of {there.Length}, mean {there.Average():0.00} m, longest {there.Max():0.00} m"), ["brackets.bending"]);
        yield return new("brackets", "welds to the tower", ["brackets.welds"]);
        yield return new("brackets", "what they stand on", ["brackets.faces"]);
    }

    private static bool SlidesAlongItself(BarModel bar) => Math.Abs(bar.Bar.Place.Slide.Dot(bar.Bar.Place.Outward)) > 1e-6;

    private static IEnumerable<Aspect> OfTower(StatueModel model)
    {
        TowerSegment[] segments = [.. model.Segments.Select(s => s.Segment)];
        HashSet<string> lattices = [.. model.Segments.Where(s => s.Segment is LatticeSegment).Select(s => s.Name)], tubes = [.. model.Segments.Where(s => s.Segment is MemberSegment).Select(s => s.Name)];
        if (Array.Exists(segments, s => s is LatticeSegment))
        {
            (string Name, TowerLevel Level)[] levels = [.. model.Bodies.SelectMany(LatticeLevels)];
            string[] none = [.. levels.Where(at => at.Level.Frame is null).Select(at => at.Name)], loose = [.. levels.Where(at => at.Level is { Frame: not null, IsBraced: false }).Select(at => at.Name)];
            if (none.Length > 0)
                yield return new("level frames", Invariant($"horizontals and plan bracing of {Some(none)}"), [], $"they are taken as rigid in plan and weigh nothing (TowerLevel.{nameof(TowerLevel.Frame)})");
            if (none.Length < levels.Length)
            {
                yield return new("level frames", "strength of horizontals", ["levels.bending"]);
                yield return new("level frames", "joints of horizontals", ["levels.welds"]);
                yield return new("level frames", "walls of legs under what is welded to them", ["levels.faces"], "no strength situation was given");
                if (Array.Exists(levels, at => at.Level.Frame?.PlanBracing is not null))
                {
                    yield return new("level frames", "plan bracing", ["levels.compression", "levels.tension"], "no force comes into it: no strength situation was given");
                    yield return new("level frames", "joints of plan bracing", ["levels.connections", "levels.block", "levels.distances"], $"they are not described (LevelFrame.{nameof(LevelFrame.PlanBracingJoint)})");
                }
            }
            if (loose.Length > 0)
                yield return new("level frames", $"shape of the plan of {Some(loose)}", [], $"there is no bracing across it (LevelFrame.{nameof(LevelFrame.PlanBracing)})");
            yield return new("lattice", "members", ["tower.compression", "tower.tension", "tower.bending", "limbs.compression", "limbs.tension", "limbs.bending"], Parts: lattices);
            yield return new("lattice", "joints and splices", ["tower.connections", "tower.block", "tower.distances", "tower.splices", "tower.joints", "limbs.connections", "limbs.block", "limbs.splices", "limbs.joints"], "they are not described", lattices);
            yield return new("lattice", "gussets and what holds them", ["gussets.tension", "gussets.compression", "gussets.block", "gussets.welds"], "the joints of braces are not described");
            yield return new("lattice", "plates of splices and their eccentricity", ["splices.tension", "splices.compression", "splices.block", "splices.bending"], "the splices are not described");
        }
        if (Array.Exists(segments, s => s is MemberSegment))
        {
            yield return new("tubes", "axial force, bending, shear and torsion", ["tower.bending", "limbs.bending"], Parts: tubes);
            yield return new("tubes", "joints", ["tower.tube-joints", "limbs.tube-joints"], "they are not described");
            if (Array.Exists(segments, s => s is MemberSegment { LowerJoint: FlangeJoint }))
                yield return new("tubes", "welds between tubes and flanges", ["tower.flange-welds", "limbs.flange-welds"], "they are not described");
        }
        if (Array.Exists(segments, s => s is BlockSegment))
            yield return new("core", "strength and stability", Array.TrueForAll(segments, s => s is not ConcreteSegment { Reinforcement: not null }) ? ["core.overturning", "core.toe-stress", "core.capacity", "core.shear"] : ["core.interaction", "core.shear", "core.capacity"]);
        if (Array.Exists(segments, s => s is CoreSegment))
            yield return new("core", "strength of a core given by its stiffness", ["tower.core", "limbs.core"]);
        if (Array.Exists(model.BareSlices, s => !s.HasShape))
            yield return new("core", "wind on it where it stands in the open", ["wind.bare"]);
        foreach (BodyModel body in model.Bodies)
        {
            for (int i = 1; i < body.Segments.Length; i++)
            {
                if (body.Segments[i].Segment.GetType() != body.Segments[i - 1].Segment.GetType())
                    yield return HubAt(body, i, "tower", $"transition at {body.Prefix}{body.Tower.Levels[i].Name}");
            }
        }
        yield return new("statue", "buckling of the whole", ["stability.buckling"]);
    }

    /// <summary>The levels at which a lattice begins or ends.</summary>
    private static IEnumerable<(string Name, TowerLevel Level)> LatticeLevels(BodyModel body)
    {
        for (int i = 0; i < body.Levels.Length; i++)
        {
            bool meetsLattice = (i > 0 && body.Segments[i - 1].Segment is LatticeSegment) || (i < body.Segments.Length && body.Segments[i].Segment is LatticeSegment);
            // Legs that stand on the ground or on plates need no horizontals there.
            if (meetsLattice && (i > 0 || body.Prefix.Length > 0))
                yield return (body.Prefix + body.Tower.Levels[i].Name, body.Tower.Levels[i]);
        }
    }

    private static string Some(string[] names) => names.Length switch
    {
        1 => names[0],
        2 => $"{names[0]} and {names[1]}",
        _ => Invariant($"{names[0]} and {names.Length - 1} more levels"),
    };

    private static IEnumerable<Aspect> OfLimbs(StatueModel model)
    {
        foreach (Limb limb in model.Statue.Limbs)
        {
            (BodyModel body, int level) = RootFaces.LevelOf(model, limb);
            if (!RootFaces.IsOnTube(body, level))
            {
                yield return HubAt(body, level, "limbs", RootFaces.NameOf(limb));
                continue;
            }
            yield return new("limbs", RootFaces.NameOf(limb), ["limbs.roots"], Parts: [RootFaces.NameOf(limb)]);
            yield return new("fatigue", $"wall of the tube under the {RootFaces.NameOf(limb)}", [], NoMethod);
        }
    }

    private static IEnumerable<Aspect> OfFittings(StatueModel model)
    {
        ValueList<Fitting> all = model.Statue.Fittings;
        if (all.Count == 0)
            yield break;
        yield return new("fittings", $"what fixes {string.Join(", ", all.Select(fitting => $"{fitting.Name} to {fitting.On}"))}", ["fittings.fixing"], "no strength situation was given");
        HashSet<string> levels = [.. model.Bodies.SelectMany(body => body.Tower.Levels.Select(level => body.Prefix + level.Name))];
        string[] onSkin = [.. all.Where(fitting => !levels.Contains(fitting.On)).Select(fitting => $"{fitting.Name} does to {fitting.On}")];
        if (onSkin.Length > 0)
            yield return new("fittings", $"what {string.Join(", ", onSkin)}", [], NoMethod);
    }

    /// <summary>What hands forces to the legs of a lattice; on anything else there is no method.</summary>
    private static Aspect HubAt(BodyModel body, int level, string link, string what)
    {
        TowerLevel at = body.Tower.Levels[level];
        return at.Hub is not null ? new(link, what, ["hubs.bending", "hubs.welds", "hubs.stiffness"], Parts: [body.Prefix + at.Name])
            : at.Plan is { Feet: >= 3 } ? new(link, what, [], $"what hands its six forces to the legs is not described (TowerLevel.{nameof(TowerLevel.Hub)})")
            : new(link, what, [], NoMethod);
    }

    private static IEnumerable<Aspect> OfBase(StatueModel model)
    {
        Statue statue = model.Statue;
        if (model.Segments[0].Segment is not BlockSegment)
        {
            const string none = "no hold-down is described (Statue.HoldDown)";
            const string noFeet = "no hold-down is described, or the feet cannot be told apart: one plate a leg, one under a mast";
            yield return new("feet", "welds from legs or mast to base plates", ["feet.welds"], noFeet);
            yield return new("feet", "base plates under pressure", ["base.bearing", "base.plate-bending"], none);
            yield return new("feet", "bed under the walls of legs or mast", ["feet.bearing"], noFeet);
            if (statue.HoldDown is { Bars.Count: > 0 } && model.Segments[0].Segment is LatticeSegment)
                yield return new("feet", "single feet under their legs' own pull: plates and anchor bars", ["feet.plate-uplift", "feet.anchors"], noFeet);
            if (statue.HoldDown is not { Bars.Count: 0 })
                yield return new("feet", "base plates pulled up by anchors", ["base.plate-uplift"], none);
            yield return new("hold-down", "overturning and sliding", ["base.overturning", "base.sliding"], none);
            if (statue.HoldDown is not { Bars.Count: 0 })
            {
                yield return new("hold-down", "steel of the anchor bars", ["base.anchor-tension", "base.anchor-shear", "base.anchor-interaction"], none);
                yield return new("hold-down", "what the anchor bars end in", ["base.breakout", "base.anchorage-weight", "base.pull-out", "base.bond", "base.girder-bending", "base.girder-bearing"], none);
                yield return new("hold-down", "edges of the concrete: shear, pry-out and blow-out", ["base.edge-shear", "base.pry-out", "base.blow-out"], "the bars are not in concrete, or no hold-down is described");
                yield return new("hold-down", "splitting of the concrete as bars are tightened", ["base.splitting"], "the bars are not in concrete, or no hold-down is described");
            }
        }
        yield return new("pedestal", "bed joints", ["pedestal.overturning", "pedestal.toe-stress", "pedestal.capacity", "pedestal.sliding"], "no pedestal is described (Statue.Pedestal)");
        yield return new("foundation", "overturning, sliding and ground", ["foundation.overturning", "foundation.sliding", "foundation.bearing", "foundation.pressure", "foundation.tilt-stability"], "no foundation is described (Statue.Foundation)");
        yield return new("foundation", "block or mat in bending, shear and punching", ["foundation.bending", "foundation.shear", "foundation.punching", "foundation.reinforcement"], "no foundation is described (Statue.Foundation)");
    }

    private static IEnumerable<Aspect> OfLife(StatueModel model, Criteria criteria)
    {
        TowerSegment[] segments = [.. model.Segments.Select(s => s.Segment)];
        const string noWind = "no service situation has wind, or the joints are not described", noDetail = "no service situation has wind, or the detail is not described";
        Skin[] skins = [.. model.Bodies.Where(body => body.Bands.Length > 0).Select(body => body.Skin!)];
        if (Array.Exists(skins, skin => skin.Armature is not null))
            yield return new("fatigue", "sheet between armature bars, and the bars", ["fatigue.sheet", "fatigue.armature"], noDetail);
        if (Array.Exists(skins, skin => skin.SheetSeam is not null))
            yield return new("fatigue", "seams of the skin", ["fatigue.seams"], noDetail);
        if (Array.Exists(skins, skin => skin.Armature?.Straps is not null))
            yield return new("fatigue", "straps over the armature", ["fatigue.straps"], noDetail);
        if (Array.Exists(segments, s => s is LatticeSegment))
            yield return new("fatigue", "members of lattices, their fasteners and gussets", ["fatigue.members", "fatigue.fasteners", "fatigue.gussets"], noWind);
        if (Array.Exists(segments, s => s is MemberSegment))
            yield return new("fatigue", "tubes at their joints, roots of limbs", ["fatigue.tubes", "fatigue.flange-bolts"], noWind);
        if (model.Rings.Any(r => r.Ring.Brackets.Any()))
            yield return new("fatigue", "brackets", ["fatigue.brackets"], noWind);
        TowerLevel[] levels = [.. model.Bodies.SelectMany(body => body.Tower.Levels)];
        if (Array.Exists(levels, level => level.Frame is not null || level.Hub is not null))
            yield return new("fatigue", "horizontals and hubs", ["fatigue.levels", "fatigue.hubs"], noWind);
        if (segments[0] is not BlockSegment)
            yield return new("fatigue", "feet and anchor bars", ["fatigue.feet", "fatigue.anchors"], noWind);
        yield return new("metals", "unlike metals kept apart", ["metals.galvanic"], "the air and the contacts are not described (Statue.Corrosion)");
        yield return new("metals", "strength at the end of the design life", ["life.end"], "the air, or the design life, is not given (Statue.Corrosion, Criteria.DesignLife)");
    }

    /// <summary>How far the tower end of each bar without a described bracket is from the tower's own members at its level, m.</summary>
    private static IEnumerable<double> BracketsMissing(BodyModel body) =>
        body.Rings.SelectMany(ring => ring.Bars.Where(bar => bar.Bar.Place.Bracket is null).Select(bar => body.DistanceToTower(ring, bar.Bar.Place.TowerEnd)));
}
