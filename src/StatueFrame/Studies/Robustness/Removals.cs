using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>All single parts that a statue could lose, kind by kind.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class Removals
{
    /// <summary>All removals of a statue: standoffs, saddles, rings, braces, anchors, in the order of the description.</summary>
    /// <param name="statue">The statue.</param>
    /// <exception cref="InvalidStatueException">The description has problems, all of which are listed.</exception>
    public static IReadOnlyList<Removal> Of(Statue statue)
    {
        ArgumentNullException.ThrowIfNull(statue);
        if (statue.FindProblems() is { Count: > 0 } problems)
            throw new InvalidStatueException(problems);
        var all = new List<Removal>();
        foreach (Body body in Body.Of(statue))
        {
            for (int i = 0; i < body.Rings.Count; i++)
                all.AddRange(OfRing(body, i));
            for (int i = 0; i < body.Tower.Segments.Count; i++)
                all.AddRange(Braces(body, i));
        }
        all.AddRange(Anchors(statue));
        return [.. all.OrderBy(removal => removal.Kind)];
    }

    private static IEnumerable<Removal> OfRing(Body body, int at)
    {
        StandoffRing ring = body.Rings[at];
        int[] holding = [.. Enumerable.Range(1, ring.BarCount).Where(ring.Holds)];
        string where = body.Prefix + ring.Level + (body.Rings.Count(other => other.Level == ring.Level) > 1 ? string.Create(CultureInfo.InvariantCulture, $", ring {at + 1}") : "");
        yield return new Removal(RemovalKind.Ring, where, statue => body.With(statue, rings => rings.Where((_, i) => i != at).ToValueList()));
        if (holding.Length < 2)
            yield break;
        foreach (int bar in holding)
        {
            string label = string.Create(CultureInfo.InvariantCulture, $"{where}, bar {bar}");
            yield return new Removal(RemovalKind.Bar, label, Change(r => r with { Missing = [.. r.Missing, bar] })) { Place = new RemovalPlace(body.Limb + 1, at, bar) };
            yield return new Removal(RemovalKind.Saddle, label, Change(r => r with { Loose = [.. r.Loose, bar] })) { Place = new RemovalPlace(body.Limb + 1, at, bar) };
        }

        Func<Statue, Statue> Change(Func<StandoffRing, StandoffRing> change) => statue => body.With(statue, rings => rings.With(at, change(rings[at])));
    }

    private static IEnumerable<Removal> Braces(Body body, int at)
    {
        if (body.Tower.Segments[at] is not LatticeSegment lattice)
            yield break;
        TowerLevel lower = body.Tower.Levels[at], upper = body.Tower.Levels[at + 1];
        IReadOnlyList<LatticeMember> members = new LatticePanel(lattice, lower, upper).Members;
        for (int i = 0; i < members.Count; i++)
        {
            LatticeMember member = members[i];
            if (member.Role != LatticeRole.Brace)
                continue;
            yield return new Removal(RemovalKind.Brace, $"{body.Prefix}{lower.Name}–{upper.Name}, {member.Label}", statue => body.With(statue, tower =>
            {
                var whole = (LatticeSegment)tower.Segments[at];
                return tower with { Segments = tower.Segments.With(at, whole with { Missing = [.. whole.Missing, member.Label] }) };
            }))
            { Place = new RemovalPlace(body.Limb + 1, at, i) };
        }
    }

    private static IEnumerable<Removal> Anchors(Statue statue)
    {
        for (int i = 0; i < statue.HoldDown?.Bars.Count; i++)
        {
            int at = i;
            yield return new Removal(RemovalKind.Anchor, string.Create(CultureInfo.InvariantCulture, $"anchor {i + 1}"), whole => whole with
            {
                HoldDown = whole.HoldDown! with { Bars = whole.HoldDown.Bars.Where((_, bar) => bar != at).ToValueList() },
            });
        }
    }

    /// <summary>The trunk (limb −1) or a limb, and how to put a changed one back.</summary>
    private sealed record Body(int Limb, string Prefix, Tower Tower, ValueList<StandoffRing> Rings)
    {
        public static IEnumerable<Body> Of(Statue statue) =>
            statue.Limbs.Select((limb, i) => new Body(i, limb.Name + "/", limb.Tower, limb.Standoffs)).Prepend(new Body(-1, "", statue.Tower, statue.Standoffs));

        public Statue With(Statue statue, Func<ValueList<StandoffRing>, ValueList<StandoffRing>> change) => Limb < 0
            ? statue with { Standoffs = change(statue.Standoffs) }
            : statue with { Limbs = statue.Limbs.With(Limb, statue.Limbs[Limb] with { Standoffs = change(statue.Limbs[Limb].Standoffs) }) };

        public Statue With(Statue statue, Func<Tower, Tower> change) => Limb < 0
            ? statue with { Tower = change(statue.Tower) }
            : statue with { Limbs = statue.Limbs.With(Limb, statue.Limbs[Limb] with { Tower = change(statue.Limbs[Limb].Tower) }) };
    }
}
