using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A value of an enumeration, written as its word.</summary>
internal sealed class WordForm(Type type) : FileForm
{
    private readonly string[] words = Enum.GetNames(type);

    public override void Write(Utf8JsonWriter writer, object value, string path) =>
        writer.WriteStringValue(Enum.GetName(type, value)
            ?? throw CannotWrite(path, $"is not a {type.Name}: {(Enum)value:D}", $"There are {string.Join(", ", words)}."));

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind != JsonTokenType.String)
            problems.WrongKind(node, path, $"a word for {type.Name}", $"There are {string.Join(", ", words)}.");
        else if (Array.IndexOf(words, node.Text) < 0)
            problems.Add(node, path, $"is not a word for {type.Name}: \"{FileNode.Short(node.Text)}\"", NearNames.Closest(FileNode.Short(node.Text), words));
        else
            return Enum.Parse(type, node.Text);
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => schema.Define(type.Name, () => new() { ["enum"] = FileSchema.Words(words) });
}
