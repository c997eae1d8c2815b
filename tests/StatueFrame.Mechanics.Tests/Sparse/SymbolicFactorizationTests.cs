using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Tests.Sparse;

public class SymbolicFactorizationTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(300)]
    public void Chain_of_nodes_factors_without_fill(int nodes)
    {
        var symbolic = SymbolicFactorization.Analyze(SparseCases.Nodes(nodes, SparseCases.Chain(nodes)));

        Assert.Equal(0, symbolic.FillIn);
        Assert.Equal(21 * nodes + 36 * (nodes - 1), symbolic.FactorCount);
    }

    [Fact]
    public void Tree_of_nodes_factors_without_fill_whatever_its_freedoms()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            int nodes = random.Next(2, 120);
            int[] freedoms = [.. Enumerable.Range(0, nodes).Select(_ => seed % 2 == 0 ? 6 : random.Next(1, 7))];
            SparsityPattern pattern = SparseCases.Nodes(freedoms, SparseCases.Tree(nodes, random));

            Assert.Equal(0, SymbolicFactorization.Analyze(pattern).FillIn);
        }
    }

    [Fact]
    public void Disconnected_chains_factor_without_fill()
    {
        var edges = SparseCases.Chain(20).Where(e => e.B % 5 != 0);
        Assert.Equal(0, SymbolicFactorization.Analyze(SparseCases.Nodes(20, edges)).FillIn);
    }

    [Fact]
    public void Factor_entries_are_those_of_elimination_in_the_order_given()
    {
        for (int seed = 0; seed < 100; seed++)
        {
            var random = new Random(seed);
            SparsityPattern pattern = seed % 3 == 0
                ? SparseCases.Nodes(12, SparseCases.Grid(3, 2, 2))
                : SparseCases.Scattered(random.Next(1, 60), random);
            var symbolic = SymbolicFactorization.Analyze(pattern);

            Assert.Equal(Enumerable.Range(0, pattern.Order), symbolic.Permutation.ToArray().Order());
            Assert.Equal(CountByElimination(pattern, symbolic.Permutation), symbolic.FactorCount);
        }
    }

    [Theory]
    [InlineData(40, 40, 1, 0.35)]
    [InlineData(12, 12, 12, 0.5)]
    [InlineData(3, 3, 60, 1)]
    [InlineData(60, 3, 3, 0.05)]
    public void Grid_fills_far_less_than_in_its_natural_order(int nx, int ny, int nz, double share)
    {
        int order = nx * ny * nz;
        SparsityPattern pattern = SparseCases.Nodes([.. Enumerable.Repeat(1, order)], SparseCases.Grid(nx, ny, nz));
        var natural = Enumerable.Range(0, order).ToArray();

        long fill = SymbolicFactorization.Analyze(pattern).FillIn;

        Assert.InRange(fill, 1, share * (CountByElimination(pattern, natural) - pattern.Count));
    }

    [Fact]
    public void Same_pattern_gives_the_same_order()
    {
        SparsityPattern pattern = SparseCases.Scattered(200, new Random(5));
        Assert.Equal(
            SymbolicFactorization.Analyze(pattern).Permutation.ToArray(), SymbolicFactorization.Analyze(pattern).Permutation.ToArray());
    }

    [Fact]
    public void Minimum_degree_keeps_its_quality_when_lists_are_moved_for_room()
    {
        // On this lattice the lists outgrow the space they began with.
        SparsityPattern pattern = SparseCases.Nodes([.. Enumerable.Repeat(1, 1728)], SparseCases.Grid(12, 12, 12));
        int[] order = MinimumDegreeOrdering.Order(CompressedGraph.Of(pattern));

        Assert.Equal(Enumerable.Range(0, 1728), order.Order());
        Assert.InRange(CountByElimination(pattern, order), pattern.Count, 85_000);
    }

    [Fact]
    public void Long_lattice_goes_level_by_level_and_a_cube_by_minimum_degree()
    {
        Assert.True(Entries(4, 4, 60, LevelOrdering.Order) < Entries(4, 4, 60, MinimumDegreeOrdering.Order));
        Assert.True(Entries(9, 9, 9, MinimumDegreeOrdering.Order) < Entries(9, 9, 9, LevelOrdering.Order));

        static long Entries(int nx, int ny, int nz, Func<CompressedGraph, int[]> ordering)
        {
            // Each cell of the lattice is a dense element of eight corners.
            var cells = Enumerable.Range(0, nx * ny * nz)
                .Where(i => i % nx + 1 < nx && i / nx % ny + 1 < ny && i / nx / ny + 1 < nz)
                .Select(i => new[] { 0, 1, nx, nx + 1 }.SelectMany(d => new[] { i + d, i + d + nx * ny }));
            var pattern = SparseCases.FromGroups(nx * ny * nz, cells);
            var graph = CompressedGraph.Of(pattern);
            int[] order = [.. ordering(graph).SelectMany(vertex => graph.Equations(vertex).ToArray())];
            long entries = CountByElimination(pattern, order);
            Assert.InRange(SymbolicFactorization.Analyze(pattern).FactorCount, pattern.Count, entries);
            return entries;
        }
    }

    private static long CountByElimination(SparsityPattern pattern, ReadOnlySpan<int> order)
    {
        var beside = new HashSet<int>[pattern.Order];
        for (int i = 0; i < beside.Length; i++)
            beside[i] = [];
        for (int column = 0; column < beside.Length; column++)
        {
            for (int k = pattern.ColumnStarts[column] + 1; k < pattern.ColumnStarts[column + 1]; k++)
            {
                beside[column].Add(pattern.Rows[k]);
                beside[pattern.Rows[k]].Add(column);
            }
        }
        long entries = 0;
        foreach (int equation in order)
        {
            entries += 1 + beside[equation].Count;
            foreach (int other in beside[equation])
            {
                beside[other].UnionWith(beside[equation]);
                beside[other].Remove(other);
                beside[other].Remove(equation);
            }
        }
        return entries;
    }
}
