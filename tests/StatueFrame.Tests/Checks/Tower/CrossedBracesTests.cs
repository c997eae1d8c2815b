using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Members;

/// <summary>
/// Two equal angles that cross, both pressed: the crossing holds them in their plane alone. Against the least force at which
/// such a pair buckles, by beam elements that bend about both legs at once.
/// </summary>
public class CrossedBracesTests
{
    private const double E = 210e9, L = 4;

    [Theory]
    [InlineData(60, 6)]
    [InlineData(100, 8)]
    [InlineData(120, 15)]
    public void Two_pressed_angles_are_not_taken_to_hold_one_another_across_their_plane(double leg, double thickness)
    {
        var angle = new AngleBar(leg.Millimeters, thickness.Millimeters);
        SectionProperties p = angle.Properties;
        double exact = Buckling(p.Iy, p.Iz);
        Assert.True(exact < Math.PI * Math.PI * E * p.Iy / (L * L), "the strong axis would be on the unsafe side");

        // Slender, and joined by both legs: the curve and the rule for one leg stay out of it.
        foreach (BarDesign design in (BarDesign[])[BarDesign.For(Soft), BarDesign.For(Soft, DesignCode.AiscLrfd)])
        {
            var brace = new LoadedMember { Section = angle, Material = Soft, Length = L.Meters, Axial = (-1).Kilonewtons, WeakFactor = LoadedMember.CrossedFactor(angle), Where = "brace" };
            double capacity = MemberChecks.Compression(brace, design).Capacity!.Value;
            Assert.InRange(capacity, 0.7 * exact, exact);
        }
    }

    [Fact]
    public void Only_angles_count_on_the_crossing()
    {
        Assert.Equal(0.5, LoadedMember.CrossedFactor(new AngleBar(60.Millimeters, 6.Millimeters)));
        foreach (Section other in (Section[])[new FlatBar(80.Millimeters, 10.Millimeters), new Tube(60.Millimeters, 4.Millimeters), new RectangularTube(80.Millimeters, 40.Millimeters, 4.Millimeters)])
            Assert.Equal(1, LoadedMember.CrossedFactor(other));
    }

    /// <summary>So strong that it buckles elastically.</summary>
    private static Material Soft => StructuralSteel.S355 with { Name = "strong", YoungsModulus = Pressure.FromPascals(E), YieldStrength = Pressure.FromMegapascals(4000), UltimateStrength = Pressure.FromMegapascals(4500), Thicker = null };

    /// <summary>The least critical force of a pinned angle with legs in and across a plane, held in the plane at the middle.</summary>
    private static double Buckling(double strong, double weak)
    {
        const int count = 24, nodes = count + 1;
        double h = L / count, both = (strong + weak) / 2, mixed = (strong - weak) / 2;
        double[,] bend = { { 12, 6 * h, -12, 6 * h }, { 6 * h, 4 * h * h, -6 * h, 2 * h * h }, { -12, -6 * h, 12, -6 * h }, { 6 * h, 2 * h * h, -6 * h, 4 * h * h } };
        double[,] push = { { 36, 3 * h, -36, 3 * h }, { 3 * h, 4 * h * h, -3 * h, -h * h }, { -36, -3 * h, 36, -3 * h }, { 3 * h, -h * h, -3 * h, 4 * h * h } };
        Matrix<double> K = Matrix<double>.Build.Dense(4 * nodes, 4 * nodes), G = K.Clone();
        for (int e = 0; e < count; e++)
        {
            for (int i = 0; i < 4; i++)
            {
                for (int j = 0; j < 4; j++)
                {
                    foreach ((int a, int b) in new[] { (0, 0), (1, 1), (0, 1), (1, 0) })
                        K[2 * (a * nodes + e) + i, 2 * (b * nodes + e) + j] += E * (a == b ? both : mixed) * bend[i, j] / (h * h * h);
                    foreach (int a in new[] { 0, 1 })
                        G[2 * (a * nodes + e) + i, 2 * (a * nodes + e) + j] += push[i, j] / (30 * h);
                }
            }
        }
        int[] held = [0, 2 * count, 2 * nodes, 2 * (nodes + count), count];
        int[] free = [.. Enumerable.Range(0, 4 * nodes).Where(i => !held.Contains(i))];
        Matrix<double> Kf = Matrix<double>.Build.Dense(free.Length, free.Length, (i, j) => K[free[i], free[j]]), Gf = Matrix<double>.Build.Dense(free.Length, free.Length, (i, j) => G[free[i], free[j]]);
        // The greatest eigenvalue of K⁻¹ G, symmetric by Cholesky's factor of K.
        Matrix<double> inverse = Kf.Cholesky().Factor.Inverse();
        return 1 / (inverse * Gf * inverse.Transpose()).Evd(Symmetricity.Symmetric).EigenValues.Max(v => v.Real);
    }
}
