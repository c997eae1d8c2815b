using UnitsNet;

namespace StatueFrame;

/// <summary>One member from level to level: a tube, a mast, a solid bar; prismatic or tapered.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MemberSegment : TowerSegment
{
    /// <summary>The section; at the lower end when <see cref="TopSection"/> is given.</summary>
    public required Section Section { get; init; }

    /// <summary>The section at the upper end, of the same shape; null for a prismatic member. Dimensions vary linearly.</summary>
    public Section? TopSection { get; init; }

    /// <summary>What the member is made of.</summary>
    public required Material Material { get; init; }

    /// <summary>
    /// Turn of the section about the member's axis, −360° to 360°. At 0 the strong axis y of the section lies along the tower's y axis,
    /// so that bending in the x–z plane meets the greater stiffness.
    /// </summary>
    public Angle Roll { get; init; }

    /// <summary>How its lower end is joined to what stands below; null when it is not described, which leaves it unchecked.</summary>
    public TubeJoint? LowerJoint { get; init; }

    internal Section SectionAt(double t) => TopSection is null ? Section : Section.Blend(TopSection, t);

    internal override PlanCurve? OutlineAt(bool top) =>
        SectionAt(top ? 1 : 0).OutlineDiameter is { } d ? PlanCurve.Ellipse(d, d, 0, 0, 0, 72) : null;

    internal override void Validate(Validator v)
    {
        v.Required(Section)?.Validate(v.At(nameof(Section)));
        TopSection?.Validate(v.At(nameof(TopSection)));
        if (TopSection is not null && Section is not null && !TopSection.SameShape(Section))
            v.Add(nameof(TopSection), $"must have the shape of the lower section ({Section.GetType().Name}), is {TopSection.GetType().Name}", "A member tapers between two sections of one shape.");
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Within(Roll, Roll.Degrees, -360, 360);
        LowerJoint?.Validate(v.At(nameof(LowerJoint)), Section);
    }
}
