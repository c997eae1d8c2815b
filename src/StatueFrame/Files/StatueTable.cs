using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.VisualBasic.FileIO;

namespace StatueFrame;

/// <summary>
/// Parts of a statue from a table of comma-separated values, as a survey or a spreadsheet gives them: a row a station, a level,
/// a bar, a plate. A row is like a part that is given, but for what its cells say.
/// </summary>
/// <remarks>
/// Safe to use from several threads. The first line heads the columns with the names that members have in a statue's file, those
/// of parts within parts after a point, and the unit in brackets: <c>elevation [m],outline.widthX [m],thickness [mm]</c>. Without
/// a unit in the head each cell has its own, as in 2.4 mm. An empty cell leaves what it is like. Cells are parted by commas,
/// semicolons or tabs, whichever the head has; numbers have a point for the decimals. Quotes are those of RFC 4180.
/// </remarks>
public static class StatueTable
{
    /// <summary>Reads a table.</summary>
    /// <typeparam name="T">What a row is: a part that can stand in a statue's file, as <see cref="SkinStation"/>.</typeparam>
    /// <param name="text">The text.</param>
    /// <param name="like">The part that every row begins as.</param>
    /// <exception cref="StatueFileException">It is no such table; all problems are listed, each with its line and column.</exception>
    public static ValueList<T> Read<T>(string text, T like)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(like);
        var problems = new FileProblems();
        if (text.Length > StatueFile.LargestFile)
            problems.Add(FileNode.Nothing(0), "", $"is larger than {StatueFile.LargestFile >> 20} MiB", "");
        problems.ThrowIfAny();
        FileForm form = FileForms.Of(typeof(T));
        var rows = new List<T>();
        try
        {
            JsonObject whole = AsJson(form, like);
            using var parser = new TextFieldParser(new StringReader(text.TrimStart('\uFEFF'))) { TextFieldType = FieldType.Delimited, HasFieldsEnclosedInQuotes = true };
            parser.SetDelimiters(Separator(text));
            TableColumn[]? columns = null;
            while (!parser.EndOfData)
            {
                // What follows blank lines is on a later line than the parser says before it has read it.
                string[] cells = parser.ReadFields()!;
                int line = parser.EndOfData ? LinesOf(text) : (int)parser.LineNumber - 1;
                if (columns is null)
                    columns = Heads(cells, form, whole, line, problems);
                else if (Row(cells, columns, form, whole, line, problems) is T row)
                    rows.Add(row);
            }
            if (columns is null)
                problems.Add(FileNode.Nothing(1), "", "is empty", "The first line heads the columns, as in elevation [m],thickness [mm].");
        }
        catch (MalformedLineException e)
        {
            problems.Add(FileNode.Nothing((int)Math.Max(1, e.LineNumber)), "", "has quotes that do not match", "Double a quote that stands within quotes.");
        }
        problems.ThrowIfAny();
        return rows.ToValueList();
    }

    /// <summary>Reads the table at a path, in UTF-8.</summary>
    /// <typeparam name="T">What a row is.</typeparam>
    /// <param name="path">Where the file is.</param>
    /// <param name="like">The part that every row begins as.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="StatueFileException">It is no such table; all problems are listed, each with its line and column.</exception>
    public static ValueList<T> Load<T>(string path, T like)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(path);
        if (new FileInfo(path) is { Exists: true, Length: > StatueFile.LargestFile })
            throw new StatueFileException([new StatueFileProblem(0, "", $"is larger than {StatueFile.LargestFile >> 20} MiB")]);
        return Read(File.ReadAllText(path), like);
    }

    private static string Separator(string text)
    {
        ReadOnlySpan<char> head = text.AsSpan().TrimStart('\uFEFF').TrimStart();
        head = head[..(head.IndexOfAny('\r', '\n') is var end and >= 0 ? end : head.Length)];
        return head.Contains('\t') ? "\t" : head.Contains(';') ? ";" : ",";
    }

    private static int LinesOf(string text) => 1 + text.AsSpan().TrimEnd().Count('\n');

    private static JsonObject AsJson(FileForm form, object like) =>
        JsonNode.Parse(Bytes(writer => form.Write(writer, like, ""))) as JsonObject
            ?? throw FileForm.CannotWrite("", $"a {like.GetType().Name} that has a name of its own can not be changed cell by cell", "Give a part that is described in full.");

    private static byte[] Bytes(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
            write(writer);
        return stream.ToArray();
    }

    private static TableColumn[] Heads(string[] heads, FileForm form, JsonObject like, int line, FileProblems problems)
    {
        TableColumn[] columns = [.. heads.Select(head => TableColumn.Of(head, form, like, line, problems))];
        foreach (IGrouping<string, TableColumn> twice in columns.GroupBy(column => column.Name).Where(group => group.Key.Length > 0 && group.Skip(1).Any()))
            problems.Add(FileNode.Nothing(line), twice.Key, "heads two columns", "Give it once.");
        return [.. columns.Select(Unparted)];

        // A part and members of it in one table would depend on which column stands first.
        TableColumn Unparted(TableColumn column)
        {
            if (column.Form is null || columns.FirstOrDefault(other => other.Name.StartsWith(column.Name + ".", StringComparison.Ordinal)) is not { } member)
                return column;
            problems.Add(FileNode.Nothing(line), column.Name, $"heads a column, as does {member.Name} within it", "Give the part or its members, not both.");
            return column with { Form = null };
        }
    }

    private static object? Row(string[] cells, TableColumn[] columns, FileForm form, JsonObject like, int line, FileProblems problems)
    {
        if (cells.Length > columns.Length)
        {
            problems.Add(FileNode.Nothing(line), "", $"has {cells.Length} cells, the head has {columns.Length}", "Put quotes round a cell that has a separator in it; numbers have a point for the decimals.");
            return null;
        }
        var row = (JsonObject)like.DeepClone();
        for (int i = 0; i < cells.Length; i++)
        {
            if (cells[i].Length > 0)
                columns[i].Put(cells[i], row);
        }
        return form.Read(FileNode.Parse(Bytes(writer => row.WriteTo(writer)), line), "", problems);
    }
}
