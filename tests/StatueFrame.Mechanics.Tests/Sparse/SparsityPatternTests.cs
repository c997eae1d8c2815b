using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Tests.Sparse;

public class SparsityPatternTests
{
    [Fact]
    public void Groups_couple_their_members_and_pass_over_restrained_freedoms()
    {
        SparsityPattern pattern = SparsityPattern.FromGroups(4, [2, -1, 0, 2, 3], [0, 3, 5]);

        Assert.Equal([0, 2, 3, 5, 6], pattern.ColumnStarts);
        Assert.Equal([0, 2, 1, 2, 3, 3], pattern.Rows);
        Assert.Equal(1, pattern.IndexOf(2, 0));
        Assert.Equal(-1, pattern.IndexOf(3, 0));
    }

    [Fact]
    public void Matrix_times_vector_is_that_of_the_dense_matrix()
    {
        var random = new Random(4);
        SymmetricMatrix matrix = SparseCases.Fill(SparseCases.Scattered(40, random), random);
        double[] x = SparseCases.Vector(40, random), y = new double[40];

        matrix.Multiply(x, y);

        double[] expected = SparseCases.Dense(matrix).Multiply(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(x)).ToArray();
        for (int i = 0; i < y.Length; i++)
            Assert.Equal(expected[i], y[i], 1e-13);
    }

    [Fact]
    public void Sums_need_one_common_pattern()
    {
        SparsityPattern pattern = SparseCases.Nodes(3, SparseCases.Chain(3));
        var a = SparseCases.Fill(pattern, new Random(1));
        var b = SparseCases.Fill(pattern, new Random(2));

        Assert.Equal(2 * a[7, 1] - 3 * b[7, 1], SymmetricMatrix.Combine(2, a, -3, b)[1, 7]);
        Assert.Throws<ArgumentException>(
            () => SymmetricMatrix.Combine(1, a, 1, new SymmetricMatrix(SparseCases.Nodes(3, SparseCases.Chain(3)))));
    }
}
