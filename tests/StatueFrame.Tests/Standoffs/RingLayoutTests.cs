using CsCheck;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Standoffs;

public class RingLayoutTests
{
    /// <summary>Vertices of the outlines; every bar of the rings below meets the middle of an edge.</summary>
    private const int Points = 2520;
    private const double HalfEdge = Math.PI / Points;

    private static readonly PlanCurve Skin = Circle(3), Tower = Circle(1);

    [Fact]
    public void Radial_bars_reach_from_tower_to_skin()
    {
        BarPlacement[] bars = Place(Ring(0));
        Assert.Equal(12, bars.Length);
        for (int k = 0; k < 12; k++)
        {
            double angle = HalfEdge + Math.PI * k / 6;
            Vector3D ray = new(Math.Cos(angle), Math.Sin(angle), 0);
            AssertNear(3 * ray + 20 * Vector3D.UnitZ, bars[k].SkinEnd, 1e-5);
            AssertNear(ray + 20 * Vector3D.UnitZ, bars[k].TowerEnd, 1e-5);
            AssertNear(ray, bars[k].Outward, 1e-12);
            AssertNear(Vector3D.UnitZ, bars[k].Axes.Z, 1e-12);
            Assert.Equal(Skin.Perimeter / 12, Gap(bars, k), 1e-9);
        }
    }

    [Fact]
    public void Oblique_bar_meets_a_round_tower_where_the_law_of_cosines_says() => Gen.Double[-19, 19].Where(lay => Math.Abs(lay) > 0.1).Sample(lay =>
    {
        (double sin, double cos) = Math.SinCos(lay * Math.PI / 180);
        BarPlacement bar = Place(Ring(lay))[0];
        double run = 3 * cos - Math.Sqrt(1 - 9 * sin * sin);
        Assert.Equal(run, bar.Length, 1e-4);
        Assert.Equal(Math.Sign(lay), Math.Sign(bar.SkinEnd.Cross(bar.TowerEnd).Z));
    });

    [Fact]
    public void Bar_of_given_length_keeps_length_rise_and_lay() => Gen.Select(Gen.Double[-90, 90], Gen.Double[-0.9, 0.9]).Sample((lay, rise) =>
    {
        BarPlacement[] bars = Place(Ring(lay) with { Length = Length.FromMeters(1), Rise = Length.FromMeters(rise) }, tower: false);
        Assert.All(bars, bar =>
        {
            Vector3D along = bar.TowerEnd - bar.SkinEnd;
            Vector3D tangent = Vector3D.UnitZ.Cross(bar.Outward);
            double run = Math.Sqrt(1 - rise * rise);
            Assert.Equal(20, bar.SkinEnd.Z, 1e-12);
            Assert.Equal(-rise, along.Z, 1e-12);
            Assert.Equal(1, along.Length, 1e-12);
            Assert.Equal(-run * Math.Cos(lay * Math.PI / 180), along.Dot(bar.Outward), 1e-12);
            Assert.Equal(run * Math.Sin(lay * Math.PI / 180), along.Dot(tangent), 1e-12);
        });
    });

    [Fact]
    public void Derived_length_includes_the_rise()
    {
        BarPlacement bar = Place(Ring(0) with { Rise = Length.FromMeters(1.5) })[0];
        Assert.Equal(2.5, bar.Length, 1e-5);
        Assert.Equal(18.5, bar.TowerEnd.Z, 1e-12);
    }

    [Fact]
    public void Bars_stand_on_an_ellipse_at_right_angles() => Gen.Double[0, 6].Sample(first =>
    {
        const double a = 4, b = 2.5;
        PlanCurve ellipse = PlanCurve.Ellipse(2 * a, 2 * b, 0, 0, 0, 7200);
        var site = new RingSite(ellipse, 0, Tower, 0, 0);
        EvenRing ring = Bars.Ring with { Count = 1, FirstAngle = Angle.FromRadians(first), Length = Length.FromMeters(0.5) };
        BarPlacement bar = Assert.Single(RingLayout.Place(ring, site, new Validator()));
        (double s, double c) = Math.SinCos(first);
        double reach = 1 / Math.Sqrt(c * c / (a * a) + s * s / (b * b));
        AssertNear(new Vector3D(reach * c, reach * s, 0), bar.SkinEnd, 1e-5);
        AssertNear(new Vector3D(c / (a * a), s / (b * b), 0).Normalized(), bar.Outward, 2e-3);
        AssertNear(bar.SkinEnd - 0.5 * bar.Outward, bar.TowerEnd, 1e-12);
    });

