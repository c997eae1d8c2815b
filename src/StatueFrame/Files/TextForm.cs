using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A text.</summary>
internal sealed class TextForm : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        string text = (string)value;
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogatePair(text, i))
                i++;
            else if (char.IsSurrogate(text[i]))
                throw CannotWrite(path, "holds half a character", "A text must be proper Unicode.");
        }
        writer.WriteStringValue(text);
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind == JsonTokenType.String)
            return node.Text;
        problems.WrongKind(node, path, "a text", "Write it in quotes.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["type"] = "string" };
}
