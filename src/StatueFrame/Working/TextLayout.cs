using System.Text;

namespace StatueFrame;

/// <summary>A column of a plain-text table.</summary>
/// <param name="Most">The widest it may be; longer cells go on below themselves.</param>
/// <param name="Right">True to align it to the right.</param>
internal readonly record struct TextColumn(int Most, bool Right = false);

/// <summary>Plain text of a bounded width, with "\n" line ends. A no-break space (U+00A0) is printed as a space.</summary>
internal static class TextLayout
{
    /// <summary>The widest line.</summary>
    public const int Width = 110;

    /// <summary>The text with spaces that do not break.</summary>
    public static string Unbroken(string text) => text.Replace(' ', '\u00A0');

    /// <summary>A value with its unit, with a true minus sign.</summary>
    public static string Format(double si, Dimension dimension, DisplayUnits units)
    {
        string text = dimension.Format(si, units);
        return text.StartsWith('-') ? '−' + text[1..] : text;
    }

    /// <summary>A value without its unit, with a true minus sign.</summary>
    public static string FormatNumber(double si, Dimension dimension, DisplayUnits units) => dimension.FormatNumber(si, units).Replace('-', '−');

    /// <summary>Appends a paragraph that hangs from its head: it is broken at spaces and goes on below where it began.</summary>
    public static void AppendWrapped(StringBuilder text, string head, string paragraph)
    {
        string indent = new(' ', head.Length);
        foreach (string line in Wrap(paragraph, Width - head.Length))
        {
            AppendLine(text, head + line);
            head = indent;
        }
    }

    /// <summary>Appends rows of cells in columns, each as wide as its widest cell, with two spaces between.</summary>
    /// <param name="text">Where to append.</param>
    /// <param name="indent">Spaces before each row.</param>
    /// <param name="columns">One a cell; the last one takes the room that is left.</param>
    /// <param name="rows">The rows, all with as many cells as there are columns.</param>
    public static void AppendTable(StringBuilder text, int indent, TextColumn[] columns, IReadOnlyList<string[]> rows)
    {
        int[] widths = [.. columns.Select((column, c) => Math.Min(column.Most, rows.Select(row => row[c].Length).DefaultIfEmpty().Max()))];
        widths[^1] = Width - indent - widths[..^1].Sum(w => w > 0 ? w + 2 : 0);
        foreach (string[] row in rows)
        {
            List<string>[] cells = [.. row.Select((cell, c) => Wrap(cell, Math.Max(widths[c], 1)))];
            for (int i = 0; i < cells.Max(cell => cell.Count); i++)
            {
                var line = new StringBuilder().Append(' ', indent);
                for (int c = 0; c < cells.Length; c++)
                {
                    string part = i < cells[c].Count ? cells[c][i] : "";
                    if (c == cells.Length - 1)
                        line.Append(part);
                    else if (widths[c] > 0)
                        line.Append(columns[c].Right ? part.PadLeft(widths[c]) : part.PadRight(widths[c])).Append("  ");
                }
                AppendLine(text, line.ToString());
            }
        }
    }

    /// <summary>The lines of a text, broken at spaces; a word without room is cut.</summary>
    private static List<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line);
                line = "";
            }
            line = line.Length == 0 ? word : $"{line} {word}";
            while (line.Length > width)
            {
                lines.Add(line[..width]);
                line = line[width..];
            }
        }
        if (line.Length > 0 || lines.Count == 0)
            lines.Add(line);
        return lines;
    }

    /// <summary>The text with a mark in place of every character that could break, hide or turn a line.</summary>
    public static string Visible(string text) =>
        text.Any(Validator.IsHidden) ? string.Concat(text.Select(c => Validator.IsHidden(c) ? '\uFFFD' : c)) : text;

    public static void AppendLine(StringBuilder text, string line) =>
        text.Append(Visible(line).Replace('\u00A0', ' ').TrimEnd()).Append('\n');
}
