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

    public static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(word => (JsonNode)word)]);
}
