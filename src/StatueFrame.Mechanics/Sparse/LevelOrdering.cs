namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// Order of elimination along the length of a structure (Cuthill and McKee 1969, reversed as by George): vertices level
/// by level of distance from one end, then the other way round. For long slender lattices the band that it leaves is
/// narrower than what minimum degree fills.
/// </summary>
internal sealed class LevelOrdering
{
    private readonly CompressedGraph graph;
    private readonly int[] order;
    private readonly int[] seenBy;
    private int pass;

    private LevelOrdering(CompressedGraph graph)
    {
        this.graph = graph;
        order = new int[graph.Count];
        seenBy = new int[graph.Count];
    }

    /// <summary>The vertices of <paramref name="graph"/> in the order of elimination.</summary>
    public static int[] Order(CompressedGraph graph) => new LevelOrdering(graph).Traverse();

    private int[] Traverse()
    {
        int placed = 0;
        for (int seed = 0; seed < graph.Count; seed++)
        {
            if (seenBy[seed] == 0)
                placed = TraverseFromEnd(seed, placed);
        }
        Array.Reverse(order);
        return order;
    }

    /// <summary>Walks through a connected part, again and again from the far end as long as that makes the way longer.</summary>
    private int TraverseFromEnd(int root, int begin)
    {
        int longest = 0;
        while (true)
        {
            (int levels, int lastLevel, int end) = Walk(root, begin);
            if (levels <= longest)
                return end;
            longest = levels;
            root = order[lastLevel];
            foreach (int vertex in order.AsSpan(lastLevel..end))
            {
                if (graph.Neighbors(vertex).Length < graph.Neighbors(root).Length)
                    root = vertex;
            }
        }
    }

    private (int Levels, int LastLevel, int End) Walk(int root, int begin)
    {
        pass++;
        seenBy[root] = pass;
        order[begin] = root;
        int levels = 0, level = begin, end = begin + 1;
        while (true)
        {
            int levelEnd = end;
            for (int i = level; i < levelEnd; i++)
            {
                int first = end;
                foreach (int neighbor in graph.Neighbors(order[i]))
                {
                    if (seenBy[neighbor] == pass)
                        continue;
                    seenBy[neighbor] = pass;
                    order[end++] = neighbor;
                }
                order.AsSpan(first..end).Sort(ByDegree);
            }
            levels++;
            if (end == levelEnd)
                return (levels, level, end);
            level = levelEnd;
        }
    }

    private int ByDegree(int a, int b)
    {
        int difference = graph.Neighbors(a).Length - graph.Neighbors(b).Length;
        return difference != 0 ? difference : a - b;
    }
}
