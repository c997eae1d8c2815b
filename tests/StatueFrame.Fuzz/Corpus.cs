using UnitsNet;

namespace StatueFrame.Fuzz;

/// <summary>The files that are spoiled: the Heron cut down to a size that is checked in a blink, in several ways.</summary>
internal static class Corpus
{
    /// <summary>Files whose sheet is small, as text.</summary>
    public static string[] Small()
    {
        StatueDocument heron = StatueFile.Load(Path.Combine(Testing.Repository.Root, "docs", "examples", "saltmere-heron.json"));
        return [.. new[] { Body(heron, "L2"), Neck(heron), Wing(heron), Bare(heron) }.Select(StatueFile.Write)];
    }

    /// <summary>Files with everything that acts on the whole figure and every limit it has, as text: a sheet of them takes longer.</summary>
    public static string[] Whole()
    {
        StatueDocument heron = StatueFile.Load(Path.Combine(Testing.Repository.Root, "docs", "examples", "saltmere-heron.json"));
        return [.. new[] { Body(heron, "L2"), Neck(heron), Wing(heron) }.Select(cut => StatueFile.Write(cut with
        {
            // Steel of less strength relaxes more: without relaxation the forces do not ask for the strength.
            Statue = cut.Statue with { HoldDown = cut.Statue.HoldDown! with { Losses = cut.Statue.HoldDown.Losses! with { Relaxation1000Hours = 0 } } },
            Actions = heron.Actions! with { Variable = [.. heron.Actions.Variable.Select(v => v.Action is WindAction ? v with { Action = cut.Actions!.Variable[0].Action } : v)] },
            Criteria = heron.Criteria with { Sway = cut.Criteria.Sway, Modes = 3, AcrossWind = heron.Criteria.AcrossWind! with { Sections = [.. heron.Criteria.AcrossWind!.Sections.Take(1 + cut.Statue.Limbs.Count)] } },
        }))];
    }

    private static StatueDocument Body(StatueDocument heron, string top) => Cut(heron, 2.Meters, top, []);

    private static StatueDocument Bare(StatueDocument heron) => Cut(heron, 0.Meters, "L2", []);

    /// <summary>The two lowest panels with a tube of the neck on top.</summary>
    private static StatueDocument Neck(StatueDocument heron)
    {
        StatueDocument cut = Cut(heron, 2.Meters, "L3", []);
        var tube = (MemberSegment)heron.Statue.Tower.Segments[^1];
        return cut with { Statue = cut.Statue with { Tower = cut.Statue.Tower with { Segments = [.. cut.Statue.Tower.Segments.SkipLast(1), tube] } } };
    }

    private static StatueDocument Wing(StatueDocument heron)
    {
        Limb wing = heron.Statue.Limbs[0];
        var few = wing with
        {
            From = "L2",
            Tower = wing.Tower with { Levels = [.. wing.Tower.Levels.Take(3)], Segments = [.. wing.Tower.Segments.Take(2)] },
            Skin = wing.Skin! with { Stations = [wing.Skin.Stations[0], wing.Skin.Stations[^1] with { Elevation = 5.Meters }], BandEdges = [wing.Skin.Stations[0].Elevation, 3.4.Meters, 5.Meters], Joints = [] },
            Standoffs = [.. wing.Standoffs.Take(2).Select(r => ((EvenRing)r) with { Count = 6 })],
        };
        return Cut(heron, 2.Meters, "L2", [few]);
    }

    private static StatueDocument Cut(StatueDocument heron, Length clad, string top, ValueList<Limb> limbs)
    {
        Statue statue = heron.Statue.CladUpTo(clad);
        int last = statue.Tower.Levels.ToList().FindIndex(l => l.Name == top);
        statue = statue with
        {
            Tower = statue.Tower with { Levels = [.. statue.Tower.Levels.Take(last + 1)], Segments = [.. statue.Tower.Segments.Take(last)] },
            Standoffs = [.. statue.Standoffs.Select(r => ((EvenRing)r) with { Count = 6 })],
            Limbs = limbs,
            Points = [new NamedPoint("tip", top)],
            Fittings = [new Fitting { Name = "lamp", On = top, Mass = 50.Kilograms }],
        };
        WindAction wind = heron.Actions!.Variable.Select(v => v.Action).OfType<WindAction>().First() with { GustByBand = [], GustEffectFactor = 1.3, Headings = [0.Degrees, 100.Degrees] };
        return heron with
        {
            Statue = statue,
            Actions = new CharacteristicActions { Variable = [wind] },
            Criteria = new Criteria { Sway = [new SwayLimit("tip", 50.Millimeters)], Damping = heron.Criteria.Damping, Base = heron.Criteria.Base, Skin = heron.Criteria.Skin, Modes = 3 },
        };
    }
}
