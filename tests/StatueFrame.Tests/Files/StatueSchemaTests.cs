using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Files;

/// <summary>The published schema says what the reader does; <c>STATUEFRAME_UPDATE=1 dotnet test</c> writes it anew.</summary>
public class StatueSchemaTests
{
    private static readonly string page = Path.Combine(Repository.Root, "docs", "statue.schema.json");

    private static readonly Lazy<JsonSchema> schema = new(() => JsonSchema.FromText(StatueFile.Schema()));

    [Fact]
    public void Published_schema_is_up_to_date()
    {
        if (Environment.GetEnvironmentVariable("STATUEFRAME_UPDATE") == "1")
            File.WriteAllText(page, StatueFile.Schema());
        Assert.Equal(File.ReadAllText(page), StatueFile.Schema());
    }

    [Fact]
    public void Heron_file_is_read_and_fits_the_schema()
    {
        string heron = File.ReadAllText(Path.Combine(Repository.Root, "docs", "examples", "saltmere-heron.json"));
        Assert.Equal("Saltmere Heron", StatueFile.Read(heron).Statue.Name);
        Assert.Equal(heron, StatueFile.Write(StatueFile.Read(heron)));
        Assert.True(Fits(heron));
    }

    [Fact]
    public void A_small_statue_fits_the_schema_and_a_spoiled_one_does_not()
    {
        string text = StatueFile.Write(new StatueDocument { Statue = SmallStatue.Good.Statue, Situations = [.. SmallStatue.Good.Situations], Criteria = SmallStatue.Good.Criteria });
        Assert.True(Fits(text));
        Assert.True(Fits(text.Replace("\"2.5 mm\"", "\"0.1in\"", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"2.5 mm\"", "\"2.5 kg\"", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"2.5 mm\"", "2.5", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"thickness\"", "\"thicknes\"", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"EvenRing\"", "\"OddRing\"", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"EndFixity.Rigid\"", "\"EndFixity.Loose\"", StringComparison.Ordinal)));
        Assert.False(Fits(text.Replace("\"format\": 1", "\"format\": 2", StringComparison.Ordinal)));
    }

    private static bool Fits(string text)
    {
        using var document = JsonDocument.Parse(Shortened(JsonNode.Parse(text)!).ToJsonString());
        return schema.Value.Evaluate(document.RootElement).IsValid;
    }

    /// <summary>With the first and the last item of each list: the schema's patterns are slow, and the others are alike.</summary>
    private static JsonNode Shortened(JsonNode node) => node switch
    {
        JsonArray { Count: > 0 } list => new JsonArray([.. new[] { list[0], list[^1] }.Distinct().Select(item => Shortened(item!))]),
        JsonObject part => new JsonObject(part.Select(m => KeyValuePair.Create(m.Key, m.Value is null ? null : Shortened(m.Value)))),
        _ => node.DeepClone(),
    };
}
