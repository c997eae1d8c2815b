using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Bars;

public class FixingChecksTests
{
    private const string Blue46 = "ArcelorMittal Orange Book, bolt resistances, class 4.6, S355 (EN 1993-1-8, Table 3.4)";
    private const string Blue88 = "ArcelorMittal Orange Book, bolt resistances, class 8.8, preloaded (EN 1993-1-8, Table 3.4 and 3.9)";
    private const string J3 = "AISC 360-22, Table J3.2 with φ = 0.75, second hand";

    private const string FinPlate = "Steel Buildings in Europe, Multi-storey steel buildings, part 5 (2008), 3.4 Worked example: fin plate";
    private const string J43 = "AISC Steel Construction Manual, Tables 9-3b and 9-3c, second hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("tensile stress area M12", "ISO 898-1, second hand", 84.3, "mm²", 1e-3, () => 1e6 * M(12, BoltGrade.Class46, null).TensileArea),
        new("tensile stress area M16", "ISO 898-1, second hand", 157, "mm²", 3.2e-3, () => 1e6 * M(16, BoltGrade.Class46, null).TensileArea),
        new("tensile stress area M20", "ISO 898-1, second hand", 245, "mm²", 2.1e-3, () => 1e6 * M(20, BoltGrade.Class46, null).TensileArea),
        new("shear of M16-4.6", Blue46, 30.1, "kN", 2e-3, () => Shear(M(16, BoltGrade.Class46, 157))),
        new("tension of M16-4.6", Blue46, 45.2, "kN", 1.2e-3, () => Tension(M(16, BoltGrade.Class46, 157))),
        new("shear of M20-4.6", Blue46, 47.0, "kN", 1.1e-3, () => Shear(M(20, BoltGrade.Class46, 245))),
        new("tension of M20-4.6", Blue46, 70.6, "kN", 8e-4, () => Tension(M(20, BoltGrade.Class46, 245))),
        new("shear of M16-8.8", Blue88, 60.3, "kN", 9e-4, () => Shear(M(16, BoltGrade.Class88, 157))),
        new("shear of M20-8.8", Blue88, 94.1, "kN", 6e-4, () => Shear(M(20, BoltGrade.Class88, 245))),
        new("bearing of 10 mm S355 at M16, e₁ 35, e₂ 25, p 50", Blue46, 85.4, "kN", 6e-4, () => Bearing(16, 35, 25, 50)),
        new("bearing of 10 mm S355 at M20, e₁ 40, e₂ 30, p 60", Blue46, 96.5, "kN", 6e-4, () => Bearing(20, 40, 30, 60)),
        new("bearing of 10 mm S355 at M24, e₁ 50, e₂ 35, p 70", Blue46, 120, "kN", 4.2e-3, () => Bearing(24, 50, 35, 70)),
        new("slip of M16-8.8, μ 0.2, ultimate", "producer's table of bolts to EN 1993-1-8, class 8.8 countersunk, preloaded at ULS, second hand", 14.1, "kN", 3.6e-3, () => Slip(157, 0.2, 1.25)),
        new("slip of M20-8.8, μ 0.3, ultimate", "producer's table of bolts to EN 1993-1-8, class 8.8 countersunk, preloaded at ULS, second hand", 32.9, "kN", 1.6e-3, () => Slip(245, 0.3, 1.25)),
        new("slip of M16-8.8, μ 0.2, service", Blue88, 16.0, "kN", 3.2e-3, () => Slip(157, 0.2, 1.1)),
        new("shear of ¾ in A325-N", J3, 17.9, "kip", 2.8e-3, () => American(0.75, BoltGrade.A325, true)),
        new("shear of ¾ in A325-X", J3, 22.5, "kip", 2.3e-3, () => American(0.75, BoltGrade.A325, false)),
        new("shear of 1 in A325-N", J3, 31.8, "kip", 1.6e-3, () => American(1, BoltGrade.A325, true)),
        new("shear of 1 in A490-N", J3, 40.1, "kip", 1.3e-3, () => American(1, BoltGrade.A490, true)),
        new("block of one column of 4 × ⅞ in at 3 in, end 2 in, F_y 36 ksi: shear yield of one plane, a thickness of 1 in", J43, 178, "kip", 2.9e-3, () => Torn(36, 1000)),
        new("the same, F_u 58 ksi: shear rupture of one plane", J43, 196, "kip", 2.6e-3, () => Torn(1000, 58)),
        new("fin plate 360 × 10 mm S275, 5 × 2 M20, shear: block tearing, eccentric", FinPlate + ", 3.2.2.3", 483, "kN", 1e-3,
            () => 1e-3 * TearOutStrength.Block(null, upright, 0.16, 0.01, 275e6, 430e6, true, LoadedBars.En)),
        new("the same in tension: block between the outer columns, no edge near", FinPlate + ", 3.3.1.3, case 1, γ_M2 1.1", 995, "kN", 5e-4,
            () => 1e-3 * TearOutStrength.Block(null, lying, 0.50, 0.01, 275e6, 430e6, false, LoadedBars.En with { GammaM2 = 1.1 })),
        new("the same in tension: bearing of a bolt", FinPlate + ", 3.3.1.2, γ_M2 1.1", 129, "kN", 2e-3,
            () => 1e-3 * BoltStrength.BearingEn(null, "", M(20, BoltGrade.Class88, null), 0.05, 0.06, 0.04, 0.07, 0.01, 430e6, 1.1)),
        new("tear-out of M12 (hole 13 mm) from 60 × 10 mm S355, e₁ 30: two planes of 23.5 mm", "EN 1993-1-8, 3.10.2 (3.9) without a face in tension, by hand", 2 * 23.5 * 10 * 355 / Math.Sqrt(3) * 1e-3, "kN", 1e-6,
            () => 1e-3 * TearOutStrength.OneBolt(null, lap, 0.06, 0.01, 355e6, 490e6, LoadedBars.En), ValueKind.IndependentComputation),
        new("block tearing of two M12 in line, pitch 40, e₁ 30, 60 × 10 mm S355: one plane and the edge", "EN 1993-1-8, 3.10.2 (3.9), by hand", (490 * 235 / 1.25 + 355 * 505 / Math.Sqrt(3)) * 1e-3, "kN", 1e-6,
            () => 1e-3 * TearOutStrength.Block(null, lap, 0.06, 0.01, 355e6, 490e6, false, LoadedBars.En), ValueKind.IndependentComputation),
        new("the same with an eccentric pull", "EN 1993-1-8, 3.10.2 (3.10), by hand", (0.5 * 490 * 235 / 1.25 + 355 * 505 / Math.Sqrt(3)) * 1e-3, "kN", 1e-6,
            () => 1e-3 * TearOutStrength.Block(null, lap, 0.06, 0.01, 355e6, 490e6, true, LoadedBars.En), ValueKind.IndependentComputation),
        new("tear-out of the same bolt, LRFD: φ 1.2 l_c t F_u", "AISC 360-16, J3.10 (J3-6c), by hand", 0.75 * 1.2 * 23.5 * 10 * 490 * 1e-3, "kN", 1e-6,
            () => 1e-3 * TearOutStrength.OneBolt(null, lap, 0.06, 0.01, 355e6, 490e6, LoadedBars.Lrfd), ValueKind.IndependentComputation),
    ];

    private static readonly BoltedFixing lap = new() { Bolt = M(12, BoltGrade.Class88, null), Rows = 2, Pitch = 40.Millimeters, EndDistance = 30.Millimeters };

    private static readonly BoltedFixing upright = new() { Bolt = M(20, BoltGrade.Class88, null), Rows = 5, Columns = 2, Pitch = 70.Millimeters, Gauge = 60.Millimeters, EndDistance = 40.Millimeters };

    private static readonly BoltedFixing lying = new() { Bolt = M(20, BoltGrade.Class88, null), Rows = 2, Columns = 5, Pitch = 60.Millimeters, Gauge = 70.Millimeters, EndDistance = 50.Millimeters };

    private static readonly BoltedFixing four = new()
    {
        Bolt = M(12, BoltGrade.Stainless70, null),
        Rows = 2,
        Columns = 2,
        Pitch = 40.Millimeters,
        Gauge = 40.Millimeters,
        EndDistance = 25.Millimeters,
    };

    private static readonly LoadedBar wide = LoadedBars.Steel() with { Section = new FlatBar(100.Millimeters, 10.Millimeters) };

    [Fact]
    public void Moment_alone_loads_the_corner_bolts_alike()
    {
        // Four bolts 28.28 mm from the centroid: 1 kN·m gives 1000/(4 · 28.28 mm) each.
        BoltForces forces = BoltForces.Of(null, four, new(0, 0, 1000, 0, 0, 0), 0.1);
        Assert.Equal(1000 / (4 * 0.02 * Math.Sqrt(2)), forces.Shear, 1e-6);
        Assert.Equal(0, forces.Tension);
    }

    [Fact]
    public void Worst_bolt_agrees_with_the_sum_over_all_bolts() =>
        Gen.Select(Gen.Double[-1e4, 1e4], Gen.Double[-500, 500], Gen.Double[-1e4, 1e4], Gen.Int[1, 4], Gen.Int[1, 3]).Sample((N, M, V, rows, columns) =>
        {
            BoltedFixing fixing = four with { Rows = rows, Columns = columns, Gauge = 30.Millimeters };
            double I = 0, worst = 0;
            for (int i = 0; i < rows; i++)
                for (int j = 0; j < columns; j++)
                    I += fixing.X(i) * fixing.X(i) + fixing.Y(j) * fixing.Y(j);
            for (int i = 0; i < rows; i++)
                for (int j = 0; j < columns; j++)
                    for (int sign = -1; sign <= 1 && I > 0; sign += 2)
                        worst = Math.Max(worst, double.Hypot(N / fixing.Count - sign * M * fixing.Y(j) / I, V / fixing.Count + sign * M * fixing.X(i) / I));
            BoltForces forces = BoltForces.Of(null, fixing, new(N, 0, M, 0, 0, V), 0.1);
            Assert.Equal(I > 0 ? worst : double.Hypot(N, V), forces.Shear, 1e-6 * (1 + worst));
        });

    [Fact]
    public void Bolts_that_pull_balance_the_weak_moment() => Gen.Select(Gen.Double[1, 500], Gen.Int[1, 4]).Sample((M, rows) =>
    {
        BoltedFixing fixing = four with { Rows = rows };
        double far = BoltForces.Of(null, fixing, new(0, M, 0, 0, 0, 0), 0.1).Tension, arm = 0.025 + (rows - 1) * 0.04, sum = 0;
        for (int i = 0; i < rows; i++)
            sum += 2 * far * (0.025 + i * 0.04) / arm * (0.025 + i * 0.04);
        Assert.Equal(M, sum, 1e-9 * M);
    });

    /// <summary>Every way to cut the bolts out of the end, by areas counted hole by hole.</summary>
    [Fact]
    public void The_weakest_way_out_counts() => Gen.Select(Gen.Int[1, 4], Gen.Int[1, 3], Gen.Double[0.8, 3], Gen.Double[1.6, 4], Gen.Double[1.6, 4], Gen.Double[0.8, 3]).Sample((rows, columns, e1, p1, p2, e2) =>
    {
        const double d = 0.013, t = 0.01, f_y = 355e6, f_u = 490e6;
        BoltedFixing fixing = four with { Rows = rows, Columns = columns, EndDistance = (d * e1).Meters, Pitch = (d * p1).Meters, Gauge = (d * p2).Meters };
        double width = d * (2 * e2 + (columns - 1) * p2), plane = d * (e1 - 0.5 + (rows - 1) * (p1 - 1));
        double shear = plane * t * f_y / Math.Sqrt(3), gaps = d * (columns - 1) * (p2 - 1) * t * f_u / 1.25, edge = d * (e2 - 0.5) * t * f_u / 1.25;
        double weakest = Math.Min(2 * columns * shear, Math.Min(2 * shear + gaps, shear + gaps + edge));
        Assert.Equal(weakest, TearOutStrength.Block(null, fixing, width, t, f_y, f_u, false, LoadedBars.En), 1e-9 * weakest);
        double pull = 0.3 * weakest;
        Check found = FixingChecks.TearOut(wide with { Section = new FlatBar(width.Meters, t.Meters), AtTower = LoadedBars.End(pull) }, fixing, LoadedBars.En);
        Assert.True(found.Utilization >= 0.3 - 1e-9);
        Check pushed = FixingChecks.TearOut(wide with { Section = new FlatBar(width.Meters, t.Meters), AtTower = LoadedBars.End(-pull) }, fixing, LoadedBars.En);
        Assert.True(pushed.Utilization <= found.Utilization);
    });

    [Fact]
    public void A_single_bolt_cannot_hold_a_moment_in_the_plane_of_the_flat()
    {
        BoltedFixing one = four with { Rows = 1, Columns = 1 };
        LoadedBar bar = wide with { AtTower = LoadedBars.End(1000, strong: 10) };
        Assert.Equal(Verdict.NotChecked, FixingChecks.Bolts(bar, one, LoadedBars.En).Verdict);
        Assert.Equal(Verdict.NotChecked, FixingChecks.Bearing(bar, one, LoadedBars.En).Verdict);
        Assert.Equal(Verdict.Pass, FixingChecks.Bolts(bar with { AtTower = LoadedBars.End(1000) }, one, LoadedBars.En).Verdict);
    }

    [Fact]
    public void More_force_never_helps_any_fixing() => Gen.Select(LoadedBars.Any, Gen.Double[1, 3]).Sample((any, by) =>
    {
        BarSectionForces f = any.AtTower;
        LoadedBar bar = wide with { AtTower = f };
        LoadedBar more = wide with { AtTower = LoadedBars.End(by * f.Axial.Newtons, by * f.WeakMoment.NewtonMeters, by * f.StrongMoment.NewtonMeters, by * f.Torsion.NewtonMeters, by * f.ShearAlongThickness.Newtons, by * f.ShearAlongWidth.Newtons) };
        var weld = new WeldedFixing { Throat = 5.Millimeters, CorrelationFactor = 0.9 };
        foreach (BarDesign design in new[] { LoadedBars.En, LoadedBars.Lrfd, LoadedBars.Asd })
        {
            Assert.True(FixingChecks.Bolts(more, four, design).Utilization >= FixingChecks.Bolts(bar, four, design).Utilization * (1 - 1e-12));
            Assert.True(FixingChecks.Bearing(more, four, design).Utilization >= FixingChecks.Bearing(bar, four, design).Utilization * (1 - 1e-12));
            Assert.True(FixingChecks.TearOut(more, four, design).Utilization >= FixingChecks.TearOut(bar, four, design).Utilization * (1 - 1e-12));
            Assert.True(FixingChecks.NetSection(more, four, design).Utilization >= FixingChecks.NetSection(bar, four, design).Utilization * (1 - 1e-12));
            Assert.True(WeldChecks.Fillets(more, weld, design).Utilization >= WeldChecks.Fillets(bar, weld, design).Utilization * (1 - 1e-12));
        }
    });

    [Fact]
    public void The_net_section_is_stressed_more_than_the_whole()
    {
        LoadedBar bar = wide with { AtTower = LoadedBars.End(20e3, 20, 100) };
        double whole = BarSectionChecks.FirstYield(bar, LoadedBars.En).Demand!.Value, net = FixingChecks.NetSection(bar, four, LoadedBars.En).Demand!.Value;
        Assert.True(net > whole);
        Assert.Equal(20e3 / ((0.1 - 2 * 0.013) * 0.01), FixingChecks.NetSection(wide with { AtTower = LoadedBars.End(20e3) }, four, LoadedBars.En).Demand!.Value, 1);
    }

    [Fact]
    public void Bad_input_is_refused_and_other_codes_are_not_checked()
    {
        LoadedBar bar = wide with { AtTower = LoadedBars.End(1000) };
        Assert.ThrowsAny<ArgumentException>(() => FixingChecks.Bolts(bar, four with { Gauge = 95.Millimeters }, LoadedBars.En));
        Assert.ThrowsAny<ArgumentException>(() => FixingChecks.Bolts(bar, four with { Rows = 0 }, LoadedBars.En));
        Assert.ThrowsAny<ArgumentException>(() => SaddleChecks.Slip(1.Newtons, 100.Newtons, 2));
        Assert.ThrowsAny<ArgumentException>(() => SaddleChecks.Clearance(-1.Millimeters, 0.Meters, 0.Meters));
        Assert.ThrowsAny<ArgumentException>(() => WeldChecks.Fillets(bar, new WeldedFixing { Throat = 20.Millimeters }, LoadedBars.En));
        Assert.Equal(Verdict.NotChecked, FixingChecks.Bolts(bar, four with { Bolt = M(12, BoltGrade.A325, null) }, LoadedBars.En).Verdict);
        Assert.Equal(Verdict.NotChecked, FixingChecks.Bolts(bar, four, BarDesign.For(WroughtIron.Puddled)).Verdict);
        Assert.Equal(Verdict.NotChecked, WeldChecks.Fillets(bar, new WeldedFixing { Throat = 5.Millimeters }, BarDesign.For(WroughtIron.Puddled)).Verdict);
    }

    [Fact]
    public void Each_check_has_a_working()
    {
        LoadedBar bar = wide with { AtTower = LoadedBars.End(1000, 5, 20, 2, 100, 200), Material = StainlessSteel.Grade316L };
        BarDesign design = BarDesign.For(bar.Material);
        Assert.Contains("greatest pull", FixingChecks.Bolts(bar, four, design).Working().ToText());
        Assert.Contains("reduced for stainless steel", FixingChecks.Bearing(bar, four, design).Working().ToText());
        Assert.Contains("Block", FixingChecks.TearOut(bar, four, design).Working().ToText());
        Assert.Contains("A_net", FixingChecks.NetSection(bar, four, design).Working().ToText());
        Assert.Contains("correlation factor", WeldChecks.Fillets(bar, new WeldedFixing { Throat = 4.Millimeters }, design).Working().ToText());
        Assert.Equal(0.85, SaddleChecks.Clearance(20.Millimeters, 12.Millimeters, 5.Millimeters).Utilization!.Value, 1e-9);
    }

    private static Bolt M(int d, BoltGrade grade, double? area) => new() { Diameter = d.Millimeters, Grade = grade, StressArea = area?.SquareMillimeters };

    private static double Shear(Bolt bolt) => 1e-3 * BoltStrength.Shear(null, bolt, 1, LoadedBars.En);

    private static double Tension(Bolt bolt) => 1e-3 * BoltStrength.Tension(null, bolt, LoadedBars.En);

    private static double Bearing(int d, double e1, double e2, double p) =>
        1e-3 * BoltStrength.BearingEn(null, "", M(d, BoltGrade.Class46, null), 1e-3 * e1, 1e-3 * p, 1e-3 * e2, 1e-3 * p, 0.01, 470e6, 1.25);

    private static double Slip(double area, double mu, double gamma) => 1e-3 * SaddleChecks.SlipResistance(null, 0.7 * 800 * area, mu, 1, gamma);

    /// <summary>Block shear of a single column between its two planes, kip for each plane and inch of thickness.</summary>
    private static double Torn(double yield, double ultimate)
    {
        const double ksi = 6894757.293;
        var line = new BoltedFixing
        {
            Bolt = new Bolt { Diameter = 0.875.Inches, Grade = BoltGrade.A325, Hole = (15.0 / 16).Inches },
            Rows = 4,
            Pitch = 3.Inches,
            EndDistance = 2.Inches,
        };
        double both = TearOutStrength.Block(null, line, 20 * 0.0254, 0.0254, yield * ksi, ultimate * ksi, false, LoadedBars.Lrfd);
        return Force.FromNewtons(both).KilopoundsForce / 2;
    }

    private static double American(double inches, BoltGrade grade, bool threads) =>
        Force.FromNewtons(BoltStrength.Shear(null, new Bolt { Diameter = inches.Inches, Grade = grade, ThreadsInShearPlane = threads }, 1, LoadedBars.Lrfd)).KilopoundsForce;
}
