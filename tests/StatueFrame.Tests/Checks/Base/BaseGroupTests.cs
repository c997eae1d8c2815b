using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Base;

public class BaseGroupTests
{
    internal static readonly Concrete C30 = Concrete.OfStrength(30.Megapascals);

    internal static AnchorBar Bar(double x, double y, double kN = 0) => new()
    {
        X = x.Meters,
        Y = y.Meters,
        Diameter = 36.Millimeters,
        Material = StructuralSteel.S355,
        FreeLength = 1.2.Meters,
        Embedment = 1.2.Meters,
        HeadWidth = 0.2.Meters,
        PreTension = kN.Kilonewtons,
    };

    internal static BasePlate Plate(double x, double y, double width) => new()
    {
        X = x.Meters,
        Y = y.Meters,
        WidthX = width.Meters,
        WidthY = width.Meters,
        Thickness = 50.Millimeters,
        Material = StructuralSteel.S355,
        FootX = (0.8 * width).Meters,
        FootY = (0.8 * width).Meters,
    };

    internal static HoldDown One(double kN = 0) => new()
    {
        Plates = [Plate(0, 0, 1.4)],
        Bars = [Bar(0.55, 0.55, kN), Bar(-0.55, 0.55, kN), Bar(-0.55, -0.55, kN), Bar(0.55, -0.55, kN)],
    };

    private static HoldDown Feet(double kN) => new()
    {
        Plates = [Plate(1, 1, 0.5), Plate(-1, 1, 0.5), Plate(-1, -1, 0.5), Plate(1, -1, 0.5)],
        Bars = [Bar(1.15, 1.15, kN), Bar(-1.15, 1.15, kN), Bar(-1.15, -1.15, kN), Bar(1.15, -1.15, kN), Bar(0.85, 0.85, kN), Bar(-0.85, -0.85, kN)],
    };

    private static BaseGroup Solve(HoldDown h, double N, double mx, double my, bool pre = true) =>
        BaseGroup.Solve(h, C30, N.Newtons, Torque.FromNewtonMeters(-my), Torque.FromNewtonMeters(mx), pre)!;

    private static readonly Gen<(HoldDown Base, double N, double Mx, double My)> loads =
        Gen.Select(Gen.Bool, Gen.Double[0, 250], Gen.Double[-400e3, 2e6], Gen.Double[-1.5e6, 1.5e6], Gen.Double[-1.5e6, 1.5e6])
            .Select((one, kN, N, mx, my) => (one ? One(kN) : Feet(kN), N, mx, my));

    [Fact]
    public void Bed_and_bars_balance_the_load() => loads.Sample(c =>
    {
        BaseGroup g = Solve(c.Base, c.N, c.Mx, c.My);
        double N = 0, X = 0, Y = 0;
        foreach (BasePlate plate in c.Base.Plates)
        {
            const int count = 160;
            double w = plate.WidthX.Meters, A = w * w / (count * count);
            for (int i = 0; i < count * count; i++)
            {
                double x = plate.X.Meters + w * ((i % count + 0.5) / count - 0.5), y = plate.Y.Meters + w * ((i / count + 0.5) / count - 0.5);
                double F = A * g.PressureAt(x.Meters, y.Meters).Pascals;
                (N, X, Y) = (N + F, X + F * x, Y + F * y);
            }
        }
        for (int i = 0; i < c.Base.Bars.Count; i++)
        {
            double T = g.BarForces[i].Newtons;
            (N, X, Y) = (N - T, X - T * c.Base.Bars[i].X.Meters, Y - T * c.Base.Bars[i].Y.Meters);
        }
        double size = Math.Abs(c.N) + Math.Abs(c.Mx) + Math.Abs(c.My) + 1e5;
        Assert.Equal(c.N, N, 0.01 * size);
        Assert.Equal(c.Mx, X, 0.01 * size);
        Assert.Equal(c.My, Y, 0.01 * size);
    }, iter: 40);

    [Fact]
    public void Without_load_each_bar_has_its_pre_tension() => Gen.Double[1, 250].Sample(kN =>
    {
        foreach (HoldDown h in new[] { One(kN), Feet(kN) })
            Assert.All(Solve(h, 0, 0, 0).BarForces, T => Assert.Equal(kN, T.Kilonewtons, 1e-6 * kN));
    });

    [Fact]
    public void A_quarter_turn_turns_the_bars() => Gen.Select(Gen.Double[0, 250], Gen.Double[-1e5, 1e6], Gen.Double[-1e6, 1e6], Gen.Double[-1e6, 1e6]).Sample((kN, N, mx, my) =>
    {
        BaseGroup g = Solve(One(kN), N, mx, my), turned = Solve(One(kN), N, -my, mx);
        for (int i = 0; i < 4; i++)
            Assert.Equal(g.BarForces[i].Newtons, turned.BarForces[(i + 1) % 4].Newtons, 1);
    });

