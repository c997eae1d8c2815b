using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>
/// Statues as files: JSON with the units in the text, as in <c>"thickness": "2.4 mm"</c>. Every number comes back bit by
/// bit, every quantity in the unit it was given in. What the library brings, as "StructuralSteel.S355", stands by name;
/// what the library chose for the user is written out.
/// </summary>
/// <remarks>
/// Safe to use from several threads. The members are those of the descriptions themselves, with a small first letter; a
/// part of several kinds says its own in "kind". The format is explained in docs/files.md, its schema is
/// docs/statue.schema.json. Files of other sizes or depths than a statue can have are refused: see <see cref="LargestFile"/>.
/// </remarks>
public static class StatueFile
{
    /// <summary>The number of the format that is written, and the only one that is read.</summary>
    public const int Format = 1;

    /// <summary>The largest file that is read, in bytes.</summary>
    public const int LargestFile = 32 << 20;

    private const string FormatMember = "format", SchemaMember = "$schema";

    private static readonly JsonWriterOptions options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        MaxDepth = FileNode.MostDepth,
    };

    private static readonly UTF8Encoding strictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static RecordForm Root { get; } = new(typeof(StatueDocument));

    /// <summary>The file's text.</summary>
    /// <exception cref="InvalidStatueException">The description has problems, all of which are listed.</exception>
    /// <exception cref="StatueFileException">A member holds what cannot be written; the message names it.</exception>
    public static string Write(StatueDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (document.FindProblems() is { Count: > 0 } problems)
            throw new InvalidStatueException(problems);
        return Text(writer =>
        {
            writer.WriteStartObject();
            writer.WriteNumber(FormatMember, Format);
            foreach (FileMember member in Root.Members)
                member.Write(writer, document, "");
            writer.WriteEndObject();
        });
    }

    /// <summary>Writes the file's text in UTF-8; the stream stays open.</summary>
    /// <inheritdoc cref="Write(StatueDocument)"/>
    public static void Write(Stream stream, StatueDocument document)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(strictUtf8.GetBytes(Write(document)));
    }

    /// <summary>Saves the file; one that is there is replaced, whole or not at all.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <inheritdoc cref="Write(StatueDocument)"/>
    public static void Save(string path, StatueDocument document) => WholeFile.Write(path, Write(document));

    /// <summary>Reads a file's text. What it gives back is free of problems.</summary>
    /// <exception cref="StatueFileException">
    /// It is not such a file, or the description has problems; all are listed, each with its line and path.
    /// </exception>
    public static StatueDocument Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > LargestFile)
            throw TooLarge();
        try
        {
            return Read(strictUtf8.GetBytes(text));
        }
        catch (EncoderFallbackException e)
        {
            throw NoFile(0, "holds what is not Unicode", e);
        }
    }

    /// <summary>Reads a file in UTF-8 to its end; the stream stays open.</summary>
    /// <inheritdoc cref="Read(string)"/>
    public static StatueDocument Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var buffer = new byte[81_920];
        for (int count = stream.Read(buffer); count > 0; count = stream.Read(buffer))
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > LargestFile)
                throw TooLarge();
        }
        return Read(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    /// <summary>Reads the file at a path.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <inheritdoc cref="Read(string)"/>
    public static StatueDocument Load(string path)
    {
        using FileStream stream = File.OpenRead(path);
        return Read(stream);
    }

    /// <summary>The JSON Schema of the files, draft 2020-12, made from the descriptions themselves.</summary>
    public static string Schema()
    {
        var schema = new FileSchema();
        JsonObject root = MemberReading.Schema(schema, Root.Members, null);
        var properties = new JsonObject { [SchemaMember] = new JsonObject { ["type"] = "string" }, [FormatMember] = new JsonObject { ["const"] = Format } };
        foreach ((string name, JsonNode? value) in root["properties"]!.AsObject())
            properties[name] = value!.DeepClone();
        root["properties"] = properties;
        root["required"]!.AsArray().Insert(0, (JsonNode)FormatMember);
        var all = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = string.Create(CultureInfo.InvariantCulture, $"StatueFrame file, format {Format}"),
        };
        foreach ((string name, JsonNode? value) in root)
            all[name] = value!.DeepClone();
        all["$defs"] = schema.Definitions;
        return Text(writer => all.WriteTo(writer));
    }

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, options))
            write(writer);
        return strictUtf8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    private static StatueDocument Read(ReadOnlySpan<byte> utf8)
    {
        if (utf8.Length > LargestFile)
            throw TooLarge();
        FileNode root;
        try
        {
            root = FileNode.Parse(utf8.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8);
        }
        catch (JsonException e)
        {
            throw NoFile((int)(e.LineNumber ?? 0) + 1, $"is not JSON that a statue can be read from: {Reason(e)}", e);
        }
        var problems = new FileProblems();
        StatueDocument? document = Read(root, problems);
        problems.ThrowIfAny();
        foreach (Problem problem in document!.FindProblems())
            problems.Add(FilePaths.Closest(root, problem.Path), FilePaths.Of(problem.Path), problem.Message, problem.Hint);
        problems.ThrowIfAny();
        return document;
    }

    private static StatueDocument? Read(FileNode root, FileProblems problems)
    {
        if (root.Kind != JsonTokenType.StartObject)
        {
            problems.WrongKind(root, "", "an object in braces", "A statue's file begins { \"format\": 1, \"statue\": { … } }.");
            return null;
        }
        FileNode? format = root.Member(FormatMember);
        if (format is null)
            problems.Add(root, FormatMember, "is missing", $"Begin the file with \"{FormatMember}\": {Format}.");
        else if (format is not { Kind: JsonTokenType.Number, Text: "1" })
            problems.Add(format, FormatMember, $"must be {Format}, is {format.KindText}", "A file of a later format needs a later version of the library.");
        else
            return (StatueDocument?)Root.Read(root.Without(FormatMember, SchemaMember), "", problems);
        return null;
    }

    /// <summary>The parser's message without the place, which is told in another way.</summary>
    private static string Reason(JsonException e) => e.Message.Split(" LineNumber:")[0].TrimEnd('.');

    private static StatueFileException TooLarge() => NoFile(0, $"is larger than {LargestFile >> 20} MiB", null);

    private static StatueFileException NoFile(int line, string message, Exception? inner) =>
        new([new StatueFileProblem(line, "", message, "")], inner);
}
