using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The plate that takes the force of a member from its fasteners: a gusset, or the splice plates of a leg. Its distances to edges and
/// ends are at least those of the member.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record JointPlate
{
    /// <summary>Thickness, 1 to 200 mm; of splice plates on both faces of one leg of an angle, both together.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Width across the force at the last fastener, 10 mm to 5 m; of plates on both legs of an angle, both together.</summary>
    public required Length Width { get; init; }

    /// <summary>The metal.</summary>
    public required Material Material { get; init; }

    /// <summary>
    /// Length of plate that nothing holds along the force: from the last fastener of a gusset to the weld that holds it, or between the
    /// last fasteners of the two parts of a leg; 0 to 2 m.
    /// </summary>
    public Length FreeLength { get; init; }

    /// <summary>
    /// How far the force is off: of a gusset from its line to the middle of the weld, in the plane of the plate; of a splice from the
    /// centroid of the leg to that of the plates. 0 to 1 m.
    /// </summary>
    public required Length Eccentricity { get; init; }

    /// <summary>True where a brace is fastened to the leg itself, without a gusset: the plate is the leg's own, and no weld holds it.</summary>
    public bool IsLegItself { get; init; }

    /// <summary>Throat of the fillet welds that hold a gusset, one on each face, 1 to 40 mm; null leaves what holds it unchecked. A splice has none.</summary>
    public Length? Throat { get; init; }

    /// <summary>Length of the weld on each face, 20 mm to 5 m; needed with a throat.</summary>
    public Length WeldLength { get; init; }

    /// <summary>The plate on one line, as in "plate 12 mm, 220 mm wide, steel S355".</summary>
    public override string ToString() => FormattableString.Invariant($"plate {Thickness.Millimeters:0.##} mm, {Width.Millimeters:0.##} mm wide, {Material?.Name}");

    /// <summary>The metal at the plate's thickness.</summary>
    internal Material Strength => Material.For(Thickness.Meters);

    internal void Validate(Validator v)
    {
        v.Positive(Thickness, Thickness.Meters, 1e-3, 0.2);
        v.Positive(Width, Width.Meters, 0.01, 5);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Within(FreeLength, FreeLength.Meters, 0, 2);
        v.Within(Eccentricity, Eccentricity.Meters, 0, 1);
        if (Throat is not { } throat)
            return;
        v.Positive(throat, throat.Meters, 1e-3, 0.04, nameof(Throat));
        v.Positive(WeldLength, WeldLength.Meters, 0.02, 5);
    }
}
