using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>What has no text of its own, as a function: null can be written, a value is refused by name.</summary>
internal sealed class UnwritableForm(Type type) : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path) =>
        throw CannotWrite(path, $"is a {type.Name}, which cannot be written", "A file holds values, no code: leave the member null, or keep the statue as a script.");

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        problems.Add(node, path, $"is a {type.Name}, which a file cannot give", "Leave the member out, and set it in code.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["not"] = new JsonObject() };
}
