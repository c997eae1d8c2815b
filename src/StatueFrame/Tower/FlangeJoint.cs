using UnitsNet;

namespace StatueFrame;

/// <summary>A ring flange outside a round tube, welded to it in full, with one circle of bolts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record FlangeJoint : TubeJoint
{
    /// <summary>The bolts.</summary>
    public required Bolt Bolt { get; init; }

    /// <summary>Number of bolts on the circle, 4 to 200, evenly spaced.</summary>
    public required int Count { get; init; }

    /// <summary>Diameter of the circle of bolts; it must clear the tube.</summary>
    public required Length BoltCircle { get; init; }

    /// <summary>Outer diameter of the flange.</summary>
    public required Length OuterDiameter { get; init; }

    /// <summary>Thickness of the flange, 4 to 200 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>What the flange is made of; null takes the member's metal.</summary>
    public Material? Material { get; init; }

    /// <summary>
    /// Pull that each bolt is tightened to, 0 to 2 MN; 0 for bolts that are just tight. It keeps the bolts from tiring; their strength is without it.
    /// </summary>
    public Force PreTension { get; init; }

    /// <summary>The weld between each flange and its tube; null leaves it unchecked.</summary>
    public WeldedTubeJoint? Weld { get; init; }

    /// <summary>
    /// The two flanges as rings from the tube's wall to the outer diameter, and the bolts.
    /// </summary>
    internal override double Mass(MemberSegment tube)
    {
        double outer = OuterDiameter.Meters, inner = tube.Section.OutlineDiameter ?? outer;
        double rings = 2 * Math.PI / 4 * (outer * outer - inner * inner) * Thickness.Meters * (Material ?? tube.Material).Density.KilogramsPerCubicMeter;
        return rings + Count * Bolt.SetMass;
    }

    internal override void Validate(Validator v, Section? section)
    {
        v.Required(Bolt)?.Validate(v.At(nameof(Bolt)));
        v.InRange(Count, 4, 200, "It is the number of bolts on the circle.");
        v.Positive(Thickness, Thickness.Meters, 0.004, 0.2);
        v.Within(PreTension, PreTension.Newtons, 0, 2e6);
        Material?.Validate(v.At(nameof(Material)));
        Weld?.Validate(v.At(nameof(Weld)), section);
        if (Bolt is null || section?.OutlineDiameter is not { } tube)
            return;
        double least = 0.75 * Bolt.d_0;
        v.Within(BoltCircle, BoltCircle.Meters, tube + 2 * least, tube + 2);
        v.Within(OuterDiameter, OuterDiameter.Meters, BoltCircle.Meters + 2 * least, BoltCircle.Meters + 2);
        if (Math.PI * BoltCircle.Meters / Math.Max(Count, 1) < 1.5 * Bolt.d_0)
            v.Add(nameof(Count), "the bolts come too near to each other on their circle", "Leave at least 1.5 hole diameters between centers.");
    }
}
