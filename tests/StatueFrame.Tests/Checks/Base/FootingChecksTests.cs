using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Tests.Heron;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Base;

public class FootingChecksTests
{
    private static readonly FootingReinforcement Mesh = new() { Bar = 20.Millimeters, Spacing = 200.Millimeters, Cover = 50.Millimeters, YieldStrength = 500.Megapascals };

    private static readonly Foundation Plain = new()
    {
        WidthX = 4.Meters,
        WidthY = 4.Meters,
        Thickness = 1.Meters,
        Depth = 1.Meters,
        Material = Concrete.OfStrength(25.Megapascals),
        Soil = new Soil { AllowableBearing = 200.Kilopascals },
    };

    private static readonly Foundation Reinforced = Plain with { Thickness = 0.6.Meters, Reinforcement = Mesh };

    /// <summary>4 m square under a pedestal of 2 m, 1600 kN in the middle and the block's own weight not counted.</summary>
    private static Footing Middle(Foundation foundation, double N = 1.6e6, double ex = 0, double weightFactor = 0) =>
        Footing.Of(foundation, BlockSection.Rectangle(2.Meters, 2.Meters), new BaseLoad(N, 0, 0, N * ex, 0, 0), weightFactor, "", "storm");

    // By hand: p = 100 kPa, a = 1 m; f_ctd = 0.8 · 0.7 · 0.3 · 25^(2/3)/1.5 = 0.95759 MPa; d = 0.6 − 0.05 − 0.03 = 0.52 m, A_s = 1570.8 mm²/m.
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("plain block 4×4×1 m of C25, pedestal 2 m, 1600 kN: bending", "EN 1992-1-1:2004, 12.9.3 (12.13), by hand", 50e3 / (0.957587e6 * 0.7225 / 6), "-", 1e-6, () => FootingChecks.Bending(Middle(Plain)).Utilization!.Value, ValueKind.FromMemory),
        new("the same: 0.85 h/a over √(3σ/f_ctd)", "EN 1992-1-1:2004, 12.9.3 (12.13)", 0.85 / Math.Sqrt(3 * 100e3 / 0.957587e6), "-", 1e-5, () => 1 / Math.Sqrt(FootingChecks.Bending(Middle(Plain)).Utilization!.Value), ValueKind.FromMemory),
        new("mat 0.6 m, ⌀20/200, B500: bending resistance", "EN 1992-1-1:2004, 6.1, by hand", 1570.796e-6 * 434.7826e6 * (0.52 - 1570.796e-6 * 434.7826e6 / (2 * 16.66667e6)), "N·m/m", 1e-6, () => 50e3 / FootingChecks.Bending(Middle(Reinforced with { Reinforcement = Mesh with { AtTop = true } })).Utilization!.Value, ValueKind.FromMemory),
        new("the same: shear without links", "EN 1992-1-1:2004, (6.2), by hand: 0.12 k (100 ρ f_ck)^(1/3) with k = 1.6202, ρ = 0.00302", 0.12 * (1 + Math.Sqrt(200.0 / 520)) * Math.Cbrt(100 * 1570.796 / 520e3 * 25) * 520, "kN/m", 1e-6, () => FootingChecks.Shear(Middle(Reinforced)).Capacity!.Value / 1000, ValueKind.FromMemory),
        new("the same: shear d from the face", "statics: p (a − d)", 48, "kN/m", 1e-9, () => FootingChecks.Shear(Middle(Reinforced)).Demand!.Value / 1000, ValueKind.IndependentComputation),
        new("the same: least steel over steel", "EN 1992-1-1:2004, (9.1N), by hand: 0.26 · 2.5650/500 · 520 = 693.6 mm²/m", 693.57 / 1570.796, "-", 1e-4, () => FootingChecks.Reinforcement(Middle(Reinforced)).Utilization!.Value, ValueKind.FromMemory),
    ];

    [Fact]
    public void Punching_is_worst_on_some_perimeter_within_the_block()
    {
        // A mat of 8 m under a pedestal of 1 m, by hand on the perimeter at 2d: u = 4 + 2π 1.04, inside = 1 + 4 · 1.04 + π 1.04².
        Foundation wide = Reinforced with { WidthX = 8.Meters, WidthY = 8.Meters };
        Footing f = Footing.Of(wide, BlockSection.Rectangle(1.Meters, 1.Meters), new BaseLoad(6.4e6, 0, 0, 0, 0, 0), 0, "", "storm");
        double u = 4 + 2 * Math.PI * 1.04, inside = 1 + 4 * 1.04 + Math.PI * 1.04 * 1.04, v = 100e3 * (64 - inside) / (u * 0.52), v_Rd = 1e6 * 0.12 * (1 + Math.Sqrt(0.2 / 0.52)) * Math.Cbrt(100 * 1570.796 / 520e3 * 25);
        Assert.True(FootingChecks.Punching(f).Utilization >= v / v_Rd * (1 - 1e-5));
        Assert.Equal(0, FootingChecks.Punching(Middle(Reinforced with { WidthX = 2.1.Meters, WidthY = 2.1.Meters })).Utilization);
    }

    [Fact]
    public void Where_the_ground_lets_go_the_block_hangs_by_its_own_weight()
    {
        // All of the load on one edge: the other side carries itself, by plain concrete, whatever lies at the bottom.
        Check lifted = FootingChecks.Bending(Middle(Reinforced with { Thickness = 0.45.Meters, WidthX = 12.Meters, WidthY = 12.Meters }, 2e6, 4.5, 1.35));
        Assert.True(lifted.Utilization > FootingChecks.Bending(Middle(Reinforced with { Thickness = 0.45.Meters, WidthX = 12.Meters, WidthY = 12.Meters, Reinforcement = Mesh with { AtTop = true } }, 2e6, 4.5, 1.35)).Utilization);
    }

    [Fact]
    public void Earth_on_the_block_bends_it_down_where_the_ground_lets_go()
    {
        Foundation wide = Reinforced with { Thickness = 0.45.Meters, WidthX = 12.Meters, WidthY = 12.Meters, Depth = 0.45.Meters };
        Assert.True(FootingChecks.Bending(Middle(wide with { Depth = 2.Meters }, 2e6, 4.5, 1.35)).Utilization > FootingChecks.Bending(Middle(wide, 2e6, 4.5, 1.35)).Utilization);
    }

    [Fact]
    public void Nothing_that_balances_the_load_is_a_failure() =>
        Assert.All(FootingChecks.All(Middle(Reinforced, 1e6, 3)).SkipLast(1), check => Assert.Equal(Verdict.Fail, check.Verdict));

    /// <summary>Less concrete, less steel and more eccentricity never help.</summary>
    [Fact]
    public void Weakening_never_helps() => Gen.Select(Gen.Double[0.4, 1], Gen.Double[0.5, 4], Gen.Double[0, 0.6]).Sample((f, load, ex) =>
    {
        Footing whole = Middle(Reinforced, load * 1e6, ex, 1);
        foreach (Footing weaker in (Footing[])
        [
            Middle(Reinforced with { Material = Concrete.OfStrength((25 * f).Megapascals) }, load * 1e6, ex, 1),
            Middle(Reinforced with { Reinforcement = Mesh with { Spacing = Mesh.Spacing / f } }, load * 1e6, ex, 1),
            Middle(Reinforced, load * 1e6, ex / f, 1),
        ])
        {
            foreach ((Check before, Check after) in FootingChecks.All(whole).Zip(FootingChecks.All(weaker)).Where(pair => pair.First.Id != "foundation.reinforcement"))
                Assert.True(after.Utilization >= before.Utilization * (1 - 1e-9), $"{before.Id} {before.Utilization} → {after.Utilization}");
        }
    }, iter: 300);

    [Fact]
    public void Mesh_out_of_range_is_refused_with_its_path()
    {
        Statue statue = SaltmereHeron.Document.Statue;
        Problem problem = Assert.Single((statue with { Foundation = statue.Foundation! with { Reinforcement = Mesh with { Spacing = 5.Meters } } }).FindProblems());
        Assert.Equal("Foundation.Reinforcement.Spacing", problem.Path);
    }

    [Fact]
    public void A_mat_without_a_pedestal_is_left_open_by_name()
    {
        StatueDocument heron = SaltmereHeron.Document;
        CheckSheet sheet = (heron with { Statue = heron.Statue with { Pedestal = null }, Situations = [heron.AllSituations()[0]], Actions = null }).Check();
        Assert.Contains(sheet.NotChecked, check => check.Id == "foundation.bending" && check.Reason.Contains("no pedestal"));
        Assert.Contains(sheet.OpenLinks, link => link.Link == "foundation");
    }
}
