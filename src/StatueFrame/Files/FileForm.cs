using System.Text.Json;
using System.Text.Json.Nodes;

namespace StatueFrame;

/// <summary>How values of one type stand in a file: written, read, and described in the schema.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal abstract class FileForm
{
    /// <summary>Writes a value that is not null.</summary>
    /// <exception cref="StatueFileException">It cannot be put in a file.</exception>
    public abstract void Write(Utf8JsonWriter writer, object value, string path);

    /// <summary>The value of a node; null when something was wrong, which has been noted.</summary>
    public abstract object? Read(FileNode node, string path, FileProblems problems);

    /// <summary>The JSON Schema of the values.</summary>
    public abstract JsonObject Schema(FileSchema schema);

    /// <summary>The members of an object that stands in a file; null for what has none.</summary>
    public virtual IReadOnlyList<FileMember>? MembersOf(JsonObject value) => null;

    public static StatueFileException CannotWrite(string path, string message, string hint) =>
        new([new StatueFileProblem(0, path, message, hint)]);
}
