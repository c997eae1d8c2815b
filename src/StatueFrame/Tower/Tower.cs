using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The stiff inner structure that stands on the pedestal and carries everything: levels from the base up, and a segment
/// between each two neighbors. Limbs are built of the same parts along their own axis.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Tower
{
    private const double LeastStep = 0.001;

    /// <summary>The levels from the base up; at least two. The first one is held by <see cref="Base"/>.</summary>
    public required ValueList<TowerLevel> Levels { get; init; }

    /// <summary>The segments from the base up: item i joins level i to level i + 1.</summary>
    public required ValueList<TowerSegment> Segments { get; init; }

    /// <summary>How the first level is held; rigidly by default.</summary>
    public TowerBase Base { get; init; } = TowerBase.Fixed;

    /// <summary>
    /// A mast that is held at its base: a level at each elevation, named after it as in "2.5 m", and between each two a member
    /// that runs evenly from the section at the lower to that at the upper.
    /// </summary>
    /// <param name="section">The section at an elevation.</param>
    /// <param name="material">What it is made of.</param>
    /// <param name="elevations">Heights above the base, ascending; at least two.</param>
    /// <exception cref="ArgumentNullException">Section or material is null.</exception>
    public static Tower Mast(Func<Length, Section> section, Material material, params ReadOnlySpan<Length> elevations)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(material);
        var levels = new List<TowerLevel>();
        var segments = new List<TowerSegment>();
        Length? below = null;
        foreach (Length z in elevations)
        {
            levels.Add(new TowerLevel(Invariant($"{z.Meters:0.###} m"), z));
            if (below is { } lower)
                segments.Add(new MemberSegment { Section = section(lower), TopSection = section(z), Material = material });
            below = z;
        }
        return new Tower { Levels = levels.ToValueList(), Segments = segments.ToValueList() };
    }

    internal int IndexOfLevel(string name)
    {
        for (int i = 0; i < Levels.Count; i++)
        {
            if (Levels[i]?.Name == name)
                return i;
        }
        return -1;
    }

    /// <summary>The outline that standoffs attach to at a level, about its center; null when nothing gives one.</summary>
    internal PlanCurve? OutlineAt(int level) =>
        Levels[level].Plan?.Outline
        ?? (level > 0 ? Segments[level - 1].OutlineAt(top: true) : null)
        ?? (level < Segments.Count ? Segments[level].OutlineAt(top: false) : null);

    internal void Validate(Validator v)
    {
        var names = new Dictionary<string, int>();
        TowerLevel? below = null;
        foreach ((int i, TowerLevel level, Validator at) in v.Items(Levels, StatueSize.Levels))
        {
            level.Validate(at);
            if (below is not null && level.Elevation.Meters < below.Elevation.Meters + LeastStep)
                at.Add(nameof(TowerLevel.Elevation), $"must be at least 1 mm above the level before it ({QuantityText.Of(level.Elevation)} after {QuantityText.Of(below.Elevation)})", "List the levels from the base up.");
            if (level.Name is { } name && !names.TryAdd(name, i))
                at.Add(nameof(TowerLevel.Name), $"\"{name}\" is also the name of Levels[{names[name]}]", "Level names must be unique in a tower.");
            if (level.Hub is not null && !MeetsLattice(i))
                at.Add(nameof(TowerLevel.Hub), "has no lattice above or below whose legs it could reach", "Leave the hub out: a core or a tube takes the forces itself.");
            below = level;
        }
        if (Levels?.Count < 2)
            v.Add(nameof(Levels), $"must have at least two levels, has {Levels.Count}", "A tower needs a base and a top.");
        if (Segments is not null && Levels is { Count: > 1 } && Segments.Count != Levels.Count - 1)
            v.Add(nameof(Segments), $"must have one item fewer than Levels ({Levels.Count - 1}), has {Segments.Count}", "Segment i joins level i to level i + 1.");
        foreach ((int i, TowerSegment segment, Validator at) in v.Items(Segments, StatueSize.Levels))
        {
            segment.Validate(at);
            if (segment is LatticeSegment lattice && i + 1 < Levels?.Count && Levels[i] is { } bottom && Levels[i + 1] is { } top)
                ValidatePlans(at, lattice, bottom, top);
        }
        v.Required(Base)?.Validate(v.At(nameof(Base)));
    }

    private bool MeetsLattice(int level) => Segments is not null && Segments.Where((segment, i) => (i == level || i == level - 1) && segment is LatticeSegment).Any();

    private static void ValidatePlans(Validator at, LatticeSegment lattice, TowerLevel bottom, TowerLevel top)
    {
        int below = bottom.Plan?.Feet ?? 0, above = top.Plan?.Feet ?? 0;
        if (below == 0 || above == 0)
            at.Add("", $"a lattice needs a plan with legs at \"{bottom.Name}\" and at \"{top.Name}\"", "Set Plan on both levels, as in Plan = TowerPlan.Square(2.Meters).");
        else if (below != above)
            at.Add("", $"the plan has {below} legs at \"{bottom.Name}\" and {above} at \"{top.Name}\"", "Both ends of a lattice panel need as many legs.");
        else if (below is > 2 and < 25 && lattice.Bays is > 0 and < 21)
            ValidateMissing(at, lattice, bottom, top, below);
    }

    private static void ValidateMissing(Validator at, LatticeSegment lattice, TowerLevel bottom, TowerLevel top, int legs)
    {
        if (!at.AtMost(legs * lattice.Bays, StatueSize.LatticeLegs, nameof(LatticeSegment.Bays)) || lattice.Missing is not { Count: > 0 } missing || !Enum.IsDefined(lattice.Bracing))
            return;
        string[] labels = [.. new LatticePanel(lattice with { Missing = [] }, bottom, top).Members.Select(member => member.Label)];
        for (int i = 0; i < Math.Min(missing.Count, labels.Length); i++)
        {
            if (!labels.Contains(missing[i]))
                at.At(nameof(LatticeSegment.Missing), i).Add("", $"there is no member \"{missing[i]}\"", NearNames.Closest(missing[i] ?? "", labels));
        }
        at.AtMost(missing.Count, labels.Length, nameof(LatticeSegment.Missing));
    }
}
