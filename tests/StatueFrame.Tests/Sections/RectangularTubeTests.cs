using CsCheck;

namespace StatueFrame.Tests.Sections;

public class RectangularTubeTests
{
    private const string Grid = "Prandtl's stress function on a grid of squares, 8 cells in the wall; sharp corners";

    public static IEnumerable<PublishedValue> Rows { get; } =
    [
        Torsion(100, 60, 4, 200, 120, 8, 0.02),
        Torsion(60, 60, 4, 120, 120, 8, 0.03),
    ];

    private static PublishedValue Torsion(double a, double b, double t, int width, int depth, int wall, double tolerance) =>
        new($"rectangular tube {a}×{b}×{t} mm: torsion constant", Grid,
            TorsionByGrid.Constant(width, depth, wall) * Math.Pow(a / width / 10, 4), "cm⁴", tolerance,
            () => Rhs(a, b, t).TorsionConstant.CentimetersToTheFourth, ValueKind.IndependentComputation);

    private static RectangularTube Rhs(double a, double b, double t) => new(a.Millimeters, b.Millimeters, t.Millimeters);

    [Fact]
    public void Agrees_with_the_outer_polygon_less_the_inner() =>
        Gen.Select(Gen.Double[20, 400], Gen.Double[20, 400], Gen.Double[0.02, 0.45]).Sample((a, b, ratio) =>
        {
            double t = ratio * Math.Min(a, b);
            SectionProperties p = Rhs(a, b, t).Properties;
            var outer = Polygon.Rectangle(Math.Min(a, b) / 1000, Math.Max(a, b) / 1000).Moments();
            var inner = Polygon.Rectangle((Math.Min(a, b) - 2 * t) / 1000, (Math.Max(a, b) - 2 * t) / 1000).Moments();
            Assert.Equal(outer.A - inner.A, p.A, 1e-11 * p.A);
            Assert.Equal(outer.IYY - inner.IYY, p.Iy, 1e-11 * p.Iy);
            Assert.Equal(outer.IZZ - inner.IZZ, p.Iz, 1e-11 * p.Iz);
        });

    [Fact]
    public void Sides_may_come_in_any_order() =>
        Gen.Select(Gen.Double[20, 400], Gen.Double[20, 400]).Sample((a, b) => Rhs(a, b, 3).Properties == Rhs(b, a, 3).Properties);

    [Theory]
    [InlineData(100, 60)]
    [InlineData(80, 80)]
    [InlineData(200, 30)]
    public void Shear_area_is_that_of_the_shear_flow_summed_numerically(double h, double b)
    {
        const double t = 1e-3;
        double H = h / 1000, B = b / 1000;
        SectionProperties p = new RectangularTube((H + t).Meters, (B + t).Meters, t.Meters).Properties;
        Assert.Equal(ShearArea(H, B, t), p.Asz, 1e-4 * p.Asz);
        Assert.Equal(ShearArea(B, H, t), p.Asy, 1e-4 * p.Asy);
    }

    /// <summary>Walks half the middle line from the middle of the lower flange and sums the shear flow and its energy.</summary>
    private static double ShearArea(double h, double b, double t)
    {
        const int steps = 20_000;
        double length = b + h, ds = length / steps, S = 0, I = 0, energy = 0;
        for (int i = 0; i < steps; i++)
        {
            double s = (i + 0.5) * ds;
            double z = s < b / 2 ? -h / 2 : s < b / 2 + h ? s - b / 2 - h / 2 : h / 2;
            double middle = S + t * z * ds / 2;
            energy += 2 * middle * middle / t * ds;
            S += t * z * ds;
            I += 2 * t * z * z * ds;
        }
        return I * I / energy;
    }
}
