using System.Reflection;

namespace StatueFrame.Testing;

/// <summary>
/// The public API of the library under test is the one listed in docs/api. A change that is meant is accepted by
/// <c>STATUEFRAME_UPDATE=1 dotnet test</c>, and shows in the diff of the list.
/// </summary>
public class PublicApiTests
{
    [Fact]
    public void Public_api_changes_only_when_asked()
    {
        string name = Assembly.GetExecutingAssembly().GetName().Name!.Replace(".Tests", "", StringComparison.Ordinal);
        string list = Path.Combine(Repository.Root, "docs", "api", name + ".txt");
        string now = PublicApi.Of(Assembly.Load(name));
        if (Environment.GetEnvironmentVariable("STATUEFRAME_UPDATE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(list)!);
            File.WriteAllText(list, now);
        }
        string kept = File.Exists(list) ? File.ReadAllText(list) : "";
        string[] gone = [.. Lines(kept).Except(Lines(now))], added = [.. Lines(now).Except(Lines(kept))];
        Assert.True(kept == now, $"The public API of {name} is not the one in docs/api; to accept it, run with STATUEFRAME_UPDATE=1.\n"
            + string.Join('\n', [.. gone.Select(line => "- " + line), .. added.Select(line => "+ " + line)]));
    }

    /// <summary>Each line of a member with the type it belongs to.</summary>
    private static IEnumerable<string> Lines(string text)
    {
        string type = "";
        foreach (string line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            type = line[0] == ' ' ? type : line;
            yield return line[0] == ' ' ? $"{type} | {line.Trim()}" : line;
        }
    }
}
