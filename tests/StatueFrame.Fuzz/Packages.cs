using System.Text;
using System.Text.Json.Nodes;
using StatueFrame.Reporting;

namespace StatueFrame.Fuzz;

/// <summary>Pages of statues in which texts hold what a page must not believe.</summary>
internal sealed class Packages(string[] corpus) : Subject
{
    private static readonly string[] texts =
    [
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "\"><svg/onload=alert(1)>", "\" onmouseover=\"alert(1)", "</title><b>", "<!--", "]]>", "&lt;i&gt;", "</svg><b>", "{{1}}", "$x^2$", "abc אבג", "العربية", "a\tb", "\u00a0",
        "\ud83d\udc26", "x\u0301", "C:\\a", "//a.example/b", "javascript:alert(1)",
    ];

    private static readonly string[] forbidden = ["<script>alert", "<img src=x", "<svg/onload", "\" onmouseover=\"alert", "</title><b>", "</svg><b>"];

    public override string Name => "packages";

    public override int Weight => 1;

    public override IEnumerable<byte[]> SoundOnes() => corpus.Take(1).Select(Encoding.UTF8.GetBytes);

    public override byte[] Spoiled(Random random)
    {
        JsonNode root = JsonNode.Parse(corpus[random.Next(corpus.Length)])!;
        var names = new List<JsonValue>();
        Collect(root, names);
        string old = names[random.Next(names.Count)].GetValue<string>(), now = texts[random.Next(texts.Length)];
        // The same name stands where it is given and wherever it is used.
        foreach (JsonValue name in names.Where(name => name.GetValue<string>() == old))
            name.ReplaceWith(JsonValue.Create(random.Next(4) == 0 ? now : $"{old} {now}"));
        return Encoding.UTF8.GetBytes(root.ToJsonString());
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken)
    {
        taken = false;
        try
        {
            StatueDocument document = StatueFile.Read(new MemoryStream(spoiled));
            string page = CalculationPackage.Of(document.Statue, document.Criteria, document.Actions!).ToHtml();
            taken = true;
            return forbidden.FirstOrDefault(text => page.Contains(text, StringComparison.Ordinal)) is { } found ? $"the package holds {found}"
                : page.Contains("NaN", StringComparison.Ordinal) ? "the package prints NaN" : null;
        }
        catch (Exception e)
        {
            return e is StatueFileException or InvalidStatueException ? null : e.ToString();
        }
    }

    /// <summary>Texts that are names: those of letters alone are words of the library.</summary>
    private static void Collect(JsonNode? node, List<JsonValue> names)
    {
        if (node is JsonArray list)
        {
            foreach (JsonNode? item in list)
                Collect(item, names);
        }
        else if (node is JsonObject item)
        {
            foreach ((string name, JsonNode? value) in item)
            {
                if (value is JsonValue text && text.GetValueKind() == System.Text.Json.JsonValueKind.String && name is "name" or "on" or "from" or "level" or "point" or "source" or "note")
                    names.Add((JsonValue)value!);
                else
                    Collect(value, names);
            }
        }
    }
}
