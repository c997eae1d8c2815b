using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// A member of a tower or limb in its situation: a lattice member under axial force, or a tube under axial force,
/// bending, shear and torsion.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Bending is about the section's principal axes.</remarks>
public sealed record LoadedMember
{
    /// <summary>The section.</summary>
    public required Section Section { get; init; }

    /// <summary>The metal.</summary>
    public required Material Material { get; init; }

    /// <summary>Length between joints, 0.01 to 100 m.</summary>
    public required Length Length { get; init; }

    /// <summary>Axial force; compression is negative.</summary>
    public Force Axial { get; init; }

    /// <summary>Bending moment about the strong axis, without sign.</summary>
    public Torque StrongMoment { get; init; }

    /// <summary>Bending moment about the weak axis, without sign.</summary>
    public Torque WeakMoment { get; init; }

    /// <summary>Resultant shear force, without sign.</summary>
    public Force Shear { get; init; }

    /// <summary>Torsional moment, without sign.</summary>
    public Torque Torsion { get; init; }

    /// <summary>Effective length over length for buckling about the weak axis, 0.1 to 20.</summary>
    public double WeakFactor { get; init; } = 1;

    /// <summary>Effective length over length for buckling about the strong axis, of an angle about its leg, 0.1 to 20.</summary>
    public double StrongFactor { get; init; } = 1;

    /// <summary>Effective length over length for twisting, 0.1 to 20.</summary>
    public double TwistFactor { get; init; } = 1;

    /// <summary>
    /// The effective length over length, about the weak axis, of a brace joined to another in the middle. That holds it in
    /// their plane. Across the plane it does so only when it is pulled as hard, which is not counted on: the weak axis of an
    /// angle lies askew, that of other sections may lie in the plane.
    /// </summary>
    internal static double CrossedFactor(Section section) => section is AngleBar ? 0.5 : 1;

    /// <summary>Elastic critical force of the member as part of its structure; null takes Euler's with the effective lengths.</summary>
    public Force? CriticalForce { get; init; }

    /// <summary>What the moments grow by in second-order theory where the rule does not do it itself, 1 or more.</summary>
    public double Amplification { get; init; } = 1;

    /// <summary>How the ends meet their gussets.</summary>
    public MemberEnds Ends { get; init; } = MemberEnds.Centered;

    /// <summary>True for a leg, false for a brace or horizontal: which rows of the rules for angles hold.</summary>
    public bool IsLeg { get; init; }

    /// <summary>The fasteners at its end; null when there are no holes, or when they are not described.</summary>
    public MemberConnection? Connection { get; init; }

    /// <summary>Where it is, as in "L3–L4, leg 2, bay 1".</summary>
    public string Where { get; init; } = "";

    /// <summary>The name of the situation.</summary>
    public string Situation { get; init; } = "";

    /// <summary>The family of its checks: "tower" for the trunk's, "limbs" for those of a limb.</summary>
    public string Family { get; init; } = "tower";

    /// <summary>Where the forces come from, for the working.</summary>
    internal string When { get; init; } = "";

    /// <summary>How the section comes about, for the working.</summary>
    internal string Note { get; init; } = "";

    internal SectionProperties p => Section.Properties;

    internal double E => Material.YoungsModulus.Pascals;

    internal double G => Material.ShearModulus.Pascals;

    internal double f_y => Material.For(ConnectionChecks.Thickness(Section)).YieldStrength.Pascals;

    internal double f_u => Material.For(ConnectionChecks.Thickness(Section)).UltimateStrength.Pascals;

    internal double L => Length.Meters;

    internal double N => Axial.Newtons;

    internal CheckSubject Subject(string name, string title) => new($"{Family}.{name}", title, Where, Situation);

    /// <summary>Refuses inputs out of range, all at once.</summary>
    internal void Validate(BarDesign design)
    {
        var v = new Validator();
        Section.Validate(v.At(nameof(Section)));
        v.Positive(Length, L, 0.01, 100);
        v.InRange(WeakFactor, 0.1, 20, "It is effective length over length, near 1.");
        v.InRange(StrongFactor, 0.1, 20, "It is effective length over length, near 1.");
        v.InRange(TwistFactor, 0.1, 20, "It is effective length over length, near 1.");
        v.InRange(Amplification, 1, 1e9, "It is second-order over first-order moment.");
        v.Within(Axial, N, -1e9, 1e9);
        v.NotNegative(StrongMoment, StrongMoment.NewtonMeters, 1e10);
        v.NotNegative(WeakMoment, WeakMoment.NewtonMeters, 1e10);
        v.NotNegative(Shear, Shear.Newtons, 1e9);
        v.NotNegative(Torsion, Torsion.NewtonMeters, 1e10);
        if (CriticalForce is { } critical)
            v.Positive(critical, critical.Newtons, 1, 1e12, nameof(CriticalForce));
        Connection?.Validate(v.At(nameof(Connection)), null);
        design.Validate(v.At("Design"));
        v.Defined(Ends);
        v.ThrowIfAny();
    }
}
