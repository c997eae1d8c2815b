using System.Runtime.InteropServices;

namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The graph of a symmetric pattern after equations with one and the same neighborhood (the freedoms of a node, as a
/// rule) are drawn together to one vertex. The weight of a vertex is its number of equations.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class CompressedGraph
{
    private readonly int[] equations, equationStarts;
    private readonly int[] neighbors, neighborStarts;

    private CompressedGraph(int[] equations, int[] equationStarts, int[] neighbors, int[] neighborStarts)
    {
        this.equations = equations;
        this.equationStarts = equationStarts;
        this.neighbors = neighbors;
        this.neighborStarts = neighborStarts;
    }

    /// <summary>Number of vertices.</summary>
    public int Count => equationStarts.Length - 1;

    /// <summary>Number of equations, the sum of all weights.</summary>
    public int Order => equations.Length;

    /// <summary>Number of neighbors summed over all vertices, twice the number of edges.</summary>
    public int NeighborCount => neighbors.Length;

    /// <summary>The equations that make up a vertex, ascending.</summary>
    public ReadOnlySpan<int> Equations(int vertex) => equations.AsSpan(equationStarts[vertex]..equationStarts[vertex + 1]);

    /// <summary>The vertices coupled with a vertex, without itself.</summary>
    public ReadOnlySpan<int> Neighbors(int vertex) => neighbors.AsSpan(neighborStarts[vertex]..neighborStarts[vertex + 1]);

    /// <summary>Number of equations of a vertex.</summary>
    public int Weight(int vertex) => equationStarts[vertex + 1] - equationStarts[vertex];

    /// <summary>Compresses the graph of a pattern.</summary>
    public static CompressedGraph Of(SparsityPattern pattern)
    {
        int n = pattern.Order;
        (int[] adjacent, int[] starts, ulong[] hashes) = Neighborhoods(pattern);
        var vertexOf = new int[n];
        Array.Fill(vertexOf, -1);
        var seenFrom = new int[n];
        Array.Fill(seenFrom, -1);
        var equations = new List<int>(n);
        var equationStarts = new List<int>(n / 6 + 2) { 0 };
        for (int first = 0; first < n; first++)
        {
            if (vertexOf[first] >= 0)
                continue;
            int vertex = equationStarts.Count - 1;
            ReadOnlySpan<int> around = adjacent.AsSpan(starts[first]..starts[first + 1]);
            foreach (int other in around)
                seenFrom[other] = first;
            vertexOf[first] = vertex;
            equations.Add(first);
            foreach (int other in around)
            {
                if (other <= first || hashes[other] != hashes[first] || vertexOf[other] >= 0)
                    continue;
                if (!SameNeighborhood(adjacent.AsSpan(starts[other]..starts[other + 1]), around.Length, seenFrom, first))
                    continue;
                vertexOf[other] = vertex;
                equations.Add(other);
            }
            equationStarts.Add(equations.Count);
        }
        (int[] neighbors, int[] neighborStarts) = Couplings(equations, equationStarts, vertexOf, adjacent, starts);
        return new CompressedGraph([.. equations], [.. equationStarts], neighbors, neighborStarts);
    }

    /// <summary>Both triangles of the pattern with the diagonal, ascending, and a hash of each equation's neighborhood.</summary>
    private static (int[] Adjacent, int[] Starts, ulong[] Hashes) Neighborhoods(SparsityPattern pattern)
    {
        int n = pattern.Order;
        ReadOnlySpan<int> columnStarts = pattern.ColumnStarts, rows = pattern.Rows;
        var starts = new int[n + 1];
        for (int column = 0; column < n; column++)
        {
            starts[column + 1] += columnStarts[column + 1] - columnStarts[column];
            foreach (int row in rows[(columnStarts[column] + 1)..columnStarts[column + 1]])
                starts[row + 1]++;
        }
        for (int i = 0; i < n; i++)
            starts[i + 1] += starts[i];
        var adjacent = new int[starts[n]];
        int[] next = starts[..^1];
        var hashes = new ulong[n];
        for (int column = 0; column < n; column++)
        {
            ulong ownHash = Hash(column);
            adjacent[next[column]++] = column;
            hashes[column] += ownHash;
            foreach (int row in rows[(columnStarts[column] + 1)..columnStarts[column + 1]])
            {
                adjacent[next[column]++] = row;
                adjacent[next[row]++] = column;
                hashes[column] += Hash(row);
                hashes[row] += ownHash;
            }
        }
        return (adjacent, starts, hashes);
    }

    private static ulong Hash(int equation)
    {
        ulong h = (ulong)(equation + 1) * 0x9E3779B97F4A7C15;
        return (h ^ (h >> 31)) * 0xD6E8FEB86659FD93;
    }

    private static bool SameNeighborhood(ReadOnlySpan<int> neighborhood, int count, int[] seenFrom, int first)
    {
        if (neighborhood.Length != count)
            return false;
        foreach (int equation in neighborhood)
        {
            if (seenFrom[equation] != first)
                return false;
        }
        return true;
    }

    private static (int[] Neighbors, int[] Starts) Couplings(
        List<int> equations, List<int> equationStarts, int[] vertexOf, int[] adjacent, int[] starts)
    {
        int count = equationStarts.Count - 1;
        var neighbors = new List<int>(4 * count);
        var neighborStarts = new int[count + 1];
        var seenFrom = new int[count];
        Array.Fill(seenFrom, -1);
        ReadOnlySpan<int> members = CollectionsMarshal.AsSpan(equations);
        for (int vertex = 0; vertex < count; vertex++)
        {
            seenFrom[vertex] = vertex;
            int representative = members[equationStarts[vertex]];
            foreach (int equation in adjacent.AsSpan(starts[representative]..starts[representative + 1]))
            {
                int other = vertexOf[equation];
                if (seenFrom[other] == vertex)
                    continue;
                seenFrom[other] = vertex;
                neighbors.Add(other);
            }
            neighborStarts[vertex + 1] = neighbors.Count;
        }
        return ([.. neighbors], neighborStarts);
    }
}
