using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using UnitsNet;

namespace StatueFrame;

/// <summary>A quantity, written as its number and its unit as they were given: "2.4 mm".</summary>
internal sealed partial class QuantityForm(Type type) : FileForm
{
    private const string NumberPattern = @"[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?";

    /// <summary>Taken from the type itself: the table of all quantities would take a second to start.</summary>
    private readonly UnitText units = new((QuantityInfo)type.GetProperty("Info")!.GetValue(null)!);

    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        var quantity = (IQuantity)value;
        double number = (double)quantity.Value;
        if (!double.IsFinite(number))
            throw CannotWrite(path, "is not a finite number", "Only finite numbers can be written.");
        writer.WriteStringValue($"{number.ToString("R", CultureInfo.InvariantCulture)} {units[quantity.Unit]}");
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (Split(node, path, problems, units.Name, $"as in \"12 {units[units.Base]}\"") is not var (number, unit))
            return null;
        if (units.Find(unit) is { } found)
        {
            try
            {
                var quantity = (IQuantity)Activator.CreateInstance(type, number, found)!;
                if (double.IsFinite((double)quantity.ToUnit(units.Base).Value))
                    return quantity;
            }
            // Units that the library of quantities knows by name alone, and numbers that overflow on the way.
            catch (Exception e) when (e is TargetInvocationException or ArgumentException or NotSupportedException or InvalidOperationException or UnitsNetException)
            {
            }
            problems.Add(node, path, $"can not be read in {units[units.Base]}: \"{FileNode.Short(node.Text)}\"", $"Write it in a usual unit, as {units.Examples}.");
            return null;
        }
        problems.Add(node, path, $"{(unit.Length == 0 ? "has no unit" : $"\"{FileNode.Short(unit)}\" is no unit of {units.Name}")}", $"Units are {units.Examples} and others.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => schema.Define(units.Name, () => Pattern(units.All));

    /// <summary>Parts the number from the unit; null when there is no number, which is noted.</summary>
    public static (double Number, string Unit)? Split(FileNode node, string path, FileProblems problems, string quantity, string hint)
    {
        if (node.Kind != JsonTokenType.String)
            problems.WrongKind(node, path, $"a text with number and unit of {quantity}", $"Write the unit into the text, {hint}.");
        else if (Start().Match(node.Text) is not { Success: true } start)
            problems.Add(node, path, $"does not begin with a number: \"{FileNode.Short(node.Text)}\"", $"Write number and unit, {hint}.");
        else if (double.Parse(start.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture) is double number && double.IsFinite(number))
            return (number, node.Text[start.Length..].Trim(' '));
        else
            problems.Add(node, path, $"is too great a number: {FileNode.Short(node.Text)}", "Write a number below 1e308.");
        return null;
    }

    /// <summary>The schema of texts with a number and one of the units.</summary>
    public static JsonObject Pattern(IEnumerable<string> units) => new()
    {
        ["type"] = "string",
        ["pattern"] = $"^{NumberPattern.Replace(@"\d", "[0-9]", StringComparison.Ordinal)} *({string.Join('|', units.Select(UnitText.Pattern))})$",
    };

    [GeneratedRegex("^" + NumberPattern, RegexOptions.ECMAScript)]
    private static partial Regex Start();
}
