using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>The hollow section whose face a ring of brackets stands on, or why there is none.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Section">The section; null where there is none.</param>
/// <param name="Material">Its metal.</param>
/// <param name="IsUpright">Whether vertical loads on a bracket bend in the plane of its axis.</param>
/// <param name="IsAslant">Whether its axis lies aslant, so that neither plane is known.</param>
/// <param name="Lacks">Why there is none.</param>
internal sealed record BracketChord(Section? Section, Material? Material, bool IsUpright, bool IsAslant, string? Lacks)
{
    /// <summary>How much of its yield stress the section is pressed with by what else it carries, 0 to 1.</summary>
    public double Pressed { get; init; } = 1;

    /// <summary>What the brackets of a ring stand on.</summary>
    public static BracketChord Under(BodyModel body, RingElement ring)
    {
        int level = body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..]);
        if (body.Tower.Levels[level].Frame is { } frame)
            return Of(frame.Horizontals, frame.Material, isUpright: false);
        TowerSegment[] near = [.. body.Segments.Where((_, i) => i == level - 1 || i == level).Select(s => s.Segment)];
        (Section Section, Material Material)[] tubes =
            [.. body.Segments.Select((s, i) => (s.Segment, i)).Where(s => (s.i == level - 1 || s.i == level) && s.Segment is MemberSegment).Select(s => (((MemberSegment)s.Segment).SectionAt(s.i == level ? 0 : 1), ((MemberSegment)s.Segment).Material))];
        return near.Any(segment => segment is LatticeSegment) ? new(null, null, false, false, $"what they stand on is not described ({nameof(TowerLevel)}.{nameof(TowerLevel.Frame)})")
            : tubes.Length > 0 ? Of(tubes.MinBy(tube => ConnectionChecks.Thickness(tube.Section)).Section, tubes.MinBy(tube => tube.Material.YieldStrength.Pascals).Material, isUpright: true)
            : new(null, null, false, false, "what holds them in a core or in masonry is not worked out");

        BracketChord Of(Section section, Material material, bool isUpright) => section is Tube or RectangularTube
            ? new(section, material, isUpright, body.Prefix.Length > 0, null)
            : new(null, null, false, false, $"local bending of {section} under them is not worked out; hollow sections are");
    }
}
