using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Mechanics.Tests.Sparse;

/// <summary>Patterns and matrices for the tests of the sparse solver.</summary>
internal static class SparseCases
{
    /// <summary>Nodes with six freedoms each, coupled all over along each edge.</summary>
    public static SparsityPattern Nodes(int nodes, IEnumerable<(int A, int B)> edges) => Nodes([.. Enumerable.Repeat(6, nodes)], edges);

    /// <summary>Nodes with their own number of freedoms each, coupled all over along each edge.</summary>
    public static SparsityPattern Nodes(int[] freedoms, IEnumerable<(int A, int B)> edges)
    {
        int[] first = [0, .. freedoms];
        for (int i = 1; i < first.Length; i++)
            first[i] += first[i - 1];
        return FromGroups(first[^1], edges
            .Select(e => Enumerable.Range(first[e.A], freedoms[e.A]).Concat(Enumerable.Range(first[e.B], freedoms[e.B])))
            .Concat(freedoms.Select((count, node) => Enumerable.Range(first[node], count))));
    }

    public static SparsityPattern FromGroups(int order, IEnumerable<IEnumerable<int>> groups)
    {
        List<int> members = [], starts = [0];
        foreach (IEnumerable<int> group in groups)
        {
            members.AddRange(group);
            starts.Add(members.Count);
        }
        return SparsityPattern.FromGroups(order, members.ToArray(), starts.ToArray());
    }

    public static IEnumerable<(int A, int B)> Chain(int nodes) => Enumerable.Range(1, nodes - 1).Select(i => (i - 1, i));

    /// <summary>Each node hangs on one with a lower number; then all numbers are shuffled.</summary>
    public static IEnumerable<(int A, int B)> Tree(int nodes, Random random)
    {
        int[] number = [.. Enumerable.Range(0, nodes)];
        random.Shuffle(number);
        return Enumerable.Range(1, nodes - 1).Select(i => (number[random.Next(i)], number[i])).ToArray();
    }

    public static IEnumerable<(int A, int B)> Grid(int nx, int ny, int nz)
    {
        for (int i = 0; i < nx * ny * nz; i++)
        {
            (int x, int y, int z) = (i % nx, i / nx % ny, i / nx / ny);
            if (x + 1 < nx)
                yield return (i, i + 1);
            if (y + 1 < ny)
                yield return (i, i + nx);
            if (z + 1 < nz)
                yield return (i, i + nx * ny);
        }
    }

    /// <summary>Small groups of equations, some of them alone: neither connected nor regular.</summary>
    public static SparsityPattern Scattered(int order, Random random)
    {
        int groups = random.Next(2 * order / 3 + 1);
        return FromGroups(order, Enumerable.Range(0, groups)
            .Select(_ => Enumerable.Range(0, random.Next(1, 5)).Select(_ => random.Next(-1, order)).ToArray()).ToArray());
    }

    /// <summary>A matrix with dominant diagonal; all its eigenvalues are positive, or of either sign.</summary>
    public static SymmetricMatrix Fill(SparsityPattern pattern, Random random, bool definite = true)
    {
        var matrix = new SymmetricMatrix(pattern);
        var sums = new double[pattern.Order];
        for (int column = 0; column < pattern.Order; column++)
        {
            for (int k = pattern.ColumnStarts[column] + 1; k < pattern.ColumnStarts[column + 1]; k++)
            {
                double value = matrix.Values[k] = 2 * random.NextDouble() - 1;
                sums[column] += Math.Abs(value);
                sums[pattern.Rows[k]] += Math.Abs(value);
            }
        }
        for (int column = 0; column < pattern.Order; column++)
        {
            double sign = definite || random.Next(2) == 0 ? 1 : -1;
            matrix.Values[pattern.ColumnStarts[column]] = sign * (sums[column] * (1 + random.NextDouble()) + 0.1);
        }
        return matrix;
    }

    public static double[] Vector(int length, Random random)
    {
        var values = new double[length];
        for (int i = 0; i < length; i++)
            values[i] = 2 * random.NextDouble() - 1;
        return values;
    }

    public static Matrix<double> Dense(SymmetricMatrix matrix) =>
        Matrix<double>.Build.Dense(matrix.Order, matrix.Order, (i, j) => matrix[i, j]);
}
