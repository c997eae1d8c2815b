using UnitsNet;

namespace StatueFrame;

/// <summary>A circle of masonry or concrete, solid or with a round hollow in the middle.</summary>
/// <remarks>Immutable and safe to share between threads. Shear as Cowper's for round tubes with ν = 0.3.</remarks>
/// <param name="Diameter">Outer diameter, 0.05 to 60 m.</param>
public sealed record RoundBlock(Length Diameter) : BlockSection
{
    /// <summary>Diameter of the hollow, zero for a solid block, else smaller than the outer one.</summary>
    public Length Hollow { get; init; }

    internal override PlanArea Plan
    {
        get
        {
            PlanArea solid = PlanArea.Disc(Diameter.Meters);
            return Hollow.Meters > 0 ? solid.Without(PlanArea.Disc(Hollow.Meters)) : solid;
        }
    }

    internal override (double X, double Y) Widths => (Diameter.Meters, Diameter.Meters);

    internal override double J => 2 * Plan.Whole.XX;

    internal override (double X, double Y) ShearAreas
    {
        get
        {
            double shear = Plan.Whole.A * Tube.ShearCoefficient(Hollow / Diameter);
            return (shear, shear);
        }
    }

    internal override PlanCurve Contour => PlanCurve.Ellipse(Diameter.Meters, Diameter.Meters, 0, 0, 0, 72);

    internal override BlockSection Blend(BlockSection other, double t)
    {
        var end = (RoundBlock)other;
        return new RoundBlock(Between(Diameter, end.Diameter, t)) { Hollow = Between(Hollow, end.Hollow, t) };
    }

    internal override void Validate(Validator v)
    {
        if (v.Positive(Diameter, Diameter.Meters, 0.05, 60) && v.NotNegative(Hollow, Hollow.Meters, 60) && Hollow.Meters > 0.98 * Diameter.Meters)
            v.Add(nameof(Hollow), "leaves a wall thinner than 1 % of the diameter", "The hollow must be smaller than the block.");
    }
}
