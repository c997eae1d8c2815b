namespace StatueFrame.Tests.Heron;

/// <summary>The Saltmere Heron as its file describes it, and its sheet, worked out once for all tests.</summary>
internal static class SaltmereHeron
{
    private static readonly Lazy<StatueDocument> document = new(() => StatueFile.Load(Path.Combine(Repository.Root, "docs", "examples", "saltmere-heron.json")));
    private static readonly Lazy<CheckSheet> sheet = new(() => Document.Check());

    public static StatueDocument Document => document.Value;

    public static CheckSheet Sheet => sheet.Value;
}
