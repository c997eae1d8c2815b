using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

/// <summary>Ground that changes upwind, and buildings that lift the wind.</summary>
public class GroundUpwindTests
{
    private static readonly En1991Wind town = new() { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.IV };

    private static CloseBuildings Blocks(double distance, double height = 15, double statue = 40) => new() { AverageHeight = M(height), Distance = M(distance), StatueHeight = M(statue) };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("h_dis 30 m behind buildings of 15 m: 0.8 h_ave", "EN 1991-1-4:2005, A.5 (A.15)", 12, "m", 1e-12, () => Blocks(30).DisplacementHeight.Meters, ValueKind.FromMemory),
        new("h_dis 60 m behind buildings of 15 m: 1.2 h_ave − 0.2 x", "EN 1991-1-4:2005, A.5 (A.15)", 6, "m", 1e-12, () => Blocks(60).DisplacementHeight.Meters, ValueKind.FromMemory),
        new("h_dis of a statue 10 m high: 0.6 h", "EN 1991-1-4:2005, A.5 (A.15)", 6, "m", 1e-12, () => Blocks(10, statue: 10).DisplacementHeight.Meters, ValueKind.FromMemory),
        new("h_dis 90 m behind buildings of 15 m", "EN 1991-1-4:2005, A.5 (A.15)", 0, "m", 1e-12, () => Blocks(90).DisplacementHeight.Meters, ValueKind.FromMemory),
    ];

    [Fact]
    public void Smoother_ground_holds_up_to_its_distance()
    {
        foreach ((TerrainCategory smoother, double reach) in ((TerrainCategory, double)[])[(TerrainCategory.Zero, 2000), (TerrainCategory.I, 1000), (TerrainCategory.III, 1000)])
        {
            Assert.Equal((town with { Terrain = smoother }).PeakPressure(M(12)), Upwind(smoother, reach - 1).PeakPressure(M(12)));
            Assert.Equal((town with { Terrain = smoother }).TurbulenceIntensity(M(12)), Upwind(smoother, reach - 1).TurbulenceIntensity(M(12)));
            Assert.Equal(town.PeakPressure(M(12)), Upwind(smoother, reach).PeakPressure(M(12)));
        }
    }

    [Fact]
    public void Buildings_lift_the_profile()
    {
        En1991Wind lifted = town with { Buildings = Blocks(20) };
        foreach (double z in (double[])[0, 10, 12, 25, 60])
            Assert.Equal(town.PeakPressure(M(Math.Max(0, z - 12))).Pascals, lifted.PeakPressure(M(z)).Pascals, 1e-9);
        AssertSoundOverHeight(lifted);
    }

    [Fact]
    public void What_the_rules_do_not_know_is_a_problem()
    {
        AssertProblem(Upwind(TerrainCategory.IV, 100), "Upwind.Terrain");
        AssertProblem(town with { Terrain = TerrainCategory.III, Buildings = Blocks(20) }, "Buildings");
        AssertProblem(Upwind(TerrainCategory.II, 100) with { Buildings = Blocks(20) }, "Buildings");
        AssertProblem(town with { Buildings = Blocks(20, statue: -1) }, "Buildings.StatueHeight");
    }

    [Fact]
    public void A_statue_lower_than_was_said_is_warned_of()
    {
        En1991Wind lifted = town with { Buildings = Blocks(20) };
        Assert.Contains(lifted.RangeWarnings(30), warning => warning.Contains("too mild", StringComparison.Ordinal));
        Assert.Empty(lifted.RangeWarnings(40));
    }

    private static En1991Wind Upwind(TerrainCategory smoother, double distance) => town with { Upwind = new SmootherTerrain { Terrain = smoother, Distance = M(distance) } };
}
