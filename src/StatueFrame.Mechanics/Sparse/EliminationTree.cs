namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The elimination tree of a graph for a given order: the parent of a step is the first later step that its elimination
/// touches. The steps are renumbered so that every subtree is a run of steps with its root last, which leaves the fill
/// as it is.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class EliminationTree
{
    private EliminationTree(int[] order, int[] steps, int[] parents)
    {
        Order = order;
        Steps = steps;
        Parents = parents;
    }

    /// <summary>The vertex eliminated at each step.</summary>
    public int[] Order { get; }

    /// <summary>The step at which each vertex is eliminated.</summary>
    public int[] Steps { get; }

    /// <summary>The parent of each step, or −1 for a root.</summary>
    public int[] Parents { get; }

    /// <summary>Finds the tree of <paramref name="graph"/> eliminated in the given order of its vertices.</summary>
    public static EliminationTree Of(CompressedGraph graph, int[] order)
    {
        int[] parents = FindParents(graph, order, Inverse(order));
        int[] postorder = Postorder(parents);
        int[] newStep = Inverse(postorder);
        var newOrder = new int[order.Length];
        var newParents = new int[order.Length];
        for (int step = 0; step < order.Length; step++)
        {
            newOrder[newStep[step]] = order[step];
            newParents[newStep[step]] = parents[step] < 0 ? -1 : newStep[parents[step]];
        }
        return new EliminationTree(newOrder, Inverse(newOrder), newParents);
    }

    private static int[] FindParents(CompressedGraph graph, int[] order, int[] steps)
    {
        var parents = new int[order.Length];
        var ancestors = new int[order.Length];
        for (int step = 0; step < order.Length; step++)
        {
            parents[step] = ancestors[step] = -1;
            foreach (int neighbor in graph.Neighbors(order[step]))
            {
                // Climb to the root of the earlier step's tree and shorten the way for those who climb later.
                int below = steps[neighbor];
                while (below >= 0 && below < step)
                {
                    int above = ancestors[below];
                    ancestors[below] = step;
                    if (above < 0)
                        parents[below] = step;
                    below = above;
                }
            }
        }
        return parents;
    }

    private static int[] Postorder(int[] parents)
    {
        int count = parents.Length;
        var firstChild = new int[count + 1];
        var nextSibling = new int[count];
        Array.Fill(firstChild, -1);
        for (int step = count - 1; step >= 0; step--)
        {
            int parent = parents[step] < 0 ? count : parents[step];
            nextSibling[step] = firstChild[parent];
            firstChild[parent] = step;
        }
        var postorder = new int[count];
        int placed = 0;
        int at = firstChild[count];
        while (placed < count)
        {
            while (firstChild[at] >= 0)
            {
                int child = firstChild[at];
                firstChild[at] = -1;
                at = child;
            }
            postorder[placed++] = at;
            at = nextSibling[at] >= 0 ? nextSibling[at] : parents[at];
        }
        return postorder;
    }

    private static int[] Inverse(int[] permutation)
    {
        var inverse = new int[permutation.Length];
        for (int i = 0; i < permutation.Length; i++)
            inverse[permutation[i]] = i;
        return inverse;
    }
}
