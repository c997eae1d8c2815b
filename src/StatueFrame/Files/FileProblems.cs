namespace StatueFrame;

/// <summary>Collects what is wrong with a file while it is read.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class FileProblems
{
    private readonly List<StatueFileProblem> problems = [];

    public void Add(FileNode node, string path, string message, string hint)
    {
        if (problems.Count < StatueFileException.MostProblems)
            problems.Add(new StatueFileProblem(node.Line, path, message, hint));
    }

    public void WrongKind(FileNode node, string path, string wanted, string hint) =>
        Add(node, path, $"must be {wanted}, is {node.KindText}", hint);

    public void ThrowIfAny()
    {
        if (problems.Count > 0)
            throw new StatueFileException([.. problems.OrderBy(p => p.Line)]);
    }
}
