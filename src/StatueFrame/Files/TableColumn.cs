using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace StatueFrame;

/// <summary>A column of a table: the member that its cells give, and their unit.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">The member, as in "outline.widthX"; empty for a column that could not be made out.</param>
/// <param name="Unit">The unit of its cells; empty where each has its own or needs none.</param>
/// <param name="Form">How its values stand in a file.</param>
internal sealed partial record TableColumn(string Name, string Unit, FileForm? Form)
{
    /// <summary>The column of a head; what is wrong with it is noted.</summary>
    public static TableColumn Of(string head, FileForm form, JsonObject like, int line, FileProblems problems)
    {
        if (Head().Match(head) is not { Success: true } match)
            return Refuse(FileNode.Short(head), "is no head of a column", "Write the member and the unit, as in outline.widthX [m].");
        (string name, string unit) = (match.Groups["name"].Value, match.Groups["unit"].Value);
        FileForm? at = form;
        JsonNode? there = like;
        string path = "";
        foreach (string part in name.Split('.'))
        {
            IReadOnlyList<FileMember>? members = there is JsonObject known ? at.MembersOf(known) : null;
            if (members is null)
                return Refuse(path, "has no members that a column could give", "It is not given, or stands by its name, in the part that the rows are like; describe it there in full.");
            path = FileForms.Join(path, part);
            if (members.FirstOrDefault(m => m.Name == part) is not { } member)
                return Refuse(path, "is no member", NearNames.Closest(part, members.Select(m => m.Name)));
            (at, there) = (member.Form, there![part]);
        }
        if (unit.Length > 0 && at is not QuantityForm)
            return Refuse(name, "has no unit", "Leave the brackets out.");
        return new TableColumn(name, unit, at);

        TableColumn Refuse(string path, string message, string hint)
        {
            problems.Add(FileNode.Nothing(line), path, message, hint);
            return new TableColumn("", "", null);
        }
    }

    /// <summary>Puts a cell in a row; whether it can be read is seen later.</summary>
    public void Put(string cell, JsonObject row)
    {
        if (Form is null)
            return;
        string[] path = Name.Split('.');
        foreach (string part in path.AsSpan()[..^1])
            row = (JsonObject)row[part]!;
        row[path[^1]] = Form switch
        {
            NumberForm or IntegerForm when double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) =>
                Form is IntegerForm && number == Math.Floor(number) && Math.Abs(number) < 1e9 ? (int)number : number,
            TruthForm when bool.TryParse(cell, out bool truth) => truth,
            _ => Unit.Length > 0 ? $"{cell} {Unit}" : cell,
        };
    }

    [GeneratedRegex(@"^\s*(?<name>[A-Za-z][A-Za-z0-9]*(\.[A-Za-z][A-Za-z0-9]*)*)\s*(\[(?<unit>[^\[\]]+)\])?\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Head();
}
