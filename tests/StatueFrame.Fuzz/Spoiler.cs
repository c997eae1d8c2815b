using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace StatueFrame.Fuzz;

/// <summary>Spoils the text of a file by what JSON is made of.</summary>
internal sealed partial class Spoiler(Random random)
{
    private static readonly string[] words =
    [
        "", " ", "tip", "L1", "band 1", "wing/W1", "NaN", "Infinity", "-0", "1e999 m", "5", "5 m", "-5 m", "5 furlongs", "1e-30 m", "<script>alert(1)</script>", "a\nverdict: holds", "\u202Eabc", "\u0000", "\u001b[31m", "ÄÖß", "العربية",
        "../../etc/passwd", "null", "[]", "{}", "%s%n", new string('x', 3000), "sections.tube", "'", "\"", "\\",
    ];

    private static readonly double[] extremes = [0, -1, 1, 1e-9, 1e9, 1e300, -1e300, 5e-324, 0.5, 2, 1000, -0.001];

    public string Spoil(string text)
    {
        JsonNode root = JsonNode.Parse(text)!;
        for (int i = 1 + random.Next(4); i > 0; i--)
            Change(root);
        return root.ToJsonString();
    }

    private void Change(JsonNode root)
    {
        var all = new List<JsonNode>();
        Collect(root, all);
        JsonNode node = all[random.Next(all.Count)];
        // Numbers are what sheets are made of: two times of three it is one of them.
        for (int i = 0; i < 8 && random.Next(3) > 0 && !(node is JsonValue v && Number().IsMatch(v.ToJsonString().Trim('"'))); i++)
            node = all[random.Next(all.Count)];
        switch (node)
        {
            case JsonValue value:
                value.ReplaceWith(Value(value));
                break;
            case JsonArray { Count: > 0 } list:
                ChangeList(list);
                break;
            case JsonObject { Count: > 0 } item:
                ChangeObject(item, all);
                break;
        }
    }

    private JsonNode? Value(JsonValue value)
    {
        string text = value.ToJsonString().Trim('"');
        Match number = Number().Match(text);
        // Most of the time a number stays one that could be meant.
        if (number.Success && random.Next(8) > 0)
        {
            double old = double.Parse(number.Value, CultureInfo.InvariantCulture);
            double now = random.Next(6) == 0 ? extremes[random.Next(extremes.Length)] : old * Math.Pow(10, random.Next(4) == 0 ? 12 * random.NextDouble() - 6 : 1.2 * random.NextDouble() - 0.6);
            string rest = text[(number.Index + number.Length)..];
            string written = now.ToString("R", CultureInfo.InvariantCulture);
            return value.GetValueKind() == System.Text.Json.JsonValueKind.Number ? JsonNode.Parse(random.Next(3) == 0 ? ((long)Math.Clamp(now, -1e15, 1e15)).ToString(CultureInfo.InvariantCulture) : double.IsFinite(now) ? written : "0") : JsonValue.Create(written + rest);
        }
        return random.Next(6) switch
        {
            0 => null,
            1 => JsonValue.Create(random.Next(2) == 0),
            2 => JsonValue.Create(random.Next(-3, 500)),
            3 => new JsonArray(),
            4 => new JsonObject(),
            _ => JsonValue.Create(words[random.Next(words.Length)]),
        };
    }

    private void ChangeList(JsonArray list)
    {
        int i = random.Next(list.Count), j = random.Next(list.Count);
        switch (random.Next(4))
        {
            case 0:
                list.RemoveAt(i);
                break;
            case 1:
                list.Insert(j, list[i]?.DeepClone());
                break;
            case 2:
                (JsonNode? a, JsonNode? b) = (list[i]?.DeepClone(), list[j]?.DeepClone());
                (list[i], list[j]) = (b, a);
                break;
            default:
                for (int k = 0; k < 40; k++)
                    list.Add(list[i]?.DeepClone());
                break;
        }
    }

    private void ChangeObject(JsonObject item, List<JsonNode> all)
    {
        string name = item.ElementAt(random.Next(item.Count)).Key;
        switch (random.Next(4))
        {
            case 0:
                item.Remove(name);
                break;
            case 1:
                item[name] = all[random.Next(all.Count)].DeepClone();
                break;
            case 2:
                JsonNode? moved = item[name]?.DeepClone();
                item.Remove(name);
                item[name + (random.Next(2) == 0 ? "s" : "")] = moved;
                break;
            default:
                item[words[random.Next(words.Length)]] = JsonValue.Create(1);
                break;
        }
    }

    private static void Collect(JsonNode? node, List<JsonNode> all)
    {
        if (node is null)
            return;
        if (node.Parent is not null)
            all.Add(node);
        IEnumerable<JsonNode?> inner = node switch { JsonArray list => list, JsonObject item => item.Select(m => m.Value), _ => [] };
        foreach (JsonNode? below in inner)
            Collect(below, all);
    }

    [GeneratedRegex(@"^-?\d+(\.\d+)?([eE][-+]?\d+)?")]
    private static partial Regex Number();
}
