using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A plain number, written with as many digits as give it back bit by bit.</summary>
internal sealed class NumberForm : FileForm
{
    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        if (!double.IsFinite((double)value))
            throw CannotWrite(path, "is not a finite number", "Only finite numbers can be written.");
        writer.WriteNumberValue((double)value);
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (node.Kind != JsonTokenType.Number)
            problems.WrongKind(node, path, "a number", "Write it without quotes and without a unit, as in 1.35.");
        else if (double.Parse(node.Text, NumberStyles.Float, CultureInfo.InvariantCulture) is double number && double.IsFinite(number))
            return number;
        else
            problems.Add(node, path, $"is too great a number: {FileNode.Short(node.Text)}", "Write a number below 1e308.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => new() { ["type"] = "number" };
}
