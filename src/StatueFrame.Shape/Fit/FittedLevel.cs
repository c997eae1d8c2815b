using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The largest tower at one level.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Elevation">Height along the body's axis.</param>
/// <param name="Width">Side of the square or diameter of the circle; zero where nothing fits.</param>
/// <param name="Bars">The bars round it; none where nothing fits.</param>
public sealed record FittedLevel(Length Elevation, Length Width, ValueList<FittedBar> Bars)
{
    /// <summary>The level's plan as the tower's description takes it; null where nothing fits.</summary>
    /// <param name="shape">The shape that was fitted.</param>
    public TowerPlan? Plan(TowerShape shape) => Width.Meters < 0.02 ? null : shape == TowerShape.Square ? TowerPlan.Square(Width) : TowerPlan.Round(Width);

    /// <summary>The bars as a ring of the statue's description.</summary>
    /// <param name="level">Name of the level.</param>
    /// <param name="standoff">What the bars are made of.</param>
    public ExplicitRing Ring(string level, Standoff standoff) => new()
    {
        Level = level,
        Bars = [.. Bars.Select(b => new StandoffBar { TowerEnd = b.TowerEnd, SkinEnd = b.SkinEnd, Standoff = standoff })],
    };
}
