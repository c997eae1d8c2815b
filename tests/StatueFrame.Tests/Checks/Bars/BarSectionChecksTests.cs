using CsCheck;
using StatueFrame.Checks;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Bars;

public class BarSectionChecksTests
{
    private const string Dubbel = "torsion of rectangles, ratio of the shear stresses of short and long side, tables of mechanical engineering";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new (double Ratio, double Value)[] { (1, 1.0), (1.5, 0.858), (2, 0.796), (3, 0.753), (4, 0.745), (8, 0.743) }.Select(row => new PublishedValue(
            $"torsion of a flat, shear at the narrow over the wide face, b/t = {row.Ratio}", Dubbel, row.Value, "-", 1.4e-3,
            () => new FlatRectangle(row.Ratio, 1).TorsionW / FlatStresses.NarrowTorsionW(row.Ratio, 1), ValueKind.FromMemory)),
        new("solid rectangle under half N_pl and (1 − n²) M_pl, load factor", "EN 1993-1-1:2005, 6.2.9.1 (3), (6.32)", 1, "-", 1e-12,
            () => BarSectionChecks.Plastic(null, new(0.5, 0.75 * 0.25, 0, 0, 0, 0), 1, 1, 1, 1).Demand, ValueKind.FromMemory),
        new("first yield of a flat under shear along its width alone: √3 · 1.5 V/A", "von Mises, parabolic shear", Math.Sqrt(3) * 1.5 * 480 / 480e-6, "Pa", 1e-12,
            () => FlatStresses.Equivalent(null, new(0, 0, 0, 0, 0, 480), 0.06, 0.008), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Normal_stress_adds_at_the_corner() =>
        Assert.Equal(10e6 + 20e6 + 20e6, BarSectionChecks.FirstYield(LoadedBars.Steel(4800, 12.8, 96), LoadedBars.En).Demand!.Value, 1);

    [Fact]
    public void Plastic_interaction_agrees_with_fibers_about_one_axis_and_is_safe_about_two() =>
        Gen.Select(Gen.Double[0, 2 * Math.PI], Gen.Double[-0.65, 0.65]).Sample((direction, c) =>
        {
            // A plastic state: stress is the sign of a plane over a unit square.
            const int n = 200;
            (double kz, double ky) = Math.SinCos(direction);
            double N = 0, Mw = 0, Ms = 0;
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    double y = (i + 0.5) / n - 0.5, z = (j + 0.5) / n - 0.5, s = Math.Sign(ky * y + kz * z + c) / (double)(n * n);
                    (N, Mw, Ms) = (N + s, Mw + s * y, Ms + s * z);
                }
            }
            double u = BarSectionChecks.Plastic(null, new(N, Mw, Ms, 0, 0, 0), 1, 1, 1, 1).Demand;
            Assert.True(u > 1 - 0.02, $"{u}");
            double one = BarSectionChecks.Plastic(null, new(N, 0.25 * (1 - N * N), 0, 0, 0, 0), 1, 1, 1, 1).Demand;
            Assert.Equal(1, one, 1e-9);
        }, iter: 60);

    [Fact]
    public void First_yield_of_normal_stress_comes_before_the_plastic_limit() => LoadedBars.Any.Sample(any =>
    {
        BarSectionForces f = any.AtTower;
        LoadedBar bar = any with { AtTower = LoadedBars.End(f.Axial.Newtons, f.WeakMoment.NewtonMeters, f.StrongMoment.NewtonMeters) };
        Assert.True(BarSectionChecks.Plastic(bar, LoadedBars.En).Utilization <= BarSectionChecks.FirstYield(bar, LoadedBars.En).Utilization * (1 + 1e-12));
    });

    [Fact]
    public void More_force_never_helps_and_signs_do_not_matter() => Gen.Select(LoadedBars.Any, Gen.Double[1, 3]).Sample((bar, by) =>
    {
        BarSectionForces f = bar.AtTower;
        LoadedBar more = bar with { AtTower = LoadedBars.End(by * f.Axial.Newtons, by * f.WeakMoment.NewtonMeters, -by * f.StrongMoment.NewtonMeters, -by * f.Torsion.NewtonMeters, by * f.ShearAlongThickness.Newtons, -by * f.ShearAlongWidth.Newtons) };
        foreach (Func<LoadedBar, BarDesign, Check> check in new Func<LoadedBar, BarDesign, Check>[] { BarSectionChecks.FirstYield, BarSectionChecks.Plastic })
            Assert.True(check(more, LoadedBars.En).Utilization >= check(bar, LoadedBars.En).Utilization * (1 - 1e-12));
    });

    [Fact]
    public void Shear_that_uses_up_the_section_fails()
    {
        Check check = BarSectionChecks.Plastic(LoadedBars.Steel(T: 2000), LoadedBars.En);
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(double.PositiveInfinity, check.Utilization);
    }

    [Fact]
    public void A_metal_that_the_code_does_not_cover_is_not_checked_by_it()
    {
        LoadedBar iron = LoadedBars.Steel(1000) with { Material = WroughtIron.Puddled };
        Assert.Equal(Verdict.NotChecked, BarSectionChecks.FirstYield(iron, LoadedBars.En with { Metal = MetalKind.Other }).Verdict);
        Assert.Equal(DesignCode.AllowableStress, BarDesign.For(WroughtIron.Puddled).Code);
        Assert.Equal(Verdict.Pass, BarSectionChecks.FirstYield(iron, BarDesign.For(WroughtIron.Puddled)).Verdict);
        Assert.Equal(DesignCode.AllowableStress, BarDesign.For(StainlessSteel.Grade316L, DesignCode.AiscLrfd).Code);
        Assert.Equal((MetalKind.StainlessSteel, 1.1), (BarDesign.For(StainlessSteel.Grade316L).Metal, BarDesign.For(StainlessSteel.Grade316L).GammaM1));
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => BarSectionChecks.FirstYield(LoadedBars.Steel() with { Length = 0.Meters }, LoadedBars.En));
        Assert.ThrowsAny<ArgumentException>(() => BarSectionChecks.FirstYield(LoadedBars.Steel(), LoadedBars.En with { GammaM0 = 0 }));
        Assert.ThrowsAny<ArgumentException>(() => BarSectionChecks.Plastic(LoadedBars.Steel(double.NaN), LoadedBars.En));
    }

    [Fact]
    public void The_working_gives_the_same_numbers()
    {
        Check check = BarSectionChecks.FirstYield(LoadedBars.Steel(4800, 12.8, 96, 5, 100, 200), LoadedBars.Lrfd);
        Assert.Contains("middle of wide face", check.Working().ToText());
        Assert.Contains("utilization", check.Working().ToText());
    }
}
