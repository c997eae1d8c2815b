using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Runs every entry of the standoffs over every bar and both its ends, in every state of a situation: of each ring the worst
/// that was done and what was not is written.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class BarSheet(StatueModel model, Criteria criteria, SituationDemands demands, LocalWind? local, FootEnvelope feet, SheetWriter lists)
{
    internal const double DefaultBarStressFraction = 1 / 1.5;

    internal static readonly Assumption AllowableStress = new("allowable stress of standoffs", "yield or proof strength / 1.5", Source.CommonPractice);

    /// <summary>What cannot be told of bars that hinges at both ends leave unable to stand alone.</summary>
    private const string Swings = "hinges at both ends leave the bar unable to stand alone under limp skin; only the rigid ring was looked at";

    private static readonly Assumption slipSafety = new("safety of saddles against slip", "γ_M3 1.25", new Source("EN 1993-1-8:2005", "Table 2.1, recommended value"));
    private static readonly Assumption stops = new("stops of saddles", "their design strength as given, beside the least friction; the skin's way to them is not in clearances", Source.Assumed("standoffs"));
    private static readonly Assumption cantilever = new("brackets", "cantilevers from the tower, their tips free to sway", Source.Assumed("standoffs"));
    private static readonly Assumption joined = new("metal that skin ends of standoffs are welded to", "as strong as the standoff", Source.Assumed("bars"));

    /// <summary>What a bar needs that is not described, by entry and reason, with the bands it is missing in.</summary>
    private readonly Dictionary<(CheckEntry Entry, string Reason), List<string>> missing = [];

    /// <summary>Of every ring the state that asks most of what its brackets stand on, and of what its standoffs without one do.</summary>
    public List<OnFace> Faces { get; } = [];

    public void Add()
    {
        bool isStrength = demands.Situation.LimitState == LimitState.Strength;
        for (int ring = 0; ring < model.Rings.Count; ring++)
        {
            if (isStrength)
                AddRing(ring);
            AddClearance(ring);
        }
        foreach (((CheckEntry entry, string reason), List<string> where) in missing)
            lists.Missing(entry, reason, where);
    }

    /// <summary>A bar of the statue with the rules of the criteria.</summary>
    internal static CheckedBar Of(BarModel bar, int ring, Criteria criteria, Material? tower = null) => new(
        bar.Standoff, bar.Bar.Place.Length, DesignFor(bar.Standoff.Material, criteria), bar.Where, joinedAtTower: bar.Bar.Place.Bracket?.Bracket.Material ?? tower, towerSprings: bar.Bar.Place.TowerSprings)
    {
        Site = (ring, bar.Index, bar.Bar.Place.Slide != Vector3D.Zero),
    };

    /// <summary>The rules for standoffs of a metal.</summary>
    internal static BarDesign DesignFor(Material material, Criteria criteria) =>
        criteria.Apply(BarDesign.For(material, criteria.BarCodeInUse) with { AllowableFraction = criteria.BarStressFraction ?? DefaultBarStressFraction });

    private void AddRing(int number)
    {
        (RingElement ring, int band) = model.Rings[number];
        Material? tower = TowerMetal(ring);
        CheckedBar[] bars = Array.ConvertAll(ring.Bars, bar => Of(bar, number, criteria, tower));
        BracketChord chord = BracketChord.Under(BodyOf(ring), ring);
        var looks = new BarsOfRing(ring.Bars.Length, chord);
        Bracket? bracket = ring.Bars.Select(bar => bar.Bar.Place.Bracket?.Bracket).FirstOrDefault(found => found is not null);
        BarDesign? onBracket = bracket is null ? null : MemberSheet.DesignFor(bracket.Material, criteria);
        var brackets = new BracketChecks.OfRing(Array.ConvertAll(ring.Bars, bar => bar.Bar.Place.Bracket), chord);
        var saddles = new Worst<SaddleChecks.SaddleLoad>(SaddleChecks.SlipEntry);
        var slides = new Worst<SaddleChecks.SaddleLoad>(SaddleChecks.StopEntry);
        var alone = new Worst<BarLoad>(BarChecks.LocalEntry);
        BarEnds[] drags = Array.ConvertAll(ring.Bars, bar => SaddleDrag.Of(bar, SkinAssumption.LimpSkin)), onRing = Array.ConvertAll(ring.Bars, bar => SaddleDrag.Of(bar, SkinAssumption.RigidRing));
        demands.Bars(number, (BarModel bar, SkinAssumption skin, in BarEnds acting, DemandState state) =>
        {
            BarEnds drag = (skin == SkinAssumption.RigidRing ? onRing : drags)[bar.Index];
            BarLoad load = BarLoad.Of(bars[bar.Index], skin, SaddleDrag.Worse(acting, drag, bars[bar.Index]), state);
            BarLoad? other = OtherWay(acting, drag, load);
            looks.Look(bar, load, other);
            LookAtSupport(bar, load, other);
            LookAtSaddle(bar, skin, acting, load);
        });
        BarVisitor underLocal = (BarModel bar, SkinAssumption skin, in BarEnds acting, DemandState state) =>
        {
            BarLoad load = BarLoad.Of(bars[bar.Index], skin, SaddleDrag.Worse(acting, drags[bar.Index], bars[bar.Index]), state);
            BarLoad? other = OtherWay(acting, drags[bar.Index], load);
            alone.Look(load);
            looks.LookAtEnds(bar, load, other);
            LookAtSupport(bar, load, other);
            LookAtSaddle(bar, skin, acting, load);
        };
        if (local is not null)
            VisitLocal(local, demands.Response.Cases[0], ring, band, underLocal, () => Miss(BarChecks.LocalEntry, Swings, ring));
        Write(ring, bars, looks, alone, saddles, slides);
        foreach (Worst<FaceLoad> face in (ReadOnlySpan<Worst<FaceLoad>>)[brackets.Face, looks.Face])
        {
            if (face.TryGet(out FaceLoad onFace))
                Faces.Add(new OnFace(BodyOf(ring), ring.Level, ring.BandName, face.Entry, onFace));
        }
        if (bracket is null)
            return;
        int firstOfBrackets = lists.Checks.Count;
        brackets.Write(lists);
        lists.Assume([cantilever, .. MemberSheet.FactorsOf(onBracket!, criteria)], firstOfBrackets);

        // What is worse for the bar need not be worse for what holds it: the drag the other way.
        static BarLoad? OtherWay(in BarEnds acting, in BarEnds drag, in BarLoad load) =>
            drag == default ? null : load with { Ends = 2 * acting + -1 * load.Ends };

        void LookAtSupport(BarModel bar, in BarLoad load, in BarLoad? other)
        {
            LookAtFoot(bar, load);
            if (other is { } turned)
                LookAtFoot(bar, turned);
        }

        void LookAtFoot(BarModel bar, in BarLoad load)
        {
            feet.Look(bar, load.Ends);
            if (bar.Bar.Place.Bracket is not null)
                brackets.Look(bar.Index, BracketLoad.Of(bar, load.Ends, onBracket!, tower, load.End(atSkin: false)));
        }

        void LookAtSaddle(BarModel bar, SkinAssumption skin, in BarEnds acting, in BarLoad load)
        {
            Vector3D force = new(acting.Skin.N, acting.Skin.AlongThickness, acting.Skin.AlongWidth), outward = bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward);
            if (bar.Bar.Place.Slide == Vector3D.Zero && bar.Standoff.Saddle is not null)
                saddles.Look(new(load.End(atSkin: true), (force - force.Dot(outward) * outward).Length));
            else if (bar.Bar.Place.Slide != Vector3D.Zero && skin is SkinAssumption.LimpSkin or SkinAssumption.SlidingSkin)
                slides.Look(new(load.End(atSkin: true), PushAlong(bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Slide), outward, force)));
        }
    }

    /// <summary>
    /// What pushes the skin along a slide, N: of the force on the skin end the part square to the skin, as the sheet hands on what
    /// acts in its plane; and no more than acts along the slide at all, as what heat bends the bar by does not.
    /// </summary>
    private static double PushAlong(Vector3D slide, Vector3D outward, Vector3D force) =>
        Math.Min(Math.Abs(force.Dot(slide)), Math.Abs(force.Dot(outward) * outward.Dot(slide)));

    private void Write(
        RingElement ring, CheckedBar[] bars, BarsOfRing looks, in Worst<BarLoad> alone,
        in Worst<SaddleChecks.SaddleLoad> saddles, in Worst<SaddleChecks.SaddleLoad> slides)
    {
        int firstCheck = lists.Checks.Count;
        foreach (Worst<BarLoad> entry in looks.Bars)
            lists.Add(entry);
        int firstOfRules = lists.Checks.Count;
        lists.Add(alone, local?.Assumptions(model.Rings.First(r => r.Ring == ring).BandInStatue) ?? []);
        lists.Assume([.. bars.DistinctBy(bar => bar.Standoff.Material).SelectMany(bar => AssumptionsOf(bar.Design, bar.Standoff.Material))], firstCheck, firstOfRules);
        if (criteria.BarStressFraction is null)
        {
            lists.Assume([AllowableStress], firstCheck, firstCheck + 1);
            lists.Assume([AllowableStress], firstOfRules);
        }
        if (demands.Response.Bars.FirstOrDefault(bar => bar.Band == ring.BandName && bar.Level == ring.Level && !bar.StandsAlone) is { } swings)
            lists.Checks.Add(BarChecks.BendingEntry.NotChecked(Swings, swings.Where, lists.Situation));
        firstCheck = lists.Checks.Count;
        foreach (Worst<FixingLoad> entry in looks.Fixings)
            lists.Add(entry);
        lists.Assume([.. bars.DistinctBy(bar => bar.Design).SelectMany(bar => FixingAssumptions(bar.Design))], firstCheck);
        if (Array.Exists(bars, bar => bar.Standoff.SkinFixing is WeldedFixing { JoinedTo: null }))
            lists.Assume([joined], firstCheck);
        lists.Add(saddles, slipSafety);
        lists.Add(slides, Array.Exists(ring.Bars, bar => bar.Standoff.Saddle?.Stop is not null) ? [slipSafety, stops] : [slipSafety]);
        if (Array.Exists(ring.Bars, bar => bar.Bar.Place.Slide == Vector3D.Zero && bar.Standoff.Saddle is null))
            Miss(SaddleChecks.SlipEntry, $"the saddle is not described (Standoff.{nameof(Standoff.Saddle)})", ring);
        foreach (bool atSkin in (ReadOnlySpan<bool>)[false, true])
        {
            if (Array.Exists(bars, bar => bar.Fixing(atSkin) is null))
                Miss(Catalogue.Fixings, $"{(atSkin ? "skin" : "tower")} ends are not described (Standoff.{(atSkin ? nameof(Standoff.SkinFixing) : nameof(Standoff.TowerFixing))})", ring);
        }
    }

    /// <summary>Every bar alone under the local pressure and the local suction on its strip, with what else a load case has on it, as weight and heat.</summary>
    /// <param name="local">The local pressures.</param>
    /// <param name="rest">What else acts.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="band">Number of its band in the statue.</param>
    /// <param name="visit">Gets every bar.</param>
    /// <param name="swings">Gets to know of bars that cannot stand alone.</param>
    internal static void VisitLocal(LocalWind local, LoadCase rest, RingElement ring, int band, BarVisitor visit, Action? swings = null)
    {
        Span<double> forces = stackalloc double[FrameElement.Size];
        (double, DemandState)[] both = [Local(-local.Inward(band), "local pressure"), Local(local.Suction(band), "local suction")];
        foreach (BarModel bar in ring.Bars)
        {
            foreach ((double pressure, DemandState state) in both)
            {
                if (rest.LocalForcesOf(ring, bar, band, pressure, forces))
                    visit(bar, SkinAssumption.LimpSkin, BarEnds.Of(forces), state);
                else
                    swings?.Invoke();
            }
        }

        (double, DemandState) Local(double outward, string what) =>
            (outward, new DemandState(what, rest, $"{what} on its strip, with its factor") { LocalPressure = outward });
    }

    private void AddClearance(int number)
    {
        (RingElement ring, int band) = model.Rings[number];
        BodyModel body = BodyOf(ring);
        var nearest = new (double Towards, string When)[ring.Bars.Length];
        demands.Approaches(number, (bar, towards, state) => Look(bar, towards, state.When));
        if (local is not null)
        {
            foreach (BarModel bar in ring.Bars)
                Look(bar, demands.Response.Cases[0].LocalApproach(ring, bar, band, -local.Inward(band)), "local pressure");
        }
        // There is no more room than there is from the skin to the tower.
        lists.Run(SaddleChecks.ClearanceEntry, ring.Bars.Where(bar => bar.Standoff.Clearance is not null).Select(bar => new SaddleChecks.GapLoad(
            bar.Where, Math.Min(bar.Standoff.Clearance!.Value.Meters, body.DistanceToTower(ring, bar.Bar.Place.SkinEnd)), nearest[bar.Index].Towards, nearest[bar.Index].When ?? "")));
        if (Array.Exists(ring.Bars, bar => bar.Standoff.Clearance is null))
            Miss(SaddleChecks.ClearanceEntry, $"it is not described (Standoff.{nameof(Standoff.Clearance)})", ring);

        void Look(BarModel bar, double towards, string when)
        {
            if (Extremes.Exceeds(towards, nearest[bar.Index].Towards))
                nearest[bar.Index] = (towards, when);
        }
    }

    private BodyModel BodyOf(RingElement ring) => model.Bodies.First(body => Array.IndexOf(body.Rings, ring) >= 0);

    /// <summary>The weakest metal of the tower's segments at a ring's level.</summary>
    private Material? TowerMetal(RingElement ring)
    {
        BodyModel body = BodyOf(ring);
        int level = body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..]);
        return body.Segments.Where((_, i) => i == level - 1 || i == level)
            .Select(s => s.Segment switch { LatticeSegment lattice => lattice.Material, MemberSegment member => member.Material, _ => null })
            .Where(metal => metal is not null).MinBy(metal => metal!.UltimateStrength.Pascals);
    }

    private void Miss(CheckEntry entry, string reason, RingElement ring)
    {
        if (!missing.TryGetValue((entry, reason), out List<string>? where))
            missing[(entry, reason)] = where = [];
        if (where.Count == 0 || where[^1] != ring.BandName)
            where.Add(ring.BandName);
    }

    /// <summary>What the rules for standoffs take that nobody gave.</summary>
    private IEnumerable<Assumption> AssumptionsOf(BarDesign design, Material material)
    {
        yield return new Assumption("standoffs before loading", "straight, but for the imperfection of their buckling curve", Source.Assumed("bars"));
        if (design.Code == DesignCode.En1993)
        {
            if (criteria.Annex is null)
            {
                Source source = design.Metal == MetalKind.StainlessSteel ? new Source("EN 1993-1-4:2006", "5.1 (2), from memory") : Source.En1993_1_1("6.1 (1), recommended values");
                yield return new Assumption($"partial factors of standoffs of {material.Name}", Invariant($"γ_M0 {design.GammaM0}, γ_M1 {design.GammaM1}"), source);
            }
            yield break;
        }
        if (design.Code != DesignCode.AllowableStress)
            yield break;
        if (criteria.BarCodeInUse != DesignCode.AllowableStress)
            yield return new Assumption($"rules for standoffs of {material.Name}", "allowable stress, as the code of the criteria does not cover the metal", Source.Assumed("bars"));
        if (criteria.BarStressFraction is null)
            yield return AllowableStress;
        yield return new Assumption($"safety of standoffs of {material.Name} against elastic buckling", Invariant($"{design.BucklingSafety:0.###}"), Source.CommonPractice);
    }

    private IEnumerable<Assumption> FixingAssumptions(BarDesign design)
    {
        if (design.Code == DesignCode.En1993 && criteria.Annex is null)
            yield return new Assumption($"partial factors of fixings of {(design.Metal == MetalKind.StainlessSteel ? "stainless" : "structural")} standoffs", Invariant($"γ_M0 {design.GammaM0}, γ_M2 {design.GammaM2}"), new Source("EN 1993-1-8:2005", "Table 2.1, recommended values"));
        else if (design.Code == DesignCode.AllowableStress && criteria.BarStressFraction is null)
            yield return AllowableStress;
    }
}
