using System.Text.Json;

namespace StatueFrame;

/// <summary>A value of a JSON text with the line it stands on, which the library's own parser of JSON trees does not keep.</summary>
/// <remarks>Immutable once it is built.</remarks>
internal sealed class FileNode
{
    /// <summary>The deepest nesting that is read or written; a statue needs about 15.</summary>
    public const int MostDepth = 64;

    /// <summary>The most values in a file: one a line fill the largest file that is read.</summary>
    public const int MostValues = 1 << 20;

    private FileNode(JsonTokenType kind, int line) => (Kind, Line) = (kind, line);

    public JsonTokenType Kind { get; }

    /// <summary>The line it begins on, from 1.</summary>
    public int Line { get; }

    /// <summary>The text of a string, or the digits of a number as they stand.</summary>
    public string Text { get; private init; } = "";

    public IReadOnlyList<FileNode> Items { get; private init; } = [];

    /// <summary>The members of an object, in the order of the text; a name may stand there twice.</summary>
    public IReadOnlyList<(string Name, FileNode Value)> Members { get; private init; } = [];

    public string KindText => Kind switch
    {
        JsonTokenType.StartObject => "an object in braces",
        JsonTokenType.StartArray => "a list in brackets",
        JsonTokenType.String => $"the text \"{Short(Text)}\"",
        JsonTokenType.Number => $"the number {Short(Text)}",
        JsonTokenType.Null => "null",
        _ => Kind == JsonTokenType.True ? "true" : "false",
    };

    public FileNode? Member(string name)
    {
        foreach ((string member, FileNode value) in Members)
        {
            if (member == name)
                return value;
        }
        return null;
    }

    /// <summary>The object without some of its members; one that is given twice stays, to be refused.</summary>
    public FileNode Without(params ReadOnlySpan<string> names)
    {
        List<(string Name, FileNode Value)> members = [.. Members];
        foreach (string name in names)
        {
            if (members.FindIndex(m => m.Name == name) is var i and >= 0)
                members.RemoveAt(i);
        }
        return new FileNode(Kind, Line) { Members = members };
    }

    /// <summary>Stands for a line that no value could be read from; line 0 for the whole.</summary>
    public static FileNode Nothing(int line) => new(JsonTokenType.None, line);

    /// <summary>Parses a whole text, of which the first line has a number.</summary>
    /// <exception cref="JsonException">It is not JSON, or is nested too deeply.</exception>
    public static FileNode Parse(ReadOnlySpan<byte> utf8, int firstLine = 1)
    {
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = MostDepth });
        var lines = new LineCounter(firstLine);
        reader.Read();
        FileNode node = Parse(ref reader, utf8, lines);
        reader.Read();
        return node;
    }

    public static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";

    private static FileNode Parse(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8, LineCounter lines)
    {
        JsonTokenType kind = reader.TokenType;
        int line = lines.At(utf8, (int)reader.TokenStartIndex);
        if (++lines.Values > MostValues)
            throw new JsonException($"It holds more than {MostValues} values.", null, line - 1, null);
        switch (kind)
        {
            case JsonTokenType.StartObject:
                var members = new List<(string, FileNode)>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    string name = TextOf(ref reader);
                    reader.Read();
                    members.Add((name, Parse(ref reader, utf8, lines)));
                }
                return new FileNode(kind, line) { Members = members };
            case JsonTokenType.StartArray:
                var items = new List<FileNode>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                    items.Add(Parse(ref reader, utf8, lines));
                return new FileNode(kind, line) { Items = items };
            case JsonTokenType.String:
                return new FileNode(kind, line) { Text = TextOf(ref reader) };
            case JsonTokenType.Number:
                return new FileNode(kind, line) { Text = System.Text.Encoding.ASCII.GetString(reader.ValueSpan) };
            default:
                return new FileNode(kind, line);
        }
    }

    private static string TextOf(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString() ?? "";
        }
        catch (InvalidOperationException e)
        {
            throw new JsonException("A text holds what is not Unicode.", e);
        }
    }

    /// <summary>Counts lines as the reader moves on.</summary>
    private sealed class LineCounter(int firstLine)
    {
        private int line = firstLine, position;

        /// <summary>Number of values so far.</summary>
        public int Values { get; set; }

        public int At(ReadOnlySpan<byte> utf8, int index)
        {
            line += utf8[position..index].Count((byte)'\n');
            position = index;
            return line;
        }
    }
}
