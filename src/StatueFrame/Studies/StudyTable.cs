using System.Text;

namespace StatueFrame.Studies;

/// <summary>A column of numbers: the lines of its head, then its cells.</summary>
internal sealed record StudyColumn(string[] Head, string[] Cells);

/// <summary>Tables of many columns of numbers as plain text: what does not fit beside goes below, with the first columns repeated.</summary>
internal static class StudyTable
{
    private const int Indent = 2, Most = 14, Gap = 2;

    /// <summary>Appends columns in as many blocks as they need.</summary>
    /// <param name="text">Where to append.</param>
    /// <param name="keys">The columns that stand first in every block.</param>
    /// <param name="columns">The others; all have as many head lines and cells as the keys.</param>
    public static void Append(StringBuilder text, StudyColumn[] keys, IReadOnlyList<StudyColumn> columns)
    {
        int keyWidth = Indent + keys.Sum(Width);
        for (int first = 0, last; first < columns.Count; first = last)
        {
            int width = keyWidth + Width(columns[first]);
            for (last = first + 1; last < columns.Count && width + Width(columns[last]) <= TextLayout.Width; last++)
                width += Width(columns[last]);
            if (first > 0)
                text.Append('\n');
            AppendBlock(text, [.. keys, .. columns.Skip(first).Take(last - first)]);
        }
    }

    private static void AppendBlock(StringBuilder text, StudyColumn[] columns)
    {
        int heads = columns[0].Head.Length, cells = columns[0].Cells.Length;
        var rows = new List<string[]>();
        for (int i = 0; i < heads; i++)
            rows.Add([.. columns.Select(c => c.Head[i]), ""]);
        for (int i = 0; i < cells; i++)
            rows.Add([.. columns.Select(c => c.Cells[i]), ""]);
        TextLayout.AppendTable(text, Indent, [.. columns.Select(_ => new TextColumn(Most, Right: true)), new TextColumn(0)], rows);
    }

    private static int Width(StudyColumn column) =>
        Gap + Math.Min(Most, column.Head.Concat(column.Cells).Max(cell => cell.Length));
}
