using CsCheck;
using static StatueFrame.Tests.Actions.Wind.WindTesting;

namespace StatueFrame.Tests.Actions.Wind;

public class OrographyTests
{
    public static Orography Hill { get; } = new()
    {
        Kind = OrographyKind.HillOrRidge,
        Height = M(40),
        UpwindLength = M(200),
        DownwindLength = M(250),
        DistanceFromCrest = M(0),
    };

    private static Orography Cliff { get; } = Hill with { Kind = OrographyKind.CliffOrEscarpment, DownwindLength = null };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("c_o at the ground on the crest of a hill, slope 0.2", "EN 1991-1-4:2005, A.3 (A.2), (A.4) with s = A = 1.0124", 1.40496, "-", 1e-9, () => Hill.FactorSi(0), ValueKind.FromMemory),
        new("c_o at the ground on the edge of a steep cliff", "EN 1991-1-4:2005, A.3 (A.3), (A.4) with s = A = 1.0124", 1.60744, "-", 1e-9, () => (Cliff with { UpwindLength = M(40) }).FactorSi(0), ValueKind.FromMemory),
    ];

    [Fact]
    public void Gentle_slope_counts_as_flat()
    {
        Assert.Equal(1, (Hill with { Height = M(9.9) }).FactorSi(0));
        Assert.True((Hill with { Height = M(10.1) }).FactorSi(0) > 1.09);
    }

    [Fact]
    public void Factor_is_continuous_across_the_crest_and_behind_the_edge()
    {
        foreach (Orography rise in (Orography[])[Hill, Cliff])
        {
            foreach (double x in (double[])[0, 20])
            {
                for (double z = 0; z < 400; z += 10)
                    Assert.Equal((rise with { DistanceFromCrest = M(x - 1e-9) }).FactorSi(z), (rise with { DistanceFromCrest = M(x + 1e-9) }).FactorSi(z), 1e-6);
            }
        }
    }

    // The two polynomials of A.3 are fitted on either side of x = 0.1 L_e: they must nearly meet, which misprints would not.
    [Fact]
    public void Speed_up_just_behind_the_edge_is_near_that_at_the_edge()
    {
        for (double z = 20; z <= 400; z += 20)
        {
            double edge = Cliff.FactorSi(z) - 1, behind = (Cliff with { DistanceFromCrest = M(20) }).FactorSi(z) - 1;
            Assert.Equal(edge, behind, 0.04);
        }
    }

    [Fact]
    public void Speed_up_lies_between_none_and_that_of_the_crest() =>
        Gen.Select(Gen.Double[-800, 800], Gen.Double[0, 600], Gen.Double[10, 300], Gen.Bool).Sample((x, z, h, hill) =>
        {
            double co = ((hill ? Hill : Cliff) with { DistanceFromCrest = M(x), Height = M(h) }).FactorSi(z);
            return co is >= 1 and <= 1.61;
        }, iter: 1000);

    [Fact]
    public void Speed_up_fades_with_height_and_distance()
    {
        Gen.Select(Gen.Double[0, 390], Gen.Double[0.1, 10]).Sample((z, dz) => Hill.FactorSi(z + dz) < Hill.FactorSi(z), iter: 200);
        Assert.Equal(1, Hill.FactorSi(401));
        Assert.Equal(1, (Hill with { DistanceFromCrest = M(-301) }).FactorSi(0));
        Assert.Equal(1, (Hill with { DistanceFromCrest = M(501) }).FactorSi(0));
        Assert.Equal(1, (Cliff with { DistanceFromCrest = M(701) }).FactorSi(0));
    }

    [Fact]
    public void Each_bad_input_is_one_problem_at_its_path()
    {
        En1991Wind wind = new() { FundamentalVelocity = Mps(26), Terrain = TerrainCategory.II };
        AssertProblem(wind with { Orography = Hill with { Kind = (OrographyKind)5 } }, "Orography.Kind");
        AssertProblem(wind with { Orography = Hill with { UpwindLength = M(0) } }, "Orography.UpwindLength");
        AssertProblem(wind with { Orography = Hill with { DownwindLength = M(-1) } }, "Orography.DownwindLength");
        AssertProblem(wind with { Orography = Hill with { DownwindLength = null, DistanceFromCrest = M(1) } }, "Orography.DownwindLength");
        AssertProblem(wind with { Orography = Hill with { DistanceFromCrest = M(2e6) } }, "Orography.DistanceFromCrest");
    }
}
