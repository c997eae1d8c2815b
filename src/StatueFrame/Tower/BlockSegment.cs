namespace StatueFrame;

/// <summary>A segment of masonry or concrete that is the tower: a core from level to level, prismatic or tapered.</summary>
/// <remarks>
/// In the analysis it is a beam of the whole, uncracked section; whether it stays whole is told by the checks of cores.
/// Immutable and safe to share between threads.
/// </remarks>
public abstract record BlockSegment : TowerSegment
{
    private protected BlockSegment()
    {
    }

    /// <summary>The section; at the lower end when <see cref="TopSection"/> is given.</summary>
    public required BlockSection Section { get; init; }

    /// <summary>The section at the upper end, of the same shape; null for a prismatic core. Dimensions vary linearly.</summary>
    public BlockSection? TopSection { get; init; }

    internal abstract BlockMaterial Stuff { get; }

    internal BlockSection SectionAt(double t) => TopSection is null ? Section : Section.Blend(TopSection, t);

    internal override PlanCurve? OutlineAt(bool top) => SectionAt(top ? 1 : 0).Contour;

    internal override void Validate(Validator v)
    {
        v.Required(Section)?.Validate(v.At(nameof(Section)));
        TopSection?.Validate(v.At(nameof(TopSection)));
        if (TopSection is not null && Section is not null && TopSection.GetType() != Section.GetType())
            v.Add(nameof(TopSection), $"must have the shape of the lower section ({Section.GetType().Name}), is {TopSection.GetType().Name}", "A core tapers between two sections of one shape.");
    }
}
