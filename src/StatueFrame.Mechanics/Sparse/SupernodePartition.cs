namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The columns of the factor drawn together to supernodes: runs of columns with one and the same pattern below a dense
/// triangle. A supernode is stored as one dense panel.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SupernodePartition
{
    private readonly int[] columnStarts, rowStarts, rows;

    private SupernodePartition(int[] columnStarts, int[] rowStarts, int[] rows)
    {
        this.columnStarts = columnStarts;
        this.rowStarts = rowStarts;
        this.rows = rows;
    }

    /// <summary>Number of supernodes.</summary>
    public int Count => columnStarts.Length - 1;

    /// <summary>The first column of a supernode.</summary>
    public int FirstColumn(int supernode) => columnStarts[supernode];

    /// <summary>Number of columns of a supernode.</summary>
    public int Width(int supernode) => columnStarts[supernode + 1] - columnStarts[supernode];

    /// <summary>The rows of a supernode's panel, ascending; its own columns come first.</summary>
    public ReadOnlySpan<int> Rows(int supernode) => rows.AsSpan(rowStarts[supernode]..rowStarts[supernode + 1]);

    /// <summary>Finds the supernodes vertex by vertex and writes them out by equations.</summary>
    public static SupernodePartition Of(CompressedGraph graph, EliminationTree tree)
    {
        (List<int> firstSteps, List<int> rowStarts, List<int> rows) = FindSupernodes(graph, tree);
        var firstEquations = new int[graph.Count + 1];
        for (int step = 0; step < graph.Count; step++)
            firstEquations[step + 1] = firstEquations[step] + graph.Weight(tree.Order[step]);
        int count = firstSteps.Count;
        var columnStarts = new int[count + 1];
        var equationRowStarts = new int[count + 1];
        var equationRows = new List<int>(6 * rows.Count);
        for (int s = 0; s < count; s++)
        {
            columnStarts[s] = firstEquations[firstSteps[s]];
            for (int i = rowStarts[s]; i < rowStarts[s + 1]; i++)
            {
                for (int equation = firstEquations[rows[i]]; equation < firstEquations[rows[i] + 1]; equation++)
                    equationRows.Add(equation);
            }
            equationRowStarts[s + 1] = equationRows.Count;
        }
        columnStarts[count] = graph.Order;
        return new SupernodePartition(columnStarts, equationRowStarts, [.. equationRows]);
    }

    /// <summary>
    /// The pattern of a step is that of its vertex and of its children in the tree. Where it is its predecessor's without
    /// the predecessor, the step belongs to the same supernode.
    /// </summary>
    private static (List<int> FirstSteps, List<int> RowStarts, List<int> Rows) FindSupernodes(
        CompressedGraph graph, EliminationTree tree)
    {
        int count = graph.Count;
        (int[] firstChild, int[] nextSibling) = Children(tree.Parents);
        var supernodeOf = new int[count];
        var seenFrom = new int[count];
        Array.Fill(seenFrom, -1);
        List<int> firstSteps = [], rowStarts = [0], rows = [];
        var pattern = new List<int>();
        for (int step = 0; step < count; step++)
        {
            pattern.Clear();
            pattern.Add(step);
            seenFrom[step] = step;
            foreach (int neighbor in graph.Neighbors(tree.Order[step]))
                Include(tree.Steps[neighbor]);
            for (int child = firstChild[step]; child >= 0; child = nextSibling[child])
            {
                int s = supernodeOf[child];
                for (int i = rowStarts[s]; i < rowStarts[s + 1]; i++)
                    Include(rows[i]);
            }
            if (step > 0 && tree.Parents[step - 1] == step && pattern.Count == CountBelow(step - 1))
            {
                supernodeOf[step] = supernodeOf[step - 1];
                continue;
            }
            supernodeOf[step] = firstSteps.Count;
            firstSteps.Add(step);
            pattern.Sort();
            rows.AddRange(pattern);
            rowStarts.Add(rows.Count);

            void Include(int row)
            {
                if (row <= step || seenFrom[row] == step)
                    return;
                seenFrom[row] = step;
                pattern.Add(row);
            }
        }
        return (firstSteps, rowStarts, rows);

        int CountBelow(int step)
        {
            int s = supernodeOf[step];
            return rowStarts[s + 1] - rowStarts[s] - (step + 1 - firstSteps[s]);
        }
    }

    private static (int[] First, int[] Next) Children(int[] parents)
    {
        var first = new int[parents.Length];
        var next = new int[parents.Length];
        Array.Fill(first, -1);
        for (int step = parents.Length - 1; step >= 0; step--)
        {
            int parent = parents[step];
            if (parent < 0)
                continue;
            next[step] = first[parent];
            first[parent] = step;
        }
        return (first, next);
    }
}
