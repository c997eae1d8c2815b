namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// The symbolic step: a fill-reducing order of elimination and the pattern of the factor. One serves all matrices of a
/// pattern.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SymbolicFactorization
{
    private readonly int[] permutation;
    private readonly SupernodePartition supernodes;
    private readonly int[] panelStarts;
    private readonly int[] placeOfEntry;
    private readonly PanelUpdate[] updates;
    private readonly int[] updateStarts;

    private SymbolicFactorization(SparsityPattern pattern)
    {
        Pattern = pattern;
        var graph = CompressedGraph.Of(pattern);
        (EliminationTree tree, supernodes) = ChooseOrder(graph);
        permutation = PermuteEquations(graph, tree);
        panelStarts = LayOutPanels();
        int[] supernodeOf = MapColumns();
        placeOfEntry = PlaceEntries(supernodeOf);
        (updates, updateStarts) = ListUpdates(supernodeOf);
        double work = 0;
        for (int s = 0; s < supernodes.Count; s++)
        {
            LargestPanel = Math.Max(LargestPanel, Stride(s));
            for (int column = 0; column < supernodes.Width(s); column++)
                work += Math.Pow(supernodes.Rows(s).Length - column, 2);
        }
        // A factorization runs near the speed of arithmetic, a solution at that of memory, several times slower.
        WorkRatio = work / Math.Max(1, 2 * FactorCount) / 10;
    }

    /// <summary>The pattern that was analyzed.</summary>
    public SparsityPattern Pattern { get; }

    /// <summary>Number of equations.</summary>
    public int Order => Pattern.Order;

    /// <summary>Number of entries of the factor L that may differ from zero, lower triangle with diagonal.</summary>
    public long FactorCount => supernodes.FactorCount;

    /// <summary>Entries of L where the matrix itself has none: 0 for a chain or tree of nodes.</summary>
    public long FillIn => FactorCount - Pattern.Count;

    /// <summary>How many times the work of one solution a factorization is, roughly.</summary>
    internal double WorkRatio { get; private set; }

    /// <summary>The order of elimination: the k-th value is the equation eliminated in the k-th place.</summary>
    public ReadOnlySpan<int> Permutation => permutation;

    /// <summary>The panels of the factor.</summary>
    internal SupernodePartition Supernodes => supernodes;

    /// <summary>Where the value of each stored entry of the matrix stands in the panels.</summary>
    internal ReadOnlySpan<int> PlaceOfEntry => placeOfEntry;

    /// <summary>Number of values of all panels.</summary>
    internal int PanelValueCount => panelStarts[^1];

    /// <summary>The greatest <see cref="Stride"/>.</summary>
    internal int LargestPanel { get; }

    /// <summary>Where a panel begins among the values of all panels. A panel is stored column by column.</summary>
    internal int PanelStart(int supernode) => panelStarts[supernode];

    /// <summary>The distance between two columns of a panel: its number of rows, rounded up to whole vectors.</summary>
    internal int Stride(int supernode) => RoundUp(supernodes.Rows(supernode).Length);

    /// <summary>The earlier panels that a panel depends on, in the order of elimination.</summary>
    internal ReadOnlySpan<PanelUpdate> Updates(int supernode) => updates.AsSpan(updateStarts[supernode]..updateStarts[supernode + 1]);

    /// <summary>
    /// Analyzes a pattern. The order is that of minimum degree, or goes level by level from end to end where that leaves
    /// fewer entries.
    /// </summary>
    /// <exception cref="NotSupportedException">The factor would hold more values than an array can.</exception>
    public static SymbolicFactorization Analyze(SparsityPattern pattern) => new(pattern);

    private static int RoundUp(int rows) => (rows + PanelKernel.Lanes - 1) & -PanelKernel.Lanes;

    private (EliminationTree Tree, SupernodePartition Supernodes) ChooseOrder(CompressedGraph graph)
    {
        var tree = EliminationTree.Of(graph, MinimumDegreeOrdering.Order(graph));
        var partition = SupernodePartition.Of(graph, tree);
        if (partition.FactorCount == Pattern.Count)
            return (tree, partition);
        var treeByLevels = EliminationTree.Of(graph, LevelOrdering.Order(graph));
        var partitionByLevels = SupernodePartition.Of(graph, treeByLevels);
        return partitionByLevels.FactorCount < partition.FactorCount ? (treeByLevels, partitionByLevels) : (tree, partition);
    }

    private static int[] PermuteEquations(CompressedGraph graph, EliminationTree tree)
    {
        var permutation = new int[graph.Order];
        int at = 0;
        foreach (int vertex in tree.Order)
        {
            ReadOnlySpan<int> equations = graph.Equations(vertex);
            equations.CopyTo(permutation.AsSpan(at));
            at += equations.Length;
        }
        return permutation;
    }

    private int[] LayOutPanels()
    {
        var starts = new int[supernodes.Count + 1];
        long at = 0;
        for (int s = 0; s < supernodes.Count; s++)
        {
            at += (long)supernodes.Width(s) * Stride(s);
            if (at > Array.MaxLength - PanelKernel.Overrun)
                throw new NotSupportedException($"The factor of this pattern of order {Order} holds more values than an array can.");
            starts[s + 1] = (int)at;
        }
        return starts;
    }

    private int[] MapColumns()
    {
        var supernodeOf = new int[Order];
        for (int s = 0; s < supernodes.Count; s++)
            supernodeOf.AsSpan(supernodes.FirstColumn(s), supernodes.Width(s)).Fill(s);
        return supernodeOf;
    }

    private int[] PlaceEntries(int[] supernodeOf)
    {
        var position = new int[Order];
        for (int k = 0; k < Order; k++)
            position[permutation[k]] = k;
        ReadOnlySpan<int> columnStarts = Pattern.ColumnStarts, patternRows = Pattern.Rows;
        var places = new int[Pattern.Count];
        int at = 0;
        for (int equation = 0; equation < Order; equation++)
        {
            for (int k = columnStarts[equation]; k < columnStarts[equation + 1]; k++)
            {
                (int column, int row) = (position[equation], position[patternRows[k]]);
                if (row < column)
                    (column, row) = (row, column);
                int s = supernodeOf[column];
                ReadOnlySpan<int> rows = supernodes.Rows(s);
                // The freedoms of a node follow one another: mostly the row is the one after the last one found.
                at++;
                if (at >= rows.Length || rows[at] != row)
                    at = rows.BinarySearch(row);
                places[k] = panelStarts[s] + (column - supernodes.FirstColumn(s)) * Stride(s) + at;
            }
        }
        return places;
    }

    private (PanelUpdate[] Updates, int[] Starts) ListUpdates(int[] supernodeOf)
    {
        var found = new List<(int Target, PanelUpdate Update)>(2 * supernodes.Count);
        var starts = new int[supernodes.Count + 1];
        for (int source = 0; source < supernodes.Count; source++)
        {
            ReadOnlySpan<int> rows = supernodes.Rows(source);
            int next;
            for (int row = supernodes.Width(source); row < rows.Length; row = next)
            {
                int target = supernodeOf[rows[row]];
                int end = supernodes.FirstColumn(target) + supernodes.Width(target);
                next = row + 1;
                while (next < rows.Length && rows[next] < end)
                    next++;
                found.Add((target, new PanelUpdate(source, row, next - row)));
                starts[target + 1]++;
            }
        }
        for (int s = 0; s < supernodes.Count; s++)
            starts[s + 1] += starts[s];
        var updates = new PanelUpdate[found.Count];
        int[] place = starts[..^1];
        foreach ((int target, PanelUpdate update) in found)
            updates[place[target]++] = update;
        return (updates, starts);
    }
}
