namespace StatueFrame.Testing;

/// <summary>The checked-out repository that the tests were built from.</summary>
public static class Repository
{
    /// <summary>The folder that holds StatueFrame.sln.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "StatueFrame.sln")))
                return folder.FullName;
        }
        throw new DirectoryNotFoundException("The repository root (with StatueFrame.sln) was not found above " + AppContext.BaseDirectory);
    }
}
