namespace StatueFrame;

/// <summary>
/// A lattice panel between two rigid levels: a leg at each corner of the plan, and bracing in each face. The legs are
/// continuous beams; the braces are pin-ended unless the pattern needs them rigid.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LatticeSegment : TowerSegment
{
    /// <summary>Section of the legs.</summary>
    public required Section Legs { get; init; }

    /// <summary>Section of the diagonals.</summary>
    public required Section Braces { get; init; }

    /// <summary>Section of the horizontals between bays; null for the section of the braces. Unused when there is one bay.</summary>
    public Section? Horizontals { get; init; }

    /// <summary>What the members are made of.</summary>
    public required Material Material { get; init; }

    /// <summary>How the faces are braced.</summary>
    public Bracing Bracing { get; init; } = Bracing.Cross;

    /// <summary>Number of bays between the two levels, 1 to 20; the joints between bays move freely and are condensed out exactly.</summary>
    public int Bays { get; init; } = 1;

    /// <summary>
    /// Mass of gussets, splices, rivets and whatever else the members' own sections leave out, as a fraction of the
    /// members' mass: 0 to 1.
    /// </summary>
    public double ConnectionMassFraction { get; init; }

    /// <summary>
    /// The members that are gone, by the names the check sheet gives them, as in "brace a, face 3, bay 1"; none by default.
    /// They carry and weigh nothing and catch no wind.
    /// </summary>
    public ValueList<string> Missing { get; init; } = [];

    /// <summary>How legs are spliced; null when it is not described, which leaves splices unchecked.</summary>
    public MemberConnection? LegSplice { get; init; }

    /// <summary>How diagonals and horizontals are joined to the legs; null when it is not described, which leaves the joints unchecked.</summary>
    public MemberConnection? BraceJoint { get; init; }

    internal override void Validate(Validator v)
    {
        LegSplice?.Validate(v.At(nameof(LegSplice)), Legs);
        BraceJoint?.Validate(v.At(nameof(BraceJoint)), Braces);
        v.Required(Legs)?.Validate(v.At(nameof(Legs)));
        v.Required(Braces)?.Validate(v.At(nameof(Braces)));
        Horizontals?.Validate(v.At(nameof(Horizontals)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.InRange(Bays, 1, 20, "For more bays put levels between them.");
        v.InRange(ConnectionMassFraction, 0, 1, "It is the mass of gussets, splices and rivets over that of the members, near 0.1.");
        v.Defined(Bracing);
        v.Required(Missing);
    }
}
