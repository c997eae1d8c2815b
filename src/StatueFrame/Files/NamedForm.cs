using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A type of which the library brings some values: such a value is written as its name, others in full.</summary>
internal sealed class NamedForm(Type type, FileForm inFull, (string Name, object Value)[] named) : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        foreach ((string name, object known) in named)
        {
            if (known.Equals(value))
            {
                writer.WriteStringValue(name);
                return;
            }
        }
        inFull.Write(writer, value, path);
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind != JsonTokenType.String)
            return inFull.Read(node, path, problems);
        foreach ((string name, object known) in named)
        {
            if (name == node.Text)
                return known;
        }
        problems.Add(node, path, $"there is no {type.Name} called \"{FileNode.Short(node.Text)}\"", NearNames.Closest(FileNode.Short(node.Text), named.Select(n => n.Name)));
        return null;
    }

    public override IReadOnlyList<FileMember>? MembersOf(JsonObject value) => inFull.MembersOf(value);

    public override JsonObject Schema(FileSchema schema) => new()
    {
        ["if"] = new JsonObject { ["type"] = "string" },
        ["then"] = schema.Define($"{type.Name}.name", () => new() { ["enum"] = FileSchema.Words(named.Select(n => n.Name)) }),
        ["else"] = inFull.Schema(schema),
    };
}
