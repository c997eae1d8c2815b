namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The columns of the factor drawn together to supernodes: runs of columns with one and the same pattern below a dense
/// triangle. A supernode is stored as one dense panel, at times together with its parent for the price of a few zeros.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SupernodePartition
{
    private readonly int[] columnStarts, rowStarts, rows;

    private SupernodePartition(
        List<Panel> panels, int[] firstEquations, List<int> firstSteps, List<int> stepRowStarts, List<int> stepRows, long factorCount)
    {
        FactorCount = factorCount;
        columnStarts = new int[panels.Count + 1];
        rowStarts = new int[panels.Count + 1];
        for (int p = 0; p < panels.Count; p++)
        {
            columnStarts[p + 1] = panels[p].End;
            rowStarts[p + 1] = rowStarts[p] + panels[p].Height;
        }
        rows = new int[rowStarts[^1]];
        for (int p = 0; p < panels.Count; p++)
        {
            int s = panels[p].Supernode, at = rowStarts[p];
            for (int equation = panels[p].Begin; equation < firstEquations[firstSteps[s]]; equation++)
                rows[at++] = equation;
            for (int i = stepRowStarts[s]; i < stepRowStarts[s + 1]; i++)
            {
                for (int equation = firstEquations[stepRows[i]]; equation < firstEquations[stepRows[i] + 1]; equation++)
                    rows[at++] = equation;
            }
        }
    }

    /// <summary>Number of supernodes.</summary>
    public int Count => columnStarts.Length - 1;

    /// <summary>The first column of a supernode.</summary>
    public int FirstColumn(int supernode) => columnStarts[supernode];

    /// <summary>Number of columns of a supernode.</summary>
    public int Width(int supernode) => columnStarts[supernode + 1] - columnStarts[supernode];

    /// <summary>The rows of a supernode's panel, ascending; its own columns come first.</summary>
    public ReadOnlySpan<int> Rows(int supernode) => rows.AsSpan(rowStarts[supernode]..rowStarts[supernode + 1]);

    /// <summary>Number of entries of the factor that may differ from zero, without those stored for convenience.</summary>
    public long FactorCount { get; }

    /// <summary>Finds the supernodes vertex by vertex, unites what is better kept in one panel and writes all out by equations.</summary>
    public static SupernodePartition Of(CompressedGraph graph, EliminationTree tree)
    {
        var firstEquations = new int[graph.Count + 1];
        for (int step = 0; step < graph.Count; step++)
            firstEquations[step + 1] = firstEquations[step] + graph.Weight(tree.Order[step]);
        (List<int> firstSteps, List<int> rowStarts, List<int> rows) = FindSupernodes(graph, tree);
        firstSteps.Add(graph.Count);
        long factorCount = 0;
        var panels = new List<Panel>(firstSteps.Count);
        for (int s = 0; s + 1 < firstSteps.Count; s++)
        {
            int begin = firstEquations[firstSteps[s]], end = firstEquations[firstSteps[s + 1]], height = 0;
            for (int i = rowStarts[s]; i < rowStarts[s + 1]; i++)
                height += firstEquations[rows[i] + 1] - firstEquations[rows[i]];
            var panel = new Panel(s, begin, end, height, 0);
            factorCount += panel.EntryCount;
            while (panels.Count > 0 && Parent(panels[^1].Supernode) == s && panels[^1].TryUnite(panel, out Panel united))
            {
                panel = united;
                panels.RemoveAt(panels.Count - 1);
            }
            panels.Add(panel);
        }
        return new SupernodePartition(panels, firstEquations, firstSteps, rowStarts, rows, factorCount);

        int Parent(int s)
        {
            int below = rowStarts[s] + firstSteps[s + 1] - firstSteps[s];
            return below < rowStarts[s + 1] && rows[below] < firstSteps[s + 2] ? s + 1 : -1;
        }
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

    /// <summary>One supernode or several in a row, each the parent of the one before.</summary>
    /// <param name="Supernode">The last of them, whose rows contain those of the others.</param>
    /// <param name="Begin">The first column.</param>
    /// <param name="End">The column after the last one.</param>
    /// <param name="Height">Number of rows, its own columns included.</param>
    /// <param name="Zeros">Entries stored although they are zero.</param>
    private readonly record struct Panel(int Supernode, int Begin, int End, int Height, long Zeros)
    {
        private const double MostZeros = 0.1;

        public long EntryCount => (long)(End - Begin) * Height - (long)(End - Begin) * (End - Begin - 1) / 2;

        /// <summary>Unites a panel with its parent, which follows it, if few zeros need be stored.</summary>
        public bool TryUnite(Panel parent, out Panel united)
        {
            int width = End - Begin;
            long zeros = Zeros + parent.Zeros + (long)width * (parent.Height - (Height - width));
            united = new Panel(parent.Supernode, Begin, parent.End, width + parent.Height, zeros);
            return zeros <= MostZeros * united.EntryCount;
        }
    }
}
