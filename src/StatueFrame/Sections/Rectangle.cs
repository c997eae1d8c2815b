using UnitsNet;

namespace StatueFrame;

/// <summary>A solid rectangular bar, sides in any order; the weak axis z runs along the longer side.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Torsion by the full series of St. Venant; shear area 5/6 of the area
/// both ways.
/// </remarks>
/// <param name="SideA">One side; 1 mm to 5 m.</param>
/// <param name="SideB">The other side; 1 mm to 5 m.</param>
public sealed record Rectangle(Length SideA, Length SideB) : Section
{
    internal override (double Width, double Depth) Envelope => (Math.Max(SideA.Meters, SideB.Meters), Math.Min(SideA.Meters, SideB.Meters));

    /// <inheritdoc/>
    public override string Designation => Describe("rectangle", SideA, SideB);

    private protected override SectionProperties Compute()
    {
        double a = SideA.Meters, b = SideB.Meters;
        return SolidRectangle.Of(Math.Max(a, b), Math.Min(a, b));
    }

    internal override Section Blend(Section other, double t)
    {
        Rectangle end = TaperEnd<Rectangle>(other);
        return new Rectangle(Between(SideA, end.SideA, t), Between(SideB, end.SideB, t));
    }

    internal override void Validate(Validator v)
    {
        v.Positive(SideA, SideA.Meters, 1e-3, 5);
        v.Positive(SideB, SideB.Meters, 1e-3, 5);
    }
}
