using UnitsNet;

namespace StatueFrame;

/// <summary>A regular polygon of three or more legs on a circle.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="LegCount">Number of legs, 3 to 24.</param>
/// <param name="Diameter">Diameter of the circle through the leg axes, 0.02 to 60 m.</param>
/// <param name="FirstLeg">Plan angle of the first leg, anticlockwise from +x, −360° to 360°.</param>
public sealed record PolygonPlan(int LegCount, Length Diameter, Angle FirstLeg = default) : TowerPlan
{
    internal override (double X, double Y)[] Legs
    {
        get
        {
            var legs = new (double, double)[LegCount];
            for (int i = 0; i < LegCount; i++)
            {
                (double sin, double cos) = Math.SinCos(FirstLeg.Radians + 2 * Math.PI * i / LegCount);
                legs[i] = (0.5 * Diameter.Meters * cos, 0.5 * Diameter.Meters * sin);
            }
            return legs;
        }
    }

    internal override int Feet => LegCount;

    internal override PlanCurve Outline => Through(Legs);

    internal override void Validate(Validator v)
    {
        v.InRange(LegCount, 3, 24, "A tower with more legs is a RoundPlan with a CoreSegment.");
        v.Positive(Diameter, Diameter.Meters, 0.02, 60);
        v.Within(FirstLeg, FirstLeg.Degrees, -360, 360);
    }
}
