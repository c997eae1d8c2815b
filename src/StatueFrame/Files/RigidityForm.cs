using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A bending or torsional rigidity, written in N·m².</summary>
internal sealed class RigidityForm : FileForm
{
    private static readonly string[] units = ["N·m²", "kN·m²"];

    public override void Write(Utf8JsonWriter writer, object value, string path)
    {
        double number = ((Rigidity)value).NewtonSquareMeters;
        if (!double.IsFinite(number))
            throw CannotWrite(path, "is not a finite number", "Only finite numbers can be written.");
        writer.WriteStringValue($"{number.ToString("R", CultureInfo.InvariantCulture)} {units[0]}");
    }

    public override object? Read(FileNode node, string path, FileProblems problems)
    {
        if (QuantityForm.Split(node, path, problems, nameof(Rigidity), "as in \"5e7 N·m²\"") is not var (number, unit))
            return null;
        if (Array.IndexOf(units, UnitText.Signed(unit)) is var i and >= 0)
            return i == 0 ? Rigidity.FromNewtonSquareMeters(number) : Rigidity.FromKilonewtonSquareMeters(number);
        problems.Add(node, path, $"{(unit.Length == 0 ? "has no unit" : $"\"{FileNode.Short(unit)}\" is no unit of {nameof(Rigidity)}")}", $"Units are {string.Join(", ", units)}.");
        return null;
    }

    public override JsonObject Schema(FileSchema schema) => schema.Define(nameof(Rigidity), () => QuantityForm.Pattern(units));
}
