using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Cores;

public class BlockChecksTests
{
    internal static readonly Masonry Stone = new()
    {
        Name = "granite ashlar",
        Density = 2600.KilogramsPerCubicMeter,
        YoungsModulus = 8.Gigapascals,
        CompressiveStrength = 8.Megapascals,
        InitialShearStrength = 0.1.Megapascals,
        Source = Source.User,
    };

    private static readonly Concrete c20 = Concrete.OfStrength(20.Megapascals);

    private static BlockCut Cut(double kN, double mx, double my, double vx = 0) => new()
    {
        Section = BlockSection.Rectangle(2.Meters, 3.Meters),
        Material = Stone,
        Compression = kN.Kilonewtons,
        MomentY = Torque.FromKilonewtonMeters(mx),
        MomentX = Torque.FromKilonewtonMeters(-my),
        ShearX = vx.Kilonewtons,
        Where = "base",
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("Φ_m of a wall, h_ef/t = 20, e/t = 0.05, E = 1000 f_k", "EN 1996-1-1:2005, Annex G, in the form u = (h/t − 2)/(23 − 37e/t), from memory", 0.9 * Math.Exp(-0.5 * Math.Pow(18 / (23 - 1.85), 2)), "-", 3e-3, () => 0.9 * MasonryStrength.Slenderness(null, 20, 1, 0.05, 1e6, 1e9), ValueKind.FromMemory),
        new("Φ_m of a wall, h_ef/t = 10, e/t = 0.10, E = 1000 f_k", "EN 1996-1-1:2005, Annex G, in the form u = (h/t − 2)/(23 − 37e/t), from memory", 0.8 * Math.Exp(-0.5 * Math.Pow(8 / (23 - 3.7), 2)), "-", 3e-3, () => 0.8 * MasonryStrength.Slenderness(null, 10, 1, 0.1, 1e6, 1e9), ValueKind.FromMemory),
        new("even block of a wall about one axis, Φ = 1 − 2e/t", "EN 1996-1-1:2005, 6.1.2.2 (6.4), from memory; 2 × 3 m, e = 0.4 m, f_k/γ_M = 3.2 MPa", 3.2 * 3 * 1.2, "MN", 1e-9, () => 1e-6 * BlockChecks.Capacity(Cut(1000, 400, 0)).Capacity!.Value, ValueKind.FromMemory),
        new("E_cm of C30", "EN 1992-1-1:2004, Table 3.1, from memory", 33, "GPa", 1e-2, () => Concrete.OfStrength(30.Megapascals).YoungsModulus.Gigapascals, ValueKind.FromMemory),
        new("f_ctm of C30", "EN 1992-1-1:2004, Table 3.1, from memory", 2.9, "MPa", 1e-2, () => 1e-6 * Concrete.OfStrength(30.Megapascals).f_ctm, ValueKind.FromMemory),
        new("f_ctm of C60", "EN 1992-1-1:2004, Table 3.1, from memory", 4.4, "MPa", 2e-2, () => 1e-6 * Concrete.OfStrength(60.Megapascals).f_ctm, ValueKind.FromMemory),
    ];

    [Fact]
    public void Middle_third_is_the_limit_of_the_kern()
    {
        Assert.Equal(1, BlockChecks.Kern(Cut(100, 100 * 2 / 6.0, 0)).Utilization!.Value, 1e-9);
        Assert.Equal(1, BlockChecks.Kern(Cut(100, 100 * 2 / 12.0, -100 * 3 / 12.0)).Utilization!.Value, 1e-9);
    }

    /// <summary>A thrust far out along the long side does not keep a thin wall from buckling across it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_thin_wall_buckles_the_thin_way_whatever_way_it_is_pushed(bool concrete)
    {
        BlockCut Wall(double my) => Cut(400, 0, my) with
        {
            Section = BlockSection.Rectangle(0.5.Meters, 6.Meters),
            Material = concrete ? c20 : Stone,
            FreeHeight = 5.Meters,
        };
        double straight = BlockChecks.Capacity(Wall(0)).Capacity!.Value, pushed = BlockChecks.Capacity(Wall(40)).Capacity!.Value;
        double stocky = BlockChecks.Capacity(Wall(40) with { FreeHeight = Length.Zero }).Capacity!.Value;
        Assert.True(pushed <= straight, $"{pushed} is more than {straight}");
        Assert.True(pushed < 0.8 * stocky, $"{pushed} of {stocky}");
    }

