using CsCheck;

namespace StatueFrame.Tests.Sections;

public class SolidRectangleTests
{
    private const string Table = "torsion coefficients of rectangles after Timoshenko and Goodier, Theory of Elasticity, second hand";

    public static IEnumerable<PublishedValue> Rows { get; } =
    [
        Beta(1, 0.1406, 4, "torsion coefficient of a square; public tables print 0.141", ValueKind.FromMemory),
        Beta(1.5, 0.196, 3), Beta(2, 0.229, 3), Beta(2.5, 0.249, 3), Beta(3, 0.263, 3),
        Beta(4, 0.281, 3), Beta(5, 0.291, 3), Beta(10, 0.312, 3),
        new("torsion constant of a rectangle, b/t = 2, in units of b t³", "Prandtl's stress function on a grid of 80 × 40 cells",
            TorsionByGrid.Constant(80, 40, 0) / (80 * Math.Pow(40, 3)), "-", 0.002, () => SolidRectangle.TorsionConstant(2, 1) / 2,
            ValueKind.IndependentComputation),
    ];

    private static PublishedValue Beta(double ratio, double beta, int decimals, string source = Table, ValueKind kind = ValueKind.Published) =>
        new($"torsion constant of a rectangle, b/t = {ratio}, in units of b t³", source, beta, "-",
            0.51 * Math.Pow(10, -decimals) / beta, () => SolidRectangle.TorsionConstant(ratio, 1) / ratio, kind);

    [Fact]
    public void The_series_has_converged() =>
        Gen.Double[1, 50].Sample(ratio =>
        {
            double sum = 0;
            for (int n = 1999; n >= 1; n -= 2)
                sum += Math.Tanh(n * Math.PI * ratio / 2) / Math.Pow(n, 5);
            double plain = ratio / 3 * (1 - 192 / Math.Pow(Math.PI, 5) / ratio * sum);
            Assert.Equal(plain, SolidRectangle.TorsionConstant(ratio, 1), 1e-13 * plain);
        });

    [Fact]
    public void Torsion_constant_stays_between_the_square_and_the_thin_strip() =>
        Gen.Double[1, 1000].Sample(ratio =>
        {
            double beta = SolidRectangle.TorsionConstant(ratio, 1) / ratio;
            return beta is > 0.1405 and < 1.0 / 3;
        });

    [Fact]
    public void A_flat_bar_and_a_rectangle_of_the_same_size_are_the_same_beam()
    {
        SectionProperties flat = new FlatBar(60.Millimeters, 8.Millimeters).Properties;
        Assert.Equal(flat, new Rectangle(60.Millimeters, 8.Millimeters).Properties);
        Assert.Equal(flat, new Rectangle(8.Millimeters, 60.Millimeters).Properties);
    }

    [Fact]
    public void Bending_agrees_with_the_polygon() =>
        Gen.Select(Gen.Double[10, 300], Gen.Double[1, 10]).Sample((b, t) =>
        {
            SectionProperties p = new FlatBar(b.Millimeters, t.Millimeters).Properties;
            var (A, _, _, IYY, IZZ, _) = Polygon.Rectangle(t / 1000, b / 1000).Moments();
            Assert.Equal(A, p.A, 1e-12 * A);
            Assert.Equal(IYY, p.Iy, 1e-12 * IYY);
            Assert.Equal(IZZ, p.Iz, 1e-12 * IZZ);
            Assert.Equal(A * b / 6000, p.Wy, 1e-12 * p.Wy);
            Assert.Equal(A * t / 6000, p.Wz, 1e-12 * p.Wz);
            Assert.Equal(5 * A / 6, p.Asy, 1e-12 * A);
        });
}
