using CsCheck;
using StatueFrame.Checks;
using static StatueFrame.Tests.Checks.Metals.AnyOf;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Metals;

public class GalvanicChecksTests
{
    private const string Standard = "MIL-STD-889, table of anodic indices, from memory";
    private const string Index = "anodic index, public table, second hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("anodic index of copper", Standard, -0.35, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.Copper), ValueKind.FromMemory) { IsReadBack = true },
        new("anodic index of 18 % chromium steel", Standard, -0.50, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.StainlessSteel), ValueKind.FromMemory) { IsReadBack = true },
        new("anodic index of lead", Standard, -0.70, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.Lead), ValueKind.FromMemory) { IsReadBack = true },
        new("anodic index of iron and low-alloy steel", Standard, -0.85, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.CarbonSteel), ValueKind.FromMemory) { IsReadBack = true },
        new("anodic index of wrought aluminum", Standard, -0.90, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.Aluminum), ValueKind.FromMemory) { IsReadBack = true },
        new("anodic index of wrought zinc", Standard, -1.25, "V", 1e-9, () => GalvanicSeries.AnodicIndex(MetalFamily.Zinc), ValueKind.FromMemory) { IsReadBack = true },
        new("difference let be in harsh surroundings", Index, 0.15, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Harsh)) { IsReadBack = true },
        new("difference let be in normal surroundings", Index, 0.25, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Normal)) { IsReadBack = true },
        new("difference let be in controlled surroundings", Index, 0.50, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Controlled)) { IsReadBack = true },
    ];

    private static readonly Gen<MetalFamily> metal = Any(Enum.GetValues<MetalFamily>());
    private static readonly Gen<GalvanicEnvironment> surroundings = Any(Enum.GetValues<GalvanicEnvironment>());

    [Fact]
    public void Copper_on_iron_by_the_sea_fails_bare_and_passes_isolated()
    {
        Check Of(Isolation? isolation) => GalvanicChecks.Contact("saddle", MetalFamily.Copper, MetalFamily.WroughtIron, GalvanicEnvironment.Harsh, isolation);
        Assert.Equal(Verdict.Fail, Of(Isolation.None).Verdict);
        Assert.Equal(0.50, Of(Isolation.None).Demand!.Value, 1e-9);
        Assert.Equal(Verdict.NotChecked, Of(null).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.Ptfe).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.Neoprene).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.PolymerSleeve).Verdict);
        Assert.Equal(Verdict.Fail, Of(Isolation.Paint).Verdict);
        Assert.Equal(Verdict.Fail, Of(Isolation.Lead).Verdict);
    }

    /// <summary>Their potentials in sea water are near each other; the rule is of anodic indices, and there they are not.</summary>
    [Fact]
    public void Copper_on_lead_in_harsh_air_fails() =>
        Assert.Equal(Verdict.Fail, GalvanicChecks.Contact("flashing", MetalFamily.Copper, MetalFamily.Lead, GalvanicEnvironment.Harsh, Isolation.None).Verdict);

    [Fact]
    public void Which_metal_is_named_first_does_not_matter() => Gen.Select(metal, metal, surroundings, Any(Enum.GetValues<Isolation>())).Sample((a, b, air, isolation) =>
    {
        Check ab = GalvanicChecks.Contact("", a, b, air, isolation), ba = GalvanicChecks.Contact("", b, a, air, isolation);
        Assert.Equal(ab.Verdict, ba.Verdict);
        Assert.Equal(ab.Utilization, ba.Utilization);
        Assert.Contains("E_1", GalvanicChecks.Contact("", MetalFamily.Zinc, MetalFamily.Copper, air, Isolation.None).Working().ToString());
    });

    [Fact]
    public void Harsher_surroundings_never_help() => Gen.Select(metal, metal, Any(Enum.GetValues<Isolation>()), Gen.Double[0.01, 100]).Sample((a, b, isolation, ratio) =>
    {
        double last = 0;
        foreach (GalvanicEnvironment air in Enum.GetValues<GalvanicEnvironment>())
        {
            double now = GalvanicChecks.Contact("", a, b, air, isolation, ratio).Utilization!.Value;
            Assert.True(now >= last);
            last = now;
        }
    });

    [Fact]
    public void A_pair_that_needs_isolation_fails_exactly_when_it_touches() => Gen.Select(metal, metal, surroundings, Gen.Double[0.01, 100]).Sample((a, b, air, ratio) =>
        Assert.Equal(GalvanicChecks.NeedsIsolation(a, b, air, ratio), GalvanicChecks.Contact("", a, b, air, Isolation.None, ratio).Verdict == Verdict.Fail));

    [Fact]
    public void A_small_noble_part_is_let_touch_more_freely()
    {
        Assert.True(GalvanicChecks.NeedsIsolation(MetalFamily.StainlessSteel, MetalFamily.Lead, GalvanicEnvironment.Harsh));
        Assert.False(GalvanicChecks.NeedsIsolation(MetalFamily.StainlessSteel, MetalFamily.Lead, GalvanicEnvironment.Harsh, 0.05));
        Assert.Equal(11, GalvanicSeries.Acceleration(10));
    }
}
