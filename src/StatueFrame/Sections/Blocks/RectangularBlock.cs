using UnitsNet;

namespace StatueFrame;

/// <summary>A rectangle of masonry or concrete with sides parallel to x and y, solid or with a rectangular hollow in the middle.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Torsion by the full series when solid, by Bredt's closed cell when hollow;
/// 5/6 of the walls along a shear force take it.
/// </remarks>
/// <param name="WidthX">Outer width along x, 0.05 to 60 m.</param>
/// <param name="WidthY">Outer width along y, 0.05 to 60 m.</param>
public sealed record RectangularBlock(Length WidthX, Length WidthY) : BlockSection
{
    /// <summary>Width of the hollow along x; zero with <see cref="HollowY"/> for a solid block, else smaller than the outer width.</summary>
    public Length HollowX { get; init; }

    /// <summary>Width of the hollow along y; zero with <see cref="HollowX"/> for a solid block, else smaller than the outer width.</summary>
    public Length HollowY { get; init; }

    private bool IsHollow => HollowX.Meters > 0 && HollowY.Meters > 0;

    internal override PlanArea Plan
    {
        get
        {
            PlanArea solid = PlanArea.Rectangle(WidthX.Meters, WidthY.Meters);
            return IsHollow ? solid.Without(PlanArea.Rectangle(HollowX.Meters, HollowY.Meters)) : solid;
        }
    }

    internal override (double X, double Y) Widths => (WidthX.Meters, WidthY.Meters);

    internal override double J
    {
        get
        {
            (double x, double y) = Widths;
            if (!IsHollow)
                return SolidRectangle.TorsionConstant(Math.Max(x, y), Math.Min(x, y));
            double tx = 0.5 * (x - HollowX.Meters), ty = 0.5 * (y - HollowY.Meters), a = x - tx, b = y - ty;
            return 4 * a * a * b * b / (2 * a / ty + 2 * b / tx) + 2.0 / 3 * (a * ty * ty * ty + b * tx * tx * tx);
        }
    }

    internal override (double X, double Y) ShearAreas
    {
        get
        {
            (double x, double y) = Widths;
            return IsHollow
                ? (5.0 / 6 * x * (y - HollowY.Meters), 5.0 / 6 * y * (x - HollowX.Meters))
                : (5.0 / 6 * x * y, 5.0 / 6 * x * y);
        }
    }

    internal override PlanCurve Contour
    {
        get
        {
            double x = 0.5 * WidthX.Meters, y = 0.5 * WidthY.Meters;
            return new PlanCurve([x, -x, -x, x], [y, y, -y, -y]);
        }
    }

    internal override BlockSection Blend(BlockSection other, double t)
    {
        var end = (RectangularBlock)other;
        return new RectangularBlock(Between(WidthX, end.WidthX, t), Between(WidthY, end.WidthY, t))
        {
            HollowX = Between(HollowX, end.HollowX, t),
            HollowY = Between(HollowY, end.HollowY, t),
        };
    }

    internal override void Validate(Validator v)
    {
        bool wide = v.Positive(WidthX, WidthX.Meters, 0.05, 60) & v.Positive(WidthY, WidthY.Meters, 0.05, 60);
        if (!wide || !(v.NotNegative(HollowX, HollowX.Meters, 60) & v.NotNegative(HollowY, HollowY.Meters, 60)))
            return;
        if (HollowX.Meters > 0 != HollowY.Meters > 0)
            v.Add(nameof(HollowX), "and HollowY must both be given, or neither", "A hollow runs through the block in the middle.");
        if (HollowX.Meters > 0.98 * WidthX.Meters || HollowY.Meters > 0.98 * WidthY.Meters)
            v.Add(nameof(HollowX), "or HollowY leaves walls thinner than 1 % of the width", "The hollow must be smaller than the block.");
    }
}
