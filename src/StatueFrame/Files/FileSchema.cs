using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>A JSON Schema in the making: each type is described once, and pointed to from where it is used.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class FileSchema
{
    private readonly SortedDictionary<string, JsonObject?> definitions = new(StringComparer.Ordinal);

    /// <summary>Describes a type under its name, unless that was done before, and points to it.</summary>
    public JsonObject Define(string name, Func<JsonObject> describe)
    {
        if (definitions.TryAdd(name, null))
            definitions[name] = describe();
        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }

    /// <summary>All types described.</summary>
    public JsonObject Definitions => new(definitions.Select(d => KeyValuePair.Create(d.Key, (JsonNode?)d.Value)));

    /// <summary>
    /// One of several kinds. The kind decides which schema holds, so that an editor tells what is wrong with that kind
    /// alone, and not with all of them.
    /// </summary>
    public static JsonObject ByKind(IEnumerable<(string Kind, JsonObject Schema)> kinds)
    {
        (string Kind, JsonObject Schema)[] all = [.. kinds];
        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject { [MemberReading.Kind] = new JsonObject { ["enum"] = Words(all.Select(k => k.Kind)) } },
            ["required"] = Words([MemberReading.Kind]),
            ["allOf"] = new JsonArray([.. all.Select(k => new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { [MemberReading.Kind] = new JsonObject { ["const"] = k.Kind } } },
                ["then"] = k.Schema,
            })]),
        };
    }

    public static JsonObject OrNull(JsonObject schema) => new()
    {
        ["if"] = new JsonObject { ["type"] = "null" },
        ["else"] = schema,
    };

    public static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(word => (JsonNode)word)]);
}
