namespace StatueFrame.Tests.Validation;

/// <summary>A statue with one mistake, and what must be said about it.</summary>
public sealed class SpoiledStatue
{
    internal SpoiledStatue(SmallStatue statue, string path, string message, string hint) =>
        (Statue, Path, Message, Hint) = (statue, path, message, hint);

    internal SmallStatue Statue { get; }

    public string Path { get; }

    public string Message { get; }

    public string Hint { get; }
}
