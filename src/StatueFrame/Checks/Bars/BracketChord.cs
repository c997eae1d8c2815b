using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>The hollow section, or the leg of a lattice, whose face a ring of standoffs, their brackets or the root of a limb or a horizontal stands on, or why there is none.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Section">The section; null where there is none.</param>
/// <param name="Material">Its metal.</param>
/// <param name="Up">The axis of the tower or limb.</param>
/// <param name="IsUpright">Whether it stands along that axis; else it lies in a level, across what stands on it.</param>
/// <param name="Lacks">Why there is none.</param>
internal sealed record BracketChord(Section? Section, Material? Material, Vector3D Up, bool IsUpright, string? Lacks)
{
    /// <summary>How much of its yield stress the section is pressed with by what else it carries, 0 to 1.</summary>
    public double Pressed { get; init; } = 1;

    /// <summary>The direction of its axis under something that stands on it along another.</summary>
    public Vector3D Along(Vector3D standing)
    {
        Vector3D across = Up.Cross(standing);
        return IsUpright || across.Length < 1e-9 ? Up : across.Normalized();
    }

    /// <summary>What a ring stands on.</summary>
    public static BracketChord Under(BodyModel body, RingElement ring)
    {
        int level = body.Tower.IndexOfLevel(ring.Level[body.Prefix.Length..]);
        Vector3D up = body.Axes.Axes.Z;
        if (body.Tower.Levels[level].Frame is { } frame)
            return OfSection(frame.Horizontals, frame.Material, up, isUpright: false);
        return OfTubes(body, level);
    }

    /// <summary>The weaker of the tubes that meet at a level.</summary>
    public static BracketChord OfTubes(BodyModel body, int level)
    {
        Vector3D up = body.Axes.Axes.Z;
        (TowerSegment Segment, double End)[] near = [.. body.Segments.Select((s, i) => (s.Segment, i)).Where(s => s.i == level - 1 || s.i == level).Select(s => (s.Segment, s.i == level ? 0.0 : 1.0))];
        if (Array.Exists(near, at => at.Segment is LatticeSegment))
            return None($"what they stand on is not described ({nameof(TowerLevel)}.{nameof(TowerLevel.Frame)})");
        (Section Section, Material Material)[] tubes = [.. near.Where(at => at.Segment is MemberSegment).Select(at => (((MemberSegment)at.Segment).SectionAt(at.End), ((MemberSegment)at.Segment).Material))];
        return tubes.Length == 0 ? None("what holds them in a core or in masonry is not worked out")
            : OfSection(tubes.MinBy(tube => ConnectionChecks.Thickness(tube.Section)).Section, tubes.MinBy(tube => tube.Material.YieldStrength.Pascals).Material, up, isUpright: true);

        BracketChord None(string why) => new(null, null, up, false, why);
    }

    /// <summary>The weaker of the legs of lattices that meet at a level.</summary>
    public static BracketChord OfLegs(BodyModel body, int level)
    {
        LatticeSegment[] near = [.. body.Segments.Where((_, i) => i == level - 1 || i == level).Select(s => s.Segment).OfType<LatticeSegment>()];
        if (near.Length == 0)
            return new(null, null, body.Axes.Axes.Z, true, "no lattice meets the level, whose legs could hold it");
        (Section legs, Material metal) = (near.MinBy(lattice => ConnectionChecks.Thickness(lattice.Legs))!.Legs, near.MinBy(lattice => lattice.Material.YieldStrength.Pascals)!.Material);
        return legs is AngleBar ? new(legs, metal, body.Axes.Axes.Z, IsUpright: true, null) : OfSection(legs, metal, body.Axes.Axes.Z, isUpright: true);
    }

    private static BracketChord OfSection(Section section, Material material, Vector3D up, bool isUpright) => section is Tube or RectangularTube
        ? new(section, material, up, isUpright, null)
        : new(null, null, up, false, $"local bending of {section} under what stands on it is not worked out; that of hollow sections is");
}
