using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The forces and moments in a cut in gusts, signs and axes as in <see cref="SectionForce"/>. Their peaks do not come at one time.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record GustSectionForce
{
    /// <summary>Axial force; compression is negative.</summary>
    public required GustEffect<Force> Axial { get; init; }

    /// <summary>Shear force along the body's x.</summary>
    public required GustEffect<Force> ShearX { get; init; }

    /// <summary>Shear force along the body's y.</summary>
    public required GustEffect<Force> ShearY { get; init; }

    /// <summary>Bending moment about the body's x.</summary>
    public required GustEffect<Torque> MomentX { get; init; }

    /// <summary>Bending moment about the body's y.</summary>
    public required GustEffect<Torque> MomentY { get; init; }

    /// <summary>Torsional moment about the body's z.</summary>
    public required GustEffect<Torque> Torsion { get; init; }
}
