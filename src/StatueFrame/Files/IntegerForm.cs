using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A whole number.</summary>
internal sealed class IntegerForm : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path) => writer.WriteNumberValue((int)value);

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind == JsonTokenType.Number && int.TryParse(node.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number))
            return number;
        problems.WrongKind(node, path, "a whole number", "Write it without a point, as in 12.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["type"] = "integer", ["minimum"] = int.MinValue, ["maximum"] = int.MaxValue };
}