    /// <summary>One bar pair in pure pull: the joint diagram with the whole bed as the clamped part.</summary>
    [Fact]
    public void A_centered_pull_follows_the_joint_diagram() => Gen.Select(Gen.Double[50, 250], Gen.Double[-1, 2.5]).Sample((kN, pull) =>
    {
        HoldDown h = One(kN);
        var joint = new AnchorJoint
        {
            BarStiffness = ForcePerLength.FromNewtonsPerMeter(4 * h.Bars[0].Stiffness),
            ClampStiffness = ForcePerLength.FromNewtonsPerMeter(C30.E / 1.2 * 1.4 * 1.4),
            PreTension = (4 * kN).Kilonewtons,
        };
        double F = pull * 4 * kN * 1e3;
        Assert.Equal(joint.BarForce(F.Newtons).Newtons, 4 * Solve(h, -F, 0, 0).BarForces[0].Newtons, 1e-5 * 4e3 * kN);
    });

    [Fact]
    public void Opening_reaches_one_where_the_base_begins_to_gape() => Gen.Select(Gen.Double[50, 250], Gen.Double[0, 5e5], Gen.Double[0, 6.28]).Sample((kN, N, angle) =>
    {
        HoldDown h = One(kN);
        (double taken, double pressed) = BaseGroup.Opening(h, C30, 0, 1e4 * Math.Cos(angle), 1e4 * Math.Sin(angle));
        double M = 1e4 * pressed / taken;
        Assert.Equal(1, Solve(h, 0, 0.999 * M * Math.Cos(angle), 0.999 * M * Math.Sin(angle)).PressedFraction, 1e-9);
        Assert.True(Solve(h, 0, 1.01 * M * Math.Cos(angle), 1.01 * M * Math.Sin(angle)).PressedFraction < 1);
    });

    [Fact]
    public void More_moment_pulls_harder() => Gen.Select(Gen.Double[0, 200], Gen.Double[0, 1e6], Gen.Double[1e5, 1e6]).Sample((kN, N, M) =>
        Assert.True(Solve(One(kN), N, 1.1 * M, 0.3 * M).BarForces.Max() >= Solve(One(kN), N, M, 0.3 * M / 1.1).BarForces.Max() - 1e-3.Newtons));

    /// <summary>With three bars or more inside the plates' hull, and not in one line, every load has a balance, whatever the stiffnesses and however strong the pull.</summary>
    [Fact]
    public void A_balance_is_found_for_stiffnesses_and_loads_of_any_size()
    {
        Gen<(double, double, double)> bar = Gen.Select(Gen.Double[-0.95, 0.95], Gen.Double[-0.65, 0.65], Gen.Double[7, 10]).Select((x, y, k) => (x, y, Math.Pow(10, k)));
        Gen.Select(bar.Array[3, 8].Where(Spread), Gen.Double[8, 12], Gen.Double[-7.5, 7.5], Gen.Double[-7.5, 7.5], Gen.Double[-7.5, 7.5], Gen.Double[0, 1e-3]).Sample((bars, bed, N, mx, my, stretch) =>
        {
            PlanArea plan = PlanArea.Rectangle(2, 1.4);
            ContactSpring[] springs = [.. bars.Select(b => new ContactSpring(b.Item1, b.Item2, b.Item3, stretch))];
            double Force(double e) => Math.Sign(e) * Math.Pow(10, Math.Abs(e));
            (N, mx, my) = (Force(N), Force(mx), Force(my));
            ContactPlane? plane = ContactPlane.Solve(plan, Math.Pow(10, bed), springs, N, mx, my);
            Assert.NotNull(plane);
            double sum = plane.BedForce;
            for (int i = 0; i < springs.Length; i++)
                sum -= plane.ForceOf(i);
            Assert.Equal(N, sum, 1e-5 * (Math.Abs(N) + Math.Abs(mx) + Math.Abs(my) + springs.Sum(s => s.Stiffness * s.Stretch)));
        }, iter: 3000);

        // Bars in one line hold no moment along it where the base lifts.
        static bool Spread((double X, double Y, double)[] bars)
        {
            double x = bars.Average(b => b.X), y = bars.Average(b => b.Y);
            double xx = bars.Sum(b => (b.X - x) * (b.X - x)), yy = bars.Sum(b => (b.Y - y) * (b.Y - y)), xy = bars.Sum(b => (b.X - x) * (b.Y - y));
            return xx * yy - xy * xy > 1e-4;
        }
    }

    [Fact]
    public void A_lift_beyond_plates_and_bars_has_no_balance()
    {
        HoldDown h = One() with { Bars = [Bar(2, 0)] };
        Assert.Null(BaseGroup.Solve(h, C30, (-10).Kilonewtons, Torque.Zero, Torque.FromKilonewtonMeters(100)));
        Assert.Null(BaseGroup.Solve(One() with { Bars = [] }, C30, 10.Kilonewtons, Torque.Zero, Torque.FromKilonewtonMeters(8)));
    }
}
