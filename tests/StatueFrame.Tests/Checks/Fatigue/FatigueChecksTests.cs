using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Fatigue;

public class FatigueChecksTests
{
    private static readonly CheckSubject subject = new("bars.fatigue", "fatigue");

    private const string Curve = "EN 1993-1-9:2005, 7.1, second hand";
    private const string Gusts = "EN 1991-1-4:2005, (B.9), by hand";
    private static readonly DetailCategory c71 = DetailCategory.FilletToe;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("constant amplitude fatigue limit over Δσ_C", Curve, 0.737, "-", 7e-4, () => c71.ConstantAmplitudeLimit / c71.Strength),
        new("cut-off over constant amplitude limit", "EN 1993-1-9:2005, 7.1 (3)", 0.549, "-", 1e-3, () => c71.CutOff / c71.ConstantAmplitudeLimit, ValueKind.FromMemory),
        new("cut-off over Δσ_C", Curve, 0.404, "-", 2e-3, () => c71.CutOff / c71.Strength),
        new("cut-off in shear over Δτ_C", "EN 1993-1-9:2005, 7.1 (2)", 0.457, "-", 1.1e-3, () => DetailCategory.FilletShear.CutOff / DetailCategory.FilletShear.Strength, ValueKind.FromMemory),
        new("cycles at Δσ_C", Curve, 2e6, "-", 1e-9, () => c71.CyclesToFailure(71.Megapascals, 1)),
        new("cycles at the constant amplitude limit", Curve, 5e6, "-", 1e-9, () => c71.CyclesToFailure(c71.ConstantAmplitudeLimit, 1)),
        new("cycles at the cut-off", Curve, 1e8, "-", 1e-6, () => c71.CyclesToFailure(c71.CutOff * (1 + 1e-9), 1)),
        new("gusts reached once in 50 years, share of the 50-year value", Gusts, 1, "-", 1e-9, () => GustStressSpectrum.Share(1), ValueKind.IndependentComputation),
        new("gusts reached 10 times in 50 years, share of the 50-year value", Gusts, 0.833, "-", 1e-9, () => GustStressSpectrum.Share(10), ValueKind.IndependentComputation),
        new("gusts reached 1000 times in 50 years, share of the 50-year value", Gusts, 0.541, "-", 1e-9, () => GustStressSpectrum.Share(1e3), ValueKind.IndependentComputation),
        new("gusts reached 100 000 times in 50 years, share of the 50-year value", Gusts, 0.305, "-", 1e-9, () => GustStressSpectrum.Share(1e5), ValueKind.IndependentComputation),
        new("gusts reached 10 million times in 50 years, share of the 50-year value", Gusts, 0.125, "-", 1e-9, () => GustStressSpectrum.Share(1e7), ValueKind.IndependentComputation),
        new("gusts reached 100 million times in 50 years, share of the 50-year value", Gusts, 0.056, "-", 1e-9, () => GustStressSpectrum.Share(1e8), ValueKind.IndependentComputation),
        new("cycles of category 71 at 100 MPa: 2·10⁶ (71/100)³", "EN 1993-1-9:2005, 7.1 (2), by hand", 715_822, "-", 1e-6, () => c71.CyclesToFailure(100.Megapascals, 1), ValueKind.IndependentComputation),
        new("gusts reached 100 times in 50 years, share of the 50-year value", Gusts, 0.68, "-", 1e-9, () => GustStressSpectrum.Share(100), ValueKind.IndependentComputation),
        new("gusts reached 10 000 times in 50 years, share of the 50-year value", Gusts, 0.416, "-", 1e-9, () => GustStressSpectrum.Share(1e4), ValueKind.IndependentComputation),
        new("gusts reached a million times in 50 years, share of the 50-year value", Gusts, 0.208, "-", 1e-9, () => GustStressSpectrum.Share(1e6), ValueKind.IndependentComputation),
        new("damage of 50 years of gusts, 150 MPa on category 71", "(B.9) integrated with a million steps", ByIntegral(150e6), "-", 0.03,
            () => FatigueChecks.Damage(GustStressSpectrum.Blocks(150.Megapascals, 50), c71, 1), ValueKind.IndependentComputation),
        new("gust cycles of 50 years", Gusts, 1e9, "-", 1e-9, () => GustStressSpectrum.Blocks(1.Megapascals, 50).Sum(b => b.Cycles), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Miner_is_linear_in_the_cycles() => Gen.Select(Gen.Double[10, 300], Gen.Double[1, 1e7], Gen.Double[0.1, 10]).Sample((range, n, by) =>
    {
        double D = FatigueChecks.Damage([new(range.Megapascals, n)], c71, 1.15), more = FatigueChecks.Damage([new(range.Megapascals, by * n)], c71, 1.15);
        Assert.Equal(by * D, more, 1e-9 * (1 + more));
        Assert.Equal(D + more, FatigueChecks.Damage([new(range.Megapascals, n), new(range.Megapascals, by * n)], c71, 1.15), 1e-9 * (1 + more));
    });

    [Fact]
    public void A_greater_range_never_lives_longer() => Gen.Select(Gen.Double[1, 500], Gen.Double[1, 3], Gen.Bool).Sample((range, by, shear) =>
    {
        DetailCategory detail = shear ? DetailCategory.FilletShear : c71;
        Assert.True(detail.CyclesToFailure((by * range).Megapascals, 1.15) <= detail.CyclesToFailure(range.Megapascals, 1.15));
        Assert.Equal(detail.CyclesToFailure((1.15 * range).Megapascals, 1), detail.CyclesToFailure(range.Megapascals, 1.15), 1e-6 * detail.CyclesToFailure(range.Megapascals, 1.15) is var t && double.IsFinite(t) ? t : 1);
    });

    [Fact]
    public void Share_and_times_are_inverse() => Gen.Double[0, 8.9].Sample(log =>
        Assert.Equal(log, Math.Log10(GustStressSpectrum.Times(GustStressSpectrum.Share(Math.Pow(10, log)))), 1e-6));

    [Fact]
    public void Blocks_of_several_kinds_add()
    {
        ValueList<StressBlock> blocks = [.. GustStressSpectrum.Blocks(120.Megapascals, 100), StressBlock.DailyHeat(40.Megapascals, 100), new StressBlock(35.Megapascals, 2e6, "vortices")];
        Check check = FatigueChecks.Miner(blocks, 100, DetailCategory.FlatWithHoles, 1.15, new CheckSubject("bars.fatigue", "fatigue", "band 3, bar 2"));
        double sum = blocks.GroupBy(b => b.Name).Sum(g => FatigueChecks.Damage(g, DetailCategory.FlatWithHoles, 1.15));
        Assert.Equal(sum, check.Demand!.Value, 1e-12);
        string text = check.Working().ToText();
        Assert.Contains("vortices", text);
        Assert.Contains("36525 cycles", text);
        Assert.Equal(100 / sum, FatigueChecks.LifeInYears(blocks, 100, DetailCategory.FlatWithHoles, 1.15), 1e-9);
    }

    [Fact]
    public void Harmless_cycles_live_for_ever()
    {
        Assert.Equal(double.PositiveInfinity, FatigueChecks.LifeInYears([new(1.Megapascals, 1e12)], 50, c71, 1.35));
        Assert.Equal(Verdict.Pass, FatigueChecks.Miner([new StressBlock(1.Megapascals, 1e12)], 50, c71, 1.35, subject).Verdict);
        Assert.Equal(Verdict.Pass, FatigueChecks.Miner([], 50, c71, 1.35, subject).Verdict);
    }

    [Fact]
    public void Loss_of_thickness_shortens_life()
    {
        StressBlock[] year = [new(60.Megapascals, 20_000)];
        int sound = FatigueChecks.LifeWithLoss(year, 8.Millimeters, Length.Zero, c71, 1.15), thinner = FatigueChecks.LifeWithLoss(year, 8.Millimeters, 0.01.Millimeters, c71, 1.15);
        Assert.Equal((int)FatigueChecks.LifeInYears(year, 1, c71, 1.15), sound);
        Assert.InRange(thinner, 1, sound - 1);
        Assert.Equal(200, FatigueChecks.LifeWithLoss([], 8.Millimeters, 0.01.Millimeters, c71, 1.15));
    }

    [Fact]
    public void Puddled_iron_rests_on_an_assumption() =>
        Assert.NotEmpty(FatigueChecks.Miner([new StressBlock(1.Megapascals, 10)], 50, DetailCategory.PuddledIron, 1.35, subject).AssumedInputs);

    [Fact]
    public void Ranges_beyond_yield_are_outside_the_curves()
    {
        Assert.Equal(Verdict.Fail, FatigueChecks.RangeLimit([new StressBlock(600.Megapascals, 1)], StructuralSteel.S355, c71).Verdict);
        Assert.Equal(Verdict.Pass, FatigueChecks.RangeLimit([], StructuralSteel.S355, DetailCategory.FilletShear).Verdict);
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => FatigueChecks.Damage([new(-1.Megapascals, 1)], c71, 1));
        Assert.ThrowsAny<ArgumentException>(() => FatigueChecks.Damage([new(1.Megapascals, double.NaN)], c71, 1));
        Assert.ThrowsAny<ArgumentException>(() => FatigueChecks.Damage([], c71, 0.5));
        Assert.ThrowsAny<ArgumentException>(() => GustStressSpectrum.Share(0));
        Assert.ThrowsAny<ArgumentException>(() => GustStressSpectrum.Blocks(1.Megapascals, 0));
        Assert.ThrowsAny<ArgumentException>(() => FatigueChecks.Miner([], -1, c71, 1, subject));
    }

