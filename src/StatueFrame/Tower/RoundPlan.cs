using UnitsNet;

namespace StatueFrame;

/// <summary>A circle, for tubes, masts and cores.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Diameter">Outer diameter, where standoffs attach; 0.02 to 60 m.</param>
public sealed record RoundPlan(Length Diameter) : TowerPlan
{
    private const int Sides = 72;

    internal override (double X, double Y)[] Legs => [];

    internal override int Feet => 0;

    internal override PlanCurve Outline => PlanCurve.Ellipse(Diameter.Meters, Diameter.Meters, 0, 0, 0, Sides);

    internal override void Validate(Validator v) => v.Positive(Diameter, Diameter.Meters, 0.02, 60);
}
