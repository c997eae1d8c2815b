namespace StatueFrame.Tests.Architecture;

/// <summary>What is in a folder of docs stands in its index.</summary>
public class IndexTests
{
    [Theory]
    [InlineData("docs/examples", "*.cs")]
    [InlineData("docs/theory", "*.md")]
    public void Every_file_is_in_the_index(string folder, string pattern)
    {
        string path = Path.Combine(Repository.Root, folder), index = File.ReadAllText(Path.Combine(path, "README.md"));
        string[] files = [.. Directory.EnumerateFiles(path, pattern).Select(file => Path.GetFileName(file)).Where(name => name != "README.md")];
        Assert.NotEmpty(files);
        Assert.DoesNotContain(files, name => !index.Contains($"]({name})", StringComparison.Ordinal));
    }
}
