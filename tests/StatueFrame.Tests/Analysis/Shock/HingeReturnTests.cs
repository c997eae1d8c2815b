using CsCheck;
using StatueFrame.Analysis;

namespace StatueFrame.Tests.Analyses.Shocks;

public class HingeReturnTests
{
    /// <summary>A random give C = A Aᵀ of any rank, and trial forces.</summary>
    private static readonly Gen<(double[] C, double[] Trial)> cases =
        Gen.Select(Gen.Double[-1, 1].Array[36], Gen.Int[1, 6], Gen.Double[-4, 4].Array[6]).Select((a, rank, trial) =>
        {
            var C = new double[36];
            for (int i = 0; i < 6; i++)
            {
                for (int j = 0; j < 6; j++)
                {
                    C[6 * i + j] = i == j ? 0.05 : 0;
                    for (int k = 0; k < rank; k++)
                        C[6 * i + j] += a[6 * i + k] * a[6 * j + k];
                }
            }
            return (C, trial);
        });

    [Fact]
    public void Forces_end_on_or_inside_the_surface_and_slips_follow_its_normal() => cases.Sample(c =>
    {
        double[] e = new double[6], slip = new double[6];
        HingeReturn.Solve(c.C, c.Trial, e, slip);
        for (int hinge = 0; hinge < 6; hinge += 3)
        {
            double size = Math.Sqrt(e[hinge] * e[hinge] + e[hinge + 1] * e[hinge + 1] + e[hinge + 2] * e[hinge + 2]);
            double along = slip[hinge] * e[hinge] + slip[hinge + 1] * e[hinge + 1] + slip[hinge + 2] * e[hinge + 2];
            double slipped = Math.Sqrt(slip[hinge] * slip[hinge] + slip[hinge + 1] * slip[hinge + 1] + slip[hinge + 2] * slip[hinge + 2]);
            Assert.True(size <= 1 + 1e-9, $"{size}");
            Assert.True(slipped == 0 || Math.Abs(size - 1) < 1e-9, $"slips inside, {size}");
            Assert.Equal(slipped * size, along, 1e-9 * (1 + slipped));
        }
        for (int i = 0; i < 6; i++)
        {
            double relief = 0;
            for (int j = 0; j < 6; j++)
                relief += c.C[6 * i + j] * slip[j];
            Assert.Equal(c.Trial[i] - relief, e[i], 1e-8);
        }
    }, iter: 3000);
}
