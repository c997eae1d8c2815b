using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace StatueFrame.Studies;

/// <summary>An input of a statue that is not the same in another one.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Path">Where it stands, as in the statue's file: "skin.thickness"; the first place when there are several.</param>
/// <param name="Before">What it was; null when it was not there.</param>
/// <param name="After">What it is; null when it is gone.</param>
/// <param name="Places">In how many like places, as of the rings of a list, the same changed.</param>
public sealed partial record InputChange(string Path, string? Before, string? After, int Places)
{
    /// <summary>The change on one line, as in "skin.thickness: 2 mm → 3 mm".</summary>
    public override string ToString() =>
        $"{Path}: {Before ?? "nothing"} → {After ?? "nothing"}{(Places > 1 ? $" (and {Places - 1} like it)" : "")}";

    /// <summary>All differences of two descriptions; those that their files cannot hold are left out.</summary>
    internal static ValueList<InputChange> Between(Statue before, Statue after)
    {
        var found = new List<(string Path, string? Before, string? After)>();
        Compare(Tree(before), Tree(after), "", found);
        return found.GroupBy(f => (Number().Replace(f.Path, "[]"), f.Before, f.After)).Select(g => new InputChange(g.First().Path, g.Key.Before, g.Key.After, g.Count())).ToValueList();
    }

    private static JsonNode? Tree(Statue statue)
    {
        try
        {
            return JsonNode.Parse(StatueFile.Write(new StatueDocument { Statue = statue }))!["statue"];
        }
        catch (StatueFileException)
        {
            return null;
        }
    }

    private static void Compare(JsonNode? before, JsonNode? after, string path, List<(string, string?, string?)> found)
    {
        if (JsonNode.DeepEquals(before, after))
            return;
        if (before is JsonObject a && after is JsonObject b)
        {
            foreach (string name in a.Select(m => m.Key).Union(b.Select(m => m.Key)))
                Compare(a[name], b[name], path.Length == 0 ? name : $"{path}.{name}", found);
        }
        else if (before is JsonArray c && after is JsonArray d && c.Count == d.Count)
        {
            for (int i = 0; i < c.Count; i++)
                Compare(c[i], d[i], $"{path}[{i}]", found);
        }
        else
        {
            found.Add((path, Text(before), Text(after)));
        }
    }

    private static string? Text(JsonNode? node) => node switch
    {
        null => null,
        JsonArray list => $"{list.Count} items",
        JsonObject => "described",
        _ => node.ToString(),
    };

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex Number();
}
