using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Tests.Sparse;

public class LdlFactorizationTests
{
    [Fact]
    public void Solution_is_that_of_a_dense_solver()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            (SymmetricMatrix matrix, Random random) = RandomMatrix(seed);
            double[] b = SparseCases.Vector(matrix.Order, random);
            Matrix<double> dense = SparseCases.Dense(matrix);
            MathNet.Numerics.LinearAlgebra.Vector<double> right = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.DenseOfArray(b);
            double[] expected = (IsDefinite(seed) ? dense.Cholesky().Solve(right) : dense.LU().Solve(right)).ToArray();

            Factored(matrix).Solve(b);

            double scale = expected.Max(Math.Abs);
            for (int i = 0; i < b.Length; i++)
                Assert.Equal(expected[i], b[i], 1e-12 * scale);
        }
    }

    [Fact]
    public void Negative_pivots_count_negative_eigenvalues()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            SymmetricMatrix matrix = RandomMatrix(seed).Matrix;
            int expected = SparseCases.Dense(matrix).Evd(Symmetricity.Symmetric).EigenValues.Count(e => e.Real < 0);

            Assert.Equal(expected, Factored(matrix).NegativePivots);
            if (IsDefinite(seed))
                Assert.Equal(0, expected);
        }
    }

    [Fact]
    public void Shifted_matrix_counts_the_eigenvalues_below_the_shift()
    {
        var random = new Random(11);
        SparsityPattern pattern = SparseCases.Nodes(18, SparseCases.Grid(3, 3, 2));
        SymmetricMatrix matrix = SparseCases.Fill(pattern, random);
        double[] eigenvalues = [.. SparseCases.Dense(matrix).Evd(Symmetricity.Symmetric).EigenValues.Select(e => e.Real).Order()];
        var unit = new SymmetricMatrix(pattern);
        for (int i = 0; i < unit.Order; i++)
            unit.Values[pattern.ColumnStarts[i]] = 1;
        var factorization = new LdlFactorization(SymbolicFactorization.Analyze(pattern));

        for (int below = 1; below < eigenvalues.Length; below++)
        {
            double shift = (eigenvalues[below - 1] + eigenvalues[below]) / 2;
            Assert.True(factorization.Factor(SymmetricMatrix.Combine(1, matrix, -shift, unit)));
            Assert.Equal(below, factorization.NegativePivots);
        }
    }

    [Theory]
    [InlineData(6, 6, 8)]
    [InlineData(40, 2, 2)]
    [InlineData(7, 7, 7)]
    public void Lattice_of_nodes_leaves_no_residual(int nx, int ny, int nz)
    {
        var random = new Random(nx);
        int nodes = nx * ny * nz;
        SymmetricMatrix matrix = SparseCases.Fill(SparseCases.Nodes(nodes, SparseCases.Grid(nx, ny, nz)), random, definite: false);
        double[] b = SparseCases.Vector(matrix.Order, random), x = [.. b], ax = new double[b.Length];

        Factored(matrix).Solve(x);

        matrix.Multiply(x, ax);
        for (int i = 0; i < b.Length; i++)
            Assert.Equal(b[i], ax[i], 1e-12);
    }

    [Fact]
    public void Dense_matrix_wider_than_all_blocks_is_solved()
    {
        var random = new Random(3);
        SymmetricMatrix matrix = SparseCases.Fill(SparseCases.FromGroups(607, [Enumerable.Range(0, 607)]), random, definite: false);
        double[] b = SparseCases.Vector(607, random), x = [.. b], ax = new double[607];

        Factored(matrix).Solve(x);

        matrix.Multiply(x, ax);
        for (int i = 0; i < b.Length; i++)
            Assert.Equal(b[i], ax[i], 1e-12);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(37)]
    public void Many_right_hand_sides_give_the_bits_of_each_one_alone(int sides)
    {
        for (int seed = 0; seed < 20; seed++)
        {
            (SymmetricMatrix matrix, Random random) = RandomMatrix(seed);
            int n = matrix.Order;
            double[] all = SparseCases.Vector(sides * n, random), single = [.. all];
            LdlFactorization factorization = Factored(matrix);

            factorization.Solve(all);
            for (int side = 0; side < sides; side++)
                factorization.Solve(single.AsSpan(side * n, n));

            Assert.Equal(single, all);
        }
    }

    [Fact]
    public void Refactoring_gives_the_bits_of_a_fresh_factorization()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            (SymmetricMatrix matrix, Random random) = RandomMatrix(seed);
            SymmetricMatrix other = SparseCases.Fill(matrix.Pattern, random, definite: false);
            double[] b = SparseCases.Vector(matrix.Order, random), fresh = [.. b];
            var reused = new LdlFactorization(SymbolicFactorization.Analyze(matrix.Pattern), other);

            reused.Factor(matrix);
            reused.Solve(b);
            Factored(matrix).Solve(fresh);

            Assert.Equal(fresh, b);
            Assert.Equal(Factored(matrix).NegativePivots, reused.NegativePivots);
        }
    }

    [Fact]
    public void Refactoring_and_solving_need_no_memory()
    {
        var random = new Random(1);
        SymmetricMatrix matrix = SparseCases.Fill(SparseCases.Nodes(80, SparseCases.Tree(80, random)), random);
        LdlFactorization factorization = Factored(matrix);
        double[] b = SparseCases.Vector(3 * matrix.Order, random);
        factorization.Solve(b);

        // The runtime itself may allocate now and then, as when it compiles anew or trims a pool: the least of many runs counts.
        long least = long.MaxValue;
        for (int run = 0; run < 50 && least > 0; run++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            factorization.Factor(matrix);
            factorization.Solve(b);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
    }

    [Fact]
    public void Threads_may_solve_with_one_factorization_at_once()
    {
        var random = new Random(8);
        SymmetricMatrix matrix = SparseCases.Fill(SparseCases.Nodes(60, SparseCases.Grid(5, 4, 3)), random);
        LdlFactorization factorization = Factored(matrix);
        double[] b = SparseCases.Vector(matrix.Order, random), expected = [.. b];
        factorization.Solve(expected);

        Parallel.For(0, 200, _ =>
        {
            double[] x = [.. b];
            factorization.Solve(x);
            Assert.Equal(expected, x);
        });
    }

    [Fact]
    public void Equation_without_stiffness_is_named()
    {
        for (int loose = 0; loose < 30; loose++)
        {
            SymmetricMatrix matrix = SparseCases.Fill(SparseCases.Nodes(5, SparseCases.Chain(5)), new Random(loose));
            ClearEquation(matrix, loose);

            LdlFactorization factorization = Factored(matrix);

            Assert.True(factorization.IsSingular);
            Assert.Equal(loose, factorization.SingularEquation);
            Assert.Equal([loose], factorization.SingularEquations);
            Assert.Throws<InvalidOperationException>(() => factorization.Solve(new double[30]));
        }
    }

    [Fact]
    public void Two_freedoms_that_only_move_together_are_named_by_the_later_one()
    {
        // A spring between two freedoms and nothing that holds them; a third stands by itself.
        SparsityPattern pattern = SparseCases.FromGroups(3, [[0, 2]]);
        var matrix = new SymmetricMatrix(pattern);
        matrix.Values[pattern.IndexOf(0, 0)] = matrix.Values[pattern.IndexOf(2, 2)] = 3.3e7;
        matrix.Values[pattern.IndexOf(2, 0)] = -3.3e7;
        matrix.Values[pattern.IndexOf(1, 1)] = 1;

        LdlFactorization factorization = Factored(matrix);

        Assert.Equal([2], factorization.SingularEquations);
        Assert.Equal(0, factorization.NegativePivots);
    }

    [Fact]
    public void Every_loose_part_is_found()
    {
        // Three separate chains of springs, the second of them held at one end.
        const int links = 8;
        SparsityPattern pattern = SparseCases.FromGroups(3 * links,
            Enumerable.Range(0, 3 * links).Where(i => i % links != 0).Select(i => new[] { i - 1, i }));
        var matrix = new SymmetricMatrix(pattern);
        for (int i = 0; i < 3 * links; i++)
        {
            if (i % links == 0)
                continue;
            matrix.Values[pattern.IndexOf(i, i)] += 1;
            matrix.Values[pattern.IndexOf(i - 1, i - 1)] += 1;
            matrix.Values[pattern.IndexOf(i, i - 1)] -= 1;
        }
        matrix.Values[pattern.IndexOf(links, links)] += 1;

        ReadOnlySpan<int> loose = Factored(matrix).SingularEquations;

        Assert.Equal([0, 2], loose.ToArray().Select(i => i / links).Order());
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Value_that_is_no_number_makes_the_matrix_singular_wherever_it_stands(double value)
    {
        SparsityPattern pattern = SparseCases.Nodes(4, SparseCases.Chain(4));
        for (int k = 0; k < pattern.Count; k++)
        {
            SymmetricMatrix matrix = SparseCases.Fill(pattern, new Random(1));
            matrix.Values[k] = value;
            Assert.True(Factored(matrix).IsSingular);
        }
    }

    [Fact]
    public void Factorization_recovers_after_a_singular_matrix()
    {
        SymmetricMatrix sound = SparseCases.Fill(SparseCases.Nodes(4, SparseCases.Chain(4)), new Random(1));
        var loose = new SymmetricMatrix(sound.Pattern);
        LdlFactorization factorization = Factored(sound);

        Assert.False(factorization.Factor(loose));
        Assert.Equal(24, factorization.SingularEquations.Length);
        Assert.True(factorization.Factor(sound));
        Assert.Equal(-1, factorization.SingularEquation);
    }

    [Fact]
    public void Empty_matrix_is_factored_and_solved()
    {
        LdlFactorization factorization = Factored(new SymmetricMatrix(SparsityPattern.FromGroups(0, [], [0])));

        factorization.Solve([]);

        Assert.Equal(0, factorization.Symbolic.FactorCount);
        Assert.False(factorization.IsSingular);
        Assert.Throws<ArgumentException>(() => factorization.Solve(new double[1]));
    }

    [Theory]
    [InlineData(4, 0)]
    [InlineData(-4, 1)]
    public void Single_equation_is_factored_and_solved(double value, int negativePivots)
    {
        var matrix = new SymmetricMatrix(SparsityPattern.FromGroups(1, [], [0]));
        matrix.Values[0] = value;
        double[] x = [8, 2, -1];

        LdlFactorization factorization = Factored(matrix);
        factorization.Solve(x);

        Assert.Equal([8 / value, 2 / value, -1 / value], x);
        Assert.Equal(negativePivots, factorization.NegativePivots);
    }

    [Fact]
    public void Misuse_is_refused()
    {
        SparsityPattern pattern = SparseCases.Nodes(2, SparseCases.Chain(2));
        var factorization = new LdlFactorization(SymbolicFactorization.Analyze(pattern));

        Assert.Throws<InvalidOperationException>(() => factorization.Solve(new double[12]));
        Assert.Throws<ArgumentException>(
            () => factorization.Factor(new SymmetricMatrix(SparseCases.Nodes(2, SparseCases.Chain(2)))));
        factorization.Factor(SparseCases.Fill(pattern, new Random(1)));
        Assert.Throws<ArgumentException>(() => factorization.Solve(new double[13]));
    }

    private static bool IsDefinite(int seed) => seed % 2 == 0;

    private static (SymmetricMatrix Matrix, Random Random) RandomMatrix(int seed)
    {
        var random = new Random(seed);
        int nodes = random.Next(2, 14);
        SparsityPattern pattern = (seed / 2 % 3) switch
        {
            0 => SparseCases.Scattered(random.Next(1, 80), random),
            1 => SparseCases.Nodes(nodes, SparseCases.Tree(nodes, random)),
            _ => SparseCases.Nodes(12, SparseCases.Grid(2, 3, 2)),
        };
        SymmetricMatrix matrix = SparseCases.Fill(pattern, random, IsDefinite(seed));
        return (matrix, random);
    }

    private static LdlFactorization Factored(SymmetricMatrix matrix) => new(SymbolicFactorization.Analyze(matrix.Pattern), matrix);

    private static void ClearEquation(SymmetricMatrix matrix, int equation)
    {
        for (int other = 0; other < matrix.Order; other++)
        {
            int index = matrix.Pattern.IndexOf(Math.Max(equation, other), Math.Min(equation, other));
            if (index >= 0)
                matrix.Values[index] = 0;
        }
    }
}
