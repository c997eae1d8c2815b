using UnitsNet;

namespace StatueFrame;

/// <summary>A rigid block or mat of concrete in the ground, centered under the tower's base, that carries pedestal and statue.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Earth on top of the block and earth pressure against its sides are not
/// counted; both help.
/// </remarks>
public sealed record Foundation
{
    /// <summary>Width along x, 0.2 to 100 m.</summary>
    public required Length WidthX { get; init; }

    /// <summary>Width along y, 0.2 to 100 m.</summary>
    public required Length WidthY { get; init; }

    /// <summary>Thickness, 0.05 to 30 m.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Depth of its underside below the ground, 0 to 30 m.</summary>
    public required Length Depth { get; init; }

    /// <summary>What it is cast of.</summary>
    public required Concrete Material { get; init; }

    /// <summary>Bars in it; null for plain concrete, which must not crack.</summary>
    public FootingReinforcement? Reinforcement { get; init; }

    /// <summary>The ground.</summary>
    public required Soil Soil { get; init; }

    /// <summary>Friction angle between base and ground; null takes that of the soil, cast in place (EN 1997-1, 6.5.3 (10)).</summary>
    public Angle? BaseFriction { get; init; }

    internal PlanArea Plan => PlanArea.Rectangle(WidthX.Meters, WidthY.Meters);

    internal double Weight => WidthX.Meters * WidthY.Meters * Thickness.Meters * Material.Weight;

    internal void Validate(Validator v)
    {
        v.Positive(WidthX, WidthX.Meters, 0.2, 100);
        v.Positive(WidthY, WidthY.Meters, 0.2, 100);
        v.Positive(Thickness, Thickness.Meters, 0.05, 30);
        v.NotNegative(Depth, Depth.Meters, 30);
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        Reinforcement?.Validate(v.At(nameof(Reinforcement)), Thickness.Meters);
        v.Required(Soil)?.Validate(v.At(nameof(Soil)));
        if (BaseFriction is { } friction)
            v.Within(friction, friction.Degrees, 0, 50, nameof(BaseFriction));
    }
}
