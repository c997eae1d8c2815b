using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>Reads and describes the members of an object in a file.</summary>
internal static class MemberReading
{
    /// <summary>The word that tells which kind of part an object is.</summary>
    public const string Kind = "kind";

    /// <summary>
    /// The values of the members that an object gives, by name in code; null when something was wrong, which is noted.
    /// </summary>
    public static Dictionary<string, object?>? Read(FileNode node, string path, FileProblems problems, IReadOnlyList<FileMember> members, string type, bool hasKind)
    {
        bool isSound = true;
        var values = new Dictionary<string, object?>();
        var seen = new HashSet<string>();
        foreach ((string name, FileNode value) in node.Members)
        {
            string at = FileForms.Join(path, FileNode.Short(name));
            if (!seen.Add(name))
                isSound = Refuse(value, at, "is given twice", "Give it once.");
            else if (hasKind && name == Kind)
                continue;
            else if (members.FirstOrDefault(m => m.Name == name) is not { } member)
                isSound = Refuse(value, at, $"is no member of {type}", NearNames.Closest(FileNode.Short(name), members.Select(m => m.Name)));
            else if (value.Kind == JsonTokenType.Null)
            {
                if (member.IsNullable)
                    values[member.CodeName] = null;
                else
                    isSound = Refuse(value, at, "must not be null", "Give it a value, or leave the member out.");
            }
            else if (member.Form.Read(value, at, problems) is { } read)
                values[member.CodeName] = read;
            else
                isSound = false;
        }
        foreach (FileMember member in members)
        {
            if (member.IsRequired && !seen.Contains(member.Name))
                isSound = Refuse(node, FileForms.Join(path, member.Name), "is missing", $"Every {type} needs it.");
        }
        return isSound ? values : null;

        bool Refuse(FileNode where, string at, string message, string hint)
        {
            problems.Add(where, at, message, hint);
            return false;
        }
    }

    /// <summary>The schema of an object with some members and, where its type has several, a kind.</summary>
    public static JsonObject Schema(FileSchema schema, IReadOnlyList<FileMember> members, string? kind)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        if (kind is not null)
        {
            properties[Kind] = new JsonObject { ["const"] = kind };
            required.Add((JsonNode)Kind);
        }
        foreach (FileMember member in members)
        {
            JsonObject of = member.Form.Schema(schema);
            properties[member.Name] = member.IsNullable ? FileSchema.OrNull(of) : of;
            if (member.IsRequired)
                required.Add((JsonNode)member.Name);
        }
        var all = new JsonObject { ["type"] = "object", ["properties"] = properties };
        if (required.Count > 0)
            all["required"] = required;
        all["additionalProperties"] = false;
        return all;
    }
}
