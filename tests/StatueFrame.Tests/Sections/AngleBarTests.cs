using CsCheck;

namespace StatueFrame.Tests.Sections;

public class AngleBarTests
{
    private const string Unequal = "EN 10056-1 section tables of rolled unequal angles (with fillet and rounded toes), second hand, 65×50×5";
    private const string Equal = "EN 10056-1 section tables of rolled equal angles (with fillet and rounded toes), 100×100×10";

    private const string L8 = "AISC Shapes Database v15.0, L8×6×3/4 (rolled, with fillet), second hand";
    private const string L200 = "SCI P363, UKA 200×200×24 (rolled, with fillet), second hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("angle 8×6×¾ in: area", L8, 9.94, "in²", 5e-3, () => American.Area.SquareInches),
        new("angle 8×6×¾ in: I about the strong principal axis", L8, 77.8, "in⁴", 0.02, () => American.StrongInertia.InchesToTheFourth),
        new("angle 8×6×¾ in: I about the weak principal axis", L8, 16.6, "in⁴", 0.02, () => American.WeakInertia.InchesToTheFourth),
        new("angle 8×6×¾ in: weak radius of gyration", L8, 1.29, "in", 0.01, () => American.WeakRadiusOfGyration.Inches),
        new("angle 8×6×¾ in: tan of the turn of the axes", L8, 0.550, "-", 0.01, () => Math.Tan(American.PrincipalRotation.Radians)),
        new("angle 200×200×24: area", L200, 90.6, "cm²", 0.01, () => British.Area.SquareCentimeters),
        new("angle 200×200×24: centroid", L200, 5.84, "cm", 0.01, () => British.CentroidAlongLongLeg.Centimeters),
        new("angle 200×200×24: I_u", L200, 5280, "cm⁴", 0.02, () => British.StrongInertia.CentimetersToTheFourth),
        new("angle 200×200×24: I_v", L200, 1380, "cm⁴", 0.03, () => British.WeakInertia.CentimetersToTheFourth),
        new("angle 200×200×24: i_v", L200, 3.90, "cm", 0.015, () => British.WeakRadiusOfGyration.Centimeters),
        new("angle 65×50×5: area", Unequal, 5.54, "cm²", 0.01, () => L65.Area.SquareCentimeters),
        new("angle 65×50×5: centroid along the long leg", Unequal, 1.99, "cm", 0.02, () => L65.CentroidAlongLongLeg.Centimeters),
        new("angle 65×50×5: centroid along the short leg", Unequal, 1.25, "cm", 0.02, () => L65.CentroidAlongShortLeg.Centimeters),
        new("angle 65×50×5: I_u", Unequal, 28.8, "cm⁴", 0.02, () => L65.StrongInertia.CentimetersToTheFourth),
        new("angle 65×50×5: I_v", Unequal, 6.32, "cm⁴", 0.02, () => L65.WeakInertia.CentimetersToTheFourth),
        new("angle 65×50×5: i_u", Unequal, 2.28, "cm", 0.015, () => L65.StrongRadiusOfGyration.Centimeters),
        new("angle 65×50×5: i_v", Unequal, 1.07, "cm", 0.01, () => L65.WeakRadiusOfGyration.Centimeters),
        new("angle 65×50×5: tan of the turn of the axes", Unequal, 0.58, "-", 0.01, () => Math.Tan(L65.PrincipalRotation.Radians)),
        new("angle 100×100×10: area", Equal, 19.2, "cm²", 0.015, () => L100.Area.SquareCentimeters, ValueKind.FromMemory),
        new("angle 100×100×10: I_u", Equal, 280, "cm⁴", 0.025, () => L100.StrongInertia.CentimetersToTheFourth, ValueKind.FromMemory),
        new("angle 100×100×10: I_v", Equal, 73.0, "cm⁴", 0.025, () => L100.WeakInertia.CentimetersToTheFourth, ValueKind.FromMemory),
    ];

    private static readonly AngleBar American = new(8.Inches, 6.Inches, 0.75.Inches);
    private static readonly AngleBar British = new(200.Millimeters, 24.Millimeters);
    private static readonly AngleBar L65 = new(65.Millimeters, 50.Millimeters, 5.Millimeters);
    private static readonly AngleBar L100 = new(100.Millimeters, 10.Millimeters);

    private static readonly Gen<(double A, double B, double T)> Legs =
        Gen.Select(Gen.Double[0.02, 0.3], Gen.Double[0.3, 1], Gen.Double[0.05, 0.5], (a, ratio, t) => (a, a * ratio, a * ratio * t));

    private static AngleBar Bar((double A, double B, double T) legs) => new(legs.A.Meters, legs.B.Meters, legs.T.Meters);

    [Fact]
    public void Agrees_with_the_polygon_and_its_axes_found_by_trying() =>
        Legs.Sample(legs =>
        {
            AngleBar bar = Bar(legs);
            SectionProperties p = bar.Properties;
            var polygon = Polygon.AngleBar(legs.A, legs.B, legs.T);
            var m = polygon.Moments();
            var (Iy, Iz, rotation) = polygon.Principal();
            Assert.Equal(m.A, p.A, 1e-12 * p.A);
            Assert.Equal(m.Y, bar.CentroidAlongShortLeg.Meters, 1e-12);
            Assert.Equal(m.Z, bar.CentroidAlongLongLeg.Meters, 1e-12);
            Assert.Equal(Iy, p.Iy, 1e-9 * p.Iy);
            Assert.Equal(Iz, p.Iz, 1e-9 * p.Iz);
            Assert.Equal(rotation, bar.PrincipalRotation.Radians, 1e-6);
            Assert.Equal(m.IYY + m.IZZ, p.Iy + p.Iz, 1e-12 * p.Iy);
        });

    [Fact]
    public void Moduli_are_those_of_the_worst_corner() =>
        Legs.Sample(legs =>
        {
            SectionProperties p = Bar(legs).Properties;
            var polygon = Polygon.AngleBar(legs.A, legs.B, legs.T);
            var m = polygon.Moments();
            double rotation = polygon.Principal().Rotation, c = Math.Cos(rotation), s = Math.Sin(rotation);
            double fromY = polygon.Points.Max(q => Math.Abs(c * (q.Z - m.Z) - s * (q.Y - m.Y)));
            double fromZ = polygon.Points.Max(q => Math.Abs(c * (q.Y - m.Y) + s * (q.Z - m.Z)));
            Assert.Equal(p.Iy / fromY, p.Wy, 1e-5 * p.Wy);
            Assert.Equal(p.Iz / fromZ, p.Wz, 1e-5 * p.Wz);
        });

    [Fact]
    public void Equal_legs_turn_the_axes_by_45_degrees() =>
        Gen.Select(Gen.Double[20, 200], Gen.Double[0.05, 0.5]).Sample((leg, ratio) =>
            Assert.Equal(45, new AngleBar(leg.Millimeters, (leg * ratio).Millimeters).PrincipalRotation.Degrees, 1e-9));

    [Theory]
    [InlineData(1)]
    [InlineData(0.77)]
    [InlineData(0.5)]
    public void Shear_areas_are_those_of_the_shear_flow_summed_numerically(double ratio)
    {
        const double a = 1, t = 5e-4;
        SectionProperties p = Bar((a + t / 2, a * ratio + t / 2, t)).Properties;
        (double Asy, double Asz) = ShearAreas(a, a * ratio, t);
        Assert.Equal(Asy, p.Asy, 1e-3 * Asy);
        Assert.Equal(Asz, p.Asz, 1e-3 * Asz);
    }

    [Fact]
    public void Equal_legs_shear_as_five_sixths_of_one() =>
        Gen.Select(Gen.Double[20, 200], Gen.Double[0.05, 0.3]).Sample((leg, ratio) =>
        {
            SectionProperties p = new AngleBar(leg.Millimeters, (leg * ratio).Millimeters).Properties;
            double middle = leg * (1 - ratio / 2) * leg * ratio * 1e-6;
            Assert.Equal(5.0 / 6.0 * middle, p.Asy, 1e-9 * p.Asy);
            Assert.Equal(5.0 / 6.0 * middle, p.Asz, 1e-9 * p.Asz);
        });

    /// <summary>I²/∫(S²/t)ds of the middle line, walked from the toe of the short leg to the toe of the long one.</summary>
    private static (double Asy, double Asz) ShearAreas(double a, double b, double t)
    {
        const int steps = 40_000;
        double ds = (a + b) / steps;
        (double Y, double Z) Point(int i)
        {
            double s = (i + 0.5) * ds;
            return s < b ? (b - s, 0) : (0, s - b);
        }

        double Y = b * b / 2 / (a + b), Z = a * a / 2 / (a + b);
        double rotation = Polygon.AngleBar(a, b, t).Principal().Rotation, c = Math.Cos(rotation), sin = Math.Sin(rotation);
        double Iy = 0, Iz = 0, Sy = 0, Sz = 0, energyY = 0, energyZ = 0;
        for (int i = 0; i < steps; i++)
        {
            (double y, double z) = Point(i);
            double toY = c * (z - Z) - sin * (y - Y), toZ = c * (y - Y) + sin * (z - Z);
            Iy += t * toY * toY * ds;
            Iz += t * toZ * toZ * ds;
            Sy += t * toY * ds;
            Sz += t * toZ * ds;
            energyY += Sy * Sy / t * ds;
            energyZ += Sz * Sz / t * ds;
        }
        return (Iz * Iz / energyZ, Iy * Iy / energyY);
    }
}
