using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The members that lie in a level of a lattice tower: a horizontal between every two neighboring legs, which brackets stand on
/// and braces push against, and bracing across the plan.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record LevelFrame
{
    /// <summary>Section of the horizontals; its strong axis takes vertical loads.</summary>
    public required Section Horizontals { get; init; }

    /// <summary>The metal of all members.</summary>
    public required Material Material { get; init; }

    /// <summary>
    /// Section of the members across the plan, from every leg to the next but one; null for none. Three legs need none, as a
    /// triangle keeps its shape.
    /// </summary>
    public Section? PlanBracing { get; init; }

    /// <summary>Throat of a fillet weld all round both ends of every horizontal, 1 to 40 mm; null leaves their joints unchecked.</summary>
    public Length? Throat { get; init; }

    /// <summary>The fasteners at both ends of every member across the plan; null leaves their joints unchecked.</summary>
    public MemberConnection? PlanBracingJoint { get; init; }

    /// <summary>The frame on one line, as in "horizontals rectangular tube 200×200×10 mm, welds 6 mm, across the plan angle 70×70×7 mm, steel S355".</summary>
    public override string ToString() => FormattableString.Invariant(
        $"horizontals {Horizontals}, {(Throat is { } throat ? $"welds {throat.Millimeters:0.##} mm" : "joints not described")}, across the plan {PlanBracing?.ToString() ?? "nothing"}, {Material?.Name}");

    internal void Validate(Validator v)
    {
        v.Required(Horizontals)?.Validate(v.At(nameof(Horizontals)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        PlanBracing?.Validate(v.At(nameof(PlanBracing)));
        if (Throat is { } throat)
            v.Positive(throat, throat.Meters, 1e-3, 0.04, nameof(Throat));
        PlanBracingJoint?.Validate(v.At(nameof(PlanBracingJoint)), PlanBracing);
        if (PlanBracingJoint is not null && PlanBracing is null)
            v.Add(nameof(PlanBracingJoint), "joins nothing", $"Give {nameof(PlanBracing)}, or leave it out.");
    }

    /// <summary>The members between legs, each with its two ends and its section.</summary>
    /// <param name="legs">Where the legs stand, m.</param>
    internal IEnumerable<(Vector3D From, Vector3D To, Section Section)> Members(Vector3D[] legs)
    {
        for (int i = 0; i < legs.Length; i++)
            yield return (legs[i], legs[(i + 1) % legs.Length], Horizontals);
        if (PlanBracing is null || legs.Length < 4)
            yield break;
        // Of four legs each pair lies across once.
        for (int i = 0; i < (legs.Length == 4 ? 2 : legs.Length); i++)
            yield return (legs[i], legs[(i + 2) % legs.Length], PlanBracing);
    }

    /// <summary>Mass of a member, kg.</summary>
    internal double MassOf(Vector3D from, Vector3D to, Section section) =>
        Material.Density.KilogramsPerCubicMeter * section.Properties.A * (to - from).Length;
}
