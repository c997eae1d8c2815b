using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A rectangular tube with one wall thickness and sharp corners, sides in any order; the weak axis z runs along the
/// longer side.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Rolled tubes have rounded corners: they have some percent less area and
/// stiffness than this. Torsion is Bredt's closed cell plus the wall's own part, J = 4 A_m² t/s + s t³/3, with the area
/// A_m inside the middle line and its length s (the formula of EN 10210-2 without corner radii). Shear areas from the
/// energy of the shear flow along the middle line.
/// </remarks>
/// <param name="SideA">One outer side; 5 mm to 30 m.</param>
/// <param name="SideB">The other outer side; 5 mm to 30 m.</param>
/// <param name="Wall">The wall thickness, less than half of each side; 0.2 mm to 1 m.</param>
public sealed record RectangularTube(Length SideA, Length SideB, Length Wall) : Section
{
    internal override (double Width, double Depth) Envelope => (Math.Max(SideA.Meters, SideB.Meters), Math.Min(SideA.Meters, SideB.Meters));

    /// <inheritdoc/>
    public override string Designation => Describe("rectangular tube", SideA, SideB, Wall);

    private protected override SectionProperties Compute()
    {
        double H = Math.Max(SideA.Meters, SideB.Meters), B = Math.Min(SideA.Meters, SideB.Meters), t = Wall.Meters;
        double hi = H - 2 * t, bi = B - 2 * t, h = H - t, b = B - t;
        double Iy = (B * H * H * H - bi * hi * hi * hi) / 12, Iz = (H * B * B * B - hi * bi * bi * bi) / 12;
        double Am = b * h, s = 2 * (b + h);
        return new SectionProperties(
            A: s * t, Iy, Iz, J: 4 * Am * Am * t / s + s * t * t * t / 3,
            Asy: ShearArea(b, h, t), Asz: ShearArea(h, b, t), Wy: Iy / (H / 2), Wz: Iz / (B / 2));
    }

    internal override Section Blend(Section other, double t)
    {
        RectangularTube end = TaperEnd<RectangularTube>(other);
        return new RectangularTube(Between(SideA, end.SideA, t), Between(SideB, end.SideB, t), Between(Wall, end.Wall, t));
    }

    internal override void Validate(Validator v)
    {
        if (v.Positive(SideA, SideA.Meters, 5e-3, 30) & v.Positive(SideB, SideB.Meters, 5e-3, 30) & v.Positive(Wall, Wall.Meters, 2e-4, 1)
            && 2 * Wall.Meters >= Math.Min(SideA.Meters, SideB.Meters))
        {
            v.Add(nameof(Wall), $"must be less than half of each side ({Designation})", "A bar without a bore is a Rectangle.");
        }
    }

    /// <summary>
    /// I²/∮(S²/t)ds for a force along the walls of length <paramref name="h"/>, with S the first moment of the middle
    /// line: S = t h s/2 in the walls across, from their middle, and t (b h/4 + h²/8 − z²/2) in the walls along.
    /// </summary>
    private static double ShearArea(double h, double b, double t)
    {
        double I = t * h * h * (h / 6 + b / 2);
        double c = b * h / 4 + h * h / 8;
        double along = c * c * h - c * h * h * h / 12 + Math.Pow(h, 5) / 320;
        double across = h * h * b * b * b / 48;
        return I * I / (2 * t * (along + across));
    }
}
