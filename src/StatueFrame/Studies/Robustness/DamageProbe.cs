using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Studies;

/// <summary>
/// The few numbers by which removals are compared: for every ring the worst stress over yield strength, for every lattice
/// segment the same, for every limited point its sway over the limit. A bar or a brace is exchanged in the whole statue's
/// stiffness, and its own ring or segment is looked at, with the sway; other parts, and statues with tension-only bracing,
/// are built anew and looked at all over.
/// </summary>
/// <remarks>Immutable and safe to share between threads. The weight of the part itself stays in a quick look.</remarks>
internal sealed class DamageProbe
{
    /// <summary>A change by less than this part does not count as worse.</summary>
    public const double Noticeable = 1e-3;

    private readonly Statue statue;
    private readonly Criteria criteria;
    private readonly ValueList<Situation> situations;
    private readonly StatueModel model;
    private readonly Dictionary<string, double> whole = [];
    private readonly ChangedStatics? changed;

    public DamageProbe(Statue statue, Criteria criteria, ValueList<Situation> situations)
    {
        (this.statue, this.criteria, this.situations) = (statue, criteria, situations);
        model = StatueModel.Build(statue);
        Measure(model, whole);
        changed = model.HasTensionOnly ? null : new ChangedStatics(model, situations);
    }

    /// <summary>How bad the statue is without a part.</summary>
    public ScreenedRemoval Screen(Removal removal)
    {
        if (removal.Kind is RemovalKind.Anchor or RemovalKind.Other)
            return new ScreenedRemoval(removal, null, "", null);
        if (removal.Place is { } place && changed is not null && Quick(removal, place) is { } quick)
            return quick;
        try
        {
            var found = new Dictionary<string, double>();
            Measure(StatueModel.Build(removal.From(statue)), found);
            return Of(removal, found);
        }
        catch (InvalidStatueException e)
        {
            return new ScreenedRemoval(removal, double.PositiveInfinity, "", e.Problems[0].ToString());
        }
    }

    private ScreenedRemoval Of(Removal removal, Dictionary<string, double> found)
    {
        (double worst, string item) = (0, "");
        foreach ((string name, double value) in found)
        {
            if (value > whole.GetValueOrDefault(name) * (1 + Noticeable) && Extremes.Exceeds(value, worst))
                (worst, item) = (value, name);
        }
        return new ScreenedRemoval(removal, worst, item, null);
    }

    /// <summary>The exchange in the whole statue's stiffness; null when that leaves a mechanism.</summary>
    private ScreenedRemoval? Quick(Removal removal, RemovalPlace place)
    {
        var found = new Dictionary<string, double>();
        BodyModel body = model.Bodies[place.Body];
        try
        {
            if (removal.Kind == RemovalKind.Brace)
                MeasureWithout(body.Segments[place.Part], place.Member, found);
            else if (!MeasureWithout(body, place, found))
                return null;
        }
        catch (FrameException)
        {
            return null;
        }
        return Of(removal, found);
    }

    private bool MeasureWithout(BodyModel body, RemovalPlace place, Dictionary<string, double> found)
    {
        ValueList<StandoffRing> rings = place.Body == 0 ? statue.Standoffs : statue.Limbs[place.Body - 1].Standoffs;
        StandoffRing described = rings[place.Part];
        if (ChangedStatics.Placed(body, rings, place.Part, described with { Missing = [.. described.Missing, place.Member] }) is not { } ring)
            return false;
        RingElement before = body.Rings[place.Part];
        int band = model.Rings.First(r => ReferenceEquals(r.Ring, before)).BandInStatue;
        foreach ((Situation situation, LoadCase[] cases) in changed!.With(before, ring, null))
        {
            if (situation.LimitState != LimitState.Strength)
            {
                AddSways(cases, found);
                continue;
            }
            foreach (BarModel bar in ring.Bars)
            {
                foreach (LoadCase loadCase in cases)
                    Raise(found, NameOf(ring), loadCase.StateOf(ring, bar, band).Stress / bar.Bar.Place.Standoff.Material.YieldStrength.Pascals);
            }
        }
        return true;
    }

    private void MeasureWithout(SegmentModel segment, int member, Dictionary<string, double> found)
    {
        var acts = new bool[segment.Members.Count];
        Array.Fill(acts, true);
        acts[member] = false;
        foreach ((Situation situation, LoadCase[] cases) in changed!.With(segment.Element, segment.WithActing(acts), segment))
        {
            if (situation.LimitState == LimitState.Strength)
                AddMembers(segment, cases, member, found);
            else
                AddSways(cases, found);
        }
    }

    private void Measure(StatueModel any, Dictionary<string, double> found)
    {
        foreach (Situation situation in situations.AsSpan())
        {
            Response response = any.Respond(situation);
            if (situation.LimitState != LimitState.Strength)
            {
                AddSways(response.Cases, found);
                continue;
            }
            foreach (BarResult bar in response.Bars)
                Raise(found, $"standoffs of {bar.Band} at {bar.Level}", bar.Stress / bar.Standoff.Material.YieldStrength);
            foreach (SegmentModel segment in any.LatticeSegments)
                AddMembers(segment, response.Cases, -1, found);
        }
    }

    private void AddSways(IReadOnlyList<LoadCase> cases, Dictionary<string, double> found)
    {
        foreach (SwayLimit limit in criteria.Sway)
        {
            foreach (LoadCase loadCase in cases)
                Raise(found, $"sway at {limit.Point}", loadCase.Of(limit.Point).Sway / limit.Limit);
        }
    }

    private static void AddMembers(SegmentModel segment, IReadOnlyList<LoadCase> cases, int missing, Dictionary<string, double> found)
    {
        double yield = ((LatticeSegment)segment.Segment).Material.YieldStrength.Pascals;
        var forces = new double[segment.Members.Count * MemberForces.Count];
        foreach (LoadCase loadCase in cases)
        {
            loadCase.MemberForces(segment, forces);
            for (int i = 0; i < segment.Members.Count; i++)
            {
                if (i == missing)
                    continue;
                MemberForces of = MemberForces.Of(forces.AsSpan(i * MemberForces.Count, MemberForces.Count));
                SectionProperties p = segment.Members[i].Section.Properties;
                Raise(found, $"members of {segment.Name}", (Math.Abs(of.N) / p.A + of.Strong / p.Wy + of.Weak / p.Wz) / yield);
            }
        }
    }

    private static string NameOf(RingElement ring) => $"standoffs of {ring.BandName} at {ring.Level}";

    private static void Raise(Dictionary<string, double> found, string name, double value) =>
        found[name] = Math.Max(value, found.GetValueOrDefault(name));
}
