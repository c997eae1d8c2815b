using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Cores;

public class NoTensionTests
{
    private const string Roark = "Roark's Formulas for Stress and Strain, short prisms under eccentric loading, table for a solid circle; from memory";
    private const string ByHand = "by hand: equilibrium of the stress block";

    private static readonly Gen<(BlockSection Section, double Use, double Angle)> cases =
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.3, 5], Gen.Double[0.3, 5], Gen.Double[0.1, 0.9], Gen.Double[0, 0.95], Gen.Double[0, 2 * Math.PI])
            .Select((shape, a, b, hollow, use, angle) => ((BlockSection)(shape switch
            {
                0 => new RectangularBlock(a.Meters, b.Meters),
                1 => new RectangularBlock(a.Meters, b.Meters) { HollowX = (hollow * a).Meters, HollowY = (hollow * b).Meters },
                2 => new RoundBlock(a.Meters),
                _ => new RoundBlock(a.Meters) { Hollow = (hollow * a).Meters },
            }), use, angle));

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("edge stress over mean, solid circle, e/R = 0.25", Roark, 2.00, "-", 2.5e-3, () => Circle(0.25), ValueKind.FromMemory),
        new("edge stress over mean, solid circle, e/R = 0.50", Roark, 3.55, "-", 1.5e-2, () => Circle(0.50), ValueKind.FromMemory),
        new("edge stress over mean, solid circle, e/R = 0.75", "midpoint sums over the segment in polar angle, computed apart", CircleBySums(0.75), "-", 1e-6, () => Circle(0.75), ValueKind.IndependentComputation),
        new("edge stress over mean, solid circle, e/R = 0.90", "midpoint sums over the segment in polar angle, computed apart", CircleBySums(0.90), "-", 1e-6, () => Circle(0.90), ValueKind.IndependentComputation),
        new("edge stress over mean, rectangle, e/h = 0.35", ByHand + ": 2/(3(1/2 − e/h))", 2 / (3 * 0.15), "-", 1e-9, () => Rectangle(0.35, 0), ValueKind.IndependentComputation),
        new("edge stress over mean, rectangle, e/h = 0.499", ByHand + ": 2/(3(1/2 − e/h))", 2 / (3 * 0.001), "-", 1e-7, () => Rectangle(0, 0.499), ValueKind.IndependentComputation),
        new("edge stress over mean, square, e/b = 0.3 both ways: a pyramid on a corner triangle", ByHand + ": 6/(16(1/2 − e/b)²)", 6 / (16 * 0.04), "-", 1e-9, () => Rectangle(0.3, 0.3), ValueKind.IndependentComputation),
        new("edge stress over mean, rectangle, e = 0.4 and 0.28 of the widths: corner triangle", ByHand, 6 / (16 * 0.1 * 0.22), "-", 1e-9, () => Rectangle(0.4, 0.28), ValueKind.IndependentComputation),
        new("kern of a ring, r/R = 0.6: e/R", ByHand + ": (1 + (r/R)²)/4", 0.34, "-", 1e-9, () => 1 / NoTension.KernUse(new RoundBlock(2.Meters) { Hollow = 1.2.Meters }, 1.Meters, 0.Meters), ValueKind.IndependentComputation),
        new("even block over area, square, e/b = 0.35 both ways: a corner triangle", ByHand + ": 4.5(1/2 − e/b)²", 4.5 * 0.15 * 0.15, "-", 1e-9, () => NoTension.PlasticArea(new RectangularBlock(1.Meters, 1.Meters), 0.35.Meters, 0.35.Meters).SquareMeters, ValueKind.IndependentComputation),
        new("even block over area, circle, thrust at the centroid of a half: 4/(3π) R", ByHand, 0.5, "-", 1e-9, () => NoTension.PlasticArea(new RoundBlock(2.Meters), (4 / (3 * Math.PI)).Meters, 0.Meters).SquareMeters / Math.PI, ValueKind.IndependentComputation),
    ];

    private static double Circle(double e) => NoTension.Solve(new RoundBlock(2.Meters), Math.PI.Newtons, Torque.Zero, Torque.FromNewtonMeters(Math.PI * e))!.ToeStress.Pascals;

    /// <summary>The chord that puts the thrust at e, by bisection; stress (u − h)/(1 − h) on strips 2 sin²t dt.</summary>
    private static double CircleBySums(double e)
    {
        double low = -1, high = 1, N = 0;
        for (int step = 0; step < 50; step++)
        {
            double h = 0.5 * (low + high), most = Math.Acos(h), M = 0;
            N = 0;
            for (int i = 0; i < 4000; i++)
            {
                (double sin, double cos) = Math.SinCos((i + 0.5) * most / 4000);
                double F = (cos - h) / (1 - h) * 2 * sin * sin * most / 4000;
                (N, M) = (N + F, M + F * cos);
            }
            if (M < e * N)
                low = h;
            else
                high = h;
        }
        return Math.PI / N;
    }

    private static double Rectangle(double ex, double ey) =>
        NoTension.Solve(new RectangularBlock(2.Meters, 3.Meters), 6.Newtons, Torque.FromNewtonMeters(-6 * 3 * ey), Torque.FromNewtonMeters(6 * 2 * ex))!.ToeStress.Pascals;

    /// <summary>A thrust of 1 N at a part of the way to the edge.</summary>
    private static (double X, double Y) Place(BlockSection section, double use, double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double edge = 1 / section.Plan.Gauge(cos, sin);
        return (use * edge * cos, use * edge * sin);
    }

    private static NoTensionStress Stress(BlockSection section, double N, double ex, double ey) =>
        NoTension.Solve(section, Force.FromNewtons(N), Torque.FromNewtonMeters(-N * ey), Torque.FromNewtonMeters(N * ex))!;

    [Fact]
    public void Stress_summed_over_fibers_balances_the_thrust() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        NoTensionStress stress = Stress(c.Section, 1, ex, ey);
        (double N, double X, double Y) = Fibers.Sum(c.Section, 600, (x, y) => stress.At(x.Meters, y.Meters).Pascals);
        (double wx, double wy) = c.Section.Widths;
        Assert.Equal(1, N, 0.02 / (1 - c.Use));
        Assert.Equal(ex, X / N, 0.01 * wx);
        Assert.Equal(ey, Y / N, 0.01 * wy);
    }, iter: 25);

    [Fact]
    public void Moments_of_the_pressed_part_balance_the_thrust_exactly() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        ContactPlane plane = NoTension.Solve(c.Section.Plan, 1, ex, ey)!;
        PlanMoments m = plane.Pressed;
        Assert.Equal(1, plane.a * m.A + plane.b * m.X + plane.c * m.Y, 1e-8);
        Assert.Equal(ex, plane.a * m.X + plane.b * m.XX + plane.c * m.XY, 1e-8);
        Assert.Equal(ey, plane.a * m.Y + plane.b * m.XY + plane.c * m.YY, 1e-8);
    }, iter: 2000);

    [Fact]
    public void Within_the_kern_it_is_the_uncracked_stress() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        double kern = NoTension.KernUse(c.Section, ex.Meters, ey.Meters);
        NoTensionStress stress = Stress(c.Section, 1, ex, ey);
        if (Math.Abs(kern - 1) > 1e-6)
            Assert.Equal(kern > 1, stress.IsCracked);
        PlanMoments m = c.Section.Plan.Whole;
        double uncracked = 1 / m.A + c.Section.Plan.Reach(ex / m.XX, ey / m.YY);
        if (kern < 1)
            Assert.Equal(uncracked, stress.ToeStress.Pascals, 1e-8 * uncracked);
        else
            Assert.True(stress.ToeStress.Pascals >= uncracked * (1 - 1e-9));
    }, iter: 500);

    [Fact]
    public void Mirrored_thrust_gives_the_same_stress() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        double toe = Stress(c.Section, 1, ex, ey).ToeStress.Pascals;
        Assert.Equal(toe, Stress(c.Section, 1, -ex, ey).ToeStress.Pascals, 1e-7 * toe);
        Assert.Equal(toe, Stress(c.Section, 1, ex, -ey).ToeStress.Pascals, 1e-7 * toe);
        Assert.Equal(3 * toe, Stress(c.Section, 3, ex, ey).ToeStress.Pascals, 1e-6 * toe);
    }, iter: 300);

    [Fact]
    public void Farther_thrust_presses_the_toe_harder_on_a_smaller_block() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        Assert.True(Stress(c.Section, 1, 1.04 * ex, 1.04 * ey).ToeStress.Pascals >= Stress(c.Section, 1, ex, ey).ToeStress.Pascals * (1 - 1e-9));
        Assert.True(Plastic(c.Section, 1.04 * ex, 1.04 * ey) <= Plastic(c.Section, ex, ey) * (1 + 1e-9));
    }, iter: 40);

    /// <summary>A thrust inside the section is balanced however near the edge, at any size and force: a sliver still carries.</summary>
    [Fact]
    public void Thrust_near_the_edge_is_balanced() => Gen.Select(cases, Gen.Double[0.9, 0.995], Gen.Double[0, 8]).Sample((c, use, size) =>
    {
        double N = Math.Pow(10, size);
        (double ex, double ey) = Place(c.Section, use, c.Angle);
        ContactPlane? plane = NoTension.Solve(c.Section.Plan, N, N * ex, N * ey);
        Assert.NotNull(plane);
        Assert.Equal(N, plane.BedForce, 1e-6 * N);
    }, iter: 20_000);

    /// <summary>The even block is the greatest force with stress at most 1: no linear or other block of that stress can be greater.</summary>
    [Fact]
    public void Even_block_has_its_centroid_at_the_thrust_and_beats_every_linear_block() => cases.Sample(c =>
    {
        (double ex, double ey) = Place(c.Section, c.Use, c.Angle);
        double area = Plastic(c.Section, ex, ey), linear = 1 / Stress(c.Section, 1, ex, ey).ToeStress.Pascals;
        Assert.True(area >= linear * (1 - 1e-8), $"{area} < {linear}");
        if (c.Section is RectangularBlock { HollowX.Meters: 0 } r)
            Assert.True(area >= (r.WidthX.Meters - 2 * Math.Abs(ex)) * (r.WidthY.Meters - 2 * Math.Abs(ey)) * (1 - 1e-8));
    }, iter: 60);

    private static double Plastic(BlockSection section, double ex, double ey) => NoTension.PlasticArea(section, ex.Meters, ey.Meters).SquareMeters;

    [Fact]
    public void Circle_does_not_care_for_direction() => Gen.Select(Gen.Double[0, 0.98], Gen.Double[0, 7], Gen.Double[0, 0.9]).Sample((use, angle, hollow) =>
    {
        var ring = new RoundBlock(3.Meters) { Hollow = (3 * hollow).Meters };
        double along = Stress(ring, 1, 1.5 * use, 0).ToeStress.Pascals, turned = Stress(ring, 1, 1.5 * use * Math.Cos(angle), 1.5 * use * Math.Sin(angle)).ToeStress.Pascals;
        Assert.Equal(along, turned, 1e-7 * along);
    });

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(-5, 0, 0)]
    [InlineData(1, 0.51, 0)]
    [InlineData(1, 0.2, 0.6)]
    public void Nothing_balances_a_pull_or_a_thrust_outside(double N, double mx, double my) =>
        Assert.Null(NoTension.Solve(new RectangularBlock(1.Meters, 1.Meters), Force.FromNewtons(N), Torque.FromNewtonMeters(-my), Torque.FromNewtonMeters(mx)));

    [Fact]
    public void Thrust_close_to_the_edge_still_finds_its_toe()
    {
        for (int n = 2; n < 6; n++)
        {
            double left = Math.Pow(10, -n);
            double toe = Stress(new RectangularBlock(1.Meters, 1.Meters), 1, 0.5 - left, 0).ToeStress.Pascals;
            Assert.Equal(2 / (3 * left), toe, 1e-4 * toe);
            toe = Stress(new RectangularBlock(1.Meters, 1.Meters), 1, 0.5 - left, 0.5 - left).ToeStress.Pascals;
            Assert.Equal(6 / (16 * left * left), toe, 1e-4 * toe);
        }
    }
}