    [Fact]
    public void Overturning_is_the_part_of_the_way_to_the_edge()
    {
        Assert.Equal(0.7, BlockChecks.Overturning(Cut(100, 70, 0)).Utilization!.Value, 1e-9);
        Assert.Equal(1.05, BlockChecks.Overturning(Cut(100, 70, 0), new BaseDesign { OverturningMargin = 1.5 }).Utilization!.Value, 1e-9);
    }

    [Fact]
    public void Thrust_outside_or_a_pull_fails_everything_but_shear_of_nothing()
    {
        foreach (BlockCut cut in new[] { Cut(100, 130, 0, 5), Cut(-10, 0, 0, 5), Cut(0, 0, 1, 5) })
        {
            Check[] checks = [BlockChecks.Kern(cut), BlockChecks.ToeStress(cut), BlockChecks.Capacity(cut), BlockChecks.Overturning(cut), BlockChecks.Shear(cut)];
            Assert.All(checks, check => Assert.Equal(Verdict.Fail, check.Verdict));
        }
    }

    [Fact]
    public void Masonry_slides_on_cohesion_of_the_pressed_part_and_friction()
    {
        Check check = BlockChecks.Shear(Cut(1000, 500, 0, 100));
        Assert.Equal((0.1e6 * 3 * 1.5 + 0.4 * 1e6) / 2.5, check.Capacity!.Value, 1);
        Assert.Equal(1e5, check.Demand!.Value, 1e-6);
    }

    [Fact]
    public void Greatest_shear_strength_caps_friction()
    {
        BlockCut cut = Cut(10_000, 0, 0, 100) with { Material = Stone with { GreatestShearStrength = 0.3.Megapascals } };
        Assert.Equal(0.3e6 * 6 / 2.5, BlockChecks.Shear(cut).Capacity!.Value, 1);
    }

    [Fact]
    public void Slender_masonry_and_concrete_carry_less()
    {
        foreach (BlockMaterial material in new BlockMaterial[] { Stone, c20 })
        {
            double stocky = BlockChecks.Capacity(Cut(1000, 200, 100) with { Material = material }).Capacity!.Value, before = stocky;
            foreach (double height in new[] { 5.0, 10, 20 })
            {
                double now = BlockChecks.Capacity(Cut(1000, 200, 100) with { Material = material, FreeHeight = height.Meters }).Capacity!.Value;
                Assert.True(now < before);
                before = now;
            }
        }
    }

    [Fact]
    public void Plain_concrete_takes_its_block_at_four_fifths_of_its_strength() =>
        Assert.Equal(0.8 * 20e6 / 1.5 * 3 * 1.2, BlockChecks.Capacity(Cut(1000, 400, 0) with { Material = c20 }).Capacity!.Value, 1);

    [Fact]
    public void American_plain_concrete_may_not_crack()
    {
        var aci = new BaseDesign { Code = BaseCode.American };
        BlockCut cut = Cut(1000, 900, 0) with { Material = c20 };
        double f_t = 5 * Math.Sqrt(20e6 / 6894.757) * 6894.757, expected = (900e3 / (3 * 4 / 6.0) - 1e6 / 6) / (0.6 * f_t);
        Assert.Equal(expected, BlockChecks.Capacity(cut, aci).Demand!.Value, 1e-4);
    }

    [Fact]
    public void What_is_not_described_is_not_checked()
    {
        Assert.Equal(Verdict.NotChecked, BlockChecks.Interaction(Cut(100, 10, 0)).Verdict);
        Assert.Contains("bars", BlockChecks.Interaction(Cut(100, 10, 0) with { Material = c20 }).Reason, StringComparison.Ordinal);
        BlockCut reinforced = Cut(100, 10, 0) with { Material = c20, Reinforcement = Reinforcement.Ring(8, 1.5.Meters, 20.Millimeters, 500.Megapascals) };
        Assert.Equal(Verdict.Pass, BlockChecks.Interaction(reinforced).Verdict);
        Assert.Equal(Verdict.NotChecked, BlockChecks.Shear(reinforced).Verdict);
    }

    [Fact]
    public void Working_prints_the_thrust()
    {
        string text = BlockChecks.ToeStress(Cut(1000, 500, 200)).Working().ToText();
        Assert.Contains("e_x", text, StringComparison.Ordinal);
        Assert.Contains("f_d", text, StringComparison.Ordinal);
    }
}
