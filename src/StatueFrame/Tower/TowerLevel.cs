using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A height on a tower where things attach. In the analysis it is a rigid plan that moves with six degrees of freedom.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">Short name, unique in its tower, as in "L7" or "neck".</param>
/// <param name="Elevation">Distance along the tower's axis from its base; levels are listed from the base up, at least 1 mm apart; −1 to 1000 m.</param>
public sealed record TowerLevel(string Name, Length Elevation)
{
    /// <summary>Offset of the plan's center from the tower's axis along x, −100 to 100 m; 0 unless the tower leans or steps.</summary>
    public Length OffsetX { get; init; }

    /// <summary>Offset of the plan's center from the tower's axis along y, −100 to 100 m; 0 unless the tower leans or steps.</summary>
    public Length OffsetY { get; init; }

    /// <summary>
    /// The plan of the tower at this level: where the legs of a lattice stand, and what standoffs attach to. Null for a
    /// tower whose member sections or stiffness say enough; lattice segments need one at both ends.
    /// </summary>
    public TowerPlan? Plan { get; init; }

    /// <summary>
    /// The horizontals and plan bracing of a lattice at this level; null leaves them without mass and strength, which the sheet
    /// lists as open. Needs a <see cref="Plan"/> with legs.
    /// </summary>
    public LevelFrame? Frame { get; init; }

    /// <summary>
    /// The arms that hand to the legs what a tube on the lattice, or a limb that starts here, brings to the level; null leaves the way of
    /// these forces open. Needs a <see cref="Plan"/> with legs.
    /// </summary>
    public Hub? Hub { get; init; }

    /// <summary>All members that lie in the level: those of its frame, and the arms of its hub from the middle to every leg.</summary>
    internal IEnumerable<LevelMember> Members
    {
        get
        {
            Vector3D[] legs = Legs;
            foreach ((Vector3D from, Vector3D to, Section section) in Frame?.Members(legs) ?? [])
                yield return new(from, to, section, Frame!.Material);
            if (Hub is null)
                yield break;
            foreach (Vector3D leg in legs)
                yield return new(Center, leg, Hub.Arms, Hub.Material);
        }
    }

    /// <summary>Whether its frame keeps the shape of the plan: a triangle does by itself, the arms of a hub brace any.</summary>
    internal bool IsBraced => Frame is not null && (Plan!.Feet == 3 || Frame.PlanBracing is not null || Hub is not null);

    /// <summary>Where the legs stand, m; empty without legs.</summary>
    internal Vector3D[] Legs => Plan is null ? [] : Array.ConvertAll(Plan.Legs, leg => Center + new Vector3D(leg.X, leg.Y, 0));

    internal Vector3D Center => new(OffsetX.Meters, OffsetY.Meters, Elevation.Meters);

    internal void Validate(Validator v)
    {
        v.Named(Name);
        if (Name?.Contains('/') == true)
            v.Add(nameof(Name), $"must not contain '/', is \"{Name}\"", "The slash separates a limb's name from its parts.");
        v.Within(Elevation, Elevation.Meters, -1, 1000);
        v.Within(OffsetX, OffsetX.Meters, -100, 100);
        v.Within(OffsetY, OffsetY.Meters, -100, 100);
        Plan?.Validate(v.At(nameof(Plan)));
        Frame?.Validate(v.At(nameof(Frame)));
        if (Frame is not null && (Plan is null || Plan.Feet < 3))
            v.Add(nameof(Frame), "has no legs to lie between", "Give the level a Plan with legs, or leave the frame out.");
        Hub?.Validate(v.At(nameof(Hub)));
        if (Hub is not null && (Plan is null || Plan.Feet < 3))
            v.Add(nameof(Hub), "has no legs to hand forces to", "Give the level a Plan with legs, or leave the hub out.");
    }
}
