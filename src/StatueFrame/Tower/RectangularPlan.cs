using UnitsNet;

namespace StatueFrame;

/// <summary>A rectangle of four legs with sides parallel to x and y.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="WidthX">Distance between leg axes along x, 0.02 to 60 m.</param>
/// <param name="WidthY">Distance between leg axes along y, 0.02 to 60 m.</param>
public sealed record RectangularPlan(Length WidthX, Length WidthY) : TowerPlan
{
    internal override (double X, double Y)[] Legs
    {
        get
        {
            double x = 0.5 * WidthX.Meters, y = 0.5 * WidthY.Meters;
            return [(x, y), (-x, y), (-x, -y), (x, -y)];
        }
    }

    internal override int Feet => 4;

    internal override PlanCurve Outline => Through(Legs);

    internal override void Validate(Validator v)
    {
        v.Positive(WidthX, WidthX.Meters, 0.02, 60);
        v.Positive(WidthY, WidthY.Meters, 0.02, 60);
    }
}