    [Fact]
    public void Tower_off_the_center_shortens_the_bars_on_its_side()
    {
        var site = new RingSite(Skin, 20, PlanCurve.Ellipse(2, 2, 0.5, 0, 0, Points), 0.5, 0);
        BarPlacement[] bars = RingLayout.Place(Bars.Ring with { Count = 2 }, site, new Validator());
        Assert.Equal(1.5, bars[0].Length, 1e-4);
        Assert.Equal(2.5, bars[1].Length, 1e-4);
    }

    [Fact]
    public void Even_ring_is_equally_stiff_in_every_plan_direction() =>
        Gen.Select(Gen.OneOf(Gen.Const(3), Gen.Const(4), Gen.Const(5), Gen.Const(6), Gen.Const(7), Gen.Const(12)), Gen.Double[-18, 18], Gen.Double[-1, 1], Bars.Standoff.Where(s => !s.Slide.ToString().Contains('('))).Sample((n, lay, rise, standoff) =>
        {
            var k = new double[36];
            foreach (BarPlacement place in Place(Ring(lay) with { Count = n, Rise = Length.FromMeters(rise), Standoff = standoff with { Section = Bars.Flat.Section } }))
                new PlacedBar(place, new(0, 0, 20 - rise), new(0, 0, 20)).AddTo(k);
            double stiffness = k[0], scale = 1e-9 * 1e8;
            Assert.Equal(stiffness, k[6 * 1 + 1], scale);
            Assert.Equal(0, k[1], scale);
            Assert.Equal(k[6 * 3 + 3], k[6 * 4 + 4], scale);
        });

    [Fact]
    public void Two_bars_are_not()
    {
        var k = new double[36];
        foreach (BarPlacement place in Place(Ring(0) with { Count = 2 }))
            new PlacedBar(place, new(0, 0, 20), new(0, 0, 20)).AddTo(k);
        Assert.True(k[0] > 100 * k[6 * 1 + 1]);
    }

    [Fact]
    public void Width_stands_upright_until_rolled_and_along_the_normal_in_a_vertical_bar()
    {
        Vector3D outward = new(0.6, 0.8, 0);
        AssertNear(Vector3D.UnitZ, Between(new(1, 0, 0), new(2, 1, 0), 0).Axes.Z, 1e-15);
        AssertNear(outward, Between(new(1, 0, 0), new(1, 0, 2), 0).Axes.Z, 1e-15);
        AssertNear(outward, Between(new(1, 0, 2), new(1, 0, 0), 0).Axes.Z, 1e-15);
        // Rolled by 90° right-handed about +x, what stood along +z lies along −y.
        AssertNear(-Vector3D.UnitY, Between(default, new(1, 0, 0), 90).Axes.Z, 1e-15);

        BarPlacement Between(Vector3D tower, Vector3D skin, double roll) =>
            BarPlacement.Between(tower, skin, outward, 0, Bars.Flat with { Roll = Angle.FromDegrees(roll) });
    }

    [Fact]
    public void Slides_point_where_they_say()
    {
        AssertNear(Vector3D.Zero, Slide(SaddleSlide.None), 0);
        AssertNear(new Vector3D(0.6, 0, 0.8), Slide(SaddleSlide.AlongBar), 1e-15);
        AssertNear(Vector3D.UnitZ, Slide(SaddleSlide.AlongAxis), 0);
        AssertNear(Vector3D.UnitY, Slide(SaddleSlide.AlongSkin), 1e-15);
        AssertNear(new Vector3D(0, 0.6, 0.8), Slide(SaddleSlide.Along(0, 3, 4)), 1e-15);

        static Vector3D Slide(SaddleSlide slide) =>
            BarPlacement.Between(default, new(0.6, 0, 0.8), Vector3D.UnitX, 0, Bars.Flat with { Slide = slide }).Slide;
    }

    [Fact]
    public void Explicit_bars_stay_where_they_are_put_and_take_the_nearest_normal()
    {
        var ring = new ExplicitRing
        {
            Level = "L3",
            Bars = [new StandoffBar { TowerEnd = Point(0, 1, 4), SkinEnd = Point(0, 2.9, 5), Standoff = Bars.Flat }],
        };
        var validator = new Validator();
        ring.Validate(validator);
        BarPlacement bar = Assert.Single(ring.Place(new RingSite(Skin, 5, null, 0, 0), validator));
        Assert.Empty(validator.Problems);
        AssertNear(new Vector3D(0, 1, 4), bar.TowerEnd, 0);
        AssertNear(new Vector3D(0, 2.9, 5), bar.SkinEnd, 0);
        AssertNear(Vector3D.UnitY, bar.Outward, 2 * HalfEdge);
        Assert.Equal(Skin.Perimeter / 4, bar.Position, 1e-2);
        Assert.Equal(5, ring.SkinElevation(4));
        Assert.Equal(4.25, (Bars.Ring with { Rise = Length.FromMeters(0.25) }).SkinElevation(4));
    }

