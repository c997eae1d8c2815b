using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class TallNeighborTests
{
    private static readonly TallNeighbor tower = new() { Height = M(100), GreaterWidth = M(40), Distance = M(30), StatueHeight = M(25) };
    private static readonly En1991Wind plain = new() { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.III };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("z_n beside a tower 100 m high and 40 m wide: r = 80 m, z_n = r/2", "EN 1991-1-4:2005, A.4 (A.14)", 40, "m", 1e-12, () => tower.ReferenceHeightSi, ValueKind.FromMemory),
        new("z_n at 1.5 r from it, a statue of 25 m: between r/2 and 25 m", "EN 1991-1-4:2005, A.4 (A.14), by hand", 32.5, "m", 1e-12, () => (tower with { Distance = M(120) }).ReferenceHeightSi, ValueKind.FromMemory),
        new("z_n beside a slender tower 20 m wide and 60 m high: r = 40 m", "EN 1991-1-4:2005, A.4 (A.14)", 20, "m", 1e-12, () => (tower with { Height = M(60), GreaterWidth = M(20) }).ReferenceHeightSi, ValueKind.FromMemory),
    ];

    [Fact]
    public void The_wind_of_the_reference_height_blows_below_it()
    {
        En1991Wind wind = plain with { Neighbor = tower };
        foreach (double z in (double[])[0, 5, 20, 39])
        {
            Assert.Equal(plain.PeakPressure(M(40)).Pascals, wind.PeakPressure(M(z)).Pascals, 1e-9);
            Assert.Equal(plain.MeanSpeed(M(40)).MetersPerSecond, wind.MeanSpeed(M(z)).MetersPerSecond, 1e-12);
        }
        Assert.Equal(plain.PeakPressure(M(60)), wind.PeakPressure(M(60)));
    }

    [Fact]
    public void A_building_that_is_far_or_low_changes_nothing()
    {
        foreach (TallNeighbor other in (TallNeighbor[])[tower with { Distance = M(160) }, tower with { Height = M(49) }])
            Assert.Equal(plain.PeakPressure(M(8)), (plain with { Neighbor = other }).PeakPressure(M(8)));
    }

    [Fact]
    public void A_building_never_calms_the_wind_and_falls_evenly_with_distance()
    {
        double before = double.PositiveInfinity;
        for (double x = 0; x < 170; x += 5)
        {
            En1991Wind wind = plain with { Neighbor = tower with { Distance = M(x) } };
            double there = wind.PeakPressure(M(10)).Pascals;
            Assert.InRange(there, plain.PeakPressure(M(10)).Pascals, before);
            before = there;
        }
    }

    [Fact]
    public void Bad_numbers_are_problems_at_their_paths()
    {
        AssertProblem(plain with { Neighbor = tower with { Height = M(-1) } }, "Neighbor.Height");
        AssertProblem(plain with { Neighbor = tower with { Distance = M(-5) } }, "Neighbor.Distance");
    }

    [Fact]
    public void Surroundings_that_nobody_gave_are_an_assumption()
    {
        Assert.Contains(plain.Assumptions, a => a.Subject == "surroundings");
        Assert.Contains("all round", Assert.Single((plain with { Neighbor = tower }).Assumptions, a => a.Subject == "surroundings").Value, StringComparison.Ordinal);
        Assert.DoesNotContain((plain with { Neighbor = tower, Upwind = new SmootherTerrain { Terrain = TerrainCategory.I, Distance = M(5000) } }).Assumptions, a => a.Subject == "surroundings");
    }
}
