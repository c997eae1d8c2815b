using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>Takes findings into a description, one after the other.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FindingTaker
{
    private readonly Statue statue;
    private readonly StatueModel model;
    private readonly Validator validator = new();
    private readonly Dictionary<string, Action<Finding>> parts = [];
    private readonly Dictionary<(BodyModel, int), Length> sheets = [];
    private readonly Dictionary<(BodyModel, string, int), Length> bars = [];
    private readonly HashSet<(BodyModel, string, int)> gone = [];
    private readonly Dictionary<(BodyModel, int, LatticeRole?), Length> members = [];
    private readonly HashSet<(BodyModel, int, string)> goneMembers = [];

    public FindingTaker(Statue statue)
    {
        this.statue = statue;
        model = StatueModel.Build(statue);
        foreach (BodyModel body in model.Bodies)
            AddBody(body);
    }

    public List<string> Changes { get; } = [];

    public List<string> NotTaken { get; } = [];

    public void Take(Finding finding)
    {
        if (parts.TryGetValue(InspectionRecord.Plain(finding.Part), out Action<Finding>? take))
            take(finding);
        else
            validator.Add(finding.Part, "is no part of this statue that an inspection can be taken into", NearNames.Closest(InspectionRecord.Plain(finding.Part), parts.Keys));
        if (finding.Condition == PartCondition.Damaged)
            NotTaken.Add(Invariant($"{finding.Part}: damaged, {finding.Date:yyyy-MM-dd}{Said(finding)}; how much it still carries must be judged."));
    }

    public Statue Result()
    {
        validator.ThrowIfAny();
        Statue result = statue with
        {
            Name = $"{statue.Name}, as inspected",
            Tower = TowerOf(model.Bodies[0], statue.Tower),
            Skin = SkinOf(model.Bodies[0], statue.Skin),
            Standoffs = RingsOf(model.Bodies[0], statue.Standoffs),
            Limbs = [.. statue.Limbs.Select((limb, i) => limb with { Tower = TowerOf(model.Bodies[i + 1], limb.Tower), Skin = SkinOf(model.Bodies[i + 1], limb.Skin), Standoffs = RingsOf(model.Bodies[i + 1], limb.Standoffs) })],
        };
        return result;
    }

    private void AddBody(BodyModel body)
    {
        for (int i = 0; i < body.Bands.Length; i++)
        {
            int band = i;
            parts[body.BandName(i)] = f => Sheet(body, band, f);
        }
        foreach (RingElement ring in body.Rings)
        {
            foreach (BarModel bar in ring.Bars)
                parts.TryAdd(InspectionRecord.Plain(bar.Where), f => Bar(body, ring, bar, f));
        }
        for (int s = 0; s < body.Segments.Length; s++)
        {
            int segment = s;
            SegmentModel m = body.Segments[s];
            if (m.Segment is MemberSegment)
                parts[InspectionRecord.Plain(m.Name)] = f => Member(body, segment, null, m.Name, f);
            foreach (LatticeMember member in m.Members)
                parts[InspectionRecord.Plain($"{m.Name}, {member.Label}")] = f => Member(body, segment, member, $"{m.Name}, {member.Label}", f);
        }
    }

    private void Sheet(BodyModel body, int band, Finding f)
    {
        if (f.Condition == PartCondition.Failed)
            NotTaken.Add(Invariant($"{f.Part}: failed, {f.Date:yyyy-MM-dd}{Said(f)}; a hole in the skin is not taken into the model."));
        if (f.Thickness is not { } t)
            return;
        double was = body.Bands[band].MidThickness;
        if (t.Meters > was * 1.02)
        {
            validator.Add(f.Part, Invariant($"{t.Millimeters:0.00} mm is more than the {1000 * was:0.00} mm of the description"), "Was the unit right, or the patina measured with it?");
            return;
        }
        sheets[(body, band)] = Length.FromMeters(Math.Min(t.Meters, was));
        Changes.Add(Invariant($"{f.Part}: sheet {1000 * was:0.00} mm, now {t.Millimeters:0.00} mm, {f.Date:yyyy-MM-dd}{Said(f)}"));
    }

    private void Bar(BodyModel body, RingElement ring, BarModel bar, Finding f)
    {
        // Numbers of one band may go on over several rings: the ring's own number is its place in it.
        var key = (body, RingKey(body, ring), bar.Index + 1);
        if (f.Condition == PartCondition.Failed)
        {
            gone.Add(key);
            Changes.Add(Invariant($"{f.Part}: gone, {f.Date:yyyy-MM-dd}{Said(f)}"));
        }
        else if (f.Thickness is { } t)
        {
            double was = bar.Standoff.Section.Thickness.Meters;
            if (t.Meters > was * 1.02)
            {
                validator.Add(f.Part, Invariant($"{t.Millimeters:0.00} mm is more than the {1000 * was:0.00} mm of the description"), "Was the width measured?");
                return;
            }
            bars[key] = Length.FromMeters(Math.Min(t.Meters, was));
            Changes.Add(Invariant($"{f.Part}: bar {1000 * was:0.00} mm thick, now {t.Millimeters:0.00} mm, {f.Date:yyyy-MM-dd}{Said(f)}"));
        }
    }

    private void Member(BodyModel body, int segment, LatticeMember? member, string name, Finding f)
    {
        if (f.Condition == PartCondition.Failed)
        {
            if (member is null)
                validator.Add(f.Part, "has failed, and the tower stands on it alone", "Close the site: there is no statue to check.");
            else
                goneMembers.Add((body, segment, member.Label));
            Changes.Add(Invariant($"{f.Part}: gone, {f.Date:yyyy-MM-dd}{Said(f)}"));
            return;
        }
        if (f.Thickness is not { } t)
            return;
        Section section = member?.Section ?? ((MemberSegment)body.Segments[segment].Segment).Section;
        double was = Checks.ConnectionChecks.Thickness(section);
        if (t.Meters > was * 1.05)
        {
            validator.Add(f.Part, Invariant($"{t.Millimeters:0.00} mm is more than the {1000 * was:0.00} mm of {section}"), "Is it another part?");
            return;
        }
        var key = (body, segment, member?.Role);
        Length lost = Length.FromMeters(Math.Max(0, was - t.Meters));
        if (!members.TryGetValue(key, out Length most) || lost > most)
            members[key] = lost;
        Changes.Add(Invariant($"{f.Part}: {section} measured {t.Millimeters:0.00} mm thick, taken for all {(member is null ? "of the tube" : $"{member.Role.ToString().ToLowerInvariant()}s")} of {body.Segments[segment].Name}, {f.Date:yyyy-MM-dd}{Said(f)}"));
    }

    private static string Said(Finding f) => (f.Photo.Length > 0 ? $", photo {f.Photo}" : "") + (f.Note.Length > 0 ? $", {f.Note}" : "");

    private static string RingKey(BodyModel body, RingElement ring) => $"{ring.Level}|{Array.IndexOf(body.Rings, ring)}";

    private Tower TowerOf(BodyModel body, Tower tower)
    {
        var segments = new TowerSegment[tower.Segments.Count];
        for (int s = 0; s < segments.Length; s++)
        {
            int at = s;
            segments[s] = tower.Segments[s] switch
            {
                LatticeSegment lattice => lattice with
                {
                    Legs = Thinned(lattice.Legs, LatticeRole.Leg),
                    Braces = Thinned(lattice.Braces, LatticeRole.Brace),
                    Horizontals = lattice.Horizontals is { } h ? Thinned(h, LatticeRole.Horizontal) : null,
                    Missing = [.. lattice.Missing, .. goneMembers.Where(g => g.Item1 == body && g.Item2 == at).Select(g => g.Item3).Order(StringComparer.Ordinal)],
                },
                MemberSegment member => member with { Section = Thinned(member.Section, null), TopSection = member.TopSection is { } top ? Thinned(top, null) : null },
                TowerSegment other => other,
            };

            // What was lost is lost from the faces by halves, as corrosion takes it.
            Section Thinned(Section section, LatticeRole? role) =>
                members.TryGetValue((body, at, role), out Length lost) ? CorrodedSection.Of(section, section is Tube or RectangularTube ? lost.Meters : 0.5 * lost.Meters) : section;
        }
        return tower with { Segments = [.. segments] };
    }

    private Skin? SkinOf(BodyModel body, Skin? skin)
    {
        if (skin is null || !sheets.Keys.Any(k => k.Item1 == body))
            return skin;
        // A station takes the least of the bands that it lies on the edge of or within.
        return skin with
        {
            Stations = [.. skin.Stations.Select(station =>
            {
                double z = station.Elevation.Meters, t = (station.Thickness ?? skin.Thickness).Meters;
                foreach (((BodyModel of, int band), Length measured) in sheets)
                {
                    if (of == body && z >= below(band) - 1e-6 && z <= above(band) + 1e-6)
                        t = Math.Min(t, measured.Meters);
                }
                return station with { Thickness = Length.FromMeters(t) };
            })],
        };

        // The stations between which the band lies, so that a band without a station of its own is thinned all over.
        double below(int band) => skin.Stations.Select(s => s.Elevation.Meters).Where(z => z <= body.Bands[band].Bottom + 1e-6).DefaultIfEmpty(body.Bands[band].Bottom).Max();
        double above(int band) => skin.Stations.Select(s => s.Elevation.Meters).Where(z => z >= body.Bands[band].Top - 1e-6).DefaultIfEmpty(body.Bands[band].Top).Min();
    }

    private ValueList<StandoffRing> RingsOf(BodyModel body, ValueList<StandoffRing> rings)
    {
        var result = new StandoffRing[rings.Count];
        for (int r = 0; r < result.Length; r++)
        {
            RingElement placed = body.Rings[r];
            string key = RingKey(body, placed);
            int[] missing = [.. gone.Where(g => g.Item1 == body && g.Item2 == key).Select(g => g.Item3).Order()];
            result[r] = rings[r] with { Missing = [.. rings[r].Missing.Union(missing).Order()] };
            if (!bars.Keys.Any(k => k.Item1 == body && k.Item2 == key))
                continue;
            result[r] = result[r] switch
            {
                ExplicitRing by => by with { Bars = [.. by.Bars.Select((bar, i) => bar with { Standoff = Thinned(bar.Standoff, i + 1) })] },
                EvenRing even => OneByOne(even, body, placed, Thinned),
                StandoffRing other => other,
            };

            Standoff Thinned(Standoff standoff, int bar) =>
                bars.TryGetValue((body, key, bar), out Length t) ? standoff with { Section = new FlatBar(standoff.Section.Width, t) } : standoff;
        }
        return [.. result];
    }

    /// <summary>An even ring as bars that are each placed by their ends, so that one of them can differ.</summary>
    private static ExplicitRing OneByOne(EvenRing even, BodyModel body, RingElement placed, Func<Standoff, int, Standoff> thinned)
    {
        // Bars that are gone keep their number and their place between their neighbors: they are not built.
        var at = placed.Bars.ToDictionary(bar => bar.Index, bar => bar.Bar.Place);
        BarPlacement any = placed.Bars[0].Bar.Place;
        return new ExplicitRing
        {
            Level = even.Level,
            Band = placed.Band + 1,
            Missing = even.Missing,
            Loose = even.Loose,
            Bracket = even.Bracket,
            Bars =
            [
                .. Enumerable.Range(0, even.Count).Select(i =>
                {
                    BarPlacement place = at.GetValueOrDefault(i, any);
                    Vector3D tower = body.Axes.ToLocal(place.TowerEnd), skin = body.Axes.ToLocal(place.SkinEnd);
                    return new StandoffBar { TowerEnd = Point3.FromMeters(tower), SkinEnd = Point3.FromMeters(skin), Standoff = thinned(even.Standoff, i + 1) };
                }),
            ],
        };
    }
}
