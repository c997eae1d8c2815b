using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A flat bar or a plate: a solid rectangle much wider than it is thick. It bends easily about the weak axis z, which
/// runs along the width; the thickness lies along y.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Torsion by the full series of St. Venant; shear area 5/6 of the area
/// both ways. A bar is a beam here: the stiffening of a wide strip by restrained cross-bending, 1/(1 − ν²), is not in it.
/// </remarks>
/// <param name="Width">The long side, at least the thickness; 1 mm to 5 m.</param>
/// <param name="Thickness">The short side; 0.2 mm to 0.5 m.</param>
public sealed record FlatBar(Length Width, Length Thickness) : Section
{
    internal override (double Width, double Depth) Envelope => (Width.Meters, Thickness.Meters);

    /// <inheritdoc/>
    public override string Designation => Describe("flat", Width, Thickness);

    private protected override SectionProperties Compute() => SolidRectangle.Of(Width.Meters, Thickness.Meters);

    internal override Section Blend(Section other, double t)
    {
        FlatBar end = TaperEnd<FlatBar>(other);
        return new FlatBar(Between(Width, end.Width, t), Between(Thickness, end.Thickness, t));
    }

    internal override void Validate(Validator v)
    {
        if (v.Positive(Width, Width.Meters, 1e-3, 5) & v.Positive(Thickness, Thickness.Meters, 2e-4, 0.5)
            && Thickness.Meters > Width.Meters)
        {
            v.Add(nameof(Thickness), $"must not exceed the width ({Designation})", "Were the two swapped?");
        }
    }
}