    [Fact]
    public void Bar_that_misses_the_tower_asks_for_its_length() =>
        AssertProblem(Ring(80), "bar 0 at lay 80° misses the tower", "Give Length.");

    [Fact]
    public void Tower_without_outline_asks_for_the_length() =>
        AssertProblem(Ring(0), "is needed", "Give the bars' Length.", tower: false);

    [Fact]
    public void Skin_inside_the_tower_is_a_problem()
    {
        var validator = new Validator();
        Assert.Empty(RingLayout.Place(Ring(0), new RingSite(Tower, 0, Skin, 0, 0), validator));
        Assert.Contains("starts inside the tower", Assert.Single(validator.Problems).Message);
    }

    [Fact]
    public void Tower_outside_the_skin_is_a_problem()
    {
        var validator = new Validator();
        Assert.Empty(RingLayout.Place(Ring(0), new RingSite(Skin, 0, Tower, 5, 0), validator));
        Assert.Contains("finds no skin", Assert.Single(validator.Problems).Message);
        Assert.Empty(RingLayout.Place(Ring(0), new RingSite(Skin, 0, Tower, -5, 0), validator));
        Assert.Contains("finds no skin", validator.Problems[1].Message);
    }

    [Fact]
    public void Derived_length_must_be_that_of_a_bar()
    {
        var validator = new Validator();
        Assert.Empty(RingLayout.Place(Ring(0), new RingSite(Skin, 0, Circle(2.99), 0, 0), validator));
        Assert.Contains("bar 0 is 0.01 m long", Assert.Single(validator.Problems).Message);
    }

    [Fact]
    public void Tributary_is_half_the_gap_on_either_side() =>
        Equal([3.5, 2.5, 4], Shares(9, 1, 4));

    [Fact]
    public void Tributary_shares_add_up_to_the_perimeter() =>
        Gen.Double[0, 10].Array[1, 20].Sample(positions =>
        {
            double[] share = Shares(positions);
            Assert.Equal(10, share.Sum(), 1e-9);
            Assert.All(share, s => Assert.True(s >= 0));
        });

    [Fact]
    public void Bars_at_one_place_share_evenly() =>
        Equal([2.5, 5, 2.5], Shares(3, 8, 3));

    private static double Gap(BarPlacement[] bars, int k) =>
        Shares(Skin.Perimeter, [.. bars.Select(b => b.Position)])[k];

    private static void Equal(double[] expected, double[] actual) =>
        Assert.All(expected.Zip(actual), pair => Assert.Equal(pair.First, pair.Second, 1e-12));

    private static double[] Shares(params double[] positions) => Shares(10, positions);

    private static double[] Shares(double perimeter, double[] positions) =>
        Array.ConvertAll(BandShare.Split(Array.ConvertAll(positions, p => p / perimeter)), share => perimeter * (share.To - share.From));

    private static EvenRing Ring(double lay) =>
        Bars.Ring with { FirstAngle = Angle.FromRadians(HalfEdge), Lay = Angle.FromDegrees(lay) };

    private static BarPlacement[] Place(EvenRing ring, bool tower = true)
    {
        var validator = new Validator();
        ring.Validate(validator);
        BarPlacement[] bars = ring.Place(new RingSite(Skin, 20, tower ? Tower : null, 0, 0), validator);
        validator.ThrowIfAny();
        return bars;
    }

    private static void AssertProblem(EvenRing ring, string message, string hint, bool tower = true)
    {
        Problem problem = Assert.Single(Assert.Throws<InvalidStatueException>(() => Place(ring, tower)).Problems);
        Assert.Equal("Length", problem.Path);
        Assert.Contains(message, problem.Message);
        Assert.Equal(hint, problem.Hint);
    }

    private static PlanCurve Circle(double radius) => PlanCurve.Ellipse(2 * radius, 2 * radius, 0, 0, 0, Points);

    private static Point3 Point(double x, double y, double z) => new(Length.FromMeters(x), Length.FromMeters(y), Length.FromMeters(z));

    private static void AssertNear(Vector3D expected, Vector3D actual, double tolerance) =>
        Assert.True((expected - actual).Length <= tolerance, $"expected {expected}, is {actual}");
}
