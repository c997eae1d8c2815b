using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class GroundSpringTests
{
    [Fact]
    public void Six_springs_stand_on_the_diagonal_and_add()
    {
        var spring = new GroundSpring(0, 1, 2, 3, 4, 5, 6);
        var k = new double[36];
        spring.AddStiffness(k);
        spring.AddStiffness(k);
        for (int i = 0; i < 6; i++)
            for (int j = 0; j < 6; j++)
                Assert.Equal(i == j ? 2 * (i + 1) : 0, k[6 * i + j]);
    }

    [Fact]
    public void A_full_matrix_couples_sway_and_rocking()
    {
        double[] full = new double[36];
        (full[0], full[4], full[24], full[28]) = (2, 1, 1, 3);
        var k = new double[36];
        new GroundSpring(0, full).AddStiffness(k);
        Assert.Equal(full, k);
    }

    [Fact]
    public void Nonsense_is_refused_with_the_node_named()
    {
        double[] indefinite = new double[36], skew = new double[36], dangling = new double[36];
        (indefinite[0], indefinite[4], indefinite[24], indefinite[28]) = (2, 3, 3, 3);
        (skew[0], skew[4], skew[28]) = (2, 1, 3);
        (dangling[4], dangling[24]) = (1, 1);
        foreach (double[] k in (double[][])[indefinite, skew, dangling, new double[7]])
            Assert.Contains("node 5", Assert.Throws<ArgumentException>(() => new GroundSpring(5, k)).Message);
        Assert.Throws<ArgumentException>(() => new GroundSpring(5, -1, 0, 0));
        Assert.Throws<ArgumentException>(() => new GroundSpring(5, double.PositiveInfinity, 0, 0));
    }
}
