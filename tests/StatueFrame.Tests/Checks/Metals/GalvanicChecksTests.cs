using CsCheck;
using StatueFrame.Checks;
using static StatueFrame.Tests.Checks.Metals.AnyOf;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Metals;

public class GalvanicChecksTests
{
    private const string Chart = "Australasian Corrosion Association, corrosion potentials in flowing seawater";
    private const string Boat = "Professional Boatbuilder 100 (2006), galvanic series, as quoted by kiwiprops.co.nz";
    private const string Index = "EICAC, Anodic index information";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("noblest potential of copper", Chart, -0.30, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.Copper).Greatest),
        new("least noble potential of copper", Chart, -0.37, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.Copper).Least),
        new("least noble potential of mild steel", Chart, -0.72, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.CarbonSteel).Least),
        new("least noble potential of wrought iron", Boat, -0.71, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.WroughtIron).Least),
        new("least noble potential of passive 316", Chart, -0.10, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.StainlessSteel).Least),
        new("least noble potential of aluminum", Chart, -1.00, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.Aluminum).Least),
        new("noblest potential of zinc", Chart, -0.98, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.Zinc).Greatest),
        new("least noble potential of lead", Chart, -0.25, "V", 1e-9, () => GalvanicSeries.Range(MetalFamily.Lead).Least),
        new("difference let be in harsh surroundings", Index, 0.15, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Harsh)),
        new("difference let be in normal surroundings", Index, 0.25, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Normal)),
        new("difference let be in controlled surroundings", Index, 0.50, "V", 1e-9, () => GalvanicSeries.Allowed(GalvanicEnvironment.Controlled)),
    ];

    private static readonly Gen<MetalFamily> metal = Any(Enum.GetValues<MetalFamily>());
    private static readonly Gen<GalvanicEnvironment> surroundings = Any(Enum.GetValues<GalvanicEnvironment>());

    [Fact]
    public void Copper_on_iron_by_the_sea_fails_bare_and_passes_isolated()
    {
        Check Of(Isolation? isolation) => GalvanicChecks.Contact("saddle", MetalFamily.Copper, MetalFamily.WroughtIron, GalvanicEnvironment.Harsh, isolation);
        Assert.Equal(Verdict.Fail, Of(Isolation.None).Verdict);
        Assert.Equal(0.32, Of(Isolation.None).Demand!.Value, 1e-9);
        Assert.Equal(Verdict.NotChecked, Of(null).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.Ptfe).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.Neoprene).Verdict);
        Assert.Equal(Verdict.Pass, Of(Isolation.PolymerSleeve).Verdict);
        Assert.Equal(Verdict.Fail, Of(Isolation.Paint).Verdict);
        Assert.Equal(Verdict.Fail, Of(Isolation.Lead).Verdict);
    }

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
        Assert.True(GalvanicChecks.NeedsIsolation(MetalFamily.Copper, MetalFamily.Lead, GalvanicEnvironment.Harsh) is false);
        Assert.True(GalvanicChecks.NeedsIsolation(MetalFamily.Aluminum, MetalFamily.CarbonSteel, GalvanicEnvironment.Harsh));
        Assert.False(GalvanicChecks.NeedsIsolation(MetalFamily.Aluminum, MetalFamily.CarbonSteel, GalvanicEnvironment.Harsh, 0.05));
        Assert.Equal(11, GalvanicSeries.Acceleration(10));
    }
}
