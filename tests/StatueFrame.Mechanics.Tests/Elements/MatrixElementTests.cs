using StatueFrame.Mechanics.Elements;
using static StatueFrame.Mechanics.Tests.Elements.ElementMatrix;

namespace StatueFrame.Mechanics.Tests.Elements;

public class MatrixElementTests
{
    private static readonly BeamElement Beam =
        new(0, default, 1, new(1, 2, 3), new BeamDefinition(Samples.Rectangle(0.1, 0.2)));

    [Fact]
    public void Gives_back_the_matrices_it_was_given()
    {
        double[] k = Stiffness(Beam), m = Mass(Beam), u = [0, 0, 0, 0, 0, 0, 1e-3, 2e-3, 0, 0, 0, 0];
        var element = new MatrixElement(0, 1, k, m, Beam.AddGeometricStiffness);
        Assert.Equal(k, Stiffness(element));
        Assert.Equal(m, Mass(element));
        Assert.Equal(Geometric(Beam, u), Geometric(element, u));
    }

    [Fact]
    public void Keeps_its_own_copy()
    {
        double[] k = Stiffness(Beam), before = [.. k];
        var element = new MatrixElement(0, 1, k);
        k[0] = 7;
        Assert.Equal(before, Stiffness(element));
        Assert.All(Mass(element), value => Assert.Equal(0, value));
    }

    [Fact]
    public void Refuses_what_is_no_symmetric_finite_matrix()
    {
        double[] skew = Stiffness(Beam), broken = Stiffness(Beam);
        skew[1] += 1e-6 * skew[0];
        broken[5] = double.NaN;
        foreach (double[] k in (double[][])[skew, broken, new double[36]])
        {
            var error = Assert.Throws<ArgumentException>(() => new MatrixElement(4, 9, k));
            Assert.Contains("from node 4 to node 9", error.Message);
            Assert.Throws<ArgumentException>(() => new MatrixElement(4, 9, Stiffness(Beam), k));
        }
        Assert.Throws<ArgumentException>(() => new MatrixElement(4, 4, Stiffness(Beam)));
    }
}
