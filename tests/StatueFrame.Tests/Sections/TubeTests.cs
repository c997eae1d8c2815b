using CsCheck;

namespace StatueFrame.Tests.Sections;

public class TubeTests
{
    private const string Tables = "EN 10210-2:1997 section tables of circular hollow sections, second hand";
    private const string Cowper = "G. R. Cowper, J. Appl. Mech. 33 (1966), ν = 0.3";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Chs(88.9, 5, 13.2, 116, 2.97, 26.2, ValueKind.Published),
        .. Chs(139.7, 10, 40.7, 862, 4.60, 123, ValueKind.Published),
        .. Chs(193.7, 10, 57.7, 2440, 6.50, 252, ValueKind.Published),
        .. Chs(219.1, 8, 53.1, 2960, 7.47, 270, ValueKind.FromMemory),
        new("tube 219.1×8: torsion constant", Tables, 5919, "cm⁴", 1e-3, () => Chs(219.1, 8).TorsionConstant.CentimetersToTheFourth, ValueKind.FromMemory),
        new("shear coefficient of a solid circle", Cowper, 0.886, "-", 6e-4, () => Tube.ShearCoefficient(0), ValueKind.FromMemory),
        new("shear coefficient of a thin-walled tube", Cowper, 0.531, "-", 1e-3, () => Tube.ShearCoefficient(1), ValueKind.FromMemory),
    ];

    private static Tube Chs(double diameter, double wall) => new(diameter.Millimeters, wall.Millimeters);

    private static PublishedValue[] Chs(double diameter, double wall, double A, double I, double i, double W, ValueKind kind)
    {
        Tube tube = Chs(diameter, wall);
        return
        [
            new($"{tube.Designation}: area", Tables, A, "cm²", 0.05 / A, () => tube.Area.SquareCentimeters, kind),
            new($"{tube.Designation}: second moment of area", Tables, I, "cm⁴", 0.005, () => tube.StrongInertia.CentimetersToTheFourth, kind),
            new($"{tube.Designation}: radius of gyration", Tables, i, "cm", 0.005 / i, () => tube.WeakRadiusOfGyration.Centimeters, kind),
            new($"{tube.Designation}: elastic modulus", Tables, W, "cm³", 0.004, () => tube.WeakModulus.CubicCentimeters, kind),
        ];
    }

    [Fact]
    public void Agrees_with_polygons_of_many_sides() =>
        Gen.Select(Gen.Double[0.1, 2], Gen.Double[0.01, 0.45]).Sample((D, ratio) =>
        {
            double d = D * (1 - 2 * ratio);
            SectionProperties p = new Tube(D.Meters, (D * ratio).Meters).Properties;
            var outer = Polygon.Circle(D, 2000).Moments();
            var inner = Polygon.Circle(d, 2000).Moments();
            Assert.Equal(outer.A - inner.A, p.A, 1e-5 * p.A);
            Assert.Equal(outer.IYY - inner.IYY, p.Iy, 1e-5 * p.Iy);
            Assert.Equal(p.Iy, p.Iz);
            Assert.Equal(outer.IYY - inner.IYY + outer.IZZ - inner.IZZ, p.J, 1e-5 * p.J);
        });

    [Fact]
    public void A_tube_is_a_round_bar_less_its_bore() =>
        Gen.Select(Gen.Double[10, 500], Gen.Double[0.05, 0.45]).Sample((D, ratio) =>
        {
            double wall = D * ratio;
            SectionProperties tube = Chs(D, wall).Properties;
            SectionProperties full = new RoundBar(D.Millimeters).Properties, bore = new RoundBar((D - 2 * wall).Millimeters).Properties;
            Assert.Equal(full.A - bore.A, tube.A, 1e-12 * full.A);
            Assert.Equal(full.Iy - bore.Iy, tube.Iy, 1e-12 * full.Iy);
            Assert.Equal(full.J - bore.J, tube.J, 1e-12 * full.J);
        });

    [Fact]
    public void A_thicker_wall_is_never_softer() =>
        Gen.Select(Gen.Double[50, 500], Gen.Double[0.02, 0.4], Gen.Double[1.001, 1.2]).Sample((D, ratio, more) =>
        {
            SectionProperties thin = Chs(D, D * ratio).Properties, thick = Chs(D, D * ratio * more).Properties;
            return thick.A > thin.A && thick.Iy > thin.Iy && thick.J > thin.J && thick.Asy > thin.Asy;
        });

    [Fact]
    public void Extreme_fiber_of_a_tube_is_its_radius() =>
        Assert.Equal(109.55, Chs(219.1, 8).StrongExtremeFiber.Millimeters, 1e-9);
}
