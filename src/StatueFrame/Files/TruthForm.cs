using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>True or false.</summary>
internal sealed class TruthForm : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path) => writer.WriteBooleanValue((bool)value);

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind is JsonTokenType.True or JsonTokenType.False)
            return node.Kind == JsonTokenType.True;
        problems.WrongKind(node, path, "true or false", "Write it without quotes.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["type"] = "boolean" };
}