    [Fact]
    public void Blocks_of_gusts_are_on_the_safe_side() => Gen.Double[60, 600].Sample(S =>
    {
        double exact = ByIntegral(1e6 * S, 20_000);
        Assert.InRange(FatigueChecks.Damage(GustStressSpectrum.Blocks(S.Megapascals, 50), c71, 1), exact * (1 - 1e-3), 1.03 * exact);
    });

    private static double ByIntegral(double S, int steps = 1_000_000)
    {
        double D = 1 / c71.Cycles(S, 1), h = 9.0 / steps;
        for (int i = 0; i < steps; i++)
        {
            double x = (i + 0.5) * h, share = Math.Max(0, 0.007 * x * x - 0.174 * x + 1);
            D += Math.Pow(10, x) * Math.Log(10) * h / c71.Cycles(S * share, 1);
        }
        return D;
    }

    /// <summary>The damage of gusts without their blocks is that of the blocks, far below and far above every limit of a curve.</summary>
    [Fact]
    public void Gusts_do_the_damage_of_their_blocks()
    {
        foreach (DetailCategory detail in new[] { DetailCategory.FilletToe, DetailCategory.FilletRoot, DetailCategory.FilletShear })
        {
            foreach (double range in new[] { 0, 1e6, 2e7, 6e7, 1.5e8, 4e8 })
            {
                double blocks = FatigueChecks.Damage(GustStressSpectrum.Blocks(Pressure.FromPascals(range), 80), detail, 1.35);
                Assert.Equal(blocks, GustStressSpectrum.Damage(range, 80, detail, 1.35), 1e-12 * blocks);
            }
        }
    }
}
