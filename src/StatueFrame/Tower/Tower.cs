namespace StatueFrame;

/// <summary>
/// The stiff inner structure that stands on the pedestal and carries everything: levels from the base up, and a segment
/// between each two neighbors. Limbs are built of the same parts along their own axis.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Tower
{
    /// <summary>The levels from the base up; at least two. The first one is held by <see cref="Base"/>.</summary>
    public required ValueList<TowerLevel> Levels { get; init; }

    /// <summary>The segments from the base up: item i joins level i to level i + 1.</summary>
    public required ValueList<TowerSegment> Segments { get; init; }

    /// <summary>How the first level is held; rigidly by default.</summary>
    public TowerBase Base { get; init; } = TowerBase.Fixed;

    internal int IndexOfLevel(string name)
    {
        for (int i = 0; i < Levels.Count; i++)
        {
            if (Levels[i].Name == name)
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
        for (int i = 0; i < Levels.Count; i++)
        {
            Validator at = v.At(nameof(Levels), i);
            Levels[i].Validate(at);
            if (i > 0 && Levels[i].Elevation.Meters < Levels[i - 1].Elevation.Meters + 0.001)
                at.Add(nameof(TowerLevel.Elevation), $"must lie above the level before ({Levels[i].Elevation} after {Levels[i - 1].Elevation})", "List the levels from the base up.");
            if (IndexOfLevel(Levels[i].Name) is var first && first >= 0 && first < i)
                at.Add(nameof(TowerLevel.Name), $"\"{Levels[i].Name}\" is also the name of Levels[{first}]", "Level names must be unique in a tower.");
        }
        if (Levels.Count < 2)
            v.Add(nameof(Levels), $"must have at least two levels, has {Levels.Count}", "A tower needs a base and a top.");
        if (Segments.Count != Levels.Count - 1)
            v.Add(nameof(Segments), $"must have one item fewer than Levels ({Levels.Count - 1}), has {Segments.Count}", "Segment i joins level i to level i + 1.");
        for (int i = 0; i < Segments.Count; i++)
        {
            Validator at = v.At(nameof(Segments), i);
            Segments[i].Validate(at);
            if (Segments[i] is LatticeSegment && i + 1 < Levels.Count)
                ValidatePlans(at, Levels[i], Levels[i + 1]);
        }
        Base.Validate(v.At(nameof(Base)));
    }

    private static void ValidatePlans(Validator at, TowerLevel bottom, TowerLevel top)
    {
        int below = bottom.Plan?.Legs.Length ?? 0, above = top.Plan?.Legs.Length ?? 0;
        if (below < 3 || above < 3)
            at.Add("", $"a lattice needs a plan with legs at \"{bottom.Name}\" and at \"{top.Name}\"", "Set Plan on both levels, as in Plan = TowerPlan.Square(2.Meters).");
        else if (below != above)
            at.Add("", $"the plan has {below} legs at \"{bottom.Name}\" and {above} at \"{top.Name}\"", "Both ends of a lattice panel need as many legs.");
    }
}
