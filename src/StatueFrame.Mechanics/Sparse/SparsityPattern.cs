namespace StatueFrame.Mechanics.Sparse;

/// <summary>
/// Where a symmetric matrix may hold values: the lower triangle, column by column, rows ascending, every diagonal
/// entry present. One pattern serves many matrices.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SparsityPattern
{
    private readonly int[] columnStarts;
    private readonly int[] rows;

    private SparsityPattern(int[] columnStarts, int[] rows)
    {
        this.columnStarts = columnStarts;
        this.rows = rows;
    }

    /// <summary>Number of rows and columns.</summary>
    public int Order => columnStarts.Length - 1;

    /// <summary>Number of stored entries, lower triangle with diagonal.</summary>
    public int Count => rows.Length;

    /// <summary>Index of the first stored entry of each column; one more than <see cref="Order"/> values.</summary>
    public ReadOnlySpan<int> ColumnStarts => columnStarts;

    /// <summary>The row of each stored entry, ascending within a column; the diagonal comes first.</summary>
    public ReadOnlySpan<int> Rows => rows;

    /// <summary>The index of entry (<paramref name="row"/>, <paramref name="column"/>) with row ≥ column, or −1.</summary>
    public int IndexOf(int row, int column)
    {
        int start = columnStarts[column];
        int found = rows.AsSpan(start, columnStarts[column + 1] - start).BinarySearch(row);
        return found < 0 ? -1 : start + found;
    }

    /// <summary>
    /// The pattern of a sum of small dense matrices: each group of equations is coupled with itself all over.
    /// Negative equation numbers (restrained freedoms) are passed over.
    /// </summary>
    /// <param name="order">Number of equations.</param>
    /// <param name="groups">The coupled groups, one after the other.</param>
    /// <param name="groupStarts">Where each group begins in <paramref name="groups"/>; one more value than groups.</param>
    public static SparsityPattern FromGroups(int order, ReadOnlySpan<int> groups, ReadOnlySpan<int> groupStarts)
    {
        int[] groupsOfEquation = CountGroups(order, groups);
        int[] members = ListGroups(groups, groupStarts, groupsOfEquation);
        var starts = new int[order + 1];
        var rows = new List<int>(groups.Length * 6);
        var lastSeen = new int[order];
        Array.Fill(lastSeen, -1);
        for (int column = 0; column < order; column++)
        {
            int first = rows.Count;
            lastSeen[column] = column;
            rows.Add(column);
            for (int m = groupsOfEquation[column]; m < groupsOfEquation[column + 1]; m++)
            {
                int group = members[m];
                foreach (int row in groups[groupStarts[group]..groupStarts[group + 1]])
                {
                    if (row <= column || lastSeen[row] == column)
                        continue;
                    lastSeen[row] = column;
                    rows.Add(row);
                }
            }
            rows.Sort(first, rows.Count - first, null);
            starts[column + 1] = rows.Count;
        }
        return new SparsityPattern(starts, [.. rows]);
    }

    private static int[] CountGroups(int order, ReadOnlySpan<int> groups)
    {
        var starts = new int[order + 1];
        foreach (int equation in groups)
        {
            if (equation >= 0)
                starts[equation + 1]++;
        }
        for (int i = 0; i < order; i++)
            starts[i + 1] += starts[i];
        return starts;
    }

    private static int[] ListGroups(ReadOnlySpan<int> groups, ReadOnlySpan<int> groupStarts, int[] starts)
    {
        var members = new int[starts[^1]];
        int[] next = starts[..^1];
        for (int group = 0; group + 1 < groupStarts.Length; group++)
        {
            foreach (int equation in groups[groupStarts[group]..groupStarts[group + 1]])
            {
                if (equation >= 0)
                    members[next[equation]++] = group;
            }
        }
        return members;
    }
}
